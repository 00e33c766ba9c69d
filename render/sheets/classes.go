package sheets

import (
	"slices"

	"pappus/layout"
	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// same is the length over the radius within which faces count as alike: a
// hundredth of a mm on a body of 1 m.
const same = 1e-5

// edgeNames gives for each of Body.Edges() the name of its class.
func edgeNames(b *body.Body) []string {
	out := make([]string, len(b.Edges()))
	for _, c := range b.EdgeClasses() {
		for _, e := range c.Edges {
			out[e] = c.Name
		}
	}
	return out
}

// beyond is what lies past an edge of a face.
type beyond struct {
	edge int // index into Body.Edges()
	face int
	at   int // number of the edge there
}

// beyondOf returns for each edge of each face what lies past it.
func beyondOf(b *body.Body) [][]beyond {
	out := make([][]beyond, len(b.Faces))
	for f, face := range b.Faces {
		out[f] = make([]beyond, len(face.Corners))
	}
	for i, e := range b.Edges() {
		// The first of its faces runs from A to B, the second from B to A.
		f, g := e.Faces[0], e.Faces[1]
		k, l := slices.Index(b.Faces[f].Corners, e.A), slices.Index(b.Faces[g].Corners, e.B)
		out[f][k], out[g][l] = beyond{i, g, l}, beyond{i, f, k}
	}
	return out
}

// faceClass is faces that one template serves: alike in outline and in where
// their mounts sit.
type faceClass struct {
	faces  []int
	turned []int // of these, those that take the template turned over
	mounts []int // indices into Array.Mounts, of all faces
	base   bool
}

// flatFace is a face in its own plane, in m, seen from outside.
type flatFace struct {
	corners []r2.Vec
	mounts  []r2.Vec
}

// flatten lays a face flat with a corner at the origin and the edge from it
// along x.
func flatten(a *layout.Array, face, corner int, on []int) flatFace {
	b := a.Body
	c := b.Faces[face].Corners
	n := len(c)
	origin := b.Vertices[c[corner]]
	right := r3.Unit(r3.Sub(b.Vertices[c[(corner+1)%n]], origin))
	up := r3.Cross(b.Normal(face), right)
	flat := func(p r3.Vec) r2.Vec {
		d := r3.Sub(p, origin)
		return r2.Vec{X: r3.Dot(d, right), Y: r3.Dot(d, up)}
	}
	var f flatFace
	for i := range n {
		f.corners = append(f.corners, flat(b.Vertices[c[(corner+i)%n]]))
	}
	for _, m := range on {
		f.mounts = append(f.mounts, flat(a.Seat(a.Mounts[m])))
	}
	return f
}

// turnedOver lays a face out the other way round, its first edge in place.
func (f flatFace) turnedOver() flatFace {
	shift := f.corners[1].X
	flip := func(p r2.Vec) r2.Vec { return r2.Vec{X: shift - p.X, Y: p.Y} }
	var out flatFace
	n := len(f.corners)
	for i := range n {
		out.corners = append(out.corners, flip(f.corners[(1-i+n)%n]))
	}
	for _, m := range f.mounts {
		out.mounts = append(out.mounts, flip(m))
	}
	return out
}

// isLike tells whether two faces lie on each other, within a length in m.
func (f flatFace) isLike(g flatFace, slack float64) bool {
	if len(f.corners) != len(g.corners) || len(f.mounts) != len(g.mounts) {
		return false
	}
	near := func(p, q r2.Vec) bool { return r2.Norm(r2.Sub(p, q)) < slack }
	if !slices.EqualFunc(f.corners, g.corners, near) {
		return false
	}
	for _, m := range f.mounts {
		if !slices.ContainsFunc(g.mounts, func(q r2.Vec) bool { return near(m, q) }) {
			return false
		}
	}
	return true
}

// mountsOn returns the mounts on each face, as indices into Array.Mounts.
func mountsOn(a *layout.Array) [][]int {
	on := make([][]int, len(a.Body.Faces))
	for i, m := range a.Own() {
		if m.Face >= 0 {
			on[m.Face] = append(on[m.Face], i)
		}
	}
	return on
}

// faceClasses sorts faces into those that one template serves.
func faceClasses(a *layout.Array) []faceClass {
	on := mountsOn(a)
	var classes []faceClass
	var models []flatFace
	slack := 4 * same * a.Body.Radius
	for f, face := range a.Body.Faces {
		fits := func(over bool) int {
			return slices.IndexFunc(models, func(m flatFace) bool {
				for k := range face.Corners {
					flat := flatten(a, f, k, on[f])
					if over {
						flat = flat.turnedOver()
					}
					if flat.isLike(m, slack) {
						return true
					}
				}
				return false
			})
		}
		at, over := -1, false
		if !face.Base() {
			at = fits(false)
			if at < 0 {
				at = fits(true)
				over = at >= 0
			}
		}
		if at < 0 {
			at = len(classes)
			classes = append(classes, faceClass{base: face.Base()})
			models = append(models, flatten(a, f, 0, on[f]))
		}
		c := &classes[at]
		c.faces = append(c.faces, f)
		if over {
			c.turned = append(c.turned, f)
		}
		c.mounts = append(c.mounts, on[f]...)
	}
	return classes
}
