package kit

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pappus/layout/carve"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// checkApart samples the surface of one part where another is near: no place is in the other by
// its solid angle, and none is nearer to its surface than the gap but for a thousandth; of
// bodies of over 200 mm but for what corners move by: one that is within slack of a plane is on it, for the shell as
// well, and such as are within 3 millionths of the body's size are one ([poly.Mesh.Cells]). Of 1,000 drivers on a ball of
// 540 mm a gap of 0.2 mm is 0.0039 mm short; with a hundredth of these lengths it is none. It returns the least distance.
func (m made) checkApart(t *testing.T, p, q Part) float64 {
	t.Helper()
	random := rand.New(rand.NewPCG(1, uint64(len(p.Mesh.Triangles))))
	box, least := q.Mesh.Bounds(), math.Inf(1)
	gap := m.Gap * (1 - 1e-3)
	if radius := m.array.Body.Radius; radius > 0.2 {
		gap = m.Gap - (slack+2*3e-6)*radius
	}
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
		if d < gap {
			t.Errorf("%v of %s is %g m from %s", at, p.Name, d, q.Name)
			return d
		}
		least = min(least, d)
	}
	return least
}

// checkOrder has segments put together by hand in the order of their numbers: each goes straight onto those
// before it in the direction that is told, and passes through none of them: by rays from the surface of
// the one along the way and of the other against it, and by what they have in common on the way.
func checkOrder(t *testing.T, m made) {
	t.Helper()
	random := rand.New(rand.NewPCG(3, 3))
	for i, p := range m.parts {
		if p.Loose || !strings.HasPrefix(p.Name, "segment") || i == 0 {
			continue
		}
		if math.Abs(r3.Norm(p.Off)-1) > 1e-9 {
			t.Errorf("%s comes off along %v", p.Name, p.Off)
			continue
		}
		before := Part{Name: "those before " + p.Name}
		for _, q := range m.parts[:i] {
			before.Mesh = poly.Joined(before.Mesh, q.Mesh)
		}
		checkRays(t, random, p, before, p.Off)
		checkRays(t, random, before, p, r3.Scale(-1, p.Off))
		for _, far := range []float64{2e-3} {
			by := r3.Scale(far, p.Off)
			moved := p.Mesh.Moved(func(v r3.Vec) r3.Vec { return r3.Add(v, by) })
			for _, q := range m.parts[:i] {
				if !near(moved, q.Mesh) {
					continue
				}
				if both, err := carve.Combine(func(in []bool) bool { return in[0] && in[1] }, moved, q.Mesh); !errors.Is(err, carve.ErrEmpty) {
					t.Errorf("%s, %g m off, and %s have %g mm3 in common (%v)", p.Name, far, q.Name, 1e9*both.Volume(), err)
				}
			}
		}
	}
}

// checkRays has places of the surface of one part go along a way for ever, and meet the other nowhere.
func checkRays(t *testing.T, random *rand.Rand, p, q Part, way r3.Vec) {
	t.Helper()
	right, up := poly.Across(way)
	flat := func(v r3.Vec) [2]int {
		return [2]int{int(math.Floor(r3.Dot(v, right) / 4e-3)), int(math.Floor(r3.Dot(v, up) / 4e-3))}
	}
	cells := make(map[[2]int][]int) // of q's triangles, seen along the way
	for i, c := range q.Mesh.Triangles {
		low, high := flat(q.Mesh.Vertices[c[0]]), flat(q.Mesh.Vertices[c[0]])
		for _, v := range c[1:] {
			f := flat(q.Mesh.Vertices[v])
			low, high = [2]int{min(low[0], f[0]), min(low[1], f[1])}, [2]int{max(high[0], f[0]), max(high[1], f[1])}
		}
		for x := low[0]; x <= high[0]; x++ {
			for y := low[1]; y <= high[1]; y++ {
				cells[[2]int{x, y}] = append(cells[[2]int{x, y}], i)
			}
		}
	}
	for at := range places(random, p.Mesh, 100000) {
		for _, i := range cells[flat(at)] {
			c := q.Mesh.Triangles[i]
			if l, ok := pierced(at, way, q.Mesh.Vertices[c[0]], q.Mesh.Vertices[c[1]], q.Mesh.Vertices[c[2]]); ok && l > 0 {
				t.Errorf("%v of %s meets %s after %g m", at, p.Name, q.Name, l)
				return
			}
		}
	}
}

// pierced returns how far a ray goes to a triangle's plane, and whether it is within the triangle there.
func pierced(from, along, a, b, c r3.Vec) (float64, bool) {
	u, v, w := r3.Sub(b, a), r3.Sub(c, a), r3.Sub(from, a)
	h := r3.Cross(along, v)
	det := r3.Dot(u, h)
	if math.Abs(det) < 1e-18 {
		return 0, false
	}
	x := r3.Dot(w, h) / det
	q := r3.Cross(w, u)
	y := r3.Dot(along, q) / det
	return r3.Dot(v, q) / det, x >= 0 && y >= 0 && x+y <= 1
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
		if outOf(at.X, a.X, b.X, c.X) > least || outOf(at.Y, a.Y, b.Y, c.Y) > least || outOf(at.Z, a.Z, b.Z, c.Z) > least {
			continue
		}
		least = min(least, toTriangle(a, b, c, at))
	}
	return least
}

// outOf is how far a number is outside of the range of three.
func outOf(x, a, b, c float64) float64 { return max(min(a, b, c)-x, x-max(a, b, c), 0) }

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
