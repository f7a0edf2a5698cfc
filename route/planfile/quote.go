package planfile

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// bare is text that YAML reads as itself wherever it stands, in a block or in
// brackets: words of letters, figures and a few harmless signs.
var bare = regexp.MustCompile(`^[\p{L}\p{N}_][\p{L}\p{N}_./()+°-]*( [\p{L}\p{N}_./()+°-]+)*$`)

// reserved words are text to YAML 1.2 but something else to YAML 1.1, which
// other programs may still read.
var reserved = []string{"y", "n", "yes", "no", "on", "off", "true", "false", "null"}

// quoted writes text so that it is read as text: bare where that is safe.
func quoted(text string) string {
	plain := yaml.Node{Kind: yaml.ScalarNode, Value: text}
	if bare.MatchString(text) && plain.ShortTag() == "!!str" && !slices.Contains(reserved, strings.ToLower(text)) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case unprintable(r):
			fmt.Fprintf(&b, `\U%08X`, r)
		default:
			b.WriteRune(r)
		}
	}
	return `"` + b.String() + `"`
}
