// Command tubewright opens the planning window. Its twin without a screen is
// tubecut.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
)

// Exit codes: 1 when something went wrong, 2 when the command line or the
// surroundings do not allow a start.
const (
	exitFailed = 1
	exitUsage  = 2
)

// version is set by the linker on a release: -ldflags "-X main.version=1.2.0".
var version = "0.1.0"

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run starts the program and gives its exit code.
func run(args []string, out, problems io.Writer) int {
	o, err := parse(args, problems)
	switch {
	case errors.Is(err, errHelp):
		return 0
	case err != nil:
		tell(problems, "tubewright:", err)
		return exitUsage
	case o.version:
		tell(out, "tubewright", version)
		return 0
	}
	if why := noDisplay(os.Getenv); why != "" {
		tell(problems, "tubewright:", why)
		return exitUsage
	}
	if err := open(o, problems); err != nil {
		tell(problems, "tubewright:", err)
		return exitFailed
	}
	return 0
}

// tell writes a line to the terminal. When that fails there is nobody to tell.
func tell(w io.Writer, words ...any) { _, _ = fmt.Fprintln(w, words...) }
