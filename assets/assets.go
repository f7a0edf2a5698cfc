// Package assets holds what the program brings along: the catalogue of tubes,
// fittings and parts, the demo plans, and cases to begin a plan with. All of it is invented or typical,
// and the files say so. The package gives bytes and reads nothing into them.
package assets

import "embed"

//go:embed catalogue.yaml
var catalogue []byte

//go:embed demos/*.plan.yaml
var demos embed.FS

//go:embed starts/*.plan.yaml
var starts embed.FS

// Catalogue gives the text of the shipped catalogue: YAML with the sections
// tubes, fittings and parts of a plan file.
func Catalogue() []byte { return catalogue }

// Demos lists the demo plans by name, the first one opened by default.
func Demos() []string {
	return []string{"conservation-scanner", "ferry-bridge", "classroom-batch"}
}

// Demo gives the text of a demo plan.
func Demo(name string) ([]byte, bool) {
	text, err := demos.ReadFile("demos/" + name + ".plan.yaml")
	return text, err == nil
}

// Starts lists the plans to begin with by name, the smallest case first: a case
// with its parts and no tube yet.
func Starts() []string { return []string{"small-case", "middle-case", "large-case"} }

// Start gives the text of a plan to begin with.
func Start(name string) ([]byte, bool) {
	text, err := starts.ReadFile("starts/" + name + ".plan.yaml")
	return text, err == nil
}
