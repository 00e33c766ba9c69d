package sheets

import (
	"fmt"
	"image/color"
	"math"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// stringColours tell a channel's strings apart on paper (Okabe and Ito), then dashes do.
var stringColours = []color.NRGBA{blue, orange, {0, 158, 115, 255}, {204, 121, 167, 255}, {40, 40, 40, 255}, {86, 180, 233, 255}}

// mostDrawings is how many channels have a drawing each; the others are in the tables.
const mostDrawings = 64

// drawings draws each channel of strings on a page, and all channels of one driver on one.
func (b book) drawings() []*Sheet {
	var out []*Sheet
	var alone []loom.String
	together := b.alone() > fewAlone
	for c := range b.Channels {
		for body := range b.Array.Bodies() {
			of := b.of(c, body)
			switch {
			case len(of) == 0:
			case together && len(of) == 1 && len(of[0].Order) == 1:
				alone = append(alone, of[0])
			case len(out) < mostDrawings:
				out = append(out, b.drawing(c, body, of))
			}
		}
	}
	if len(alone) > 0 {
		out = append(out, b.drawingOfAlone(alone))
	}
	return out
}

// fewAlone is how many channels of one driver have a drawing each all the same.
const fewAlone = 4

// alone returns how many channels there are of one driver.
func (b book) alone() int {
	n := 0
	for _, c := range b.Channels {
		if len(c.Mounts) == 1 {
			n++
		}
	}
	return n
}

// seen is the inside of a body on paper: the angle from its top is the distance from the middle,
// as it is seen from below, its front mark up.
type seen struct {
	middle r2.Vec
	reach  float64 // mm
	most   float64 // rad, the angle there
	disc   float64 // mm, of a driver
}

// seenInside places a body's mounts in a circle of reach mm.
func seenInside(a *layout.Array, middle r2.Vec, reach float64) seen {
	v := seen{middle: middle, reach: reach}
	for _, m := range a.Own() {
		v.most = max(v.most, fromTop(m.Point))
	}
	v.most = min(math.Pi, max(v.most+10*math.Pi/180, math.Pi/6))
	v.disc = 5
	own := a.Own()
	for i, m := range own {
		for _, n := range own[:i] {
			v.disc = min(v.disc, 0.44*r2.Norm(r2.Sub(v.at(m.Point), v.at(n.Point))))
		}
	}
	return v
}

// fromTop is the angle of a place from the upright axis in rad.
func fromTop(p r3.Vec) float64 { return math.Atan2(math.Hypot(p.X, p.Y), p.Z) }

// at is where a place of the body's is on paper.
func (v seen) at(p r3.Vec) r2.Vec {
	r := v.reach * fromTop(p) / v.most
	sin, cos := math.Sincos(math.Atan2(p.Y, p.X))
	return r2.Vec{X: v.middle.X + r*sin, Y: v.middle.Y - r*cos} // from below the body's left is on the right
}

// draw draws the rim, where front and left are, and all mounts of a body, faint, with their
// numbers. The words keep off the ends of leads, which reach over the rim.
func (v seen) draw(s *Sheet, a *layout.Array, wired []layout.Mount) {
	s.circle(pen{colour: faint, width: 0.2, dashes: []float64{1, 1}}, v.middle, v.reach)
	for _, m := range a.Own() {
		s.circle(pen{colour: faint, width: 0.2}, v.at(m.Point), v.disc)
		s.label(v.at(m.Point), min(2.6, 0.6*v.disc), faint, strconv.Itoa(m.ID))
	}
	for i, word := range []string{"front", "left", "back", "right"} {
		at := v.free(wired, float64(i)*math.Pi/2)
		out := r2.Scale(v.reach+4, r2.Vec{X: math.Sin(at), Y: -math.Cos(at)})
		s.label(r2.Add(v.middle, out), 3, quiet, word)
	}
}

// free is the angle nearest to one asked for, clockwise from the front, where no wired driver is
// near the rim.
func (v seen) free(wired []layout.Mount, want float64) float64 {
	const step, tries, clear = 0.1, 4, 22.0 // rad, either way, mm
	at := func(angle float64) float64 {
		p := r2.Add(v.middle, r2.Scale(v.reach, r2.Vec{X: math.Sin(angle), Y: -math.Cos(angle)}))
		least := math.Inf(1)
		for _, m := range wired {
			least = min(least, r2.Norm(r2.Sub(v.at(m.Point), p)))
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
func (v seen) driver(s *Sheet, m layout.Mount, c color.NRGBA) {
	at := v.at(m.Point)
	s.circle(pen{colour: c, width: 0.5, fill: color.NRGBA{255, 255, 255, 255}}, at, v.disc)
	s.label(at, min(3.4, 0.75*v.disc), ink, strconv.Itoa(m.ID))
}

// wire draws a piece from a driver's minus to the next one's plus.
func (v seen) wire(s *Sheet, from, to layout.Mount, p pen) {
	a, b := v.at(from.Point), v.at(to.Point)
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
func (v seen) lead(s *Sheet, m layout.Mount, away r2.Vec, text, sign string, c color.NRGBA) {
	at := v.at(m.Point)
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
		"Seen from the inside, from below, its front mark up; the further from the middle, the further from the top. Each wire goes from a minus to the next plus.", short, long)
	v := seenInside(b.Array, r2.Vec{X: short / 2, Y: margin + heading + 86}, 76)
	var wired []layout.Mount
	for _, one := range of {
		for _, m := range one.Order {
			wired = append(wired, b.Array.Mounts[m])
		}
	}
	v.draw(s, b.Array, wired)
	for i, one := range of {
		b.drawWires(s, v, one, penOf(i))
	}
	for i, one := range of {
		b.drawDrivers(s, v, one, wired, penOf(i))
	}
	b.pieces(s, of, margin+heading+86+76+14)
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
		v.wire(s, b.Array.Mounts[one.Order[i]], b.Array.Mounts[one.Order[i+1]], p)
	}
}

// drawDrivers draws a string's drivers over the wires that pass them, and its two leads.
func (b book) drawDrivers(s *Sheet, v seen, one loom.String, wired []layout.Mount, p pen) {
	own := func(i int) layout.Mount { return b.Array.Mounts[one.Order[i]] }
	last := len(one.Order) - 1
	for i := range one.Order {
		v.driver(s, own(i), p.colour)
	}
	v.lead(s, own(0), v.away(wired, own(0), own(min(1, last))), b.mark(one)+" + "+fromPlus, "+", orange)
	v.lead(s, own(last), v.away(wired, own(last), own(max(0, last-1))), b.mark(one)+" − "+toMinus, "−", ink)
}

// away is the direction on paper for a driver's lead: of sixteen that in which its end is furthest
// from other wired drivers and from the way to its neighbour in the string.
func (v seen) away(wired []layout.Mount, m, neighbour layout.Mount) r2.Vec {
	at, best, most := v.at(m.Point), r2.Vec{X: 1}, -1.0
	others := []r2.Vec{r2.Add(at, r2.Scale(0.5, r2.Sub(v.at(neighbour.Point), at)))}
	for _, w := range wired {
		if w.ID != m.ID {
			others = append(others, v.at(w.Point))
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

// drawingOfAlone draws the channels that have one driver each.
func (b book) drawingOfAlone(all []loom.String) *Sheet {
	s := page("wiring-alone", fmt.Sprintf("%s of one driver each", words.Capital(prose.Count(len(all), "channel", "channels"))),
		"Seen from the inside, from below, its front mark up. Each driver has two wires of its own to the terminals of its channel; the lengths are in the list of wires.", short, long)
	v := seenInside(b.Array, r2.Vec{X: short / 2, Y: long / 2}, 88)
	v.draw(s, b.Array, nil)
	for _, one := range all {
		m := b.Array.Mounts[one.Order[0]]
		v.driver(s, m, blue)
		at := v.at(m.Point)
		s.text(r2.Vec{X: at.X, Y: at.Y + v.disc + 2.6}, min(2.4, 0.6*v.disc), middle, quiet, "ch. "+strconv.Itoa(b.Channels[one.Channel].ID))
	}
	return s
}

// fileName names a channel's page.
func fileName(b book, c, body int) string {
	name := "channel-" + strconv.Itoa(b.Channels[c].ID)
	if len(b.Array.Bodies()) > 1 {
		name += "-body-" + strconv.Itoa(body+1)
	}
	return name
}
