package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"tubewright/assets"
)

// options is what the command line asks for.
type options struct {
	plan          string // file to open; empty: none
	demo          string
	theme         string
	look          int // 1 to 4
	width, height float32
	boxes         string
	version       bool
}

var errHelp = errors.New("help was asked for")

const usage = `tubewright plans the rigid coolant tubes of a water-cooled computer.

  tubewright [PLAN]          open the window, with a plan file when one is named
  tubewright --demo NAME     open a demo plan: %s
`

// parse reads the command line. It needs no display, so that --help and
// --version work everywhere.
func parse(args []string, problems io.Writer) (options, error) {
	var o options
	var size string
	f := flag.NewFlagSet("tubewright", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.StringVar(&o.demo, "demo", "", "open the demo plan called `NAME`")
	f.IntVar(&o.look, "look", 1, "begin with look `N`: 1 side, 2 above, 3 front, 4 turntable")
	f.StringVar(&o.theme, "theme", "", "`light` or dark; the default is the one used last")
	f.StringVar(&size, "size", "", "size of the window, as `WxH`: 1280x800")
	f.StringVar(&o.boxes, "boxes", "", "for tests: keep `FILE` told of where everything stands, as JSON")
	f.BoolVar(&o.version, "version", false, "print the version and end")
	err := f.Parse(args)
	if errors.Is(err, flag.ErrHelp) {
		tell(problems, fmt.Sprintf(usage, strings.Join(assets.Demos(), ", ")))
		f.SetOutput(problems)
		f.PrintDefaults()
		return o, errHelp
	}
	if err != nil {
		return o, fmt.Errorf("%w; try --help", err)
	}
	return o.complete(f.Args(), size)
}

// complete takes the arguments behind the flags and checks what all of them say.
func (o options) complete(rest []string, size string) (options, error) {
	if len(rest) > 1 {
		return o, fmt.Errorf("one plan at a time, not %d; try --help", len(rest))
	}
	if len(rest) == 1 {
		o.plan = rest[0]
	}
	if size != "" {
		var end string
		if n, _ := fmt.Sscanf(size+" .", "%fx%f %s", &o.width, &o.height, &end); n != 3 || end != "." || o.width < 1 || o.height < 1 {
			return o, fmt.Errorf("--size %s is no size; write it as 1280x800", size)
		}
	}
	switch {
	case o.plan != "" && o.demo != "":
		return o, errors.New("a plan file and --demo exclude each other")
	case o.look < 1 || o.look > 4:
		return o, fmt.Errorf("--look %d: there are looks 1 to 4", o.look)
	case o.theme != "" && o.theme != "light" && o.theme != "dark":
		return o, fmt.Errorf("--theme %s: there are light and dark", o.theme)
	}
	if _, ok := assets.Demo(o.demo); o.demo != "" && !ok {
		return o, fmt.Errorf("there is no demo %q; there are %s", o.demo, strings.Join(assets.Demos(), ", "))
	}
	return o, nil
}
