package route

import "strings"

// And joins names for a sentence: "a", "a and b", "a, b and c"; "" of none.
func And(names []string) string {
	n := len(names)
	if n < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
}
