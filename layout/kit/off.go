package kit

import (
	"math"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// sliding is the cosine below which a direction goes along a plane, neither off it nor into it.
const sliding = 1e-6

// wayOff returns the direction that goes best away from some planes, given by their unit normals: the
// one whose least cosine to these is largest; and that cosine, below 0 where all directions go into one.
// It is towards the place nearest to the origin of the normals' convex hull (P. Wolfe, Finding the
// nearest point in a polytope, Math. Programming 11 (1976) 128). Where that is the origin none goes off
// all planes, but one may slide along those that hold it there.
func wayOff(normals []r3.Vec) (way r3.Vec, least float64) {
	return wayAcross(normals, nil)
}

// wayAcross is wayOff among the directions square to some others, at most two.
func wayAcross(normals, square []r3.Vec) (way r3.Vec, least float64) {
	flat := make([]r3.Vec, 0, len(normals))
	for _, n := range normals {
		for _, s := range square {
			n = r3.Sub(n, r3.Scale(r3.Dot(n, s), s))
		}
		if r3.Norm(n) > sliding {
			flat = append(flat, n)
		}
	}
	ways := free(square)
	if len(flat) > 0 {
		at, held := nearestOf(flat)
		switch {
		case r3.Norm(at) > sliding:
			ways = []r3.Vec{at}
		case len(held) == 2: // one against the other: along both
			if d, l := wayAcross(normals, append(square[:len(square):len(square)], r3.Unit(held[0]))); l > -sliding {
				ways = []r3.Vec{d}
			}
		case len(held) == 3: // round about, in a plane: out of it
			n := r3.Cross(r3.Sub(held[1], held[0]), r3.Sub(held[2], held[0]))
			ways = []r3.Vec{n, r3.Scale(-1, n)}
		}
	}
	least = math.Inf(-1)
	for _, d := range ways {
		d = r3.Unit(d)
		if l := r3.Dot(against(normals, d), d); l > least {
			way, least = d, l
		}
	}
	return way, least
}

// free returns directions square to some others, at most two.
func free(square []r3.Vec) []r3.Vec {
	switch len(square) {
	case 0:
		return []r3.Vec{{Z: 1}}
	case 1:
		right, _ := poly.Across(square[0])
		return []r3.Vec{right}
	}
	n := r3.Cross(square[0], square[1])
	return []r3.Vec{n, r3.Scale(-1, n)}
}

// against returns the vector that a direction goes the most against.
func against(normals []r3.Vec, way r3.Vec) (worst r3.Vec) {
	least := math.Inf(1)
	for _, n := range normals {
		if d := r3.Dot(n, way); d < least {
			worst, least = n, d
		}
	}
	return worst
}

// nearestOf returns the place nearest to the origin of the convex hull of points, and those of them,
// four at most, that hold it there.
func nearestOf(points []r3.Vec) (at r3.Vec, held []r3.Vec) {
	at, held = points[0], points[:1:1]
	for {
		next := against(points, at)
		if r3.Dot(next, at) > r3.Norm2(at)-1e-14 {
			return at, held
		}
		nearer, by := nearest(append(held[:len(held):len(held)], next))
		if r3.Norm2(nearer) >= r3.Norm2(at) {
			return at, held
		}
		at, held = nearer, by
	}
}

// nearest is nearestOf for few points: the nearest of those that three of them, two or one span.
func nearest(points []r3.Vec) (at r3.Vec, held []r3.Vec) {
	least := math.Inf(1)
	try := func(p r3.Vec, by ...r3.Vec) {
		if r3.Norm2(p) < least {
			at, held, least = p, by, r3.Norm2(p)
		}
	}
	for i, a := range points {
		try(a, a)
		for j, b := range points[:i] {
			along := r3.Sub(b, a)
			if s := -r3.Dot(a, along) / r3.Norm2(along); s > 0 && s < 1 {
				try(r3.Add(a, r3.Scale(s, along)), a, b)
			}
			for _, c := range points[:j] {
				if p, ok := footIn(a, b, c); ok {
					try(p, a, b, c)
				}
			}
		}
	}
	return at, held
}

// footIn returns the place of a triangle's plane that is nearest to the origin, and whether it is in the
// triangle.
func footIn(a, b, c r3.Vec) (r3.Vec, bool) {
	u, v := r3.Sub(b, a), r3.Sub(c, a)
	n := r3.Cross(u, v)
	size := r3.Norm2(n)
	if size < 1e-24 {
		return r3.Vec{}, false
	}
	x, y := r3.Dot(r3.Cross(v, a), n)/size, r3.Dot(r3.Cross(a, u), n)/size
	return r3.Scale(r3.Dot(a, n)/size, n), x > 0 && y > 0 && x+y < 1
}
