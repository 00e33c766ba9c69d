package kit

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pappus/layout/poly"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// checkApart samples the surface of one part where another is near: no place is in the other by
// its solid angle, and none is nearer to its surface than the gap. It returns the least distance.
func checkApart(t *testing.T, p, q Part, gap float64) float64 {
	t.Helper()
	random := rand.New(rand.NewPCG(1, uint64(len(p.Mesh.Triangles))))
	box, least := q.Mesh.Bounds(), math.Inf(1)
	in := func(v, low, high float64) bool { return v > low-1e-3 && v < high+1e-3 }
	seen := 0
	for at := range places(random, p.Mesh, 40000) {
		if seen == 150 {
			break
		}
		if !in(at.X, box.Min.X, box.Max.X) || !in(at.Y, box.Min.Y, box.Max.Y) || !in(at.Z, box.Min.Z, box.Max.Z) {
			continue
		}
		seen++
		if w := winding(q.Mesh, at); w > 0.5 {
			t.Errorf("%v of %s is in %s", at, p.Name, q.Name)
			return 0
		}
		d := distance(q.Mesh, at)
		if d < gap*(1-1e-3) {
			t.Errorf("%v of %s is %g m from %s", at, p.Name, d, q.Name)
			return d
		}
		least = min(least, d)
	}
	return least
}

// checkOrder has segments put together by hand in the order of their numbers: each comes
// straight onto those before it, without passing through them.
func checkOrder(t *testing.T, m made) {
	t.Helper()
	for i, p := range m.parts {
		if p.Loose || !strings.HasPrefix(p.Name, "segment") {
			continue
		}
		way, least := m.wayOff(i)
		if least < -1e-6 {
			t.Errorf("%s comes off in no direction: %g", p.Name, least)
			continue
		}
		for _, far := range []float64{2e-3, 8e-3} {
			by := r3.Scale(far, way)
			moved := Part{Name: p.Name + ", lifted,", Mesh: p.Mesh.Moved(func(v r3.Vec) r3.Vec { return r3.Add(v, by) })}
			for _, q := range m.parts[:i] {
				if near(moved.Mesh, q.Mesh) {
					checkApart(t, moved, q, 0)
					checkApart(t, q, moved, 0)
				}
			}
		}
	}
}

// wayOff returns the direction in which a segment goes best away from all those before it: from
// their edges and, in a lap, from the tongues under its own; and the least of that, as a cosine.
func (m made) wayOff(segment int) (best r3.Vec, most float64) {
	var off []r3.Vec
	for _, s := range m.seams {
		if m.wall.regions[s.b].Segment != segment {
			continue
		}
		off = append(off, s.plane.Normal)
		from := r3.Scale(s.plane.Offset, s.plane.Normal)
		for _, p := range s.points {
			_, plane := m.wall.hit(from, r3.Sub(r3.Add(p, r3.Scale(reach/2, s.plane.Normal)), from), m.wall.thick)
			if m.Joint == Lap {
				off = append(off, plane.Normal)
			}
		}
	}
	slices.SortFunc(off, func(a, b r3.Vec) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y), cmp.Compare(a.Z, b.Z))
	})
	off = slices.CompactFunc(off, func(a, b r3.Vec) bool { return r3.Norm2(r3.Sub(a, b)) < 1e-20 })
	ways := append(spread.Spiral(4000), r3.Vec{Z: 1}, r3.Vec{Z: -1})
	for i := range 360 {
		ways = append(ways, direction(float64(i)*math.Pi/180))
	}
	most = math.Inf(-1)
	try := func(d r3.Vec) {
		least := 1.0
		for _, n := range off {
			if least = min(least, r3.Dot(n, d)); least < most {
				return
			}
		}
		if least > most {
			best, most = d, least
		}
	}
	for _, d := range ways {
		try(d)
	}
	random := rand.New(rand.NewPCG(2, 2))
	for step := 0.1; step > 1e-8; step /= 2 { // along a way that slides off in one direction alone
		for range 300 {
			try(r3.Unit(r3.Add(best, r3.Scale(step, r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64(), Z: random.NormFloat64()}))))
		}
	}
	return best, most
}

// places draws from a surface, evenly by area.
func places(random *rand.Rand, m poly.Mesh, count int) func(func(r3.Vec) bool) {
	_, areas := facesOf(m)
	sums := make([]float64, len(areas)+1)
	for i, a := range areas {
		sums[i+1] = sums[i] + a
	}
	return func(yield func(r3.Vec) bool) {
		for range count {
			x, low, high := random.Float64()*sums[len(areas)], 0, len(areas)-1
			for low < high {
				if mid := (low + high) / 2; sums[mid+1] > x {
					high = mid
				} else {
					low = mid + 1
				}
			}
			c := m.Triangles[low]
			u, v := random.Float64(), random.Float64()
			if u+v > 1 {
				u, v = 1-u, 1-v
			}
			a := m.Vertices[c[0]]
			if !yield(r3.Add(a, r3.Add(r3.Scale(u, r3.Sub(m.Vertices[c[1]], a)), r3.Scale(v, r3.Sub(m.Vertices[c[2]], a))))) {
				return
			}
		}
	}
}

// winding is the solid angle of a mesh over a whole turn (A. van Oosterom and J. Strackee, IEEE
// Trans. Biomed. Eng. 30 (1983) 125).
func winding(m poly.Mesh, at r3.Vec) (sum float64) {
	for _, t := range m.Triangles {
		a, b, c := r3.Sub(m.Vertices[t[0]], at), r3.Sub(m.Vertices[t[1]], at), r3.Sub(m.Vertices[t[2]], at)
		x, y, z := math.Sqrt(r3.Norm2(a)), math.Sqrt(r3.Norm2(b)), math.Sqrt(r3.Norm2(c))
		sum += 2 * math.Atan2(r3.Dot(a, r3.Cross(b, c)), x*y*z+r3.Dot(a, b)*z+r3.Dot(b, c)*x+r3.Dot(c, a)*y)
	}
	return sum / (4 * math.Pi)
}

// distance is how far a place is from a mesh's surface.
func distance(m poly.Mesh, at r3.Vec) float64 {
	least := math.Inf(1)
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		if off(at.X, a.X, b.X, c.X) > least || off(at.Y, a.Y, b.Y, c.Y) > least || off(at.Z, a.Z, b.Z, c.Z) > least {
			continue
		}
		least = min(least, toTriangle(a, b, c, at))
	}
	return least
}

// off is how far a number is outside of the range of three.
func off(x, a, b, c float64) float64 { return max(min(a, b, c)-x, x-max(a, b, c), 0) }

// toTriangle is how far a place is from a triangle.
func toTriangle(a, b, c, at r3.Vec) float64 {
	u, v := r3.Sub(b, a), r3.Sub(c, a)
	n := r3.Cross(u, v)
	if size := r3.Norm2(n); size > 0 {
		w := r3.Sub(at, a)
		x, y := r3.Dot(r3.Cross(w, v), n)/size, r3.Dot(r3.Cross(u, w), n)/size
		if x >= 0 && y >= 0 && x+y <= 1 {
			return math.Abs(r3.Dot(w, n)) / math.Sqrt(size)
		}
	}
	least := math.Inf(1)
	for _, e := range [3][2]r3.Vec{{a, b}, {b, c}, {c, a}} {
		along := r3.Sub(e[1], e[0])
		share := min(max(r3.Dot(r3.Sub(at, e[0]), along)/max(r3.Norm2(along), 1e-300), 0), 1)
		least = min(least, r3.Norm2(r3.Sub(at, r3.Add(e[0], r3.Scale(share, along)))))
	}
	return math.Sqrt(least)
}
