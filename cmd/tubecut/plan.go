package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/planfile"
)

// takes asks for arguments by name, so that what is missing is told by name.
func takes(names ...string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < len(names):
			return fmt.Errorf("%s needs %s; see %s --help", cmd.Name(), strings.Join(names, " and "), cmd.CommandPath())
		case len(args) > len(names):
			return fmt.Errorf("%s does not know what to do with %q; see %s --help", cmd.Name(), args[len(names)], cmd.CommandPath())
		}
		return nil
	}
}

// readPlan reads the plan named by an argument; - is standard input.
func readPlan(cmd *cobra.Command, name string) (route.Plan, error) {
	if name != "-" {
		plan, _, err := planfile.Load(name)
		return plan, err
	}
	text, err := io.ReadAll(io.LimitReader(cmd.InOrStdin(), planfile.MaxBytes+1))
	if err != nil {
		return route.Plan{}, err
	}
	plan, _, err := planfile.Read("standard input", text)
	return plan, err
}

// listed reads a plan, joins its ports and makes the list.
func listed(cmd *cobra.Command, name string) (cutlist.List, find.Solution, error) {
	plan, err := readPlan(cmd, name)
	if err != nil {
		return cutlist.List{}, find.Solution{}, err
	}
	return build(cmd.Context(), plan)
}

// solve makes the list, with a short look for ways out where one is worth it.
func solve(cmd *cobra.Command, name string) (cutlist.List, error) {
	list, solution, err := listed(cmd, name)
	if err != nil {
		return cutlist.List{}, err
	}
	return list.Mended(cmd.Context(), solution)
}

// solveAndPutIn is solve, and asks in which order the tubes go in.
func solveAndPutIn(cmd *cobra.Command, name string) (cutlist.List, error) {
	list, solution, err := listed(cmd, name)
	if err == nil {
		list, err = list.WithPutIn(cmd.Context(), solution)
	}
	if err != nil {
		return cutlist.List{}, err
	}
	return list.Mended(cmd.Context(), solution)
}

// solveAndMend is solve with a long look for ways out of every finding.
func solveAndMend(cmd *cobra.Command, name string) (cutlist.List, error) {
	list, solution, err := listed(cmd, name)
	if err != nil {
		return cutlist.List{}, err
	}
	return list.MendedAll(cmd.Context(), solution, func(f check.Finding, n, of int) {
		tell(cmd.ErrOrStderr(), fmt.Sprintf("looking for ways out, %d of %d: %s", n, of, f.What))
	})
}

func build(ctx context.Context, plan route.Plan) (cutlist.List, find.Solution, error) {
	solution, err := find.Solve(ctx, plan)
	if err != nil {
		return cutlist.List{}, solution, err
	}
	list, err := cutlist.Build(ctx, plan, solution)
	return list, solution, err
}

// settled gives errFinding when one of the findings is an error.
func settled(findings []check.Finding) error {
	for _, f := range findings {
		if f.Severity == check.Error {
			return errFinding
		}
	}
	return nil
}

// printed writes text unless making it failed, then reports on the findings.
func printed(w io.Writer, text []byte, err error, findings []check.Finding) error {
	if err != nil {
		return err
	}
	if _, err := w.Write(text); err != nil {
		return err
	}
	return settled(findings)
}
