package poly

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Alike is the length over the size of a thing within which points count as one, as level, or
// as lying on a surface. It is far over rounding, and on the largest body that anyone builds
// far under what a saw or a printer keeps.
const Alike = 1e-6

// Order returns the indices of points from the top down and, those of one height, by azimuth
// from x and then from the axis outward. Heights and azimuths that differ by less than a
// millionth of the farthest point's distance count as one; among points that are one their
// order is kept.
func Order(points []r3.Vec) []int {
	step := Alike * Farthest(points)
	keys := make([][2]float64, len(points)) // azimuth and distance from the axis, in whole steps
	index := make([]int, len(points))
	for i, p := range points {
		index[i] = i
		if out := math.Hypot(p.X, p.Y); out > step {
			turn := math.Atan2(p.Y, p.X)
			if turn < -Alike {
				turn += 2 * math.Pi
			}
			keys[i] = [2]float64{math.Round(turn / Alike), math.Round(out / step)}
		}
	}
	// A ring ends where the next height is a step away, so that rounding can not tear a ring
	// apart.
	slices.SortStableFunc(index, func(a, b int) int { return cmp.Compare(points[b].Z, points[a].Z) })
	for from, to := 0, 0; from < len(index); from = to {
		for to = from + 1; to < len(index) && points[index[to-1]].Z-points[index[to]].Z <= step; {
			to++
		}
		slices.Sort(index[from:to])
		slices.SortStableFunc(index[from:to], func(a, b int) int { return slices.Compare(keys[a][:], keys[b][:]) })
	}
	return index
}

// Ordered returns the solid with vertices in the order of [Order], faces in that of their
// centroids, and the corners of each from its first vertex on.
func (s Solid) Ordered() Solid {
	out := Solid{make([]r3.Vec, len(s.Vertices)), make([]Face, len(s.Faces))}
	place := make([]int, len(s.Vertices))
	for i, from := range Order(s.Vertices) {
		out.Vertices[i], place[from] = s.Vertices[from], i
	}
	middles := make([]r3.Vec, len(s.Faces))
	for f := range s.Faces {
		middles[f] = s.Centroid(f)
	}
	for i, from := range Order(middles) {
		corners := slices.Clone(s.Faces[from].Corners)
		for k, c := range corners {
			corners[k] = place[c]
		}
		first := slices.Index(corners, slices.Min(corners))
		out.Faces[i] = Face{slices.Concat(corners[first:], corners[:first]), s.Faces[from].Cut}
	}
	return out
}

// Weld joins points that are within slack of each other, and all that hang together by such
// steps. It returns, for each point, the first of those that it is one with.
func Weld(points []r3.Vec, slack float64) []int {
	same := make([]int, len(points))
	root := func(i int) int {
		for same[i] != i {
			same[i] = same[same[i]]
			i = same[i]
		}
		return i
	}
	const wide = 16 // of a cell over the slack: few points have others in the next one within reach
	cells := make(map[[3]int][]int, len(points)/2)
	place := func(x float64) int { return int(math.Floor(x / (wide * slack))) }
	look := func(i int, home [3]int) {
		for _, k := range cells[home] {
			if r3.Norm(r3.Sub(points[i], points[k])) <= slack {
				p, q := root(i), root(k)
				same[max(p, q)] = min(p, q)
			}
		}
	}
	for i, v := range points {
		same[i] = i
		for x := place(v.X - slack); x <= place(v.X+slack); x++ {
			for y := place(v.Y - slack); y <= place(v.Y+slack); y++ {
				for z := place(v.Z - slack); z <= place(v.Z+slack); z++ {
					look(i, [3]int{x, y, z})
				}
			}
		}
		if same[i] == i || points[same[i]] != v {
			home := [3]int{place(v.X), place(v.Y), place(v.Z)}
			cells[home] = append(cells[home], i)
		}
	}
	for i := range same {
		same[i] = root(i)
	}
	return same
}

// Welded returns what [Weld] leaves of points and, for each that was given, its place there.
func Welded(points []r3.Vec, slack float64) (left []r3.Vec, place []int) {
	place = Weld(points, slack)
	for i, first := range place {
		if first == i {
			place[i] = len(left)
			left = append(left, points[i])
		} else {
			place[i] = place[first]
		}
	}
	return left, place
}

// Hull finds the faces of a few points on a sphere round the origin by trying every plane
// through three of them; the radius of the sphere is 1.
func Hull(points []r3.Vec) []Face {
	var faces []Face
	for i := range points {
		for j := i + 1; j < len(points); j++ {
			for k := j + 1; k < len(points); k++ {
				if c := faceOf(points, i, j, k); c != nil {
					faces = append(faces, Face{Corners: c})
				}
			}
		}
	}
	return faces
}

// faceOf returns the points in the plane of three, in order seen from outside, if no point
// lies beyond it and the three are the first of them; else nil.
func faceOf(points []r3.Vec, i, j, k int) []int {
	out := r3.Unit(r3.Triangle{points[i], points[j], points[k]}.Normal())
	height := r3.Dot(out, points[i])
	if height < 0 {
		out, height = r3.Scale(-1, out), -height
	}
	var on []int
	for p, at := range points {
		switch d := r3.Dot(out, at) - height; {
		case d > Alike:
			return nil
		case d > -Alike:
			on = append(on, p)
		}
	}
	if !slices.Equal(on[:3], []int{i, j, k}) {
		return nil
	}
	Around(points, on, out)
	return on
}

// Around sorts corners of a convex face counter-clockwise seen from where its normal points,
// the first first.
func Around(points []r3.Vec, corners []int, normal r3.Vec) {
	middle := r3.Scale(r3.Dot(normal, points[corners[0]]), normal)
	x := r3.Sub(points[corners[0]], middle)
	y := r3.Cross(normal, x)
	turn := func(c int) float64 {
		d := r3.Sub(points[c], middle)
		return math.Atan2(r3.Dot(d, y), r3.Dot(d, x))
	}
	slices.SortFunc(corners, func(a, b int) int { return cmp.Compare(turn(a), turn(b)) })
}
