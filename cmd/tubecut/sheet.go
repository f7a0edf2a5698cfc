package main

import (
	"errors"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"tubewright/cutlist/sheet"
)

func sheetCommand() *cobra.Command {
	var dir, paper, date, revision string
	var svg, glb, surveyOnly bool
	var leave []string
	cmd := &cobra.Command{
		Use:   "sheet PLAN --out DIR",
		Short: "Write the sheets: one PDF, CSV for cuts, bars and buying, drawings",
		Long: `Sheet writes the sheets of a plan into a folder: NAME.pdf with drawings, cut
list, buying list, full-size templates and wrap strips, and NAME-cuts.csv,
NAME-bars.csv and NAME-buying.csv for a spreadsheet, and NAME.json with the whole
answer, where NAME is made of the plan's name. Print the PDF at 100 %: each full-size page has a bar to measure.

With --svg each look of the machine and each full-size template is written as an
SVG of its true size too: NAME-look-side.svg, NAME-template-A-1.svg and so on. With --glb the machine is
written as NAME.glb (binary glTF, metres, y up) for programs that show things in 3-D.

With --survey only the survey of the ports is written, to print and fill in while
one measures in the case; the plan needs no run for it.`,
		Example: `  tubecut sheet machine.plan.yaml --out sheets
  tubecut sheet machine.plan.yaml --out sheets --paper letter --svg --glb`,
		Args: takes("PLAN"),
		RunE: func(cmd *cobra.Command, args []string) error {
			size, err := sheet.ParsePaper(paper)
			if err != nil {
				return err
			}
			left, err := sheet.ParseChapters(leave)
			if err != nil {
				return err
			}
			if surveyOnly {
				return writeSurvey(cmd, args[0], dir, sheet.Options{Paper: size, Date: date, Revision: revision})
			}
			list, err := solveAndPutIn(cmd, args[0])
			if err != nil {
				return err
			}
			files, err := sheet.WriteAll(dir, list, sheet.Options{Paper: size, Date: date, Revision: revision, Leave: left, SVG: svg, GLB: glb})
			// What was written before a fault is told too.
			_, told := io.WriteString(cmd.OutOrStdout(), strings.Join(append(files, ""), "\n"))
			if err := errors.Join(err, told); err != nil {
				return err
			}
			return settled(list.Findings)
		},
	}
	cmd.Flags().StringVar(&dir, "out", "", "folder to write into; made when missing")
	cmd.Flags().StringVar(&date, "date", "", "date for the foot of each page, as it stands; none unless given, so that the same plan gives the same bytes")
	cmd.Flags().StringVar(&revision, "revision", "", "revision mark for the foot of each page")
	cmd.Flags().StringSliceVar(&leave, "leave", nil, "chapters to leave out: "+joined(sheet.Chapters()))
	cmd.Flags().BoolVar(&svg, "svg", false, "write looks and templates as SVG too")
	cmd.Flags().BoolVar(&surveyOnly, "survey", false, "write only the survey of the ports, to fill in by hand: NAME-survey.pdf and NAME-survey.csv")
	cmd.Flags().BoolVar(&glb, "glb", false, "write the machine as binary glTF too")
	cmd.Flags().StringVar(&paper, "paper", "a4", "a4 or letter")
	_ = cmd.MarkFlagRequired("out")                                                                                                   // fails only for a flag that does not exist
	_ = cmd.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"a4", "letter"}, cobra.ShellCompDirectiveNoFileComp)) // the same
	return cmd
}

// writeSurvey writes the survey of a plan's ports.
func writeSurvey(cmd *cobra.Command, name, dir string, o sheet.Options) error {
	plan, err := readPlan(cmd, name)
	if err != nil {
		return err
	}
	files, err := sheet.WriteSurvey(dir, plan, o)
	_, told := io.WriteString(cmd.OutOrStdout(), strings.Join(append(files, ""), "\n"))
	return errors.Join(err, told)
}

// joined names chapters.
func joined(all []sheet.Chapter) string {
	names := make([]string, len(all))
	for i, c := range all {
		names[i] = string(c)
	}
	return strings.Join(names, ", ")
}
