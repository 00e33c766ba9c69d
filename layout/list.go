package layout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pappus/layout/body"
	"pappus/layout/csvtable"
	"pappus/layout/design"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// columns of a list of mounts.
var columns = []csvtable.Column{
	{Name: "x_mm", Low: -farthestMM, High: farthestMM},
	{Name: "y_mm", Low: -farthestMM, High: farthestMM},
	{Name: "z_mm", Low: -farthestMM, High: farthestMM},
	{Name: "nx", Low: -longest, High: longest},
	{Name: "ny", Low: -longest, High: longest},
	{Name: "nz", Low: -longest, High: longest},
	{Name: "number", Low: 1, High: mostListed, Optional: true},
}

const (
	farthestMM  = 10000 // for a point's coordinates
	longest     = 1000  // for a normal's components before they are scaled
	shortest    = 1e-6  // for a normal before it is scaled
	mostListed  = 10000 // lines, before the cut, and the highest number
	mostBytes   = 1 << 20
	leastOnFace = 0.9998 // cosine of the lean, about one degree
)

// listedMount is one line of a list: a place and where it was written.
type listedMount struct {
	Mount
	line int
}

// listed gives the mounts of the list that the design names, on or near the body, with
// the numbers that they have there: those of the column number, else 1 for the first row
// of numbers, 2 for the next. They are the builder's own, on the drawing that the list
// comes from, so nothing that is cut away, kept clear or skipped moves them.
func listed(d *design.Design, b *body.Body) ([]Mount, error) {
	path := beside(d, d.Mounts.List)
	data, err := design.ReadFile(path, mostBytes)
	if err != nil {
		return nil, ofFile(d, listKey, d.Mounts.List, err)
	}
	list, err := parseList(path, data)
	if err != nil {
		return nil, ofFile(d, listKey, d.Mounts.List, err)
	}
	for _, id := range d.Mounts.Skip {
		if !slices.ContainsFunc(list, func(l listedMount) bool { return l.ID == id }) {
			return nil, fault(d, "mounts.skip", "", fmt.Sprintf("there is no mount %d in %s; must be a number of the list", id, d.Mounts.List), ErrNoSuchMount)
		}
	}
	out := make([]Mount, len(list))
	for i, l := range list {
		out[i] = l.Mount
	}
	if len(out) == 0 {
		return out, nil
	}
	return out, ofFile(d, listKey, d.Mounts.List, findFaces(out, list, path, b))
}

// listKey names the list of places.
const listKey = "mounts.list"

// findFaces finds the faces of listed mounts; an error tells of one far off the body.
func findFaces(dst []Mount, list []listedMount, path string, b *body.Body) error {
	// A builder may let drivers in or set them on blocks, but not far: what
	// follows takes the body's surface for theirs.
	most := max(10*mm, 0.1*b.Radius)
	ps := facePlanes(b)
	o := offsets(b, dst)
	for i := range dst {
		m := &dst[i]
		if math.Abs(o.away[i]) > most {
			return csvtable.Table{File: path}.Fault(list[i].line, "x_mm,y_mm,z_mm", prose.Sprintf(
				"the point of mount %d is %.1f mm %s the body's surface; must be within %.3g mm of it; all points together fit radius_mm = %.1f best",
				m.ID, math.Abs(o.away[i])/mm, side(o.away[i]), most/mm, o.best/mm), design.ErrRange)
		}
		if b.IsBall() {
			continue
		}
		if face := ps.towards(m.Point); r3.Dot(ps[face].normal, m.Normal) >= leastOnFace {
			m.Face = face
		}
	}
	return nil
}

// parseList reads a list of mounts: a CSV table of points in mm and normals of
// any length, and numbers if it has them. Points come out in m and normals as unit
// vectors, on no face, in the order of their numbers. Any error is a *design.Error that
// names file and line.
func parseList(path string, data []byte) ([]listedMount, error) {
	var out []listedMount
	t := csvtable.Table{File: path, Columns: columns}
	lines := make(map[int]int) // by number
	err := t.Read(data, func(line int, v []float64) error {
		if len(out) == mostListed {
			return t.Fault(line, "", fmt.Sprintf("too many mounts; must be at most %d", mostListed), ErrTooManyMounts)
		}
		m, err := listedAt(t, line, v)
		if err != nil {
			return err
		}
		m.ID = len(out) + 1
		if n := v[len(v)-1]; !math.IsNaN(n) {
			if m.ID = int(n); n != math.Trunc(n) {
				e := t.Fault(line, "number", fmt.Sprintf("must be a whole number from 1 to %d", mostListed), design.ErrType)
				e.Value = prose.Sprintf("%.10g", n)
				return e
			}
			if at, taken := lines[m.ID]; taken {
				e := t.Fault(line, "number", fmt.Sprintf("line %d has it already; must be different for each mount", at), design.ErrRange)
				e.Value = fmt.Sprint(m.ID)
				return e
			}
		}
		lines[m.ID] = line
		out = append(out, listedMount{m, line})
		return nil
	})
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(out, func(p, q listedMount) int { return cmp.Compare(p.ID, q.ID) })
	return out, nil
}

// listedAt gives the mount of one line of a list.
func listedAt(t csvtable.Table, line int, v []float64) (Mount, error) {
	p := r3.Scale(mm, r3.Vec{X: v[0], Y: v[1], Z: v[2]})
	n := r3.Vec{X: v[3], Y: v[4], Z: v[5]}
	if r3.Norm(n) < shortest {
		return Mount{}, t.Fault(line, "nx,ny,nz", "the normal has no length; must point away from the body", design.ErrRange)
	}
	if n = r3.Unit(n); !(r3.Dot(n, p) > 0) {
		return Mount{}, t.Fault(line, "nx,ny,nz", "the normal does not point outward; must point away from the body", design.ErrRange)
	}
	return Mount{Point: p, Normal: n, Face: -1}, nil
}
