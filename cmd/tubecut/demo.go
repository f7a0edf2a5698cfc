package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"tubewright/assets"
	"tubewright/route/planfile"
)

func demoCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "demo [NAME]",
		Short: "List the demo plans, or print one",
		Long:  "Without a name it lists the demo plans; with one it prints that plan. All of them are invented.",
		Example: `  tubecut demo
  tubecut demo ferry-bridge > ferry.plan.yaml`,
		Args:      cobra.MaximumNArgs(1),
		ValidArgs: assets.Demos(),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				_, err := fmt.Fprintln(cmd.OutOrStdout(), strings.Join(assets.Demos(), "\n"))
				return err
			}
			text, ok := assets.Demo(args[0])
			if !ok {
				return fmt.Errorf("there is no demo %q; there are %s", args[0], strings.Join(assets.Demos(), ", "))
			}
			_, err := cmd.OutOrStdout().Write(text)
			return err
		},
	}
}

func schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "schema",
		Short:   "Print the JSON Schema of the plan file, for editors",
		Example: `  tubecut schema > plan.schema.json`,
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := cmd.OutOrStdout().Write(planfile.Schema())
			return err
		},
	}
}
