package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/spf13/cobra"

	"tubewright/cutlist/nest"
)

// nestFlags are what tubecut nest can be told beside the file.
type nestFlags struct {
	asJSON            bool
	seconds           float64
	kerf, keep, units string
	stock, offcuts    []string
}

func nestCommand() *cobra.Command {
	var f nestFlags
	cmd := &cobra.Command{
		Use:   "nest FILE",
		Short: "Get pieces out of bars at the least cost, and say whether that is proven",
		Long: `Nest says how to saw pieces from bars so that the bought bars cost least; among
those plans it takes the one with the fewest bars, then the longest remnant. It
says whether that is proven, or how far from the best it may be.

FILE is text, or - for standard input. One line each:

  120.5,3              a piece: its length, and how many are wanted
  stock: 500 7.40      a bar to buy: length, price and, if limited, how many
  stock: 1000 - 4      the same without a price, at most 4
  offcut: 310 2        a bar on hand, taken first: length, how many (else 1)
  kerf: 1              what a cut takes
  keep: 120            from which length a remnant is worth keeping
  units: in            mm or in; else any unit, with up to two decimals

The first line may be the length of the bars alone. What follows a # is not
read. Flags add to the stock and offcuts of the file, and go before its kerf,
keep and units.

It exits with 0; with 1 when limits leave pieces uncut; with 2 when the input
cannot be used; with 130 when stopped by Ctrl+C: it then prints the best so far.`,
		Example: `  printf '500\n305.3,2\n120,4\n' | tubecut nest -
  tubecut nest pieces.csv --kerf 1 --stock 500:7.40 --stock 1000:12.90:4
  tubecut nest pieces.csv --offcut 310:2 --keep 120 --seconds 5 --json`,
		Args: takes("FILE"),
		RunE: func(cmd *cobra.Command, args []string) error { return f.run(cmd, args[0]) },
	}
	f.register(cmd)
	return cmd
}

func (f *nestFlags) register(cmd *cobra.Command) {
	flags := cmd.Flags()
	flags.BoolVar(&f.asJSON, "json", false, "print the plan as JSON")
	flags.Float64Var(&f.seconds, "seconds", 0, "how long it may look for a better plan or a proof; 0: a fixed number of steps, the same on every machine")
	flags.StringVar(&f.kerf, "kerf", "", "what a cut takes")
	flags.StringVar(&f.keep, "keep", "", "from which length a remnant is worth keeping")
	flags.StringVar(&f.units, "units", "", "what lengths are counted in: mm or in")
	flags.StringArrayVar(&f.stock, "stock", nil, "a bar to buy, LENGTH[:PRICE[:MOST]]; may be repeated")
	flags.StringArrayVar(&f.offcuts, "offcut", nil, "a bar on hand, LENGTH[:COUNT]; may be repeated")
}

// mostSeconds is some days: more is a slip of the pen.
const mostSeconds = 1e6

func (f *nestFlags) run(cmd *cobra.Command, name string) error {
	if !(f.seconds >= 0 && f.seconds <= mostSeconds) {
		return fmt.Errorf("--seconds is %v; expected 0 or more, up to %.0f", f.seconds, mostSeconds)
	}
	order, err := f.order(cmd, name)
	if err != nil {
		return err
	}
	start := time.Now()
	told := tellProgress(cmd.ErrOrStderr(), order.Job.Priced())
	result, err := nest.Solve(cmd.Context(), order.Job, nest.Options{Seconds: f.seconds, Progress: told.better})
	told.stop()
	a := outcome{order: order, result: result, stopped: cmd.Context().Err() != nil, took: time.Since(start)}
	return a.print(cmd, err, f.asJSON)
}

func (f *nestFlags) order(cmd *cobra.Command, name string) (nest.Order, error) {
	if name == "-" {
		return nest.ReadOrder("standard input", cmd.InOrStdin(), f.settings(cmd)...)
	}
	file, err := os.Open(name)
	if err != nil {
		return nest.Order{}, err
	}
	defer file.Close() //nolint:errcheck // only read from
	return nest.ReadOrder(name, io.Reader(file), f.settings(cmd)...)
}

// settings are the flags as lines of an order.
func (f *nestFlags) settings(cmd *cobra.Command) []nest.Setting {
	var all []nest.Setting
	for _, s := range f.stock {
		all = append(all, nest.Setting{Flag: "--stock", Key: "stock", Value: s})
	}
	for _, s := range f.offcuts {
		all = append(all, nest.Setting{Flag: "--offcut", Key: "offcut", Value: s})
	}
	for _, s := range []struct{ key, value string }{{"kerf", f.kerf}, {"keep", f.keep}, {"units", f.units}} {
		if cmd.Flags().Changed(s.key) {
			all = append(all, nest.Setting{Flag: "--" + s.key, Key: s.key, Value: s.value})
		}
	}
	return all
}

// outcome is what came of an order.
type outcome struct {
	order   nest.Order
	result  nest.Result
	uncut   []nest.Piece
	stopped bool
	took    time.Duration
}

// errBestSoFar says that what was printed is what was found until it was stopped.
var errBestSoFar = errors.New("stopped; this is the best so far")

// print writes the plan and gives what is to be said of it: nothing, that
// limits leave pieces uncut, or that it was stopped.
func (a outcome) print(cmd *cobra.Command, err error, asJSON bool) error {
	var few *nest.TooFewError
	switch {
	case errors.As(err, &few) && !(a.stopped && a.result.Bars == 0):
		a.uncut = few.Uncut
	case a.stopped && a.result.Bars == 0:
		return context.Canceled
	case err != nil && !a.stopped:
		return err
	}
	text := a.text(textWidth(cmd.OutOrStdout()), few)
	if asJSON {
		if text, err = a.order.Answer(a.result, a.uncut, a.stopped, a.took.Seconds()).JSON(); err != nil {
			return err
		}
	}
	if err := printed(cmd.OutOrStdout(), text, nil, nil); err != nil {
		return err
	}
	switch {
	case a.stopped:
		return errBestSoFar
	case few != nil:
		return errFinding
	}
	return nil
}
