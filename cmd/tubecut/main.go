// Command tubecut plans rigid coolant tubes without a screen: a plan file goes
// in; cut list, findings, ways, sheets and bar plans come out. It needs no
// display and no C library.
//
// It exits with 0; with 1 when a finding is an error; with 2 when the input
// cannot be used, and then says why on standard error.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"

	"github.com/spf13/cobra"
)

// version is set by the linker on a release: -ldflags "-X main.version=1.2.0".
var version = "0.1.0"

// The exit codes, for scripts.
const (
	exitFine    = 0
	exitFinding = 1 // a finding is an error
	exitInput   = 2 // the input cannot be used

	exitStopped = 130 // interrupted, as shells count it: 128 and the signal
)

// errFinding says that the answer is complete and holds an error to settle.
var errFinding = errors.New("there are errors to settle")

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is the command as a function: arguments and streams in, exit code out.
func run(ctx context.Context, args []string, in io.Reader, out, problems io.Writer) int {
	root := command()
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(problems)
	switch err := root.ExecuteContext(ctx); {
	case err == nil:
		return exitFine
	case errors.Is(err, errFinding):
		return exitFinding
	case errors.Is(err, errBestSoFar):
		tell(problems, err)
		return exitStopped
	case ctx.Err() != nil && errors.Is(err, context.Canceled):
		tell(problems, "stopped before it was done")
		return exitStopped
	default:
		tell(problems, err)
		return exitInput
	}
}

// tell writes on standard error; where that fails nobody is left to tell.
func tell(problems io.Writer, what any) { _, _ = fmt.Fprintf(problems, "tubecut: %v\n", what) }

func command() *cobra.Command {
	root := &cobra.Command{
		Use:   "tubecut",
		Short: "Plan rigid coolant tubes without a screen",
		Long: `Tubecut reads the plan of a water-cooled machine and says which way each rigid
tube runs, how long to cut it, where to mark each bend, how to get all pieces
out of few stock lengths, what to buy, and what does not fit yet.

PLAN is a *.plan.yaml file, or - for standard input. It exits with 0, with 1
when a finding is an error, and with 2 when the input cannot be used.`,
		Example: `  tubecut demo conservation-scanner > scanner.plan.yaml
  tubecut list scanner.plan.yaml
  tubecut ways scanner.plan.yaml sight-tube
  tubecut sheet scanner.plan.yaml --out sheets --paper letter`,
		Version:       version,
		SilenceUsage:  true,
		SilenceErrors: true,
	}
	root.AddCommand(listCommand(), checkCommand(), waysCommand(), sheetCommand(), surveyCommand(), madeCommand(),
		nestCommand(), demoCommand(), schemaCommand())
	return root
}
