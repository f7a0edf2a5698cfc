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
	}, "print the answer as JSON, in mm and degrees", listText, cutlist.List.JSON)
}

func checkCommand() *cobra.Command {
	return answering(&cobra.Command{
		Use:     "check PLAN",
		Short:   "Print the findings: what does not fit, and a way out",
		Example: `  tubecut check machine.plan.yaml && echo ready to cut`,
	}, "print the findings as a JSON list",
		func(l cutlist.List) []byte { return findingsText(l.Findings) },
		func(l cutlist.List) ([]byte, error) { return cutlist.FindingsJSON(l.Findings) })
}

// answering makes a command that solves a plan and prints what text, or with
// --json what inJSON makes of the list.
func answering(cmd *cobra.Command, jsonHelp string, text func(cutlist.List) []byte, inJSON func(cutlist.List) ([]byte, error)) *cobra.Command {
	var asJSON bool
	cmd.Args = takes("PLAN")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		list, err := solve(cmd, args[0])
		if err != nil {
			return err
		}
		if asJSON {
			answer, err := inJSON(list)
			return printed(cmd.OutOrStdout(), answer, err, list.Findings)
		}
		return printed(cmd.OutOrStdout(), text(list), nil, list.Findings)
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, jsonHelp)
	return cmd
}
