package sheets

import (
	"fmt"
	"image/color"
	"slices"
	"strconv"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r2"
)

// stringColours tell a channel's strings apart on paper (Okabe and Ito), then dashes do.
var stringColours = []color.NRGBA{blue, orange, {0, 158, 115, 255}, {204, 121, 167, 255}, {40, 40, 40, 255}, {86, 180, 233, 255}}

// mostDrawings is how many channels have a drawing each; the others are in the tables.
const mostDrawings = 64

// drawings draws each channel of strings on a page, and all channels of one driver on one, where
// they are more than a few.
func (b book) drawings() (out []*Sheet) {
	for _, d := range b.drawn() {
		if d.isAlone {
			out = append(out, b.drawingOfAlone(d.body, d.of))
		} else {
			out = append(out, b.drawing(d)...)
		}
	}
	return out
}

// inside is what is drawn together: a channel's strings on a body, or those of all channels that
// have one driver there.
type inside struct {
	channel, body int
	of            []loom.String
	isAlone       bool
}

// drawn lists what is drawn.
func (b book) drawn() (out []inside) {
	alone := b.alone()
	if len(alone) <= fewAlone {
		alone = nil
	}
	for c, bodies := range b.of {
		for body, of := range bodies {
			if len(of) == 0 || len(alone) > 0 && isAlone(of) || len(out) == mostDrawings {
				continue
			}
			out = append(out, inside{c, body, of, false})
		}
	}
	for body := range b.Array.Bodies() {
		on := slices.DeleteFunc(slices.Clone(alone), func(s loom.String) bool { return s.Body(b.Plan) != body })
		if len(on) > 0 {
			out = append(out, inside{0, body, on, true})
		}
	}
	return out
}

// fewAlone is how many channels of one driver have a drawing each all the same.
const fewAlone = 4

// alone returns the strings of the channels that have one driver on a body.
func (b book) alone() (out []loom.String) {
	for _, bodies := range b.of {
		for _, of := range bodies {
			if isAlone(of) {
				out = append(out, of[0])
			}
		}
	}
	return out
}

func isAlone(of []loom.String) bool { return len(of) == 1 && len(of[0].Order) == 1 }

// title says what is drawn together.
func (b book) title(d inside) string {
	if d.isAlone {
		return fmt.Sprintf("%s of one driver each", words.Capital(prose.Count(len(d.of), "channel", "channels"))) + words.OnBody(b.Array, d.body, ", body ")
	}
	return fmt.Sprintf("%s: %s", words.Capital(words.ChannelOn(b.Plan, d.channel, d.body)), words.StringsOf(d.of))
}

// Drawing is one of the wiring book's, without the words beside it.
type Drawing struct {
	*Sheet
	Strings []string // the names of those that are drawn
}

// WiringDrawings are the drawings of the wiring book by themselves: the inside of a body, with a
// channel's strings or the drivers of all channels that have one.
func WiringDrawings(p *timing.Plan) (out []Drawing) {
	b := newBook(p)
	for _, d := range b.drawn() {
		v := seenInside(b.Array, around/2)
		s := &Sheet{Title: b.title(d), Width: short, Height: v.bottom}
		if d.isAlone {
			b.drawAlone(s, v, d.of)
		} else {
			b.drawStrings(s, v, d.of)
		}
		one := Drawing{Sheet: s}
		for _, string := range d.of {
			one.Strings = append(one.Strings, b.mark(string))
		}
		out = append(out, one)
	}
	return out
}

// drawing draws one channel on one body: its strings, and the pieces of each.
func (b book) drawing(d inside) []*Sheet {
	s := page("wiring-"+fileName(b, d.channel, d.body), b.title(d),
		"Seen from the inside, its front mark up; the further from the middle, the further from the top or the bottom. Each wire goes from a minus to the next plus, round the drivers that it passes on paper.", short, long)
	v := seenInside(b.Array, margin+heading+10)
	b.drawStrings(s, v, d.of)
	return b.pieces(s, d, v.bottom+3)
}

// drawStrings draws a channel's strings on one body.
func (b book) drawStrings(s *Sheet, v seen, of []loom.String) {
	v.draw(s, b.Array, of)
	for i, one := range of {
		v.join(one.Order)
		for k := range len(one.Order) - 1 {
			if v.together(one.Order[k], one.Order[k+1]) {
				v.wire(s, one.Order[k], one.Order[k+1], v.penOf(i))
			}
		}
	}
	for i, one := range of {
		b.drawLeads(s, v, one, v.penOf(i).colour)
	}
	for i, one := range of {
		for _, m := range one.Order {
			v.driver(s, m, b.Array.Mounts[m].ID, v.penOf(i).colour)
		}
	}
}

// penOf is how the i-th string of a channel is drawn.
func (v seen) penOf(i int) pen {
	p := pen{colour: stringColours[i%len(stringColours)], width: v.wide()}
	if i >= len(stringColours) {
		p.dashes = []float64{2, 1}
	}
	return p
}

// drawLeads draws a string's two leads, and both ends of its wires that go from one disc to the
// other.
func (b book) drawLeads(s *Sheet, v seen, one loom.String, c color.NRGBA) {
	last := len(one.Order) - 1
	for k := range last {
		if from, to := one.Order[k], one.Order[k+1]; !v.together(from, to) {
			v.lead(s, from, "−", fmt.Sprintf("to %d +", b.Array.Mounts[to].ID), c)
			v.lead(s, to, "+", fmt.Sprintf("from %d −", b.Array.Mounts[from].ID), c)
		}
	}
	v.lead(s, one.Order[0], "+", b.mark(one)+" + "+words.FromPlus, orange)
	v.lead(s, one.Order[last], "−", b.mark(one)+" − "+words.ToMinus, ink)
}

// The list of pieces beside a drawing, in mm: how wide a column is, how tall a line.
const pieceWide, pieceTall = 64.0, 4.2

// pieces writes the pieces of strings below a drawing, in columns, and what the wire takes; on
// further pages what there is no room for.
func (b book) pieces(s *Sheet, d inside, top float64) []*Sheet {
	out, at := []*Sheet{s}, r2.Vec{X: margin, Y: top}
	write := func(size float64, c color.NRGBA, text string, lines int) {
		if at.Y+pieceTall*float64(lines-1) > long-margin {
			at = r2.Vec{X: at.X + pieceWide, Y: top}
		}
		if at.X+pieceWide > short || top > long-margin-8*pieceTall { // free: a column of eight or more
			top = margin + heading
			at = r2.Vec{X: margin, Y: top}
			s = page(fmt.Sprintf("%s-pieces-%d", out[0].Name, len(out)), out[0].Title, "The pieces of its wire.", short, long)
			out = append(out, s)
		}
		s.text(at, size, left, c, text)
		at.Y += pieceTall
	}
	for i, one := range d.of {
		// A string's heading is followed by a piece at least.
		write(3, stringColours[i%len(stringColours)], "string "+b.mark(one)+", "+words.WireTakes(b.Array.Driver.DCOhm, one), 2)
		for _, piece := range one.Pieces {
			write(2.7, ink, fmt.Sprintf("%s to %s, %s, %s mm", words.WireFrom(b.Plan, one, piece), words.WireTo(b.Plan, one, piece), words.WireColour(piece), prose.Fixed(1000*piece.Cut, 0)), 1)
		}
		at.Y++
	}
	return out
}

// drawingOfAlone draws the channels that have one driver each on a body.
func (b book) drawingOfAlone(body int, all []loom.String) *Sheet {
	s := page("wiring-alone"+words.OnBody(b.Array, body, "-body-"), b.title(inside{0, body, all, true}),
		"Seen from the inside, its front mark up. Each driver has two wires of its own to the terminals of its channel; the lengths are in the list of wires.", short, long)
	b.drawAlone(s, seenInside(b.Array, margin+heading+10), all)
	return s
}

// drawAlone draws the drivers of channels that have one each, with its number and its channel's.
func (b book) drawAlone(s *Sheet, v seen, all []loom.String) {
	v.draw(s, b.Array, all)
	for _, one := range all {
		m := one.Order[0]
		at, id := v.at(m), b.Array.Mounts[m].ID
		s.circle(pen{colour: blue, width: 0.5, fill: color.NRGBA{255, 255, 255, 255}}, at, v.disc)
		s.label(r2.Vec{X: at.X, Y: at.Y - 0.27*v.disc}, v.numberSize(id), ink, strconv.Itoa(id))
		s.label(r2.Vec{X: at.X, Y: at.Y + 0.42*v.disc}, min(2.4, 0.42*v.disc), quiet, "ch. "+strconv.Itoa(b.Channels[one.Channel].ID))
	}
}

// fileName names a channel's page.
func fileName(b book, c, body int) string {
	return "channel-" + strconv.Itoa(b.Channels[c].ID) + words.OnBody(b.Array, body, "-body-")
}
