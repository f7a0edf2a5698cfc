package route_test

import (
	"testing"

	"tubewright/route"
)

func TestAnd(t *testing.T) {
	for _, tt := range []struct {
		names []string
		want  string
	}{{nil, ""}, {[]string{"a"}, "a"}, {[]string{"a", "b"}, "a and b"}, {[]string{"a", "b", "c"}, "a, b and c"}} {
		if got := route.And(tt.names); got != tt.want {
			t.Errorf("%v gives %q, want %q", tt.names, got, tt.want)
		}
	}
}
