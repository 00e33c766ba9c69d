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
	out := []*Sheet{b.work()}
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

// work draws the order of work and the terminals.
func (b book) work() *Sheet {
	s := page("wiring-1", "Wiring book: "+cutShort(b.Array.Name, 50), "The order of work. Keep the amplifier off its mains until the last step.", short, long)
	y := s.steps(b.Steps)
	b.terminals(s, y+6)
	return s
}

// The panel of terminals: rows of so many pairs, each so wide and tall in mm.
const (
	pairsInRow = 8
	pairWide   = 23.0
	pairTall   = 24.0
)

// terminals draws a panel with a pair for each channel, as far as the page holds them.
func (b book) terminals(s *Sheet, y float64) {
	s.text(r2.Vec{X: margin, Y: y}, 4, left, ink, "Terminals, seen from the inside")
	y = s.paragraph(r2.Vec{X: margin, Y: y + 5.5}, 3, 120, quiet,
		"One pair a channel. Sleeves have the colours of the channel's number (IEC 60062: 0 black, 1 brown, 2 red, 3 orange, 4 yellow, 5 green, 6 blue, 7 violet, 8 grey, 9 white).")
	rows := int((long - margin - y) / pairTall)
	for i, c := range b.Terminals {
		if i >= rows*pairsInRow {
			s.text(r2.Vec{X: margin, Y: long - margin}, 3, left, quiet, fmt.Sprintf("and so on up to channel %d", b.Terminals[len(b.Terminals)-1].Channel))
			return
		}
		at := r2.Vec{X: margin + pairWide*float64(i%pairsInRow), Y: y + pairTall*float64(i/pairsInRow)}
		s.polygon(pen{colour: middling, width: 0.2}, at, r2.Vec{X: at.X + pairWide - 2, Y: at.Y}, r2.Vec{X: at.X + pairWide - 2, Y: at.Y + pairTall - 2}, r2.Vec{X: at.X, Y: at.Y + pairTall - 2})
		s.text(r2.Vec{X: at.X + (pairWide-2)/2, Y: at.Y + 4.5}, 3.4, middle, ink, strconv.Itoa(c.Channel))
		for k, sign := range []string{"+", "−"} {
			colour := []pen{{colour: orange, width: 0.5}, {colour: ink, width: 0.5}}[k]
			centre := r2.Vec{X: at.X + 5.5 + 10*float64(k), Y: at.Y + 10}
			s.circle(colour, centre, 3)
			s.label(centre, 4, ink, sign)
		}
		s.text(r2.Vec{X: at.X + (pairWide-2)/2, Y: at.Y + 17}, 2.6, middle, quiet, prose.Count(c.Leads, "lead each", "leads each"))
		s.text(r2.Vec{X: at.X + (pairWide-2)/2, Y: at.Y + 20.5}, 2.4, middle, quiet, c.Sleeves)
	}
}

// cutList draws the pieces to cut, by length, and each with its place.
func (b book) cutList() []*Sheet {
	t := tabler{name: "wiring-cut", title: "Wires to cut", below: b.Copper}
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
	whole := table{title: "Each channel at its terminals, all strings joined, amplifier not connected", columns: columns}
	for _, r := range b.Whole {
		whole.rows = append(whole.rows, []string{r.What, r.Ohm, "", "", r.Else})
	}
	t.table(strings)
	t.table(whole)
	last := t.room(3 * rowTall)
	last.text(r2.Vec{X: margin, Y: t.y + 2*rowTall}, 3.2, left, ink, "All of it reads as it should. Name, date: ________________________________________")
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
