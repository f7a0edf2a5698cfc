package nest

import "fmt"

// stock reads a bar to buy: length, price, most.
func (d *reader) stock(value span, parts []span, form string) {
	d.bars = true
	if len(parts) < 1 || len(parts) > 3 {
		d.tell(BadLine, value, fmt.Sprintf("%s; expected 1 to 3", counted(len(parts), "value")), form)
		return
	}
	var b Bar
	ok := d.size(parts[0], "stock length", form, &b.Length)
	if len(parts) > 1 && parts[1].text != "-" && parts[1].text != "" {
		price, err := parseSize(parts[1].text, 100, maxPrice)
		if b.Price = price; err != nil {
			d.tell(BadNumber, parts[1], "price "+err.Error(), form)
			ok = false
		}
	}
	if len(parts) > 2 {
		most, err := d.count(parts[2], "limit", form)
		b.Most, ok = most, ok && err == nil
	}
	if ok {
		d.addStock(parts[0], b)
	}
}

func (d *reader) size(s span, what, form string, into *int) bool {
	n, err := parseSize(s.text, d.per, maxLength)
	if *into = n; err != nil {
		d.unread = true
		d.tell(BadNumber, s, what+" "+err.Error(), form)
	}
	return err == nil
}

// addStock takes a bar unless it is one too many, which amount tells.
func (d *reader) addStock(s span, b Bar) {
	if len(d.order.Job.Stock) > maxKinds {
		return
	}
	for i, have := range d.order.Job.Stock {
		if have.Length == b.Length && (have.Price == b.Price || have.Most == 0 && have.Price <= b.Price || b.Most == 0 && b.Price <= have.Price) {
			d.tell(Twice, s, fmt.Sprintf("stock of %s is listed twice, first in %s, and one of the two makes the other needless",
				d.order.Amount(b.Length), d.stockAt[i]),
				"Keep one line with both limits together; two lines are of use where the cheaper one is limited.")
			return
		}
	}
	d.order.Job.Stock = append(d.order.Job.Stock, b)
	d.stockAt = append(d.stockAt, s)
}

// offcut reads bars on hand: length, how many.
func (d *reader) offcut(value span, parts []span, form string) {
	d.bars = true
	if len(parts) < 1 || len(parts) > 2 {
		d.tell(BadLine, value, fmt.Sprintf("%s; expected 1 or 2", counted(len(parts), "value")), form)
		return
	}
	b := Bar{Most: 1}
	ok := d.size(parts[0], "offcut length", form, &b.Length)
	if len(parts) > 1 {
		most, err := d.count(parts[1], "count", form)
		b.Most, ok = most, ok && err == nil
	}
	if !ok {
		return
	}
	for i, have := range d.order.Job.Offcuts {
		if have.Length == b.Length {
			d.order.Job.Offcuts[i].Most = min(maxPieces, have.Most+b.Most)
			return
		}
	}
	if len(d.order.Job.Offcuts) <= maxKinds {
		d.order.Job.Offcuts = append(d.order.Job.Offcuts, b)
	}
}

// whole looks at what only the whole order shows.
func (d *reader) whole() {
	none := span{}
	switch job := d.order.Job; {
	case !d.begun && !d.bars && len(d.at) == 0 && d.problems == nil:
		d.tell(Empty, none, "there is nothing in it", "Write the length of the bars on the first line and a piece on each line after it.")
	case !d.bars && d.problems == nil:
		d.tell(NoBars, none, "there is nothing to cut from", settingForms[0].form)
	case len(job.Pieces) == 0 && d.problems == nil:
		d.tell(NoPieces, none, "there are no pieces in it", pieceForm)
	case d.bars:
		d.tooLong()
		d.unpriced()
		d.kerf()
		d.amount()
	}
}

func (d *reader) longest() int {
	longest := 0
	for _, b := range append(d.order.Job.Stock, d.order.Job.Offcuts...) {
		longest = max(longest, b.Length)
	}
	return longest
}

// tooLong tells of pieces no bar holds; where the length of a bar could not be
// read that is not known.
func (d *reader) tooLong() {
	longest := d.longest()
	if longest == 0 || d.unread {
		return
	}
	for i, p := range d.order.Job.Pieces {
		if p.Length > longest {
			d.tell(PieceTooLong, d.pieceAt[i], fmt.Sprintf("a piece of %s is longer than the longest bar, %s, by %s",
				d.order.Amount(p.Length), d.order.Amount(longest), d.order.Amount(p.Length-longest)),
				fmt.Sprintf("Add a stock length of at least %s, or divide the piece.", d.order.Amount(p.Length)))
		}
	}
}

// unpriced tells of stock without a price among stock with one: nobody can say
// then what is cheapest.
func (d *reader) unpriced() {
	for i, b := range d.order.Job.Stock {
		if d.order.Job.Priced() && b.Price == 0 {
			d.tell(NoPrice, d.stockAt[i], fmt.Sprintf("stock of %s has no price, but other stock has", d.order.Amount(b.Length)),
				"Give all stock a price, or none.")
		}
	}
}

func (d *reader) kerf() {
	at, over := d.overruled["kerf"]
	if !over {
		at = d.at["kerf"]
	}
	if kerf, longest := d.order.Job.Kerf, d.longest(); longest > 0 && kerf >= longest {
		d.tell(BadNumber, span{place: at}, fmt.Sprintf("kerf %s is no less than the longest bar, %s", d.order.Amount(kerf), d.order.Amount(longest)),
			settingForms[2].form)
	}
}

// amount tells of more than the package takes on.
func (d *reader) amount() {
	what := ""
	if job := d.order.Job; len(job.Stock)+len(job.Offcuts) > maxKinds {
		what = "bars to choose from"
	} else if len(mergePieces(job.Pieces)) > maxKinds {
		what = "different lengths of pieces"
	}
	if what != "" {
		d.tell(TooMany, span{}, fmt.Sprintf("there are more than %d %s, the most that can be nested at once", maxKinds, what),
			"Split the order into parts.")
	}
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
