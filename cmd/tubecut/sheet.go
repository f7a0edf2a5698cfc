package main

import (
	"errors"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"tubewright/cutlist/sheet"
)

func sheetCommand() *cobra.Command {
	var dir, paper string
	cmd := &cobra.Command{
		Use:   "sheet PLAN --out DIR",
		Short: "Write the sheets: one PDF, and CSV for cuts, bars and buying",
		Example: `  tubecut sheet machine.plan.yaml --out sheets
  tubecut sheet machine.plan.yaml --out sheets --paper letter`,
		Args: takes("PLAN"),
		RunE: func(cmd *cobra.Command, args []string) error {
			size, err := sheet.ParsePaper(paper)
			if err != nil {
				return err
			}
			list, err := solve(cmd, args[0])
			if err != nil {
				return err
			}
			files, err := sheet.WriteAll(dir, list, sheet.Options{Paper: size})
			// What was written before a fault is told too.
			_, told := io.WriteString(cmd.OutOrStdout(), strings.Join(append(files, ""), "\n"))
			if err := errors.Join(err, told); err != nil {
				return err
			}
			return settled(list.Findings)
		},
	}
	cmd.Flags().StringVar(&dir, "out", "", "folder to write into; made when missing")
	cmd.Flags().StringVar(&paper, "paper", "a4", "a4 or letter")
	_ = cmd.MarkFlagRequired("out")                                                                                                   // fails only for a flag that does not exist
	_ = cmd.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"a4", "letter"}, cobra.ShellCompDirectiveNoFileComp)) // the same
	return cmd
}
