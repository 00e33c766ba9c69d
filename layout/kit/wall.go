package kit

import (
	"math"
	"sync"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// wall is what segments are parts of: the room behind its planes, by depth.
type wall struct {
	planes  []poly.Plane // of the outside
	floor   *poly.Plane  // of the cut; nil: there is none
	thick   float64
	radius  float64
	regions []shell.Region
	depths  map[float64]poly.Solid
	mu      sync.Mutex
	err     error
}

// fail keeps the first error.
func (w *wall) fail(err error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.err == nil {
		w.err = err
	}
}

func (w *wall) failed() error {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.err
}

func newWall(a *layout.Array, plan shell.Plan) (*wall, error) {
	planes, err := shell.Planes(a.Body, a.Holes())
	w := &wall{planes: planes, thick: a.Wall, radius: a.Body.Radius, regions: plan.Regions(), depths: make(map[float64]poly.Solid)}
	if a.Body.IsCut {
		w.floor = &poly.Plane{Normal: r3.Vec{Z: -1}, Offset: -a.Body.Cut}
	}
	return w, err
}

// slack is the length over the radius within which a corner is on a plane; as for the shell.
const slack = 1e-5

// under returns what is deeper in the body than a depth.
func (w *wall) under(depth float64) poly.Solid {
	s, ok := w.depths[depth]
	if !ok {
		all := about(w.planes, -depth)
		if w.floor != nil { // below it, each elsewhere: what lies in one plane is cut along all of it
			all = append(all, poly.Plane{Normal: w.floor.Normal, Offset: w.floor.Offset + 0.1e-3 + depth/50})
		}
		var err error
		if s, err = poly.Meet(all, w.radius, slack*w.radius); err != nil {
			w.fail(err)
		}
		w.depths[depth] = s
	}
	return s
}

// within returns what of a solid is in half-spaces.
func (w *wall) within(s poly.Solid, sets ...[]poly.Plane) poly.Solid {
	for _, planes := range sets {
		var err error
		if s, err = s.Within(1, 1e-9*w.radius, planes...); err != nil {
			w.fail(err)
		}
	}
	return s
}

// hit returns where a ray from a place inside meets the planes at a depth, or the cut, and
// which first.
func (w *wall) hit(from, along r3.Vec, depth float64) (at r3.Vec, plane poly.Plane) {
	least := math.Inf(1)
	try := func(p poly.Plane) {
		if fall := r3.Dot(p.Normal, along); fall > 1e-12 {
			if d := (p.Offset - r3.Dot(p.Normal, from)) / fall; d < least {
				least, plane = d, p
			}
		}
	}
	for _, p := range w.planes {
		p.Offset -= depth
		try(p)
	}
	if w.floor != nil {
		try(*w.floor)
	}
	return r3.Add(from, r3.Scale(least, along)), plane
}

// on returns a pole at a depth that is straight out from a place and points inward, its up as
// near to a direction as can be.
func (w *wall) on(from, along, up r3.Vec, depth float64) pole {
	at, plane := w.hit(from, along, depth)
	return poleAt(at, r3.Scale(-1, plane.Normal)).upright(up)
}

// seam is where two segments meet, along a plane.
type seam struct {
	number int        // among all
	a, b   int        // regions
	plane  poly.Plane // its normal from a to b
	points []r3.Vec   // on the inside of the wall, two degrees apart or less
}

// seams finds all of them: regions of two segments that have a plane in common and meet there.
func (w *wall) seams() (out []seam) {
	for i, a := range w.regions {
		for j, b := range w.regions {
			if a.Segment >= b.Segment {
				continue
			}
			for k, p := range a.Sides {
				// Half a turn has one plane on either side.
				if !w.has(b.Sides, p) || w.has(a.Sides[:k], poly.Plane{Normal: r3.Scale(-1, p.Normal), Offset: -p.Offset}) {
					continue
				}
				s := seam{number: len(out), a: i, b: j, plane: p}
				if s.points = w.along(s); len(s.points) > 0 {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

// has tells whether one of some planes is another one's far side.
func (w *wall) has(planes []poly.Plane, p poly.Plane) bool {
	for _, q := range planes {
		if r3.Norm(r3.Add(p.Normal, q.Normal)) < 1e-9 && math.Abs(p.Offset+q.Offset) < 1e-9*w.radius {
			return true
		}
	}
	return false
}

// along samples the inside of the wall along a seam: each two degrees, and closely where a seam
// is so short that it falls between.
func (w *wall) along(s seam) []r3.Vec {
	if out := w.sampled(s, 180); len(out) > 0 {
		return out
	}
	return w.sampled(s, 7200)
}

func (w *wall) sampled(s seam, count int) (out []r3.Vec) {
	right, up := poly.Across(s.plane.Normal)
	from := r3.Scale(s.plane.Offset, s.plane.Normal)
	near := 1e-6 * w.radius
	a, b := w.regions[s.a].Sides, w.regions[s.b].Sides
	central := isCentral(a) && isCentral(b)
	for i := range count {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(count))
		along := r3.Add(r3.Scale(cos, right), r3.Scale(sin, up))
		if central && min(inside(a, along), inside(b, along)) < -near/w.thick { // whatever it hits
			continue
		}
		at, plane := w.hit(from, along, w.thick)
		if w.floor != nil && plane == *w.floor { // no wall: the open base, through which or from below which the ray comes
			continue
		}
		if min(inside(a, at), inside(b, at)) < -near {
			continue
		}
		if w.floor != nil && w.floor.Above(at) > 0 {
			continue
		}
		out = append(out, at)
	}
	return out
}

// isCentral tells whether all of some planes go through the centre, so that a ray from there is on one
// side of each.
func isCentral(planes []poly.Plane) bool {
	for _, p := range planes {
		if p.Offset != 0 {
			return false
		}
	}
	return true
}
