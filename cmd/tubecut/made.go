package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	tries "tubewright/route/made"
	"tubewright/route/planfile"
)

// madeFlags are what tubecut made can be told of a try.
type madeFlags struct {
	cut, blank, from float64
	wrong, date      string
	fits, fails      bool
}

func madeCommand() *cobra.Command {
	var f madeFlags
	cmd := &cobra.Command{
		Use:   "made PLAN RUN",
		Short: "Write a try at a tube into the plan: it fits, or what was wrong",
		Long: `Made writes down a try at a run's tube and saves the plan; the version before is
kept beside it. Lengths are in the plan's units.

With --fits the run is a fact from then on: its tube stays where it is, others
are planned round it, and it is not cut again. With --wrong it is a failed try:
it is counted, and the run is cut again. With --fails the tube that was made
before fits no longer, for instance after a measurement. With --from the bar is
taken off the shelf and what is left of it goes back there.`,
		Example: `  tubecut made machine.plan.yaml pump-to-plate --cut 275.3 --from 500 --wrong "2 mm long"
  tubecut made machine.plan.yaml pump-to-plate --cut 273.3 --from 1000 --fits --date "3 May"
  tubecut made machine.plan.yaml pump-to-plate --fails --wrong "the pump moved"`,
		Args: takes("PLAN", "RUN"),
		RunE: func(cmd *cobra.Command, args []string) error { return f.run(cmd, args[0], args[1]) },
	}
	cmd.Flags().Float64Var(&f.cut, "cut", 0, "finished length along the centreline; with --fits left out: the list's aim")
	cmd.Flags().Float64Var(&f.blank, "blank", 0, "length sawn for it; left out: what the list asks for such a cut")
	cmd.Flags().Float64Var(&f.from, "from", 0, "length of the bar it was sawn from")
	cmd.Flags().StringVar(&f.wrong, "wrong", "", "what was wrong with it")
	cmd.Flags().StringVar(&f.date, "date", "", "when, as you write it")
	cmd.Flags().BoolVar(&f.fits, "fits", false, "it goes in")
	cmd.Flags().BoolVar(&f.fails, "fails", false, "the tube made before fits no longer")
	return cmd
}

func (f madeFlags) run(cmd *cobra.Command, path, run string) error {
	switch {
	case path == "-":
		return errors.New("a try is written into the plan's file; name the file instead of -")
	case f.fits && f.fails, f.fits && f.wrong != "", !f.fits && !f.fails && f.wrong == "":
		return errors.New("say one of --fits, --wrong WHAT (a failed try) or --fails (the tube made before fits no longer)")
	}
	plan, src, err := planfile.Load(path)
	if err != nil {
		return err
	}
	after, err := f.written(cmd, plan, run)
	var entry *tries.EntryError
	if errors.As(err, &entry) {
		return fmt.Errorf("%w. %s", err, entry.Fix)
	}
	if err != nil {
		return err
	}
	report, err := planfile.Save(path, after, src)
	if err != nil {
		return err
	}
	said := fmt.Sprintf("%s: try %d is written down.", run, len(runNamed(after, run).Made))
	if report.Before != "" {
		said += " The version before is " + report.Before + "."
	}
	_, err = fmt.Fprintln(cmd.OutOrStdout(), strings.TrimSuffix(said+" "+report.Message, " "))
	return err
}

func runNamed(plan route.Plan, name string) route.Run {
	r, _ := plan.FindRun(name)
	return r
}

// written is the plan with what the flags say.
func (f madeFlags) written(cmd *cobra.Command, plan route.Plan, run string) (route.Plan, error) {
	if f.fails {
		return tries.Fail(plan, run, f.wrong)
	}
	unit := plan.Units.Factor()
	try := route.Attempt{Cut: f.cut * unit, Blank: f.blank * unit, CutFrom: f.from * unit, Wrong: f.wrong, Date: f.date, Fits: f.fits}
	list, _, err := build(cmd.Context(), plan)
	if err != nil {
		return plan, err
	}
	if way, aim, ok := wayOf(list, run); ok {
		shape := way.Attempt()
		if try.Cut == 0 && f.fits {
			try.Cut = aim
		}
		try.Corners, try.Radius, try.Start, try.End = shape.Corners, shape.Radius, shape.Start, shape.End
	}
	plan, err = tries.Record(plan, run, try)
	return plan, err
}

func wayOf(list cutlist.List, run string) (find.Way, float64, bool) {
	for _, t := range list.Tubes {
		if t.Run == run {
			return t.Way, t.Cut.Aim, true
		}
	}
	return find.Way{}, 0, false
}
