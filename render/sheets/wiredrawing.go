package sheets

import (
	"fmt"
	"image/color"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r2"
)

// stringColours tell a channel's strings apart on paper (Okabe and Ito), then dashes do.
var stringColours = []color.NRGBA{blue, orange, {0, 158, 115, 255}, {204, 121, 167, 255}, {40, 40, 40, 255}, {86, 180, 233, 255}}

// mostDrawings is how many channels have a drawing each; the others are in the tables.
const mostDrawings = 64

// drawings draws each channel of strings on a page, and all channels of one driver on one, where
// they are more than a few.
func (b book) drawings() []*Sheet {
	alone := b.alone()
	if len(alone) <= fewAlone {
		alone = nil
	}
	var out []*Sheet
	for c, bodies := range b.of {
		for body, of := range bodies {
			if len(of) == 0 || len(alone) > 0 && isAlone(of) || len(out) == mostDrawings {
				continue
			}
			out = append(out, b.drawing(c, body, of))
		}
	}
	for body := range b.Array.Bodies() {
		on := slices.DeleteFunc(slices.Clone(alone), func(s loom.String) bool { return b.bodyOf(s) != body })
		if len(on) > 0 {
			out = append(out, b.drawingOfAlone(body, on))
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

// seen is the inside of a body on paper, on one disc or on two: the upper half from below, the
// lower one from above (loom.Places), its front mark up.
type seen struct {
	places []loom.Place // by the mounts' indices
	middle [2]r2.Vec    // mm, of the upper disc and of the lower
	reach  float64      // mm
	disc   float64      // mm, of a driver
	halves bool
}

// seenInside places a body's mounts within a box as wide as the page, from a height of y mm.
func seenInside(a *layout.Array, y float64) seen {
	var v seen
	v.places, v.halves = loom.Places(a)
	v.reach = 76
	v.middle[0] = r2.Vec{X: short / 2, Y: y + v.reach}
	if v.halves {
		v.reach = 38
		v.middle = [2]r2.Vec{{X: short/2 - 49, Y: y + v.reach}, {X: short/2 + 49, Y: y + v.reach}}
	}
	v.disc = 5
	for i := range a.Own() {
		for k := range i {
			if d := r2.Norm(r2.Sub(v.at(i), v.at(k))); v.places[i].Lower == v.places[k].Lower {
				v.disc = min(v.disc, 0.44*d)
			}
		}
	}
	return v
}

// at is where a mount is on paper.
func (v seen) at(mount int) r2.Vec {
	p, m := v.places[mount], v.middle[0]
	if p.Lower {
		m = v.middle[1]
	}
	return r2.Vec{X: m.X + 0.93*v.reach*p.Right, Y: m.Y - 0.93*v.reach*p.Up}
}

// draw draws the rim, where front and left are, and all mounts of a body, faint, with their
// numbers. The words keep off the ends of leads, which reach over the rim.
func (v seen) draw(s *Sheet, a *layout.Array, wired []int) {
	for i, m := range a.Own() {
		s.circle(pen{colour: faint, width: 0.2}, v.at(i), v.disc)
		s.label(v.at(i), min(2.6, 0.6*v.disc), faint, strconv.Itoa(m.ID))
	}
	if !v.halves {
		v.rim(s, 0, wired, []string{"front", "left", "back", "right"})
		return
	}
	v.rim(s, 0, wired, []string{"front", "left", "back", "right"})
	v.rim(s, 1, wired, []string{"front", "right", "back", "left"}) // seen from above
	for k, word := range []string{"upper half, from below", "lower half, from above"} {
		s.text(r2.Vec{X: v.middle[k].X, Y: v.middle[k].Y + v.reach + 11}, 3, middle, quiet, word)
	}
}

// rim draws one disc's rim with words at its front, right of the page, back and left of the page.
func (v seen) rim(s *Sheet, disc int, wired []int, around []string) {
	s.circle(pen{colour: faint, width: 0.2, dashes: []float64{1, 1}}, v.middle[disc], v.reach)
	for i, word := range around {
		at := v.free(disc, wired, float64(i)*math.Pi/2)
		out := r2.Scale(v.reach+4, r2.Vec{X: math.Sin(at), Y: -math.Cos(at)})
		s.label(r2.Add(v.middle[disc], out), 3, quiet, word)
	}
}

// free is the angle nearest to one asked for, clockwise from the front, where no wired driver is
// near the rim.
func (v seen) free(disc int, wired []int, want float64) float64 {
	const step, tries, clear = 0.1, 4, 22.0 // rad, either way, mm
	at := func(angle float64) float64 {
		p := r2.Add(v.middle[disc], r2.Scale(v.reach, r2.Vec{X: math.Sin(angle), Y: -math.Cos(angle)}))
		least := math.Inf(1)
		for _, m := range wired {
			least = min(least, r2.Norm(r2.Sub(v.at(m), p)))
		}
		return least
	}
	for i := range tries {
		for _, side := range []float64{1, -1} {
			if angle := want + side*float64(i)*step; at(angle) > clear {
				return angle
			}
		}
	}
	return want
}

// driver draws one that is wired, with its number.
func (v seen) driver(s *Sheet, mount, number int, c color.NRGBA) {
	at := v.at(mount)
	s.circle(pen{colour: c, width: 0.5, fill: color.NRGBA{255, 255, 255, 255}}, at, v.disc)
	s.label(at, min(3.4, 0.75*v.disc), ink, strconv.Itoa(number))
}

// wire draws a piece from a driver's minus to the next one's plus.
func (v seen) wire(s *Sheet, from, to int, p pen) {
	a, b := v.at(from), v.at(to)
	along := r2.Unit(r2.Sub(b, a))
	begin, end := r2.Add(a, r2.Scale(v.disc, along)), r2.Sub(b, r2.Scale(v.disc, along))
	s.line(p, begin, end)
	aside := r2.Vec{X: -along.Y, Y: along.X}
	tip := min(2.2, 0.4*r2.Norm(r2.Sub(end, begin)))
	s.polygon(pen{fill: p.colour}, end, r2.Add(r2.Sub(end, r2.Scale(tip, along)), r2.Scale(0.4*tip, aside)), r2.Sub(r2.Sub(end, r2.Scale(tip, along)), r2.Scale(0.4*tip, aside)))
	v.sign(s, b, r2.Scale(-1, along), "+")
	v.sign(s, a, along, "−")
}

// sign writes a terminal's sign beside the disc at a place, towards where its wire goes.
func (v seen) sign(s *Sheet, at, towards r2.Vec, sign string) {
	aside := r2.Vec{X: -towards.Y, Y: towards.X}
	s.label(r2.Add(at, r2.Add(r2.Scale(v.disc+1.2, towards), r2.Scale(1.6, aside))), 3, ink, sign)
}

// lead draws the end of a string's lead at a driver, on its way to the terminals.
func (v seen) lead(s *Sheet, mount int, away r2.Vec, text, sign string, c color.NRGBA) {
	at := v.at(mount)
	begin, end := r2.Add(at, r2.Scale(v.disc, away)), r2.Add(at, r2.Scale(v.disc+6, away))
	s.line(pen{colour: c, width: 0.7}, begin, end)
	v.sign(s, at, away, sign)
	where := left
	if away.X < 0 {
		where = right
	}
	s.text(r2.Vec{X: end.X + 0.8*away.X, Y: end.Y + 1.2*away.Y + 0.8}, 2.4, where, c, text)
}

// drawing draws one channel on one body: its strings, and the pieces of each.
func (b book) drawing(c, body int, of []loom.String) *Sheet {
	s := page(fmt.Sprintf("wiring-%s", fileName(b, c, body)), fmt.Sprintf("%s: %s", words.Capital(b.channel(c, body)), words.StringsOf(of)),
		"Seen from the inside, its front mark up; the further from the middle, the further from the top or the bottom. Each wire goes from a minus to the next plus.", short, long)
	v := seenInside(b.Array, margin+heading+10)
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
	b.pieces(s, of, v.middle[0].Y+v.reach+19)
	return s
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
	v.lead(s, one.Order[0], v.away(wired, one.Order[0], one.Order[min(1, last)]), b.mark(one)+" + "+fromPlus, "+", orange)
	v.lead(s, one.Order[last], v.away(wired, one.Order[last], one.Order[max(0, last-1)]), b.mark(one)+" − "+toMinus, "−", ink)
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
			write(2.7, ink, fmt.Sprintf("%s to %s, %s, %s mm", b.from(one, piece), b.to(one, piece), colourOf(piece), prose.Fixed(1000*piece.Cut, 0)))
		}
		y += 1
	}
}

// drawingOfAlone draws the channels that have one driver each on a body.
func (b book) drawingOfAlone(body int, all []loom.String) *Sheet {
	title := fmt.Sprintf("%s of one driver each", words.Capital(prose.Count(len(all), "channel", "channels")))
	s := page("wiring-alone"+b.suffix(body, "-body-"), title+b.suffix(body, ", body "),
		"Seen from the inside, its front mark up. Each driver has two wires of its own to the terminals of its channel; the lengths are in the list of wires.", short, long)
	v := seenInside(b.Array, margin+heading+10)
	v.draw(s, b.Array, nil)
	for _, one := range all {
		m := one.Order[0]
		v.driver(s, m, b.Array.Mounts[m].ID, blue)
		at := v.at(m)
		s.text(r2.Vec{X: at.X, Y: at.Y + v.disc + 2.6}, min(2.4, 0.6*v.disc), middle, quiet, "ch. "+strconv.Itoa(b.Channels[one.Channel].ID))
	}
	return s
}

// fileName names a channel's page.
func fileName(b book, c, body int) string {
	return "channel-" + strconv.Itoa(b.Channels[c].ID) + b.suffix(body, "-body-")
}
