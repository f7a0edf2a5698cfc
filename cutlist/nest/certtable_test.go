package nest_test

import "math"

// ahead is for each kind in order and each room, in steps of what divides the
// rooms of all kinds, the most that a load can still
// gain from that kind on, where keeping apart does not count. It keeps the search
// for a load from wandering; nil where bars are too long for it.
type ahead [][]int

// mostAhead places bound the table.
const mostAhead = 20_000_000

// none is less than any worth.
const none = math.MinInt / 4

// tableAhead makes the table. Where the filter is the material, it also leaves
// out what would leave too much of the bar.
func (l *loader) tableAhead() ahead {
	l.step = 0
	for _, i := range l.order {
		for a, b := l.step, l.kinds[i].room; ; a, b = b, a%b {
			if b == 0 {
				l.step = a
				break
			}
		}
	}
	l.step = max(1, l.step)
	room := l.k.bars[l.bar].room / l.step
	if (len(l.order)+1)*(room+1) > mostAhead {
		return nil
	}
	table := make(ahead, len(l.order)+1)
	last, waste := make([]int, room+1), l.mostWaste()
	for r := waste + 1; r <= room; r++ {
		last[r] = none
	}
	table[len(l.order)] = last
	for at := len(l.order) - 1; at >= 0; at-- {
		table[at] = l.row(table[at+1], l.order[at])
	}
	l.k.work -= len(l.order) * room / 8
	return table
}

// row takes one more piece of a kind at a time, as often as there are any.
func (l *loader) row(next []int, kind int) []int {
	now := append([]int{}, next...)
	c := &l.kinds[kind]
	for range min(c.count, (len(now)-1)*l.step/c.room) {
		for r := len(now) - 1; r >= c.room/l.step; r-- {
			now[r] = max(now[r], now[r-c.room/l.step]+l.prices[kind])
		}
	}
	return now
}

// mostWaste is how much of the bar a load may leave, in steps: all of it, unless
// the first filter's prices are the pieces' rooms in steps times a number.
func (l *loader) mostWaste() int {
	room := l.k.bars[l.bar].room / l.step
	if len(l.filters) == 0 || len(l.order) == 0 {
		return room
	}
	first := &l.kinds[l.order[0]]
	times := first.worth[0] / (first.room / l.step)
	for _, i := range l.order {
		if l.kinds[i].worth[0] != times*(l.kinds[i].room/l.step) || times <= 0 {
			return room
		}
	}
	if most := l.filters[0].most[l.bar]; most >= 0 {
		return max(-1, room-most/times-1)
	}
	return room
}
