package planfile

import (
	"errors"
	"fmt"
	"reflect"

	"tubewright/route"
)

func notWritable(err error) error {
	var why Problems
	if errors.As(err, &why) {
		return &NotWritableError{Why: why}
	}
	return err
}

// Same reports whether two plans say the same: every value equal, numbers up
// to rounding noise, an empty list like none. The catalogues are not compared.
func Same(a, b route.Plan) bool { return difference(a, b) == "" }

// difference names the first value in which two plans differ, or gives "".
func difference(a, b route.Plan) string {
	a.Catalogue, b.Catalogue = nil, nil
	return differs(reflect.ValueOf(settled(a)), reflect.ValueOf(settled(b)), "Plan")
}

// settled gives silence the meaning it has.
func settled(p route.Plan) route.Plan {
	p = p.Clone()
	for i := range p.Tubes {
		p.Tubes[i].KnownFrom = known(p.Tubes[i].KnownFrom)
	}
	for i := range p.Fittings {
		p.Fittings[i].KnownFrom = known(p.Fittings[i].KnownFrom)
	}
	for i := range p.Runs {
		settle(p.Runs[i].Start)
		settle(p.Runs[i].End)
		for _, a := range p.Runs[i].Made {
			settle(a.Start)
			settle(a.End)
		}
	}
	return p
}

func known(k route.KnownFrom) route.KnownFrom {
	if k == "" {
		return route.Typical
	}
	return k
}

// settle drops the rolls of steps that are free to turn.
func settle(c route.Chain) {
	for i := range c {
		if !c[i].Rolled {
			c[i].Roll = 0
		}
	}
}

// differs walks two values of one type and names the first place they differ.
func differs(a, b reflect.Value, at string) string {
	switch a.Kind() {
	case reflect.Float64:
		return unless(alike(a.Float(), b.Float()), at)
	case reflect.Struct:
		return inFields(a, b, at)
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return at
		}
		for i := range a.Len() {
			if where := differs(a.Index(i), b.Index(i), fmt.Sprintf("%s[%d]", at, i)); where != "" {
				return where
			}
		}
		return ""
	}
	return unless(a.Equal(b), at)
}

func inFields(a, b reflect.Value, at string) string {
	for i := range a.NumField() {
		if where := differs(a.Field(i), b.Field(i), at+"."+a.Type().Field(i).Name); where != "" {
			return where
		}
	}
	return ""
}

func unless(same bool, at string) string {
	if same {
		return ""
	}
	return at
}
