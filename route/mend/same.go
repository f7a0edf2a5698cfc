package mend

import (
	"slices"
	"strings"

	"tubewright/route/check"
)

// matter is what a finding is about, whatever its numbers: the same matter
// before and after a change is the same finding.
type matter struct {
	code        check.Code
	runs, parts string
}

func matterOf(f check.Finding) matter {
	runs, parts := slices.Sorted(slices.Values(f.Runs)), slices.Sorted(slices.Values(f.Parts))
	switch f.Code {
	case check.NoWay: // what came nearest, and so what was in its way, may change
		runs, parts = f.Runs[:min(1, len(f.Runs))], nil
	case check.NoDrain, check.NoFill: // where it is lowest may change
		parts = nil
	}
	return matter{f.Code, strings.Join(runs, "\n"), strings.Join(parts, "\n")}
}

// find gives the worst finding of the same matter.
func (m matter) find(list []check.Finding) (worst check.Finding, found bool) {
	for _, f := range list {
		if matterOf(f) == m && (!found || graver(f, worst)) {
			worst, found = f, true
		}
	}
	return worst, found
}

// settled reports whether nothing of a finding's matter is left.
func settled(f check.Finding, after []check.Finding) bool {
	_, found := matterOf(f).find(after)
	return !found
}

// sameDepth is how much deeper an overlap may become that a change is not
// about, mm: what is told is rounded to as much.
const sameDepth = 0.1

// graver reports whether of two findings of one matter the first is worse by
// more than rounding. Only depths can be compared.
func graver(a, b check.Finding) bool {
	switch a.Code {
	case check.TubeHitsPart, check.TubeHitsTube, check.CollarHits, check.PartHitsPart, check.PartOutsideCase, check.TubeOutsideCase:
		return a.Measure < b.Measure-sameDepth
	case check.StockTooShort, check.StockTooFew:
		return a.Measure > b.Measure+sameDepth
	}
	return false
}

// worse reports whether an error has come or become worse, or a loop come open.
func worse(before, after []check.Finding) bool {
	for _, f := range after {
		if f.Severity != check.Error {
			continue
		}
		if was, found := matterOf(f).find(before); !found || graver(f, was) {
			return true
		}
	}
	return loose(after) > loose(before)
}

// loose counts the runs whose coolant has no way round.
func loose(list []check.Finding) (n int) {
	for _, f := range list {
		if f.Code == check.LoopOpen {
			n += len(f.Runs)
		}
	}
	return n
}

// gone lists the other errors of before that are no more.
func gone(f check.Finding, before, after []check.Finding) (list []check.Finding) {
	for _, b := range before {
		if b.Severity == check.Error && matterOf(b) != matterOf(f) && settled(b, after) {
			list = append(list, b)
		}
	}
	return list
}

// came lists the warnings that were not there before.
func came(before, after []check.Finding) (list []check.Finding) {
	for _, a := range after {
		if a.Severity == check.Warning && a.Code != check.LoopOpen && settled(a, before) {
			list = append(list, a)
		}
	}
	return list
}

func errorsIn(list []check.Finding) (n int) {
	for _, f := range list {
		if f.Severity == check.Error {
			n++
		}
	}
	return n
}
