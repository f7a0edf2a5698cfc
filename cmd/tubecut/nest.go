package main

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"os"
	"time"

	"github.com/spf13/cobra"

	"tubewright/cutlist/nest"
)

func nestCommand() *cobra.Command {
	var asJSON bool
	var seconds float64
	cmd := &cobra.Command{
		Use:   "nest FILE",
		Short: "Get pieces out of few bars: first line the bar length, then length,count lines",
		Example: `  printf '500\n305.3,2\n120,4\n' | tubecut nest -
  tubecut nest pieces.csv --json --seconds 5`,
		Args: takes("FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if seconds < 0 || math.IsNaN(seconds) {
				return fmt.Errorf("--seconds is %v; expected 0 or more", seconds)
			}
			job, err := readJob(cmd, args[0])
			if err != nil {
				return err
			}
			start := time.Now()
			result, err := nest.Solve(cmd.Context(), job, nest.Options{Seconds: seconds})
			if err != nil {
				return err
			}
			if asJSON {
				text, err := nest.JSON(job, result, time.Since(start).Seconds())
				return printed(cmd.OutOrStdout(), text, err, nil)
			}
			return printed(cmd.OutOrStdout(), nestText(job, result), nil, nil)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the plan as JSON")
	cmd.Flags().Float64Var(&seconds, "seconds", 0, "how long it may look for a better plan or a proof; 0: a fixed number of steps, the same on every machine")
	return cmd
}

func readJob(cmd *cobra.Command, name string) (nest.Job, error) {
	if name == "-" {
		return nest.Read("standard input", cmd.InOrStdin())
	}
	file, err := os.Open(name)
	if err != nil {
		return nest.Job{}, err
	}
	defer file.Close() //nolint:errcheck // only read from
	return nest.Read(name, io.Reader(file))
}

func nestText(job nest.Job, r nest.Result) []byte {
	var out bytes.Buffer
	bars := "bars"
	if r.Bars == 1 {
		bars = "bar"
	}
	fmt.Fprintf(&out, "%d %s; no plan needs fewer than %d; %s\n", r.Bars, bars, r.Bound, provenText(r.Proven))
	var rows [][]string
	for _, p := range r.Patterns {
		rows = append(rows, []string{
			fmt.Sprintf("%d x", p.Count), nest.Decimal(job.Length(p)).String(), nestPieces(p), "left " + nest.Decimal(p.Left).String(),
		})
	}
	table(&out, rows)
	return out.Bytes()
}

func provenText(proven bool) string {
	if proven {
		return "proven fewest"
	}
	return "not proven fewest"
}

// nestPieces writes equal lengths once: "3 x 120, 95.5".
func nestPieces(p nest.Pattern) string {
	var text string
	for i := 0; i < len(p.Pieces); {
		n := 1
		for i+n < len(p.Pieces) && p.Pieces[i+n] == p.Pieces[i] {
			n++
		}
		if text != "" {
			text += ", "
		}
		if n > 1 {
			text += fmt.Sprintf("%d x ", n)
		}
		text += nest.Decimal(p.Pieces[i]).String()
		i += n
	}
	return text
}
