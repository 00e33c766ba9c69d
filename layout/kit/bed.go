package kit

import (
	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// shorter are by how much, in m, the bed is taken for smaller until all segments lie on it with
// their joints: a tongue's reach, and twice and three times that.
var shorter = []float64{reach, 2 * reach, 3 * reach}

// Segments cuts a shell for a kit, and returns the cut and the plain segments: as sheets has it
// or, where tongues or ribs would then reach over the bed's edge, smaller; as sheets has it, too,
// where smaller does not help. Errors are those of [layout.Array.Segments] and [shell.Make].
func Segments(a *layout.Array) (plan shell.Plan, meshes []poly.Mesh, err error) {
	whole, err := shell.Make(a.Body, a.Wall, a.Holes())
	if err != nil {
		return plan, nil, err
	}
	plan, meshes, fits, err := cutFor(a, whole, 0)
	if fits || err != nil {
		return plan, meshes, err
	}
	for _, less := range shorter {
		if p, parts, fits, err := cutFor(a, whole, less); err == nil && fits {
			return p, parts, nil
		}
	}
	return plan, meshes, nil
}

// cutFor cuts a shell for a bed that is smaller by a length, and tells whether all then lies on
// the whole bed.
func cutFor(a *layout.Array, whole poly.Mesh, less float64) (plan shell.Plan, parts []poly.Mesh, fits bool, err error) {
	small := *a
	small.Print.Bed = r3.Sub(a.Print.Bed, r3.Vec{X: less, Y: less, Z: less})
	if plan, err = small.Segments(); err != nil {
		return plan, nil, false, err
	}
	if parts, err = plan.Parts(whole); err != nil {
		return plan, nil, false, err
	}
	fits, err = allFit(a, plan, parts)
	return plan, parts, fits, err
}

// allFit tells whether segments lie on the bed with what joints add to them.
func allFit(a *layout.Array, plan shell.Plan, parts []poly.Mesh) (bool, error) {
	if len(parts) < 2 {
		return true, nil
	}
	w, err := newWall(a, plan)
	if err != nil {
		return false, err
	}
	more := make([][]r3.Vec, len(parts))
	for _, s := range w.seams() {
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
			return false, w.failed()
		}
	}
	return true, w.failed()
}
