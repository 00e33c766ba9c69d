package fit

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/poly"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// apart returns the distance between two solids, or, where they meet, minus how
// far one would have to be moved until they no longer do. It is never above the
// truth: it is the width of a gap between two parallel planes that keeps the
// solids apart, the widest that was found. Where they are apart that is exact
// within a billionth of their size.
//
// The widest gap is square to the shortest line between the solids, which is
// the point nearest to the origin of their differences. That point is found as
// in E. G. Gilbert, D. W. Johnson, S. S. Keerthi, IEEE J. Robotics and
// Automation 4 (1988) 193: nearest points of simplices whose corners are the
// outermost differences.
//
// Where it cannot be less than a limit it need not be exact: it is at least that.
func apart(a, b *solid, limit float64) float64 {
	width, meet := gap(a, b, limit)
	if meet && width < limit {
		return max(width, clash(a, b))
	}
	return width
}

// gap is apart but for solids that meet: there it says so, and its width below
// 0 is that of the last planes tried.
func gap(a, b *solid, limit float64) (width float64, meet bool) {
	v := r3.Sub(a.middle(), b.middle())
	size := r3.Norm(r3.Sub(a.front.centre, a.back.centre)) + r3.Norm(r3.Sub(b.front.centre, b.back.centre)) +
		max(a.front.radius, a.back.radius) + max(b.front.radius, b.back.radius)
	best := math.Inf(-1)
	if r3.Norm(v) <= rounding*size {
		return best, true
	}
	var store [4]r3.Vec
	corners := store[:0]
	for range 100 {
		far := r3.Norm(v)
		u := r3.Scale(1/far, v)
		w := r3.Sub(a.support(r3.Scale(-1, u)), b.support(u))
		best = max(best, r3.Dot(u, w))
		if far-best <= rounding*size || best >= limit {
			break
		}
		corners = append(corners, w)
		v, corners = nearestOf(corners)
		if len(corners) == 4 || r3.Norm(v) <= rounding*size {
			return best, true
		}
	}
	return best, false
}

// nearestOf returns the point nearest to the origin of the simplex of up to
// four corners, and those corners, moved to the front, that it lies between.
func nearestOf(corners []r3.Vec) (r3.Vec, []r3.Vec) {
	least, keep := math.Inf(1), 0
	var nearest r3.Vec
	for set := 1; set < 1<<len(corners); set++ {
		p, ok := foot(corners, set)
		if n := r3.Norm2(p); ok && n < least {
			least, nearest, keep = n, p, set
		}
	}
	kept := corners[:0]
	for i, c := range corners {
		if keep&(1<<i) != 0 {
			kept = append(kept, c)
		}
	}
	return nearest, kept
}

// foot returns the point nearest to the origin of the point, line, plane or
// space through a set of corners; false where it is not between them.
func foot(corners []r3.Vec, set int) (r3.Vec, bool) {
	var store [4]r3.Vec
	p := store[:0]
	for i, c := range corners {
		if set&(1<<i) != 0 {
			p = append(p, c)
		}
	}
	switch len(p) {
	case 1:
		return p[0], true
	case 2:
		d := r3.Sub(p[1], p[0])
		t := -r3.Dot(p[0], d) / r3.Norm2(d)
		return r3.Add(p[0], r3.Scale(t, d)), t > 0 && t < 1
	case 3:
		n := r3.Cross(r3.Sub(p[1], p[0]), r3.Sub(p[2], p[0]))
		at := r3.Scale(r3.Dot(n, p[0])/r3.Norm2(n), n)
		inside := true
		for i := range p {
			q, s := p[i], p[(i+1)%3]
			inside = inside && r3.Dot(n, r3.Cross(r3.Sub(s, q), r3.Sub(at, q))) > 0
		}
		return at, inside
	}
	for i := range p {
		q, s, t := p[(i+1)%4], p[(i+2)%4], p[(i+3)%4]
		n := r3.Cross(r3.Sub(s, q), r3.Sub(t, q))
		if !(r3.Dot(n, r3.Sub(p[i], q))*-r3.Dot(n, q) > 0) {
			return r3.Vec{}, false
		}
	}
	return r3.Vec{}, true
}

// A clash is first looked at in groups of directions, and from the best of each
// group in rounds of ever finer steps, in rad. They set for how long it looks: with a fifth
// more or less of any it finds the same of all pairs that the tests try.
const (
	groups     = 8
	ringGroups = 2  // round each axis
	starts     = 16 // in a group
	coarsest   = 0.25
	middling   = 0.004
	followed   = 4 // from there on
	finest     = 1e-7
	rounds     = 8
	ways       = 8 // to turn to
)

var directions = spread.Spiral(groups * starts)

// clash returns minus how far one of two solids that meet must be moved, by
// looking round for the direction with the shortest way. One that is shorter by
// some percent may have been missed. Only the best few of what the groups lead to are
// followed to the finest step.
func clash(a, b *solid) float64 {
	type way struct {
		u     r3.Vec
		width float64
	}
	var store [groups + 2*ringGroups + 2]way
	found := store[:0]
	try := func(u r3.Vec, width float64) {
		u, width = climb(a, b, u, width, coarsest, middling)
		for _, f := range found {
			if r3.Norm(r3.Sub(f.u, u)) < 4*middling && f.width >= width {
				return // the same way once more
			}
		}
		found = append(found, way{u, width})
	}
	group := func(from int, at func(i int) r3.Vec) {
		best, width := r3.Vec{}, math.Inf(-1)
		for i := from; i < from+starts; i++ {
			u := at(i)
			if w := widthAlong(a, b, u); w > width {
				best, width = u, w
			}
		}
		try(best, width)
	}
	for from := 0; from < groups*starts; from += starts {
		group(from, func(i int) r3.Vec { return directions[i] })
	}
	// A thin rod is left soonest square to it, or nearly.
	for _, axis := range [2]r3.Vec{a.axis, b.axis} {
		side := r3.Unit(r3.Cross(axis, poly.LeastAlong(axis)))
		up := r3.Cross(axis, side)
		for from := 0; from < ringGroups*starts; from += starts {
			group(from, func(i int) r3.Vec {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / (ringGroups * starts))
				return r3.Add(r3.Scale(cos, side), r3.Scale(sin, up))
			})
		}
	}
	// Rods that cross part soonest square to both.
	if across := r3.Cross(a.axis, b.axis); r3.Norm(across) > rounding {
		for _, u := range []r3.Vec{r3.Unit(across), r3.Scale(-1, r3.Unit(across))} {
			try(u, widthAlong(a, b, u))
		}
	}
	slices.SortStableFunc(found, func(p, q way) int { return cmp.Compare(q.width, p.width) })
	most := math.Inf(-1)
	for _, f := range found[:min(len(found), followed)] {
		_, width := climb(a, b, f.u, f.width, middling, finest)
		most = max(most, width)
	}
	return most
}

// widthAlong returns the width of the gap between two solids along a direction
// from b to a.
func widthAlong(a, b *solid, u r3.Vec) float64 { return -a.extent(r3.Scale(-1, u)) - b.extent(u) }

// climb turns a direction until the gap along it gets no wider. Along a ridge it
// would go on in ever smaller gains: it takes a few rounds of each step.
func climb(a, b *solid, best r3.Vec, width, first, last float64) (r3.Vec, float64) {
	for step := first; step > last; step /= 2 {
		for range rounds {
			side := r3.Unit(r3.Cross(best, poly.LeastAlong(best)))
			up := r3.Cross(best, side)
			from := width
			for i := range ways {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / ways)
				way := r3.Add(r3.Scale(step*cos, side), r3.Scale(step*sin, up))
				u := r3.Unit(r3.Add(best, way))
				if w := widthAlong(a, b, u); w > width {
					best, width = u, w
				}
			}
			if width <= from {
				break
			}
		}
	}
	return best, width
}
