package timing

import (
	"sync"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Listening is a way to hear a plan.
type Listening struct {
	Cases []Case
	Dry   bool // the body alone, without the surface below it or the room round it

	// Flat leaves out what is the same for all drivers: see Plan.DriverResponse.
	Flat bool

	// Woofer is heard too, behind its low-pass, and the array behind the high-pass, each
	// with its delay but as built; nil: the array alone. It does not go with Flat.
	Woofer *Woofer
}

// Hearing computes what is heard of a plan at places in the room, in several cases
// at once. It may be used from several goroutines.
type Hearing struct {
	plan   *Spot
	medium *radiate.Medium
	cases  int
	groups []group
	plain  []complex128 // 1 at each frequency
	// whole tells that the ways after the first are heard as one sound each, not
	// driver by driver: a room has many.
	whole   bool
	scratch sync.Pool
}

// group is sources and the cases that feed them.
type group struct {
	ways   []radiate.Image // the body first
	mounts []layout.Mount
	cases  []int          // indices into Listening.Cases
	weight [][]complex128 // for each of cases: [mount][frequency]
	middle r3.Vec         // m, of the sources
	apart  bool           // they are not on the body
}

// ear is one call's room to work.
type ear struct {
	weight, row, left, right []complex128
	point                    [1]r3.Vec
}

// NewHearing returns what hears a plan at any of the given places in m, at
// frequencies in Hz that do not fall. For one place it is exact, as the model
// goes; else the sphere's field is looked up in a table. A place that no sound can
// reach gives what layout.Array.Reach does.
func NewHearing(p *Spot, l Listening, places []r3.Vec, frequency []float64) (*Hearing, error) {
	for _, at := range places {
		if err := p.Array.Reach(at); err != nil {
			return nil, prose.Errorf("(%.3g, %.3g, %.3g) m: %w", at.X, at.Y, at.Z, err)
		}
	}
	s := p.scene(l.Dry, frequency)
	h := &Hearing{plan: p, medium: s.medium, cases: len(l.Cases), whole: s.array.Room.Present, plain: make([]complex128, len(frequency))}
	for f := range h.plain {
		h.plain[f] = 1
	}
	drivers := group{ways: s.images(), mounts: p.Array.Mounts, middle: p.Array.Body.BallCentre}
	point := group{ways: s.images(), mounts: make([]layout.Mount, 1), apart: true}
	response := h.plain
	if !l.Flat {
		response = p.response(frequency)
	}
	for i, c := range l.Cases {
		g := &drivers
		if c == IdealPoint {
			g = &point
		}
		weight := p.weights(c, frequency, response)
		if l.Woofer != nil {
			l.Woofer.fed(p, c, weight, frequency)
		}
		g.cases = append(g.cases, i)
		g.weight = append(g.weight, weight)
	}
	if l.Woofer != nil {
		h.groups = append(h.groups, l.Woofer.group(p, l.Cases, s.images(), s.medium))
	}
	if len(point.cases) > 0 {
		for i := range point.ways {
			point.ways[i].Field = radiate.Point(s.medium)
		}
		h.groups = append(h.groups, point)
	}
	if len(drivers.cases) > 0 {
		if err := s.equip(drivers.ways, places); err != nil {
			return nil, err
		}
		h.groups = append(h.groups, drivers)
	}
	h.scratch.New = func() any { return newEar(len(frequency)) }
	return h, nil
}

func newEar(n int) *ear {
	row := make([]complex128, 4*n)
	return &ear{weight: row[:n], row: row[n : 2*n], left: row[2*n : 3*n], right: row[3*n:]}
}

// At fills dst, one slice for each case, with the complex pressure at a place in m,
// for each frequency, as Plan.Transfer has it: what one ear without a head hears. It
// panics where the lengths differ. With a table it allocates nothing.
func (h *Hearing) At(dst [][]complex128, place r3.Vec) {
	h.check(dst)
	e := h.scratch.Get().(*ear)
	defer h.scratch.Put(e)
	for _, g := range h.groups {
		for m := range g.mounts {
			clear(e.row)
			for _, way := range g.ways {
				e.add(e.row, h.plain, g.mounts[m], way, place)
			}
			g.feed(dst, e.row, m)
		}
	}
}

// check panics where dst is not one slice of the right length for each case, and
// clears it.
func (h *Hearing) check(dst [][]complex128) {
	if len(dst) != h.cases {
		panic("timing: lengths differ")
	}
	for _, row := range dst {
		if len(row) != len(h.plain) {
			panic("timing: lengths differ")
		}
		clear(row)
	}
}

// add adds one mount by one way to dst.
func (e *ear) add(dst, plain []complex128, mount layout.Mount, way radiate.Image, place r3.Vec) {
	weight := plain
	if way.Factor != nil {
		weight = e.weight
		for f, factor := range way.Factor {
			weight[f] = complex(factor, 0)
		}
	}
	e.point[0] = way.Moved(place)
	way.Field.Add(dst, mount, e.point[:], weight)
}

// feed adds what is heard of mount m to each case, as that feeds it.
func (g *group) feed(dst [][]complex128, heard []complex128, m int) {
	for i, c := range g.cases {
		weight := g.weight[i][m*len(heard) : (m+1)*len(heard)]
		sum := dst[c]
		for f, v := range heard {
			sum[f] += weight[f] * v
		}
	}
}
