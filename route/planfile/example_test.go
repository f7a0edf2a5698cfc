package planfile_test

import (
	"fmt"

	"tubewright/route/planfile"
)

// A misspelt key is told with its place, its line and the key it may mean.
func ExampleRead() {
	text := "format: 1\ncase: {size: [400, 300, 200]}\ncleer: 4\n"
	_, _, err := planfile.Read("desk.plan.yaml", []byte(text))
	fmt.Println(err)
	// Output:
	// desk.plan.yaml:3:1: there is no key "cleer" here
	// 	    3 | cleer: 4
	// 	Did you mean "clear"?
}

// Only what changed is changed in the text.
func ExampleWrite() {
	text := "format: 1 # ours\n\ncase:  {size: [400, 300, 200]}\nclear: 4.0  # a finger\n"
	plan, src, err := planfile.Read("desk.plan.yaml", []byte(text))
	if err != nil {
		fmt.Println(err)
	}
	plan.Clear = 6
	made, _, err := planfile.Write(plan, src)
	fmt.Print(string(made), err)
	// Output:
	// format: 1 # ours
	//
	// case:  {size: [400, 300, 200]}
	// clear: 6  # a finger
	// <nil>
}
