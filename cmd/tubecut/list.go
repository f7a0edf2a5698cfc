package main

import (
	"github.com/spf13/cobra"

	"tubewright/cutlist"
)

func listCommand() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "list PLAN",
		Short: "Print the cut list: tubes, bars, what to buy, findings",
		Example: `  tubecut list machine.plan.yaml
  tubecut list machine.plan.yaml --json | jq '.tubes[].cut.aim'
  tubecut demo ferry-bridge | tubecut list -`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			list, err := solve(cmd, args[0])
			if err != nil {
				return err
			}
			if asJSON {
				text, err := list.JSON()
				return printed(cmd.OutOrStdout(), text, err, list.Findings)
			}
			return printed(cmd.OutOrStdout(), listText(list), nil, list.Findings)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the answer as JSON, in mm and degrees")
	return cmd
}

func checkCommand() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:     "check PLAN",
		Short:   "Print the findings: what does not fit, and a way out",
		Example: `  tubecut check machine.plan.yaml && echo ready to cut`,
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			list, err := solve(cmd, args[0])
			if err != nil {
				return err
			}
			if asJSON {
				text, err := cutlist.FindingsJSON(list.Findings)
				return printed(cmd.OutOrStdout(), text, err, list.Findings)
			}
			return printed(cmd.OutOrStdout(), findingsText(list.Findings), nil, list.Findings)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the findings as a JSON list")
	return cmd
}
