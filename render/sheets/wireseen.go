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
	middle []r2.Vec     // mm, of the disc, or of the upper and of the lower one
	reach  float64      // mm
	disc   float64      // mm, of a driver
	bottom float64      // mm, of all that is drawn
	*room
	ports map[port]float64 // rad, clockwise from the right of the page
}

// port is where a driver's wire is joined.
type port struct {
	mount int
	sign  string
}

// Sizes of a drawing in mm: of one disc, of two side by side, and of two one below the other,
// where side by side drivers would be smaller than leastDisc.
const (
	oneReach, besideReach, belowReach = 76.0, 38.0, 52.0
	mostDisc, leastDisc               = 5.0, 3.0
	around                            = 16.0 // round a disc, for words
)

// seenInside places a body's mounts within a box as wide as the page, from a height of y mm.
func seenInside(a *layout.Array, y float64) seen {
	v := seen{ports: map[port]float64{}}
	var halves bool
	v.places, halves = loom.Places(a)
	v.on(a, oneReach, r2.Vec{X: short / 2, Y: y + oneReach})
	if halves {
		v.on(a, besideReach, r2.Vec{X: short/2 - 49, Y: y + besideReach}, r2.Vec{X: short/2 + 49, Y: y + besideReach})
		if v.disc < leastDisc {
			v.on(a, belowReach, r2.Vec{X: short / 2, Y: y + belowReach}, r2.Vec{X: short / 2, Y: y + 3*belowReach + around})
		}
	}
	last := v.middle[len(v.middle)-1]
	v.bottom = last.Y + v.reach + around
	var discs, rims []round
	for i := range a.Own() {
		discs = append(discs, round{v.at(i), v.disc})
	}
	for _, m := range v.middle {
		rims = append(rims, round{m, v.reach})
	}
	v.room = newRoom(r2.NewBox(margin, y-around/2, short-margin, v.bottom), discs, rims)
	return v
}

// on takes discs of a radius round some places.
func (v *seen) on(a *layout.Array, reach float64, middle ...r2.Vec) {
	v.reach, v.middle, v.disc = reach, middle, mostDisc
	for i := range a.Own() {
		for k := range i {
			if v.places[i].Lower == v.places[k].Lower {
				v.disc = min(v.disc, 0.4*r2.Norm(r2.Sub(v.at(i), v.at(k))))
			}
		}
	}
}

// at is where a mount is on paper.
func (v seen) at(mount int) r2.Vec {
	p, m := v.places[mount], v.middle[0]
	if p.Lower {
		m = v.middle[len(v.middle)-1]
	}
	return r2.Vec{X: m.X + 0.93*v.reach*p.Right, Y: m.Y - 0.93*v.reach*p.Up}
}

// draw draws the rim with words where front and left are, and the mounts of a body that no string
// of some has, faint, with their numbers.
func (v seen) draw(s *Sheet, a *layout.Array, but []loom.String) {
	wired := map[r2.Vec]bool{} // by place: copies of a body have theirs
	for _, one := range but {
		for _, m := range one.Order {
			wired[v.at(m)] = true
		}
	}
	for i, m := range a.Own() {
		if wired[v.at(i)] {
			continue
		}
		s.circle(pen{colour: faint, width: 0.2}, v.at(i), v.disc)
		s.label(v.at(i), 0.85*v.numberSize(m.ID), faint, strconv.Itoa(m.ID))
	}
	v.rim(s, 0, []string{"front", "left", "back", "right"})
	if len(v.middle) < 2 {
		return
	}
	v.rim(s, 1, []string{"front", "right", "back", "left"}) // seen from above
	for k, word := range []string{"upper half, from below", "lower half, from above"} {
		v.write(s, r2.Vec{X: v.middle[k].X, Y: v.middle[k].Y + v.reach + 9}, 3, middle, quiet, word)
	}
}

// rim draws one disc's rim with words at its front, right of the page, back and left of the page.
func (v seen) rim(s *Sheet, disc int, around []string) {
	s.circle(pen{colour: faint, width: 0.2, dashes: []float64{1, 1}}, v.middle[disc], v.reach)
	at := v.middle[disc]
	v.write(s, r2.Vec{X: at.X, Y: at.Y - v.reach - 1.6}, 3, middle, quiet, around[0])
	v.write(s, r2.Vec{X: at.X + v.reach + 1.2, Y: at.Y + 1}, 3, left, quiet, around[1])
	v.write(s, r2.Vec{X: at.X, Y: at.Y + v.reach + 3.6}, 3, middle, quiet, around[2])
	v.write(s, r2.Vec{X: at.X - v.reach - 1.2, Y: at.Y + 1}, 3, right, quiet, around[3])
}

// write writes words that others then keep off.
func (v seen) write(s *Sheet, at r2.Vec, size float64, a anchor, c color.NRGBA, words string) {
	s.text(at, size, a, c, words)
	v.room.word(s.items[len(s.items)-1].boxOf())
}

// numberSize is how large a number is written within a disc that has a wire's sign on either side.
func (v seen) numberSize(number int) float64 {
	share := [...]float64{0.75, 0.75, 0.6, 0.5, 0.4}[min(len(strconv.Itoa(number))-1, 4)]
	return min(3.4, share*v.disc)
}

// driver draws one that is wired, with its number, and the sign at each of its ports.
func (v seen) driver(s *Sheet, mount, number int, c color.NRGBA) {
	at := v.at(mount)
	s.circle(pen{colour: c, width: 0.5, fill: color.NRGBA{255, 255, 255, 255}}, at, v.disc)
	s.label(at, v.numberSize(number), ink, strconv.Itoa(number))
	for _, sign := range []string{"+", "−"} {
		if angle, joined := v.ports[port{mount, sign}]; joined {
			s.label(r2.Add(at, r2.Scale(0.74*v.disc, outward(angle))), 0.46*v.disc, ink, sign)
		}
	}
}

// outward is the direction of an angle on paper.
func outward(angle float64) r2.Vec { return r2.Vec{X: math.Cos(angle), Y: math.Sin(angle)} }

// apart is the least angle in rad between a driver's two ports, so that their signs are.
const apart = 65 * math.Pi / 180

// join chooses the ports of a string's wires: each towards the driver at its other end, those of
// one driver apart. Where that is on another disc, its lead has a place sought for it.
func (v seen) join(order []int) {
	for i, m := range order {
		plus, minus := port{m, "+"}, port{m, "−"}
		if i > 0 && v.together(m, order[i-1]) {
			v.ports[plus] = v.toward(m, order[i-1])
		}
		if i == len(order)-1 || !v.together(m, order[i+1]) {
			continue
		}
		v.ports[minus] = v.toward(m, order[i+1])
		if at, joined := v.ports[plus]; joined {
			turn := math.Remainder(v.ports[minus]-at, 2*math.Pi)
			if by := (apart - math.Abs(turn)) / 2; by > 0 {
				v.ports[minus] += math.Copysign(by, turn)
				v.ports[plus] -= math.Copysign(by, turn)
			}
		}
	}
}

// toward is the angle on paper from a mount to another, together whether both are on one disc.
func (v seen) toward(from, to int) float64 {
	d := r2.Sub(v.at(to), v.at(from))
	return math.Atan2(d.Y, d.X)
}

func (v seen) together(a, b int) bool { return v.places[a].Lower == v.places[b].Lower }

// out is a place at a driver's rim, and one as far before it as lines keep from it.
func (v seen) out(mount int, angle float64) (rim, before r2.Vec) {
	at, way := v.at(mount), outward(angle)
	return r2.Add(at, r2.Scale(v.disc, way)), r2.Add(at, r2.Scale(v.disc+v.clear+0.8*v.step, way))
}

// wide is how wide wires are drawn, in mm.
func (v seen) wide() float64 { return min(0.7, 0.15*v.disc) }

// wire draws a piece from a driver's minus to the next one's plus, round what is between them.
func (v seen) wire(s *Sheet, from, to int, p pen) {
	out, in := v.ports[port{from, "−"}], v.ports[port{to, "+"}]
	begin, a := v.out(from, out)
	end, b := v.out(to, in)
	points := []r2.Vec{begin, end}
	if straight := r2.Sub(end, begin); !v.sees(begin, end) || isGrazing(straight, outward(out)) || isGrazing(r2.Scale(-1, straight), outward(in)) {
		left := func(at r2.Vec) float64 { return r2.Norm(r2.Sub(b, at)) }
		if way := v.way([]r2.Vec{a}, left, func(s int, _ float64) bool { return left(v.grid.at(s)) < v.step }); way != nil {
			points = append(append([]r2.Vec{begin}, v.pulled(way)...), end)
		}
	}
	v.room.line(points...)
	s.line(p, points...)
	v.arrow(s, points[len(points)-2], end, p.colour)
}

// isGrazing tells whether a line is by more than 55 degrees off the way straight out of a driver: an
// arrowhead on it would go over the driver.
func isGrazing(line, out r2.Vec) bool {
	return r2.Dot(line, out) < math.Cos(55*math.Pi/180)*r2.Norm(line)
}

// arrow draws the head of one.
func (v seen) arrow(s *Sheet, from, end r2.Vec, c color.NRGBA) {
	along := r2.Unit(r2.Sub(end, from))
	tip := min(2.2, 0.4*v.disc)
	back, aside := r2.Sub(end, r2.Scale(tip, along)), r2.Scale(0.4*tip, r2.Vec{X: -along.Y, Y: along.X})
	s.polygon(pen{fill: c}, end, r2.Add(back, aside), r2.Sub(back, aside))
}

// leadSize is how large a lead's words are, in mm.
const leadSize = 2.4

// lead draws the end of a string's lead at a driver, as far as to where there is room for its
// words: on any side of the driver but that of its other wire.
func (v seen) lead(s *Sheet, mount int, sign, text string, c color.NRGBA) {
	other, joined := v.ports[port{mount, map[string]string{"+": "−", "−": "+"}[sign]}]
	var from []r2.Vec
	const sides = 32
	for i := range sides {
		angle := 2 * math.Pi * float64(i) / sides
		if joined && math.Abs(math.Remainder(angle-other, 2*math.Pi)) < apart {
			continue
		}
		_, before := v.out(mount, angle)
		from = append(from, before)
	}
	words := item{words: text, size: leadSize, points: []r2.Vec{{}}}
	goal := func(s int, cost float64) bool { return cost >= min(4, v.disc) && v.placed(&words, s) }
	way := v.way(from, func(r2.Vec) float64 { return 0 }, goal)
	if way == nil { // over all, rather than nowhere
		way = from[:1]
		words.points[0] = from[0]
	}
	off := r2.Sub(way[0], v.at(mount))
	v.ports[port{mount, sign}] = math.Atan2(off.Y, off.X)
	rim, _ := v.out(mount, v.ports[port{mount, sign}])
	points := v.pulled(append([]r2.Vec{rim}, way...))
	v.room.line(points...)
	s.line(pen{colour: c, width: v.wide()}, points...)
	v.write(s, words.points[0], leadSize, words.anchor, c, text)
}

// placed puts words at the end of a way to a square, on the side where there is room; it tells
// whether there is.
func (v seen) placed(words *item, square int) bool {
	const off = offLines + 0.1 // from their own line, too
	end := v.grid.at(square)
	for _, side := range []struct {
		anchor anchor
		by     r2.Vec
	}{{left, r2.Vec{X: off, Y: 0.26 * leadSize}}, {right, r2.Vec{X: -off, Y: 0.26 * leadSize}}, {middle, r2.Vec{Y: off + 0.73*leadSize}}, {middle, r2.Vec{Y: -off - 0.21*leadSize}}} {
		words.anchor, words.points[0] = side.anchor, r2.Add(end, side.by)
		if box := words.boxOf(); v.holds(box) && !v.goesBy(square, grown(box, offLines)) {
			return true
		}
	}
	return false
}

// goesBy tells whether the way to a square goes through a box.
func (v seen) goesBy(square int, box r2.Box) bool {
	way := v.pulled(v.back(square))
	for i := 1; i < len(way); i++ {
		if crosses(way[i-1], way[i], box) {
			return true
		}
	}
	return false
}
