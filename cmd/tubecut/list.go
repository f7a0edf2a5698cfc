package main

import (
	"github.com/spf13/cobra"

	"tubewright/cutlist"
)

func listCommand() *cobra.Command {
	return answering(&cobra.Command{
		Use:   "list PLAN",
		Short: "Print the cut list: tubes, bars, what to buy, findings",
		Example: `  tubecut list machine.plan.yaml
  tubecut list machine.plan.yaml --json | jq '.tubes[].cut.aim'
  tubecut demo ferry-bridge | tubecut list -`,
	}, answer{"print the answer as JSON, in mm and degrees", solveAndPutIn, listText, cutlist.List.JSON})
}

func checkCommand() *cobra.Command {
	var offers, putIn bool
	cmd := answering(&cobra.Command{
		Use:   "check PLAN",
		Short: "Print the findings: what does not fit, and a way out",
		Long: `Print the findings: what does not fit, and a way out of each.

For runs without a way, and for runs too near to each other, a short look is
taken for the smallest change that helps: a part moved, a former, two ports
swapped. With --offers every finding gets a long look. What is offered has been
tried: with it the finding is gone, and no new error has come.`,
		Example: `  tubecut check machine.plan.yaml && echo ready to cut
  tubecut check machine.plan.yaml --offers
  tubecut check machine.plan.yaml --put-in`,
	}, answer{
		"print the findings as a JSON list",
		func(cmd *cobra.Command, name string) (cutlist.List, error) {
			switch {
			case offers:
				return solveAndMend(cmd, name)
			case putIn:
				return solveAndPutIn(cmd, name)
			}
			return solve(cmd, name)
		},
		findingsText, cutlist.List.FindingsJSON,
	})
	cmd.Flags().BoolVar(&putIn, "put-in", false, "ask too whether each tube can be brought into place, and in which order")
	cmd.Flags().BoolVar(&offers, "offers", false, "look for ways out of every finding, which takes longer; progress on standard error")
	cmd.MarkFlagsMutuallyExclusive("offers", "put-in")
	return cmd
}

// answer is how a command comes by a list, and how it prints it.
type answer struct {
	jsonHelp string
	solve    func(cmd *cobra.Command, plan string) (cutlist.List, error)
	text     func(cutlist.List) []byte
	json     func(cutlist.List) ([]byte, error)
}

// answering makes a command that solves a plan and prints the answer.
func answering(cmd *cobra.Command, a answer) *cobra.Command {
	var asJSON bool
	cmd.Args = takes("PLAN")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		list, err := a.solve(cmd, args[0])
		if err != nil {
			return err
		}
		if asJSON {
			text, err := a.json(list)
			return printed(cmd.OutOrStdout(), text, err, list.Findings)
		}
		return printed(cmd.OutOrStdout(), a.text(list), nil, list.Findings)
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, a.jsonHelp)
	return cmd
}
