package main

import (
	"bytes"
	"fmt"
	"strings"

	"tubewright/cutlist"
	"tubewright/route/insert"
)

// putInText is the order in which the tubes go in.
func putInText(out *bytes.Buffer, list cutlist.List) {
	steps := list.PutSteps()
	if len(steps) == 0 {
		return
	}
	fmt.Fprintln(out, "\nPutting in, in this order")
	for i, s := range steps {
		verdict := ""
		if s.Verdict != insert.Possible {
			verdict = string(s.Verdict) + ". "
		}
		fmt.Fprintf(out, "  %d. %s %s: %s%s\n", i+1, s.Letter, s.Run, verdict, s.Words)
		if len(s.First) > 0 {
			fmt.Fprintf(out, "     For service it comes out only after %s.\n", strings.Join(s.First, ", "))
		}
	}
}
