package shell

import (
	"cmp"
	"slices"

	"pappus/layout/body"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Cell is a site's share of the shell: what is nearer to its direction from the centre
// than to any other's (G. Voronoi, J. reine angew. Math. 134 (1908) 198, on the sphere).
// Its sides are planes through the centre, midway between two sites. Sites are the mounts
// and, where their cells are too large, places between them.
type Cell struct{ Sides []Side }

// Side is one side of a cell.
type Side struct {
	Normal r3.Vec // unit length, out of the cell
	Beyond int    // index of the cell there
}

// share is a cell with what it measures.
type share struct {
	Cell
	gaps         []float64 // m, by side, from the cut-out to it; from the point where there is none
	volume, area float64
	points       []r3.Vec // whose box is that of the cell, however it is turned about z
	low, high    float64  // m
}

// facing is the division of the icosahedron that stands for a ball where its cells are
// measured; it stands out by 0.003 of the radius.
const facing = 10

// shares measures all cells; nil where two sites have one direction.
func (c *cutter) shares() []share {
	outer, inner := c.stock.outer, c.stock.inner
	if c.stock.body.IsBall() {
		outer, inner = c.facetted()
	}
	out := make([]share, len(c.sites))
	for i := range out {
		if !c.share(&out[i], i, outer, inner) {
			return nil
		}
	}
	c.exact(out)
	return out
}

// facetted returns flat pieces that lie about a ball, and its hollow.
func (c *cutter) facetted() (outer, inner poly.Solid) {
	b := c.stock.body
	even, err := body.Geodesic("icosahedron", facing, 1)
	if err != nil {
		c.stock.err = err
	}
	least := 1.0
	for f := range even.Faces {
		least = min(least, even.Plane(f).Offset)
	}
	of := func(radius float64) poly.Solid {
		s := even.Solid.Times(radius / least)
		if b.IsCut {
			s = c.stock.within(s, seam, poly.Plane{Normal: r3.Vec{Z: -1}, Offset: -b.Cut})
		}
		return s
	}
	return of(b.Radius), of(b.Radius - c.stock.wall)
}

// share measures the cell of one site.
func (c *cutter) share(s *share, i int, outer, inner poly.Solid) bool {
	at := r3.Unit(c.sites[i].Point)
	others := make([]int, 0, len(c.sites)-1)
	for j := range c.sites {
		if j != i {
			others = append(others, j)
		}
	}
	near := func(j int) float64 { return r3.Dot(at, r3.Unit(c.sites[j].Point)) }
	slices.SortStableFunc(others, func(j, k int) int { return cmp.Compare(near(k), near(j)) })
	planes := make([]poly.Plane, len(others))
	for k, j := range others {
		away := r3.Sub(r3.Unit(c.sites[j].Point), at)
		if r3.Norm(away) < 1e-6 {
			return false
		}
		planes[k].Normal = r3.Unit(away)
	}
	const first = seam + 1 // after the base of a ball
	outer, inner = c.stock.within(outer, first, planes...), c.stock.within(inner, first, planes...)
	for f, face := range outer.Faces {
		if k := face.Cut - first; k >= 0 && r3.Norm(outer.AreaVector(f)) >= 1e3*c.stock.slack*c.stock.slack {
			s.Sides = append(s.Sides, Side{planes[k].Normal, others[k]})
			s.gaps = append(s.gaps, c.sites[i].gap(planes[k].Normal))
		}
	}
	s.volume, s.area = outer.Volume()-inner.Volume(), skinOf(outer)
	s.points = c.stock.outline(outer, inner)
	if len(s.points) == 0 {
		return false
	}
	s.low, s.high = poly.Span(s.points)
	s.points, _ = hull(s.points)
	return true
}

// skinOf returns the area of the body's surface on a solid, in m2.
func skinOf(s poly.Solid) float64 { return s.Area(func(f poly.Face) bool { return f.Cut < seam }) }

// gap returns how far a disc is from a plane through the origin that it is behind.
func (c Hole) gap(normal r3.Vec) float64 { return -r3.Dot(c.Point, normal) - c.extent(normal) }

// exact brings what flat pieces measure of a ball to the ball's own volume and area.
func (c *cutter) exact(cells []share) {
	if !c.stock.body.IsBall() {
		return
	}
	b, volume, area := c.stock.body, 0.0, 0.0
	for _, s := range cells {
		volume, area = volume+s.volume, area+s.area
	}
	v := (b.Volume() - c.stock.hollow(b.Span())) / volume
	a := b.Area() / area
	for i := range cells {
		cells[i].volume, cells[i].area = v*cells[i].volume, a*cells[i].area
	}
}
