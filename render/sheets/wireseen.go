package sheets

import (
	"image/color"
	"math"
	"strconv"

	"pappus/layout"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r2"
)

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
