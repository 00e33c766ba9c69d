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
	field  radiate.Field
	ways   []radiate.Way // the bodies first
	bodies int
	mounts []layout.Mount
	fed    [][]fed // of each mount: where it is heard
	middle r3.Vec  // m, of the sources
	apart  bool    // they are not on the body
}

// fed is one of what a mount is heard in: a case, or a part of one.
type fed struct {
	row    int          // which
	weight []complex128 // for each frequency; nil: 1
}

// ear is one call's room to work.
type ear struct {
	heard       []complex128 // [mount][frequency], of together mounts
	left, right []complex128
}

// NewHearing returns what hears a plan at any of the given places in m, at
// frequencies in Hz. A place that no sound can reach gives what layout.Array.Reach does.
func NewHearing(p *Spot, l Listening, places []r3.Vec, frequency []float64) (*Hearing, error) {
	for _, at := range places {
		if err := p.Array.Reach(at); err != nil {
			return nil, prose.Errorf("(%.3g, %.3g, %.3g) m: %w", at.X, at.Y, at.Z, err)
		}
	}
	h, drivers, point, err := newHearing(p, l.Dry, len(places) > 1, frequency)
	if err != nil {
		return nil, err
	}
	h.cases = len(l.Cases)
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
		g.feedCase(i, weight)
	}
	if l.Woofer != nil {
		woofer := l.Woofer.group(p, point)
		for i, c := range l.Cases {
			woofer.feedCase(i, l.Woofer.weights(p, c, frequency))
		}
		h.groups = append(h.groups, woofer)
	}
	if point.fed != nil {
		h.groups = append(h.groups, point)
	}
	if drivers.fed != nil {
		h.groups = append(h.groups, drivers)
	}
	return h, nil
}

// newHearing returns a Hearing of no cases, and the drivers and the ideal point that are not
// fed yet; quick is for many places (radiate.Scene.Quick).
func newHearing(p *Spot, dry, quick bool, frequency []float64) (h *Hearing, drivers, point group, err error) {
	s, err := newScene(p.scene(dry), frequency)
	if err != nil {
		return nil, drivers, point, err
	}
	h = &Hearing{plan: p, medium: s.Medium, whole: s.Array.Room.Present, plain: plain(len(frequency))}
	drivers = group{field: s.Field, ways: s.Ways, bodies: len(s.Direct()), mounts: p.Array.Mounts, middle: p.Array.Body.BallCentre}
	point = group{field: radiate.Point(s.Medium), ways: radiate.InRoom(s.Ways), bodies: 1, mounts: make([]layout.Mount, 1), apart: true}
	if quick {
		drivers.field = s.Quick
	}
	h.scratch.New = func() any { return newEar(min(together, len(p.Array.Mounts)), len(frequency)) }
	return h, drivers, point, nil
}

// together is how many mounts are heard at once: more take more room, fewer more time.
const together = 64

func newEar(mounts, n int) *ear {
	return &ear{heard: make([]complex128, mounts*n), left: make([]complex128, n), right: make([]complex128, n)}
}

// plain returns 1 at so many frequencies.
func plain(n int) []complex128 {
	one := make([]complex128, n)
	for f := range one {
		one[f] = 1
	}
	return one
}

// At fills dst, one slice for each case, with the complex pressure at a place in m,
// for each frequency, as Plan.Transfer has it: what one ear without a head hears. It
// panics where the lengths differ, and allocates nothing once it has been called.
func (h *Hearing) At(dst [][]complex128, place r3.Vec) {
	h.check(dst)
	e := h.scratch.Get().(*ear)
	defer h.scratch.Put(e)
	for _, g := range h.groups {
		for _, way := range g.ways {
			e.each(&g, g.mounts, way, place, func(m int, heard []complex128) { g.feed(dst, heard, m) })
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

// each calls visit with what a place hears of each of a group's mounts, or of some of them in
// the order of their bodies, by one way, which is that of one body; visit may not keep it.
func (e *ear) each(g *group, mounts []layout.Mount, way radiate.Way, place r3.Vec, visit func(i int, heard []complex128)) {
	n := len(e.left)
	first, end := radiate.Of(mounts, way.Body)
	for from := first; from < end; from += together {
		lot := mounts[from:min(from+together, end)]
		g.field.At(e.heard[:len(lot)*n], lot, way.Moved(place))
		for i := range lot {
			row := e.heard[i*n : (i+1)*n]
			for f, factor := range way.Factor {
				row[f] *= complex(factor, 0)
			}
			visit(from+i, row)
		}
	}
}

// feedCase has the mounts heard in a case, with weights [mount][frequency].
func (g *group) feedCase(c int, weight []complex128) {
	if g.fed == nil {
		g.fed = make([][]fed, len(g.mounts))
	}
	n := len(weight) / len(g.mounts)
	for m := range g.mounts {
		g.fed[m] = append(g.fed[m], fed{c, weight[m*n : (m+1)*n]})
	}
}

// feed adds what is heard of mount m to all that it is heard in, as that feeds it.
func (g *group) feed(dst [][]complex128, heard []complex128, m int) {
	for _, to := range g.fed[m] {
		sum := dst[to.row]
		if to.weight == nil {
			for f, v := range heard {
				sum[f] += v
			}
			continue
		}
		for f, v := range heard {
			sum[f] += to.weight[f] * v
		}
	}
}
