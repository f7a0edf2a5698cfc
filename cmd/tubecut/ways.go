package main

import (
	"bytes"
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
		Args:    cobra.ExactArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			plan, err := readPlan(cmd, args[0])
			if err != nil {
				return err
			}
			ways, err := find.Ways(cmd.Context(), plan, args[1])
			if err != nil {
				return err
			}
			if asJSON {
				text, err := cutlist.WaysJSON(args[1], ways, plan.Saw)
				return printed(cmd.OutOrStdout(), text, err, nil)
			}
			return printed(cmd.OutOrStdout(), waysText(ways, plan.Units), nil, nil)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the ways as JSON, in mm and degrees")
	return cmd
}

func waysText(ways []find.Way, u route.Units) []byte {
	var out bytes.Buffer
	rows := [][]string{{"", "way", "length", "bends", "fittings", "seals", "price", "cost", "why"}}
	for i, w := range ways {
		rows = append(rows, []string{
			fmt.Sprint(i + 1), w.Name, u.Text(w.Formed.Developed), fmt.Sprint(len(w.Formed.Bends)),
			fmt.Sprint(w.Fittings()), fmt.Sprint(w.Seals), fmt.Sprintf("%.2f", w.Price), fmt.Sprintf("%.0f", w.Cost), w.Reason,
		})
	}
	table(&out, rows)
	return out.Bytes()
}
