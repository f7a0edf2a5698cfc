package planfile

import (
	"fmt"
	"os"

	"tubewright/route"
)

// Save writes a plan to a path.
func Save(path string, plan route.Plan, src *Source) (Report, error) {
	text, report, err := Write(plan, src)
	if err != nil {
		return Report{}, err
	}
	if err := os.WriteFile(path, text, 0o644); err != nil {
		return Report{}, fmt.Errorf("save plan: %w", err)
	}
	return report, nil
}
