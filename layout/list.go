package layout

import (
	"fmt"
	"math"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// columns of a list of mounts.
var columns = []column{
	{"x_mm", -farthestMM, farthestMM}, {"y_mm", -farthestMM, farthestMM}, {"z_mm", -farthestMM, farthestMM},
	{"nx", -longest, longest}, {"ny", -longest, longest}, {"nz", -longest, longest},
}

const (
	farthestMM  = 10000 // for a point's coordinates
	longest     = 1000  // for a normal's components before they are scaled
	shortest    = 1e-6  // for a normal before it is scaled
	mostListed  = 10000 // lines, before the cut
	mostBytes   = 1 << 20
	mostOnFace  = 1e-3   // of the radius, off a face's plane to be on it still
	leastOnFace = 0.9998 // cosine of the lean, about one degree
)

// listedMount is one line of a list: a place and where it was written.
type listedMount struct {
	Mount
	line int
}

// listed gives the mounts of the list that the design names, on or near the body.
func listed(d *design.Design, b *body.Body) ([]Mount, error) {
	path := beside(d, d.Mounts.List)
	data, err := design.ReadFile(path, mostBytes)
	if err != nil {
		return nil, err
	}
	list, err := parseList(path, data)
	if err != nil {
		return nil, err
	}
	// A builder may let drivers in or set them on blocks, but not far: what
	// follows takes the body's surface for theirs.
	most := max(10*mm, 0.1*b.Radius)
	ps := facePlanes(b)
	out := make([]Mount, len(list))
	for i, l := range list {
		face, away := -1, r3.Norm(l.Point)-b.Radius
		if !b.IsBall() {
			face = ps.towards(l.Point)
			away = r3.Dot(ps[face].normal, l.Point) - ps[face].distance
		}
		if math.Abs(away) > most {
			side := "outside"
			if away < 0 {
				side = "inside"
			}
			return nil, table{file: path}.fault(l.line, "x_mm,y_mm,z_mm", prose.Sprintf(
				"the point is %.3g mm %s the body's surface; must be within %.3g mm of it", math.Abs(away)/mm, side, most/mm), ErrBadMount)
		}
		if face >= 0 && math.Abs(away) <= mostOnFace*b.Radius && r3.Dot(ps[face].normal, l.Normal) >= leastOnFace {
			l.Face = face
		}
		out[i] = l.Mount
	}
	return out, nil
}

// parseList reads a list of mounts: a CSV table of points in mm and normals of
// any length. Points come out in m and normals as unit vectors, on no face.
// Any error is a *design.Error that names file and line.
func parseList(path string, data []byte) ([]listedMount, error) {
	var out []listedMount
	t := table{path, columns}
	err := t.read(data, func(line int, v []float64) error {
		if len(out) == mostListed {
			return t.fault(line, "", fmt.Sprintf("too many mounts; must be at most %d", mostListed), ErrTooManyMounts)
		}
		m, err := listedAt(t, line, v)
		out = append(out, listedMount{m, line})
		return err
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

// listedAt gives the mount of one line of a list.
func listedAt(t table, line int, v []float64) (Mount, error) {
	p := r3.Scale(mm, r3.Vec{X: v[0], Y: v[1], Z: v[2]})
	n := r3.Vec{X: v[3], Y: v[4], Z: v[5]}
	if r3.Norm(n) < shortest {
		return Mount{}, t.fault(line, "nx,ny,nz", "the normal has no length; must point away from the body", ErrBadMount)
	}
	if n = r3.Unit(n); !(r3.Dot(n, p) > 0) {
		return Mount{}, t.fault(line, "nx,ny,nz", "the normal does not point outward; must point away from the body", ErrBadMount)
	}
	return Mount{Point: p, Normal: n, Face: -1}, nil
}
