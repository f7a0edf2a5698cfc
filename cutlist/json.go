package cutlist

import (
	"bytes"
	"encoding/json"
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// number is written rounded to 0.01, without needless zeros and never as -0.
type number float64

// MarshalJSON writes the rounded number.
func (n number) MarshalJSON() ([]byte, error) {
	v := whole(hundredths(float64(n)))
	return strconv.AppendFloat(nil, v, 'f', -1, 64), nil
}

type jsonList struct {
	Format   int            `json:"format"`
	Plan     string         `json:"plan"`
	Draft    bool           `json:"draft"`
	Tubes    []jsonTube     `json:"tubes"`
	Bars     []jsonBar      `json:"bars"`
	Sawn     []jsonSawn     `json:"sawn,omitempty"`
	Proof    []jsonProof    `json:"proof"`
	Buy      []jsonItem     `json:"buy"`
	Findings []jsonFinding  `json:"findings"`
	PutIn    *jsonPutIn     `json:"put_in,omitempty"`
	Batch    []jsonTemplate `json:"batch,omitempty"`   // of more than one machine
	Reasons  []jsonReason   `json:"reasons,omitempty"` // of a draft
	Measure  []jsonThing    `json:"measure,omitempty"` // of a draft: what lifts the mark, in order
	Spares   []jsonSpare    `json:"spares,omitempty"`  // that a chance asks for
}

type jsonReason struct {
	What string   `json:"what"`
	How  string   `json:"how"`
	Runs []string `json:"runs"`
}

type jsonTube struct {
	Run       string      `json:"run"`
	Tube      string      `json:"tube"`
	Way       string      `json:"way"`
	Start     []string    `json:"start"`
	End       []string    `json:"end"`
	Corners   [][3]number `json:"corners"`
	Cut       jsonCut     `json:"cut"`
	Blank     number      `json:"blank"`
	Bends     []jsonBend  `json:"bends"`
	Straights []number    `json:"straights"`
	Cost      number      `json:"cost"`
	Letter    string      `json:"letter,omitempty"`
	Made      *jsonMade   `json:"made,omitempty"`
	Steps     []jsonStep  `json:"steps,omitempty"`
	Budget    *jsonBudget `json:"budget,omitempty"`
}

type jsonCut struct {
	Aim      number `json:"aim"`
	Shortest number `json:"shortest"`
	Longest  number `json:"longest"`
}

type jsonBend struct {
	Turn   number `json:"turn"`
	Roll   number `json:"roll"`
	Radius number `json:"radius"`
	Start  number `json:"start"`
	Middle number `json:"middle"`
	End    number `json:"end"`
	FormTo number `json:"form_to"`
	Heat   number `json:"heat"`
}

type jsonBar struct {
	Tube   string      `json:"tube"`
	Length number      `json:"length"`
	From   string      `json:"from"`
	Pieces []jsonPiece `json:"pieces"`
	Left   number      `json:"left"`
	Keep   bool        `json:"keep"`
}

type jsonPiece struct {
	Run     string `json:"run"`
	Length  number `json:"length"`
	Machine int    `json:"machine,omitempty"`
	Spare   bool   `json:"spare,omitempty"`
}

type jsonProof struct {
	Tube   string `json:"tube"`
	Cost   number `json:"cost"`
	Bound  number `json:"bound"`
	Proven bool   `json:"proven"`
	Uncut  int    `json:"uncut,omitempty"`
}

type jsonItem struct {
	Item   string `json:"item"`
	Need   int    `json:"need"`
	OnHand int    `json:"on_hand"`
	Buy    int    `json:"buy"`
	Price  number `json:"price"`
	Each   number `json:"each"`
	Note   string `json:"note,omitempty"`
}

type jsonFinding struct {
	Code     check.Code     `json:"code"`
	Severity check.Severity `json:"severity"`
	Runs     []string       `json:"runs"`
	Parts    []string       `json:"parts"`
	Measure  number         `json:"measure"`
	Unit     string         `json:"unit"`
	What     string         `json:"what"`
	Fix      string         `json:"fix"`
	Move     *jsonMove      `json:"move,omitempty"`  // what fix says of moving a part
	Least    *jsonMove      `json:"least,omitempty"` // the shortest in any direction
	Offers   []jsonOffer    `json:"offers,omitempty"`
}

type jsonMove struct {
	Part string    `json:"part"`
	By   [3]number `json:"by"`
	Free bool      `json:"free"` // inside the case and in no other part
}

// JSON writes the answer: one object in mm and degrees, numbers rounded to 0.01.
func (l List) JSON() ([]byte, error) {
	return indented(jsonList{
		Format: 1, Plan: l.Plan.Name, Draft: l.Draft,
		Reasons: each(l.Reasons, func(r Reason) jsonReason { return jsonReason{r.What, r.How, full(r.Runs)} }),
		Measure: each(l.Measure, thingJSON),
		Tubes: each(l.Tubes, func(t Tube) jsonTube {
			j := tubeJSON(t.Letter, t.Way, t.Cut, t.Bench)
			j.Made = madeJSON(t)
			j.Budget = budgetJSON(t.Budget)
			j.Steps = each(t.Steps, stepJSON)
			return j
		}),
		Spares: each(l.Spares, spareJSON),
		Bars:   each(l.Bars, barJSON), Sawn: each(l.Sawn, sawnJSON),
		Proof: each(l.Proof, func(p Proof) jsonProof {
			return jsonProof{p.Tube, number(p.Cost), number(p.Bound), p.Proven, p.Uncut}
		}),
		Buy: each(l.Buy, func(i Item) jsonItem {
			return jsonItem{i.Item, i.Need, i.OnHand, i.Buy, number(i.Price), number(i.Each), i.Note}
		}),
		PutIn:    l.putInJSON(),
		Findings: l.findingsJSON(), Batch: l.batchJSON(),
	})
}

func tubeJSON(letter string, w find.Way, cut bends.Cut, bench bends.Bench) jsonTube {
	return jsonTube{
		Run: w.Run, Letter: letter, Tube: w.Tube.Name, Way: w.Name,
		Start: names(w.Start), End: names(w.End),
		Corners: each(w.Formed.Corners, func(c mgl64.Vec3) [3]number {
			return [3]number{number(c[0]), number(c[1]), number(c[2])}
		}),
		Cut:   jsonCut{number(cut.Aim), number(cut.Shortest), number(cut.Longest)},
		Blank: number(cut.Blank),
		Bends: each(bench.Bends, func(b bends.BenchBend) jsonBend {
			return jsonBend{
				number(b.Turn), number(b.Roll), number(b.Radius),
				number(b.FromA.Start), number(b.FromA.Middle), number(b.FromA.End), number(b.FormTo), number(b.Heat),
			}
		}),
		Straights: each(bench.Straights, func(s float64) number { return number(s) }),
		Cost:      number(w.Cost),
	}
}

func barJSON(b Bar) jsonBar {
	return jsonBar{
		b.Tube, number(b.Length), b.From,
		each(b.Pieces, func(p Piece) jsonPiece { return jsonPiece{p.Run, number(p.Length), p.Machine, p.Spare} }),
		number(b.Left), b.Keep,
	}
}

func findingJSON(f check.Finding) jsonFinding {
	return jsonFinding{
		f.Code, f.Severity, full(f.Runs), full(f.Parts), number(f.Measure), f.Unit, f.What, f.Fix,
		moveJSON(f.Move), moveJSON(f.Least), nil,
	}
}

func moveJSON(m *check.Move) *jsonMove {
	if m == nil {
		return nil
	}
	return &jsonMove{m.Part, [3]number{number(m.By[0]), number(m.By[1]), number(m.By[2])}, m.Free}
}

// FindingsJSON writes a plan's findings: a list, empty where all is well.
func FindingsJSON(list []check.Finding) ([]byte, error) { return indented(each(list, findingJSON)) }

// names lists the fittings of a chain from the port outward.
func names(chain route.Laid) []string {
	return each(chain.Bodies, func(b route.Body) string { return b.Fitting.Name })
}

// each maps a list; an empty one is written as [], never as null.
func each[T, U any](list []T, one func(T) U) []U {
	out := make([]U, len(list))
	for i, t := range list {
		out[i] = one(t)
	}
	return out
}

func full(names []string) []string { return each(names, func(s string) string { return s }) }

func indented(v any) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(v)
	return b.Bytes(), err
}
