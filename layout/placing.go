package layout

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"pappus/layout/advice"
	"pappus/layout/design"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What a body may be fixed to.
const (
	OnSurface = design.OnSurface
	OnCeiling = design.OnCeiling
	OnWall    = design.OnWall
)

// Placing is where a body's centre is in the room, and how the body is turned there. The
// room's frame has its origin at the centre of the first body, x forward, y to the left and z
// up; the body's own has its front mark forward and its top up. The zero value is a body at
// the origin that stands as it was designed: both frames are one, to the bit.
type Placing struct {
	At          r3.Vec // m, in the room
	design.Turn        // of directions: In from the room's to the body's, Out back
	Shared      bool   // a copy that is driven by the channels of the first body
}

// Into returns a place in the room as the body has it, both in m.
func (p Placing) Into(place r3.Vec) r3.Vec { return p.In(r3.Sub(place, p.At)) }

// Place returns a place of the body's as the room has it, both in m.
func (p Placing) Place(own r3.Vec) r3.Vec { return r3.Add(p.Out(own), p.At) }

// Placed tells whether it is any other than the zero value.
func (p Placing) Placed() bool { return p != (Placing{}) }

var standing = []Placing{{}}

// Bodies returns where each body is: one that stands as designed where nothing else is said.
func (a *Array) Bodies() []Placing {
	if len(a.Placings) == 0 {
		return standing
	}
	return a.Placings
}

// placings are those of a design.
func placings(d *design.Design) []Placing {
	out := []Placing{{Turn: d.Placing.Turn(d.Placing.Angles)}}
	for _, c := range d.Copies {
		out = append(out, Placing{At: c.At, Turn: d.Placing.Turn(c.Angles), Shared: c.Channels == design.SharedChannels})
	}
	return out
}

// Own returns the mounts of the first body; those of the others are the same.
func (a *Array) Own() []Mount {
	return a.Mounts[:sort.Search(len(a.Mounts), func(i int) bool { return a.Mounts[i].Body > 0 })]
}

// BodiesOf returns on how many bodies some mounts are, by their indices.
func (a *Array) BodiesOf(mounts []int) int {
	on := map[int]bool{}
	for _, m := range mounts {
		on[a.Mounts[m].Body] = true
	}
	return len(on)
}

// LeastLoad returns the least load in ohm that a bank of one body may be: as many times the
// amplifier's minimum as there are bodies that share a channel, whose banks are in parallel.
func (a *Array) LeastLoad() float64 { return float64(len(a.Sets()[0])) * a.Wiring.MinimumLoad }

// Sets returns which bodies are driven by the same channels: the first with those that share
// its, then each of the others alone.
func (a *Array) Sets() [][]int {
	sets := [][]int{nil}
	for i, p := range a.Bodies() {
		if i == 0 || p.Shared {
			sets[0] = append(sets[0], i)
		} else {
			sets = append(sets, []int{i})
		}
	}
	return sets
}

// numberStep returns what is added to a mount's number on each further body: the least power
// of ten above all numbers of the first, so that 207 is the second body's 7.
func numberStep(mounts []Mount) int {
	step := 10
	for _, m := range mounts {
		for step <= m.ID {
			step *= 10
		}
	}
	return step
}

// copied returns mounts of one body on all bodies. The second body's numbers begin with 2.
func (a *Array) copied(own []Mount) []Mount {
	out, step := slices.Clone(own), numberStep(own)
	for body := range a.Bodies()[1:] {
		for _, m := range own {
			m.ID, m.Body = m.ID+(body+2)*step, body+1
			out = append(out, m)
		}
	}
	return out
}

// copiedChannels returns channels of the first body, laid out by hand, for all bodies.
func (a *Array) copiedChannels(own []Channel, drivers int) []Channel {
	var out []Channel
	for _, set := range a.Sets() {
		for _, c := range own {
			c.ID = len(out) + 1
			mounts := c.Mounts
			c.Mounts = nil
			for _, body := range set {
				for _, m := range mounts {
					c.Mounts = append(c.Mounts, m+body*drivers)
				}
			}
			n := float64(len(set))
			c.Parallel, c.NominalOhm, c.DCOhm = c.Parallel*len(set), c.NominalOhm/n, c.DCOhm/n
			out = append(out, c)
		}
	}
	return out
}

// checkCopies tells of copies of the body that are in one another, or do not fit into the
// room or before what the body is fixed to, and of more drivers than there may be.
func (a *Array) checkCopies(d *design.Design) error {
	bodies := a.Bodies()
	if n := len(bodies) * len(a.Mounts); n > design.MaxDrivers {
		return fault(d, "body_at", "", fmt.Sprintf("%d bodies make %d drivers; must be at most %d", len(bodies), n, design.MaxDrivers), ErrTooManyMounts)
	}
	for i, p := range bodies[1:] {
		at := fmt.Sprintf("body_at[%d]", i+1)
		for j, q := range bodies[:i+1] {
			if apart := r3.Norm(r3.Sub(p.At, q.At)); apart < 2*a.Body.Radius {
				return fault(d, at, "", prose.Sprintf("its centre is %.3g m from that of body %d; must be at least %.4g, twice body.radius_mm", apart, j+1, 2*a.Body.Radius), ErrOverlap)
			}
		}
		if err := a.checkCopy(d, at, p); err != nil {
			return err
		}
	}
	return nil
}

func (a *Array) checkCopy(d *design.Design, at string, p Placing) error {
	corner := r3.Scale(-1, a.Room.Body)
	for axis, name := range []string{"x", "y", "z"} {
		u := [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[axis]
		back, ahead := a.Body.Extent(p.In(r3.Scale(-1, u))), a.Body.Extent(p.In(u))
		key := at + "." + name + "_m"
		where, low, high := r3.Dot(p.At, u), r3.Dot(corner, u)+back, r3.Dot(r3.Add(corner, a.Room.Size), u)-ahead
		if a.Room.Present && (where < low-slack || where > high+slack) {
			return fault(d, key, d.Shown(key), prose.Sprintf("must be from %.4g to %.4g, for the body to be inside the room", low, high), ErrOutsideRoom)
		}
		s := a.Surface
		if to := Towards(s.On); s.Present && r3.Dot(to, u) != 0 && s.Gap(p.At) < a.Body.Extent(p.In(to))-slack {
			there, _, _, bound, err := s.beyond()
			return fault(d, key, d.Shown(key), prose.Sprintf("the body reaches %s; must be %s %.4g", there, bound,
				s.Height-r3.Dot(to, u)*a.Body.Extent(p.In(to))), err)
		}
	}
	return nil
}

// PlacingOf returns where the body of a mount is.
func (a *Array) PlacingOf(m Mount) Placing { return a.Bodies()[m.Body] }

// PlaceOf returns where a mount is in the room, in m.
func (a *Array) PlaceOf(m Mount) r3.Vec { return a.PlacingOf(m).Place(m.Point) }

// Towards returns the direction of the room from a body to what it is fixed to.
func Towards(on string) r3.Vec {
	switch on {
	case OnCeiling:
		return r3.Vec{Z: 1}
	case OnWall:
		return r3.Vec{X: -1}
	}
	return r3.Vec{Z: -1}
}

// Extent returns how far the first body reaches from the origin in a direction of the room's,
// of unit length, in m.
func (a *Array) Extent(towards r3.Vec) float64 {
	return a.Body.Extent(a.Bodies()[0].In(towards))
}

// Surface is a large flat surface that the body is fixed to: a table or a floor below it, a
// ceiling above it, or a wall behind it.
type Surface struct {
	Present bool
	Near    bool   // it is there, whether or not its echo is asked for: the body's own field bends round both
	On      string // surface, ceiling or wall; empty: surface
	// Height is that of a level one, in m from the origin; of a wall it is how far forward
	// from there, below 0.
	Height     float64
	Absorption Absorption
}

// Gap returns how far a point in m is off the surface, on the body's side of it; below 0 it
// is beyond.
func (s Surface) Gap(p r3.Vec) float64 {
	switch s.On {
	case OnCeiling:
		return s.Height - p.Z
	case OnWall:
		return p.X - s.Height
	}
	return p.Z - s.Height
}

// Clears tells whether a point in m is on the body's side of the surface or on it; it always
// is where there is none.
func (s Surface) Clears(p r3.Vec) bool { return !s.Present || s.Gap(p) >= 0 }

// Mirror returns what a mirror in the surface makes of a place: each coordinate times flip,
// and shift in m added.
func (s Surface) Mirror() (flip, shift r3.Vec) {
	if s.On == OnWall {
		return r3.Vec{X: -1, Y: 1, Z: 1}, r3.Vec{X: 2 * s.Height}
	}
	return r3.Vec{X: 1, Y: 1, Z: -1}, r3.Vec{Z: 2 * s.Height}
}

// beyond is what is told of a place beyond the surface: which side of what it is on, on which
// side it must be, the coordinate that decides it, which must be at least, or at most, the
// surface's, and the error.
func (s Surface) beyond() (there, here, axis, bound string, err error) {
	switch s.On {
	case OnCeiling:
		return "above the ceiling", "below it", "z", "at most", ErrAboveCeiling
	case OnWall:
		return "behind the wall", "before it", "x", "at least", ErrBehindWall
	}
	return "below the surface", "above it", "z", "at least", ErrBelowSurface
}

// surface gives what the design has the body fixed to.
func (a *Array) surface(d *design.Design) Surface {
	if !d.Surface.Present {
		return Surface{}
	}
	to := Towards(d.Placing.On)
	away := a.Extent(to) + d.Body.Stand
	return Surface{Present: true, Near: true, On: d.Placing.On, Height: away * (to.X + to.Z), Absorption: d.Surface.Absorption}
}

// FixedTo returns the surface of a room that the body is fixed to, or stands over.
func (a *Array) FixedTo() Surface {
	const back, floor, ceiling = 0, 4, 5 // of the walls
	s := Surface{Present: true, On: a.On, Height: -a.Room.Body.Z, Absorption: a.Room.Absorption[floor]}
	switch a.On {
	case OnCeiling:
		s.Height, s.Absorption = a.Room.Size.Z-a.Room.Body.Z, a.Room.Absorption[ceiling]
	case OnWall:
		s.Height, s.Absorption = -a.Room.Body.X, a.Room.Absorption[back]
	}
	return s
}

// halved tells whether something hard makes the cut body whole by its mirror image: the
// surface, or the wall of the room that the cut face looks at, where no point of the cut
// face is farther from it than the radius of the body's ball. Farther away sound goes round
// it as in open air; where on the way the one becomes the other is a judgement, not a
// measurement.
func (a *Array) halved() bool {
	away := math.Inf(1) // of the origin from the surface
	var to r3.Vec
	switch {
	case a.Room.Present:
		if to = squarest(a.Bodies()[0].Out(r3.Vec{Z: -1})); r3.Dot(to, r3.Vec{X: 1, Y: 1, Z: 1}) < 0 {
			away = -r3.Dot(to, a.Room.Body)
		} else {
			away = r3.Dot(to, r3.Sub(a.Room.Size, a.Room.Body))
		}
	case a.Surface.Present:
		to = Towards(a.Surface.On)
		away = a.Surface.Height * (to.X + to.Z)
	}
	return away-a.Body.BaseExtent(a.Bodies()[0].In(to)) < a.Body.BallRadius
}

// squarest returns the axis, or its opposite, that a direction is nearest to.
func squarest(v r3.Vec) r3.Vec {
	switch x, y, z := math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z); {
	case z >= x && z >= y:
		return r3.Vec{Z: math.Copysign(1, v.Z)}
	case x >= y:
		return r3.Vec{X: math.Copysign(1, v.X)}
	}
	return r3.Vec{Y: math.Copysign(1, v.Y)}
}

// overhead tells that a body is held where it can fall on people (common practice in what is
// hung: a second fixing that holds alone).
func overhead(a *Array) []advice.Finding {
	if a.On != OnCeiling && a.On != OnWall {
		return nil
	}
	which, it := "the body is", "it"
	if n := len(a.Bodies()); n > 1 {
		which, it = fmt.Sprintf("%d bodies are", n), "each"
	}
	return []advice.Finding{{Code: "overhead", Rank: advice.Caution,
		What: fmt.Sprintf("%s fixed to the %s, and can fall on people", which, a.On),
		Cure: fmt.Sprintf("weigh %s with its drivers and wires, fix it to what bears many times that, add a second fixing that holds it alone, and keep to local rules", it)}}
}
