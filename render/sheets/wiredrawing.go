package sheets

import (
	"fmt"
	"image/color"
	"math"
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
			out = append(out, b.drawing(d.channel, d.body, d.of))
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
		const above = 10.0 // mm, for the words at the rim
		v := seenInside(b.Array, above)
		s := &Sheet{Title: b.title(d), Width: short, Height: 2*v.reach + 2*above}
		if v.halves {
			s.Height += 5 // a line of words
		}
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
func (b book) drawing(c, body int, of []loom.String) *Sheet {
	s := page(fmt.Sprintf("wiring-%s", fileName(b, c, body)), b.title(inside{c, body, of, false}),
		"Seen from the inside, its front mark up; the further from the middle, the further from the top or the bottom. Each wire goes from a minus to the next plus.", short, long)
	v := seenInside(b.Array, margin+heading+10)
	b.drawStrings(s, v, of)
	b.pieces(s, of, v.middle[0].Y+v.reach+19)
	return s
}

// drawStrings draws a channel's strings on one body.
func (b book) drawStrings(s *Sheet, v seen, of []loom.String) {
	var wired []int
	for _, one := range of {
		wired = append(wired, one.Order...)
	}
	v.draw(s, b.Array, wired)
	for i, one := range of {
		b.drawWires(s, v, one, penOf(i))
	}
	for i, one := range of {
		b.drawDrivers(s, v, one, wired, penOf(i))
	}
}

// penOf is how the i-th string of a channel is drawn.
func penOf(i int) pen {
	p := pen{colour: stringColours[i%len(stringColours)], width: 0.7}
	if i >= len(stringColours) {
		p.dashes = []float64{2, 1}
	}
	return p
}

// drawWires draws the wires between a string's drivers.
func (b book) drawWires(s *Sheet, v seen, one loom.String, p pen) {
	for i := range len(one.Order) - 1 {
		v.wire(s, one.Order[i], one.Order[i+1], p)
	}
}

// drawDrivers draws a string's drivers over the wires that pass them, and its two leads.
func (b book) drawDrivers(s *Sheet, v seen, one loom.String, wired []int, p pen) {
	last := len(one.Order) - 1
	for _, m := range one.Order {
		v.driver(s, m, b.Array.Mounts[m].ID, p.colour)
	}
	v.lead(s, one.Order[0], v.away(wired, one.Order[0], one.Order[min(1, last)]), b.mark(one)+" + "+words.FromPlus, "+", orange)
	v.lead(s, one.Order[last], v.away(wired, one.Order[last], one.Order[max(0, last-1)]), b.mark(one)+" − "+words.ToMinus, "−", ink)
}

// away is the direction on paper for a driver's lead: of sixteen that in which its end is furthest
// from other wired drivers and from the way to its neighbour in the string.
func (v seen) away(wired []int, mount, neighbour int) r2.Vec {
	at, best, most := v.at(mount), r2.Vec{X: 1}, -1.0
	others := []r2.Vec{r2.Add(at, r2.Scale(0.5, r2.Sub(v.at(neighbour), at)))}
	for _, w := range wired {
		if w != mount {
			others = append(others, v.at(w))
		}
	}
	for i := range 16 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 16)
		d := r2.Vec{X: cos, Y: sin}
		end, least := r2.Add(at, r2.Scale(v.disc+10, d)), math.Inf(1)
		for _, o := range others {
			least = min(least, r2.Norm(r2.Sub(o, end)))
		}
		if least > most+1e-9 {
			best, most = d, least
		}
	}
	return best
}

// pieces writes the pieces of strings in as many columns as there is room for, and what the wire
// takes.
func (b book) pieces(s *Sheet, of []loom.String, y float64) {
	const wide, tall = 64.0, 4.2
	top := y
	x := margin
	write := func(size float64, c color.NRGBA, text string) {
		if y > long-margin-6 {
			x, y = x+wide, top
		}
		if x+wide <= short {
			s.text(r2.Vec{X: x, Y: y}, size, left, c, text)
		}
		y += tall
	}
	for i, one := range of {
		write(3, stringColours[i%len(stringColours)], "string "+b.mark(one)+", "+words.WireTakes(b.Array.Driver.DCOhm, one))
		for _, piece := range one.Pieces {
			write(2.7, ink, fmt.Sprintf("%s to %s, %s, %s mm", words.WireFrom(b.Plan, one, piece), words.WireTo(b.Plan, one, piece), words.WireColour(piece), prose.Fixed(1000*piece.Cut, 0)))
		}
		y += 1
	}
}

// drawingOfAlone draws the channels that have one driver each on a body.
func (b book) drawingOfAlone(body int, all []loom.String) *Sheet {
	s := page("wiring-alone"+words.OnBody(b.Array, body, "-body-"), b.title(inside{0, body, all, true}),
		"Seen from the inside, its front mark up. Each driver has two wires of its own to the terminals of its channel; the lengths are in the list of wires.", short, long)
	b.drawAlone(s, seenInside(b.Array, margin+heading+10), all)
	return s
}

// drawAlone draws the drivers of channels that have one each.
func (b book) drawAlone(s *Sheet, v seen, all []loom.String) {
	v.draw(s, b.Array, nil)
	for _, one := range all {
		m := one.Order[0]
		v.driver(s, m, b.Array.Mounts[m].ID, blue)
		at := v.at(m)
		s.text(r2.Vec{X: at.X, Y: at.Y + v.disc + 2.6}, min(2.4, 0.6*v.disc), middle, quiet, "ch. "+strconv.Itoa(b.Channels[one.Channel].ID))
	}
}

// fileName names a channel's page.
func fileName(b book, c, body int) string {
	return "channel-" + strconv.Itoa(b.Channels[c].ID) + words.OnBody(b.Array, body, "-body-")
}
