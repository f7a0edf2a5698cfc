package check_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"tubewright/route/check"
)

func TestASoundPlanHasOnlyItsSparePorts(t *testing.T) {
	got := sound().findings(t)
	if len(got) != 2 || got[0].Code != check.PortOpen || got[1].Code != check.PortOpen {
		t.Errorf("findings of a sound plan:%s", told(got))
	}
}

type codeTest struct {
	name    string
	change  func(*scene)
	code    check.Code
	runs    []string
	parts   []string
	measure float64
	unit    string
	say     []string // what the sentences must hold
	source  string
	near    func(*scene) // a near miss: no finding of that code
}

// besides lists what else a plan of a test cannot help having.
var besides = map[string][]check.Code{
	"two tubes crossing":                       {check.LoopOpen}, // run c is alone
	"a tube shorter than its insertions":       {check.LoopOpen},
	"a tube through itself":                    {check.LoopOpen, check.NoDrain}, // run a ends elsewhere, lower
	"two runs on a port":                       {check.NoWay, check.NoFill},     // run c takes the fill
	"a run back to its own port":               {check.NoWay, check.NoDrain},    // run c takes the drain
	"a card turned round, other parts between": {check.NoWay, check.NoFill},     // its runs are not found; one takes the fill
	"nothing to open":                          {check.NoDrain},
	"an elbow with a post behind it":           {check.LoopOpen}, // run c is alone
	"an elbow beside a wall":                   {check.LoopOpen},
	"a rotary elbow there":                     {check.LoopOpen},
}

func TestEachCode(t *testing.T) {
	for _, tt := range slices.Concat(clearanceTests, formingTests, circuitTests, turningTests) {
		t.Run(tt.name, func(t *testing.T) {
			s := sound()
			tt.change(s)
			list := s.findings(t)
			f, ok := pick(list, tt)
			if !ok {
				t.Fatalf("no %s of %v and %v among%s\n\tsource: %s", tt.code, tt.runs, tt.parts, told(list), tt.source)
			}
			if math.Abs(f.Measure-tt.measure) > 1e-6 || f.Unit != tt.unit || f.Severity != check.SeverityOf(tt.code) {
				t.Errorf("measure %v %s, want %v %s: %s", f.Measure, f.Unit, tt.measure, tt.unit, tt.source)
			}
			for _, words := range tt.say {
				if !strings.Contains(f.What+"\n"+f.Fix, words) {
					t.Errorf("it says\n\t%s\n\t%s\nand not %q", f.What, f.Fix, words)
				}
			}
			for _, f := range list {
				if f.Code != tt.code && f.Code != check.PortOpen && !slices.Contains(besides[tt.name], f.Code) {
					t.Errorf("besides %s it finds%s", tt.code, told([]check.Finding{f}))
				}
			}
			if tt.near == nil {
				return
			}
			s = sound()
			tt.near(s)
			for _, f := range s.findings(t) {
				if f.Code == tt.code {
					t.Errorf("a near miss is told of:%s", told([]check.Finding{f}))
				}
			}
		})
	}
}

// pick gives the finding a test asks for.
func pick(list []check.Finding, tt codeTest) (check.Finding, bool) {
	for _, f := range list {
		if f.Code == tt.code && reflect.DeepEqual(f.Runs, orNone(tt.runs)) && reflect.DeepEqual(f.Parts, orNone(tt.parts)) {
			return f, true
		}
	}
	return check.Finding{}, false
}

func orNone(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}
