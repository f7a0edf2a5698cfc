package planfile

import (
	"strconv"
	"strings"
)

// maxCandidates bounds how many known names a misspelt one is held against, so
// that a large wrong file is answered quickly.
const maxCandidates = 2000

// nearest gives the known name a misspelt one most likely means, or "". A name
// counts as meant when it differs by case alone, or by at most one letter in
// three changed, left out, added or swapped with its neighbour. The first of
// equals wins.
func nearest(name string, known []string) string {
	best, least := "", len([]rune(name))/3+1
	for i, k := range known {
		if i == maxCandidates {
			break
		}
		if strings.EqualFold(name, k) {
			return k
		}
		if d := distance([]rune(name), []rune(k), least); d < least {
			best, least = k, d
		}
	}
	return best
}

// distance counts the letters to change, add, drop or swap to make b of a
// (optimal string alignment), giving up with cap once it cannot be less.
func distance(a, b []rune, limit int) int {
	if d := len(a) - len(b); d >= limit || -d >= limit {
		return limit
	}
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+differ(a[i-1], b[j-1]))
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}

func differ(a, b rune) int {
	if a == b {
		return 0
	}
	return 1
}

// maxListed is how many known names a message lists.
const maxListed = 12

// offer is the fix for a name nobody knows: the nearest known one, else the
// first few there are.
func offer(what, name string, known []string) string {
	if near := nearest(name, known); near != "" {
		return "Did you mean " + strconv.Quote(near) + "?"
	}
	if len(known) == 0 {
		return "There is no " + what + " to name here yet; describe one first."
	}
	if len(known) > maxListed {
		return "Known are " + strings.Join(known[:maxListed], ", ") + " and " + strconv.Itoa(len(known)-maxListed) + " more."
	}
	return "Known are " + strings.Join(known, ", ") + "."
}
