package carve

import (
	"math"
	"slices"
)

// plot is a triangle that is being cut into smaller ones along given lines.
type plot struct {
	*space
	axis, up  int
	triangles [][3]int       // counter-clockwise seen from the front
	at        map[[2]int]int // the triangle to the left of an edge
	lines     map[[2]int]bool
	last      int
}

// edge is an edge in either direction.
func edge(p, q int) [2]int { return [2]int{min(p, q), max(p, q)} }

// cut returns a triangle in pieces, and the edges along which it was cut.
func (c *cutter) cut(l *lined) ([][3]int, map[[2]int]bool) {
	t := &c.triangles[l.triangle]
	f := &plot{space: c.space, axis: t.axis, up: t.up, at: make(map[[2]int]int), lines: make(map[[2]int]bool)}
	f.put(-1, t.corners)
	parts := c.pieces(l)
	seen := map[int]bool{t.corners[0]: true, t.corners[1]: true, t.corners[2]: true}
	for _, s := range parts {
		for _, p := range s.ends {
			if !seen[p] {
				seen[p] = true
				f.insert(p)
			}
		}
	}
	f.relax() // so that lines cross few edges
	for _, s := range parts {
		f.draw(s.ends[0], s.ends[1])
	}
	marked := make(map[[2]int]bool)
	for _, s := range parts {
		if s.cut && s.ends[0] != s.ends[1] {
			marked[edge(s.ends[0], s.ends[1])] = true
		}
	}
	f.relax()
	return f.triangles, marked
}

func (f *plot) left(p, q, r int) int { return f.up * f.turn(f.axis, p, q, r) }

// put makes a triangle, in place of another unless that is below 0.
func (f *plot) put(i int, t [3]int) int {
	if i < 0 {
		i = len(f.triangles)
		f.triangles = append(f.triangles, t)
	}
	f.triangles[i] = t
	for k, p := range t {
		f.at[[2]int{p, t[(k+1)%3]}] = i
	}
	return i
}

// find returns the triangle that a place is in or on.
func (f *plot) find(p int) int {
	i := f.last
walk:
	for n := range 4*len(f.triangles) + 16 {
		t := f.triangles[i]
		for k := range 3 {
			a, b := t[(k+n)%3], t[(k+n+1)%3]
			if f.left(a, b, p) < 0 {
				next, ok := f.at[[2]int{b, a}]
				if !ok {
					break walk
				}
				i = next
				continue walk
			}
		}
		f.last = i
		return i
	}
	for i, t := range f.triangles {
		if f.left(t[0], t[1], p) >= 0 && f.left(t[1], t[2], p) >= 0 && f.left(t[2], t[0], p) >= 0 {
			f.last = i
			return i
		}
	}
	return -1
}

// insert makes a place a corner.
func (f *plot) insert(p int) {
	i := f.find(p)
	if i < 0 {
		return
	}
	t := f.triangles[i]
	for k := range 3 {
		a, b, c := t[k], t[(k+1)%3], t[(k+2)%3]
		if f.left(a, b, p) != 0 {
			continue
		}
		j, ok := f.at[[2]int{b, a}]
		delete(f.at, [2]int{a, b})
		f.put(i, [3]int{a, p, c})
		f.put(-1, [3]int{p, b, c})
		if ok {
			d := f.tip(j, b, a)
			delete(f.at, [2]int{b, a})
			f.put(j, [3]int{b, p, d})
			f.put(-1, [3]int{p, a, d})
		}
		return
	}
	f.put(i, [3]int{t[0], t[1], p})
	f.put(-1, [3]int{t[1], t[2], p})
	f.put(-1, [3]int{t[2], t[0], p})
}

// tip returns the third corner of a triangle.
func (f *plot) tip(i, p, q int) int {
	t := f.triangles[i]
	return t[0] + t[1] + t[2] - p - q
}

// flip turns the edge between two triangles round where both lie in a convex outline.
func (f *plot) flip(p, q int) (r, s int, ok bool) {
	i, inside := f.at[[2]int{p, q}]
	j, across := f.at[[2]int{q, p}]
	if !inside || !across {
		return 0, 0, false
	}
	r, s = f.tip(i, p, q), f.tip(j, q, p)
	if f.left(s, q, r) <= 0 || f.left(r, p, s) <= 0 {
		return 0, 0, false
	}
	delete(f.at, [2]int{p, q})
	delete(f.at, [2]int{q, p})
	f.put(i, [3]int{s, q, r})
	f.put(j, [3]int{r, p, s})
	return r, s, true
}

// draw makes a line between two corners an edge.
func (f *plot) draw(a, b int) {
	if a == b {
		return
	}
	f.lines[edge(a, b)] = true
	queue := f.crossing(a, b)
	for n := 0; len(queue) > 0 && n < 1<<20; n++ {
		e := queue[0]
		queue = queue[1:]
		r, s, ok := f.flip(e[0], e[1])
		switch {
		case !ok:
			queue = append(queue, e)
		case f.left(a, b, r)*f.left(a, b, s) < 0 && r != a && r != b && s != a && s != b:
			queue = append(queue, [2]int{r, s})
		}
	}
}

// crossing returns the edges that a line between two corners crosses; none where it is an edge.
func (f *plot) crossing(a, b int) (out [][2]int) {
	if _, ok := f.at[[2]int{a, b}]; ok {
		return nil
	}
	if _, ok := f.at[[2]int{b, a}]; ok {
		return nil
	}
	u, v, ok := f.opening(a, b)
	for n := 0; ok && n <= len(f.triangles); n++ {
		out = append(out, [2]int{u, v})
		j, beyond := f.at[[2]int{v, u}]
		if !beyond {
			break
		}
		w := f.tip(j, v, u)
		if w == b {
			break
		}
		if f.left(a, b, w) > 0 {
			v = w
		} else {
			u = w
		}
	}
	return out
}

// opening returns the edge across from a corner through which a line leaves to another, its
// first end to the right.
func (f *plot) opening(a, b int) (u, v int, ok bool) {
	for _, t := range f.triangles {
		k := slices.Index(t[:], a)
		if k < 0 {
			continue
		}
		u, v = t[(k+1)%3], t[(k+2)%3]
		if f.left(a, b, u) < 0 && f.left(a, b, v) > 0 && f.left(u, v, b) < 0 {
			return u, v, true
		}
	}
	return 0, 0, false
}

// relax flips edges that are no lines, so that triangles are less thin, by rounded numbers:
// which way they lie is a matter of looks.
func (f *plot) relax() {
	for range 8 {
		done := true
		for i := 0; i < len(f.triangles); i++ {
			for k := range 3 {
				t := f.triangles[i]
				p, q := t[k], t[(k+1)%3]
				j, ok := f.at[[2]int{q, p}]
				if !ok || f.lines[edge(p, q)] {
					continue
				}
				r, s := t[(k+2)%3], f.tip(j, q, p)
				if f.angle(r, p, q)+f.angle(s, p, q) > math.Pi+1e-9 {
					if _, _, flipped := f.flip(p, q); flipped {
						done = false
					}
				}
			}
		}
		if done {
			return
		}
	}
}

// angle returns that at a corner between two others, in rad.
func (f *plot) angle(at, p, q int) float64 {
	a, b, c := f.points[at].at, f.points[p].at, f.points[q].at
	var u, v [3]float64
	dot := 0.0
	for k := range u {
		u[k], v[k] = b[k]-a[k], c[k]-a[k]
		dot += u[k] * v[k]
	}
	x, y, z := u[1]*v[2]-u[2]*v[1], u[2]*v[0]-u[0]*v[2], u[0]*v[1]-u[1]*v[0]
	return math.Atan2(math.Sqrt(x*x+y*y+z*z), dot)
}
