package cutlist

import (
	"cmp"
	"slices"

	"tubewright/route"
)

// buy is the shopping list: tubes by name and length, then fittings by kind and
// name, then plugs; less what is on hand.
func buy(l List) []Item {
	b := basket{hand: map[string]int{}}
	for _, h := range l.Plan.OnHand {
		b.hand[h.Item] += h.Count
	}
	b.tubes(l.Bars)
	b.fittings(l)
	b.plugs(l)
	slices.SortStableFunc(b.lines, func(a, c line) int {
		return cmp.Or(cmp.Compare(a.group, c.group), cmp.Compare(a.name, c.name), cmp.Compare(a.length, c.length))
	})
	items := make([]Item, len(b.lines))
	for i, li := range b.lines {
		items[i] = li.item(b.hand[li.label])
	}
	return items
}

type basket struct {
	hand  map[string]int
	lines []line
}

// line is an item with the price of each one needed, in hundredths, 0 where not
// known; group, name and length sort it.
type line struct {
	group  int
	name   string
	length float64
	label  string
	prices []int
	note   string
}

// add asks for n of an item.
func (b *basket) add(want line, n, price int) {
	i := slices.IndexFunc(b.lines, func(li line) bool { return li.label == want.label })
	if i < 0 {
		i = len(b.lines)
		b.lines = append(b.lines, want)
	}
	b.lines[i].prices = append(b.lines[i].prices, slices.Repeat([]int{price}, n)...)
}

func (b *basket) tubes(bars []Bar) {
	for _, bar := range bars {
		if bar.From == "stock" {
			label := bar.Tube + " " + plain(bar.Length) + " mm"
			b.add(line{name: bar.Tube, length: bar.Length, label: label}, 1, hundredths(bar.Price))
		}
	}
}

// groups of fittings on the list, in this order, after the tubes.
var groups = []route.FittingKind{
	route.Socket, route.Extender, route.Offset, route.Elbow, route.Tee, route.Valve, route.Coupler, route.Plug,
}

func (b *basket) fitting(fit route.Fitting, n int) {
	group := 1 + slices.Index(groups, fit.Kind)
	b.add(line{group: group, name: fit.Name, label: fit.Name}, n, hundredths(fit.Price))
}

func (b *basket) fittings(l List) {
	for _, t := range l.Tubes {
		for _, end := range []route.Laid{t.Way.Start, t.Way.End} {
			for _, body := range end.Bodies {
				b.fitting(body.Fitting, max(1, l.Plan.Build))
			}
		}
	}
}

// plugs closes every port that no run names and the side of every tee.
func (b *basket) plugs(l List) {
	for _, thread := range openThreads(l) {
		plug, ok := plugFor(l.Plan, thread)
		if ok {
			b.fitting(plug, max(1, l.Plan.Build))
			continue
		}
		label := "plug " + thread
		b.add(line{
			group: 1 + len(groups), name: label, label: label,
			note: "no plug for this thread is described: add one under fittings",
		}, max(1, l.Plan.Build), 0)
	}
}

// openThreads gives the threads of the openings of one machine that want a plug.
func openThreads(l List) []string {
	var threads []string
	for _, part := range l.Plan.PlaceAll() {
		for _, port := range part.Ports {
			named := slices.ContainsFunc(l.Plan.Runs, func(r route.Run) bool { return r.From == port.Ref || r.To == port.Ref })
			if !named {
				threads = append(threads, port.Thread)
			}
		}
	}
	for _, t := range l.Tubes {
		for _, body := range slices.Concat(t.Way.Start.Bodies, t.Way.End.Bodies) {
			if body.Fitting.Kind == route.Tee {
				threads = append(threads, body.Fitting.Thread)
			}
		}
	}
	return threads
}

// plugFor gives the first plug that fits a thread.
func plugFor(plan route.Plan, thread string) (route.Fitting, bool) {
	for _, f := range plan.AllFittings() {
		if f.Kind == route.Plug && route.SameThread(f.Thread, thread) {
			return f, true
		}
	}
	return route.Fitting{}, false
}

// item takes off what is on hand; where prices of one item differ the dearest
// are the ones not bought.
func (li line) item(hand int) Item {
	slices.Sort(li.prices)
	need := len(li.prices)
	it := Item{Item: li.label, Length: li.length, Need: need, OnHand: hand, Buy: max(0, need-hand), Note: li.note}
	if li.length > 0 {
		it.Tube = li.name
	}
	sum := 0
	for _, p := range li.prices[:it.Buy] {
		sum += p
	}
	it.Price = whole(sum)
	if li.prices[0] == li.prices[need-1] {
		it.Each = whole(li.prices[0])
	}
	if li.prices[0] == 0 && it.Note == "" {
		it.Note = "price not known"
	}
	return it
}

// Label is the item as a person reads it who counts in the units: Item, with
// the length of a bar in inches where the plan has inches.
func (it Item) Label(u route.Units) string {
	if it.Tube != "" && u == route.Inches {
		return it.Tube + " " + u.TextUnit(it.Length)
	}
	return it.Item
}

// Uncounted names the runs that have no tube yet, in the plan's order: their
// tube and fittings are on no list until they have one.
func (l List) Uncounted() []string {
	var names []string
	for _, r := range l.Plan.Runs {
		if !slices.ContainsFunc(l.Tubes, func(t Tube) bool { return t.Run == r.Name }) {
			names = append(names, r.Name)
		}
	}
	return names
}
