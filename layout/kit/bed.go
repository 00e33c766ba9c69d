package kit

import (
	"slices"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// shorter are by how much, in m, the bed is taken for smaller until all segments lie on it with
// their joints: a tongue's reach, and twice and three times that.
var shorter = []float64{reach, 2 * reach, 3 * reach} // free: nothing but the cut hangs on it

// Segments cuts a shell for a kit, and returns the cut and the plain segments, in an order in which they
// go together: as sheets has it or, where tongues or ribs would then reach over the bed's edge or no
// order is found, smaller; as sheets has it, too, where smaller does not help. Errors are those of
// [layout.Array.Segments] and [shell.Make], or wrap [ErrOrder].
func Segments(a *layout.Array) (plan shell.Plan, meshes []poly.Mesh, err error) {
	whole, err := shell.Make(a.Body, a.Wall, a.Holes())
	if err != nil {
		return plan, nil, err
	}
	first, err := cutFor(a, whole, 0)
	if err != nil {
		return plan, nil, err
	}
	best := first
	for _, less := range shorter {
		if best.fits && best.stuck == nil {
			break
		}
		if c, err := cutFor(a, whole, less); err == nil && c.stuck == nil && (c.fits || best.stuck != nil) {
			best = c
		}
	}
	if best.stuck != nil {
		return plan, nil, stuck(best.stuck)
	}
	return best.plan, best.parts, nil
}

// parting is a shell cut for a kit.
type parting struct {
	plan  shell.Plan
	parts []poly.Mesh
	fits  bool  // the bed, with joints
	stuck []int // segments that no order puts together
}

// cutFor cuts a shell for a bed that is smaller by a length, puts the segments into an order in which
// they go together, and tells whether all then lies on the whole bed.
func cutFor(a *layout.Array, whole poly.Mesh, less float64) (c parting, err error) {
	small := *a
	small.Print.Bed = r3.Sub(a.Print.Bed, r3.Vec{X: less, Y: less, Z: less})
	if c.plan, err = small.Segments(); err != nil {
		return c, err
	}
	if c.parts, err = c.plan.Parts(whole); err != nil || len(c.parts) < 2 {
		c.fits = true
		return c, err
	}
	w, err := newWall(a, c.plan)
	if err != nil {
		return c, err
	}
	seams := w.seams()
	byHand, ok := order(w.obstacles(seams, a.Kit))
	if !ok {
		c.stuck = byHand
		return c, w.failed()
	}
	if !slices.IsSorted(byHand) {
		c.renumber(byHand)
		if w, err = newWall(a, c.plan); err != nil {
			return c, err
		}
		seams = w.seams()
	}
	c.fits = w.allFit(a, seams, c.parts)
	return c, w.failed()
}

// renumber puts segments into an order.
func (c *parting) renumber(order []int) {
	segments, parts := make([]shell.Segment, len(order)), make([]poly.Mesh, len(order))
	for i, from := range order {
		segments[i], parts[i] = c.plan.Segments[from], c.parts[from]
	}
	c.plan.Segments, c.parts = segments, parts
}

// allFit tells whether segments lie on the bed with what joints add to them.
func (w *wall) allFit(a *layout.Array, seams []seam, parts []poly.Mesh) bool {
	more := make([][]r3.Vec, len(parts))
	for _, s := range seams {
		one, other := w.regions[s.a].Segment, w.regions[s.b].Segment
		for _, p := range s.points {
			in := r3.Scale(-flangeTall, r3.Unit(p))
			if a.Kit.Joint == Flange {
				more[one], more[other] = append(more[one], r3.Add(p, in)), append(more[other], r3.Add(p, in))
				continue
			}
			for _, deep := range []float64{a.Kit.Gap, a.Kit.Gap + a.Wall} { // of the tongue
				from := r3.Scale(s.plane.Offset, s.plane.Normal)
				at, _ := w.hit(from, r3.Sub(r3.Add(p, r3.Scale(reach, s.plane.Normal)), from), a.Wall+deep)
				more[one] = append(more[one], at)
			}
		}
	}
	for i, m := range parts {
		m.Vertices = append(m.Vertices[:len(m.Vertices):len(m.Vertices)], more[i]...)
		if !Lay(Part{Mesh: m}, a.Print.Bed).Fits {
			return false
		}
	}
	return true
}
