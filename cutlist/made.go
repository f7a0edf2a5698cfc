package cutlist

import (
	"tubewright/route"
	"tubewright/route/made"
)

// withTries adds what was made of a run already. A tube that is there has the
// length and the blank it has, not those it would be given now.
func (t Tube) withTries(r route.Run) Tube {
	t.Tries, t.Made = r.Made, r.MadeCount()
	if last, ok := r.AsMade(); ok {
		t.Cut.Aim, t.Cut.Blank = last.Cut, last.Blank
	}
	return t
}

// Failed counts the tries at a tube that did not fit.
func (t Tube) Failed() (n int) {
	for _, a := range t.Tries {
		if !a.Fits {
			n++
		}
	}
	return n
}

// leftOf is how many bars of a stock length are left: those that tries were
// sawn from are gone. A length without a limit has none; false: all are gone.
func leftOf(plan route.Plan, s route.Stock) (most int, some bool) {
	if s.Most == 0 {
		return 0, true
	}
	most = s.Most - made.Used(plan, s.Tube, s.Length)
	return most, most > 0
}

type jsonMade struct {
	Count int       `json:"count"` // tubes that are there
	Tries []jsonTry `json:"tries"`
}

type jsonTry struct {
	Fits    bool   `json:"fits"`
	Cut     number `json:"cut,omitempty"`
	Blank   number `json:"blank,omitempty"`
	CutFrom number `json:"cut_from,omitempty"`
	Wrong   string `json:"wrong,omitempty"`
	Date    string `json:"date,omitempty"`
}

type jsonSawn struct {
	Tube   string `json:"tube"`
	Length number `json:"length"`
	Run    string `json:"run"`
	Blank  number `json:"blank"`
	Left   number `json:"left"`
	Fits   bool   `json:"fits"`
}

func madeJSON(t Tube) *jsonMade {
	if len(t.Tries) == 0 {
		return nil
	}
	return &jsonMade{t.Made, each(t.Tries, func(a route.Attempt) jsonTry {
		return jsonTry{a.Fits, number(a.Cut), number(a.Blank), number(a.CutFrom), a.Wrong, a.Date}
	})}
}

func sawnJSON(b made.Bar) jsonSawn {
	return jsonSawn{b.Tube, number(b.Length), b.Run, number(b.Blank), number(b.Left), b.Fits}
}
