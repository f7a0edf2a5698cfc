package main

import (
	"bytes"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
)

func waysCommand() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:     "ways PLAN RUN",
		Short:   "List the ways a run can be made, best first",
		Example: `  tubecut ways machine.plan.yaml pump-to-plate`,
		Args:    takes("PLAN", "RUN"),
		RunE: func(cmd *cobra.Command, args []string) error {
			plan, err := readPlan(cmd, args[0])
			if err != nil {
				return err
			}
			ways, err := find.Ways(cmd.Context(), plan, args[1])
			var none *find.NoWayError
			if err != nil && !errors.As(err, &none) {
				return err
			}
			text := waysText(ways, plan.Units)
			if asJSON {
				if text, err = cutlist.WaysJSON(args[1], ways, plan.Saw); err != nil {
					return err
				}
			}
			if none != nil {
				return noWay(cmd, text, asJSON, none)
			}
			return printed(cmd.OutOrStdout(), text, nil, nil)
		},
	}
	cmd.ValidArgsFunction = runsOf
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the ways as JSON, in mm and degrees")
	return cmd
}

// runsOf completes the name of a run from the plan named before it.
func runsOf(cmd *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return nil, cobra.ShellCompDirectiveDefault
	}
	var names []string
	if plan, err := readPlan(cmd, args[0]); err == nil && len(args) == 1 && args[0] != "-" {
		for _, r := range plan.Runs {
			names = append(names, r.Name)
		}
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}

// noWay tells why a run has no way, which is an error to settle and no fault of
// the input: the empty list for programs, the reason for people.
func noWay(cmd *cobra.Command, empty []byte, asJSON bool, why error) error {
	if asJSON {
		if _, err := cmd.OutOrStdout().Write(empty); err != nil {
			return err
		}
	}
	if _, err := fmt.Fprintf(cmd.ErrOrStderr(), "tubecut: %v\n", why); err != nil {
		return err
	}
	return errFinding
}

func waysText(ways []find.Way, u route.Units) []byte {
	var out bytes.Buffer
	rows := [][]string{{"", "way", "length, " + unitName(u), "bends", "fittings", "seals", "price", "cost", "why"}}
	for i, w := range ways {
		rows = append(rows, []string{
			fmt.Sprint(i + 1), w.Name, u.Text(w.Formed.Developed), fmt.Sprint(len(w.Formed.Bends)),
			fmt.Sprint(w.Fittings()), fmt.Sprint(w.Seals), fmt.Sprintf("%.2f", w.Price), fmt.Sprintf("%.0f", w.Cost), w.Reason,
		})
	}
	table(&out, rows)
	return out.Bytes()
}
