package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/planfile"
	"tubewright/route/survey"
)

// surveyFlags are what tubecut survey can be told beside its files.
type surveyFlags struct {
	answers []string
	slack   float64
	dry     bool
}

func surveyCommand() *cobra.Command {
	var f surveyFlags
	cmd := &cobra.Command{
		Use:   "survey PLAN [FILLED]",
		Short: "Write the survey of the ports to fill in, or take a filled-in one into the plan",
		Long: `Survey with a plan alone prints the survey of its ports as CSV, the numbers left
empty: for each port the faces of the case to measure x, y and z from. Fill it in
in any spreadsheet (tubecut sheet PLAN --survey prints it for a pencil).

With a filled-in file too it takes the numbers into the plan and saves it; the
version before is kept beside it. Rows that are left empty change nothing. A port
that is taken is known from: measured.

The ports of one part are held against each other. Where they do not stand where
the plan has them by more than the slack, the part is left as it is and the
question is printed: has the part moved, are the ports right as measured, or is
one number odd? Answer it with --answer PART=moved, PART=ports or PART=skip.

Runs whose ports stay where they were keep their ways. It exits with 1 while a
question is open.`,
		Example: `  tubecut survey machine.plan.yaml > survey.csv
  tubecut survey machine.plan.yaml survey.csv
  tubecut survey machine.plan.yaml survey.csv --answer radiator=moved`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 2 {
				return nil
			}
			return takes("PLAN")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				plan, err := readPlan(cmd, args[0])
				if err != nil {
					return err
				}
				return survey.WriteCSV(cmd.OutOrStdout(), plan)
			}
			return f.take(cmd, args[0], args[1])
		},
	}
	cmd.Flags().StringArrayVar(&f.answers, "answer", nil, "PART=moved, PART=ports or PART=skip; once for each part that is asked about")
	cmd.Flags().Float64Var(&f.slack, "slack", survey.ShapeSlack, "how far ports may be off before anybody is asked, mm")
	cmd.Flags().BoolVar(&f.dry, "dry-run", false, "say what would change, and save nothing")
	return cmd
}

// take takes a filled-in survey into a plan and saves it.
func (f surveyFlags) take(cmd *cobra.Command, planPath, filledPath string) error {
	if planPath == "-" {
		return errors.New("a survey changes the plan's file; name the file instead of -")
	}
	answers, err := f.parsed()
	if err != nil {
		return err
	}
	plan, src, err := planfile.Load(planPath)
	if err != nil {
		return err
	}
	readings, err := readFilled(cmd, filledPath, plan)
	if err != nil {
		return err
	}
	after, verdicts, err := survey.Take(plan, readings, survey.Options{Slack: f.slack, Answers: answers})
	if err != nil {
		return err
	}
	if err := knownParts(plan, answers); err != nil {
		return err
	}
	touched := survey.Affected(plan, after)
	after, kept, err := steady(cmd, plan, after, touched)
	if err != nil {
		return err
	}
	said := surveyText(verdicts, touched, kept)
	if !f.dry && len(readings) > 0 {
		report, err := planfile.Save(planPath, after, src)
		if err != nil {
			return err
		}
		said += "Saved " + planPath + "."
		if report.Before != "" {
			said += " The version before is " + report.Before + "."
		}
		said = strings.TrimSuffix(said+" "+report.Message, " ") + "\n"
	}
	if _, err := io.WriteString(cmd.OutOrStdout(), said); err != nil {
		return err
	}
	for _, v := range verdicts {
		if v.Asks {
			return errFinding
		}
	}
	return nil
}

// parsed reads the answers.
func (f surveyFlags) parsed() (map[string]survey.Answer, error) {
	answers := map[string]survey.Answer{}
	for _, text := range f.answers {
		part, word, ok := strings.Cut(text, "=")
		switch a := survey.Answer(word); {
		case ok && (a == survey.TakeMove || a == survey.TakePorts || a == survey.Skip):
			answers[part] = a
		default:
			return nil, fmt.Errorf("--answer %q: write PART=moved, PART=ports or PART=skip", text)
		}
	}
	return answers, nil
}

// knownParts refuses an answer about a part that is not there.
func knownParts(plan route.Plan, answers map[string]survey.Answer) error {
	for part := range answers {
		if _, ok := plan.FindPart(part); !ok {
			return fmt.Errorf("--answer %s: the plan has no such part", part)
		}
	}
	return nil
}

func readFilled(cmd *cobra.Command, path string, plan route.Plan) (list []survey.Reading, err error) {
	if path == "-" {
		return survey.ReadCSV(cmd.InOrStdin(), plan)
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	list, err = survey.ReadCSV(file, plan)
	if err != nil {
		err = fmt.Errorf("%s: %w", path, err)
	}
	return list, err
}

// steady keeps the runs that a survey does not touch as they were.
func steady(cmd *cobra.Command, before, after route.Plan, touched []string) (route.Plan, []string, error) {
	if len(touched) == 0 || len(touched) == len(after.Runs) {
		return after, nil, nil
	}
	was, err := find.Solve(cmd.Context(), before)
	if err != nil {
		return after, nil, err
	}
	now, err := find.Solve(cmd.Context(), after)
	if err != nil {
		return after, nil, err
	}
	plan, kept := find.Steady(after, was, now, touched)
	return plan, kept, nil
}

func surveyText(verdicts []survey.Verdict, touched, kept []string) string {
	var out strings.Builder
	if len(verdicts) == 0 {
		return "Nothing is filled in: the plan is as it was.\n"
	}
	for _, v := range verdicts {
		mark := "      "
		if v.Asks {
			mark = "ASKED "
		}
		fmt.Fprintln(&out, mark+v.Words)
	}
	if len(touched) > 0 {
		fmt.Fprintf(&out, "Runs that change: %s.\n", strings.Join(touched, ", "))
	}
	if len(kept) > 0 {
		fmt.Fprintf(&out, "Held to the way they had (pick): %s.\n", strings.Join(kept, ", "))
	}
	return out.String()
}
