package sheets

import (
	"fmt"
	"math"
	"strconv"

	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r2"
)

// WiringBook draws what is needed to wire a plan: the order of work, a drawing of each channel
// seen from the inside, the pieces to cut, what a meter reads with room to sign, and labels.
func WiringBook(p *timing.Plan) []*Sheet {
	b := newBook(p)
	out := append([]*Sheet{b.work()}, b.terminals()...)
	out = append(out, b.drawings()...)
	out = append(out, b.cutList()...)
	out = append(out, b.checks()...)
	return append(out, b.labels()...)
}

// book is what its pages are made of.
type book struct {
	*timing.Plan
	document.Book
	of [][][]loom.String // by channel and body
}

func newBook(p *timing.Plan) book {
	return book{p, document.OfBook(p), loom.ByChannel(p, loom.Strings(p))}
}

// work draws the order of work.
func (b book) work() *Sheet {
	s := page("wiring-1", "Wiring book: "+cutShort(b.Array.Name, 50), "The order of work. Keep the amplifier off its mains until the last step.", short, long)
	s.steps(b.Steps)
	return s
}

// A terminal is drawn so wide and a row so tall, in mm.
const terminalWide, terminalTall = 11.5, 17.0

// terminals draws the row of each body, seen from outside, and lists what each terminal has.
func (b book) terminals() []*Sheet {
	t := tabler{name: "wiring-terminals", title: "Terminals, seen from outside", below: ""}
	t.say(b.Row)
	for body := range b.Array.Bodies() {
		b.row(&t, body)
	}
	has := table{title: "What each has", columns: []column{{"", "terminal, core", 30, true}, {"", "channel", 20, true}, {"", "sign", 16, true}, {"", "sleeve", 40, false}, {"", "leads of strings", 84, false}}}
	for _, c := range b.Terminals {
		has.rows = append(has.rows, []string{strconv.Itoa(c.Number) + words.OnBody(b.Array, c.Body, ", body "), strconv.Itoa(c.Channel), c.Sign, c.Sleeves, c.Leads})
	}
	t.table(has)
	return t.sheets
}

// say writes a paragraph of up to six lines before what comes next, with room for a line below it.
func (t *tabler) say(text string) *Sheet {
	s := t.room(8 * rowTall)
	if t.y == margin+heading && t.below == "" { // a new page, with nothing under its title
		t.y = margin + 10.5 - rowTall
	}
	t.y = s.paragraph(r2.Vec{X: margin, Y: t.y + rowTall}, 3, 120, quiet, text)
	return s
}

// row draws a body's terminals as they are seen from outside, in as many lines as they take.
func (b book) row(t *tabler, body int) {
	const inLine = 16
	k := 0
	for _, c := range b.Terminals {
		if c.Body != body {
			continue
		}
		s := t.sheets[len(t.sheets)-1]
		if k%inLine == 0 {
			s = t.room(terminalTall + 4)
			t.y += terminalTall + 4
		}
		centre := r2.Vec{X: margin + terminalWide*(float64(k%inLine)+0.5), Y: t.y - terminalTall/2}
		colour := pen{colour: ink, width: 0.5}
		if c.Sign == "+" {
			colour.colour = orange
		}
		s.polygon(thin, r2.Vec{X: centre.X - terminalWide/2, Y: centre.Y - 8}, r2.Vec{X: centre.X + terminalWide/2, Y: centre.Y - 8},
			r2.Vec{X: centre.X + terminalWide/2, Y: centre.Y + 8}, r2.Vec{X: centre.X - terminalWide/2, Y: centre.Y + 8})
		s.circle(colour, centre, 3)
		s.label(centre, 4, ink, c.Sign)
		s.label(r2.Vec{X: centre.X, Y: centre.Y - 5.5}, 3, ink, strconv.Itoa(c.Number))
		s.label(r2.Vec{X: centre.X, Y: centre.Y + 5.5}, 2.4, quiet, "ch. "+strconv.Itoa(c.Channel))
		k++
	}
}

// cutList draws the pieces to cut, by length, and each with its place.
func (b book) cutList() []*Sheet {
	t := tabler{name: "wiring-cut", title: "Wires to cut"}
	t.say(b.Copper)
	byLength := table{title: "By length", columns: []column{{"", "length, mm", 30, true}, {"", "pieces", 30, true}, {"", "", 130, false}}}
	for _, cut := range b.Cut {
		byLength.rows = append(byLength.rows, []string{prose.Fixed(float64(cut.Length), 0), strconv.Itoa(cut.Pieces), ""})
	}
	pieces := table{title: "By string", columns: []column{{"", "string", 20, false}, {"", "piece", 14, true}, {"", "from", 34, false}, {"", "to", 34, false},
		{"", "colour", 24, false}, {"", "length, mm", 26, true}, {"", "", 38, false}}}
	for _, s := range b.Strings {
		for i, piece := range s.Pieces {
			pieces.rows = append(pieces.rows, []string{s.Name, strconv.Itoa(i + 1), piece.From, piece.To, piece.Colour, prose.Fixed(float64(piece.Length), 0), ""})
		}
	}
	t.table(byLength)
	t.table(pieces)
	return t.sheets
}

// checks draws what a meter reads of each string and channel, with room for what it did read.
func (b book) checks() []*Sheet {
	t := tabler{name: "wiring-check", title: "Readings to take and to sign", below: b.Readings}
	columns := []column{{"", "what", 26, false}, {"", "ohm", 30, true}, {"", "read", 24, false}, {"", "by, date", 36, false}, {"", "if it reads", 74, false}}
	strings := table{title: "Each string at its two ends, before it is joined to others", columns: columns}
	for _, r := range b.Alone {
		strings.rows = append(strings.rows, []string{r.What, r.Ohm, "", "", r.Else})
	}
	whole := table{title: "Each channel at its terminals, all strings joined, amplifier not connected", columns: []column{{"", "what", 26, false}, {"", "ohm", 26, true},
		{"", "joined", 17, false}, {"", "cones out", 19, false}, {"", "closed", 17, false}, {"", "by, date", 24, false}, {"", "if it reads", 61, false}}}
	for _, r := range b.Whole {
		whole.rows = append(whole.rows, []string{r.What, r.Ohm, "", "", "", "", r.Else})
	}
	t.table(strings)
	t.table(whole)
	last := t.say(b.Cell)
	last.text(r2.Vec{X: margin, Y: t.y + rowTall}, 3.2, left, ink, "All of it reads as it should. Name, date: ________________________________________")
	return t.sheets
}

// A label in mm, and how many there are in a row.
const (
	labelWide, labelTall = 27.0, 8.0
	labelsInRow          = 7
)

// mark is a string's name on labels.
func (b book) mark(s loom.String) string { return words.StringName(b.Plan, s) }

// labels draws one for each end that lies loose: a string's two leads at the terminals, and a
// driver's own, for the rear of its magnet.
func (b book) labels() []*Sheet {
	var texts []string
	all := loom.Strings(b.Plan)
	for _, s := range all {
		texts = append(texts, b.mark(s)+" + "+words.FromPlus, b.mark(s)+" − "+words.ToMinus)
	}
	for _, s := range all {
		for i, m := range s.Order {
			texts = append(texts, fmt.Sprintf("driver %d: %s, %d of %d", b.Array.Mounts[m].ID, b.mark(s), i+1, len(s.Order)))
		}
	}
	var out []*Sheet
	rows := int(math.Floor((long - 2*margin - heading) / labelTall))
	for i, text := range texts {
		k := i % (rows * labelsInRow)
		if k == 0 {
			out = append(out, page(fmt.Sprintf("wiring-labels-%d", len(out)+1), "Labels", "Print on sticky paper or fold round the wire. String 2.1 is the first of channel 2.", short, long))
		}
		at := r2.Vec{X: margin + labelWide*float64(k%labelsInRow), Y: margin + heading + labelTall*float64(k/labelsInRow)}
		s := out[len(out)-1]
		s.polygon(thin, at, r2.Vec{X: at.X + labelWide, Y: at.Y}, r2.Vec{X: at.X + labelWide, Y: at.Y + labelTall}, r2.Vec{X: at.X, Y: at.Y + labelTall})
		s.label(r2.Vec{X: at.X + labelWide/2, Y: at.Y + labelTall/2}, 2.4, ink, text)
	}
	return out
}
