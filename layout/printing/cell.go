package printing

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/body"

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
	if outer == nil || inner == nil {
		return nil
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
func (c *cutter) facetted() (outer, inner solid) {
	b := c.stock.body
	even, err := body.Geodesic("icosahedron", facing, 1)
	if err != nil {
		return nil, nil
	}
	least := 1.0
	for f := range even.Faces {
		least = min(least, r3.Dot(even.Normal(f), even.Vertices[even.Faces[f].Corners[0]]))
	}
	of := func(radius, base float64) solid {
		s := solidOf(even)
		for f := range s {
			for i := range s[f].points {
				s[f].points[i] = r3.Scale(radius/least, s[f].points[i])
			}
		}
		if b.IsCut {
			s = s.clip(half{r3.Vec{Z: -1}, -base}, c.stock.slack)
		}
		return s
	}
	low, high := c.stock.hollowSpan()
	return of(b.Radius, b.Cut), of(high, low)
}

// share measures the cell of one site.
func (c *cutter) share(s *share, i int, outer, inner solid) bool {
	at := r3.Unit(c.sites[i].Point)
	others := make([]int, 0, len(c.sites)-1)
	for j := range c.sites {
		if j != i {
			others = append(others, j)
		}
	}
	near := func(j int) float64 { return r3.Dot(at, r3.Unit(c.sites[j].Point)) }
	slices.SortStableFunc(others, func(j, k int) int { return cmp.Compare(near(k), near(j)) })
	slack := c.stock.slack
	var sides []Side
	for _, j := range others {
		away := r3.Sub(r3.Unit(c.sites[j].Point), at)
		if r3.Norm(away) < 1e-6 {
			return false
		}
		n := r3.Unit(away)
		outer, inner = outer.clip(half{n, 0}, slack), inner.clip(half{n, 0}, slack)
		sides = append(sides, Side{n, j})
	}
	for _, side := range sides {
		if !outer.has(side.Normal, slack) {
			continue
		}
		s.Sides = append(s.Sides, side)
		s.gaps = append(s.gaps, c.sites[i].gap(side.Normal))
	}
	s.volume, s.area = outer.volume()-inner.volume(), outer.skin()
	for _, f := range slices.Concat(outer, inner) {
		for _, v := range f.points {
			if c.stock.inWall(v) {
				s.points = append(s.points, v)
			}
		}
	}
	if len(s.points) == 0 {
		return false
	}
	s.low, s.high = math.Inf(1), math.Inf(-1)
	for _, v := range s.points {
		s.low, s.high = min(s.low, v.Z), max(s.high, v.Z)
	}
	s.points, _ = hull(s.points)
	return true
}

// gap returns how far a disc is from a plane through the origin that it is behind.
func (c cutout) gap(normal r3.Vec) float64 { return -r3.Dot(c.Point, normal) - c.extent(normal) }

// has tells whether a face of a solid that a cut left is in a plane through the origin.
func (s solid) has(normal r3.Vec, slack float64) bool {
	for _, f := range s {
		if f.skin || len(f.points) < 3 || r3.Norm(f.vector()) < 1e3*slack*slack {
			continue
		}
		if !slices.ContainsFunc(f.points, func(p r3.Vec) bool { return math.Abs(r3.Dot(p, normal)) > 100*slack }) {
			return true
		}
	}
	return false
}

// inWall tells whether a point is on the wall, not in the hollow.
func (p *stock) inWall(v r3.Vec) bool {
	if !p.body.IsBall() {
		return !p.inHollow(v)
	}
	low, high := p.hollowSpan()
	return r3.Norm(v) > high*(1-1e-9) || p.body.IsCut && v.Z < low-p.slack
}

// exact brings what flat pieces measure of a ball to the ball's own volume and area.
func (c *cutter) exact(cells []share) {
	if !c.stock.body.IsBall() {
		return
	}
	b, volume, area := c.stock.body, 0.0, 0.0
	for _, s := range cells {
		volume, area = volume+s.volume, area+s.area
	}
	low, high := c.stock.span()
	v := (b.Volume() - c.stock.hollow(low, high)) / volume
	a := b.Area() / area
	for i := range cells {
		cells[i].volume, cells[i].area = v*cells[i].volume, a*cells[i].area
	}
}
