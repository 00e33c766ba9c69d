package carve

import (
	"math"
	"slices"
)

// stretch is where two triangles may meet, in rounded numbers.
type stretch struct {
	box box
	mid [3]float64
}

const (
	// doubt is by how much a rounded place on an edge may be off, over the edge's length; where
	// it may be more, two triangles are taken to meet, and it to matter.
	doubt = 1e-9
	// margin is more than all such errors, in lattice steps: 2 nm.
	margin = 2e-9 / unit
	// parallel is the sine under which planes are too near to one another to be rounded.
	parallel = 1e-6
	// mostOpen is of how many meshes both cases are tried.
	mostOpen = 6
)

// stretch returns about where two triangles of different planes meet. Neither sure nor met:
// they do not.
func (c *cutter) stretch(p pair) (s stretch, met, sure bool) {
	t, o := &c.triangles[p.i], &c.triangles[p.j]
	axis, ok := steep(t.normal, o.normal)
	if !ok {
		return s, true, false
	}
	a, ok := c.about(t, o, p.to, axis)
	b, okay := c.about(o, t, p.of, axis)
	if !ok || !okay {
		return s, true, false
	}
	from, end := a[0], a[1]
	if b[0][axis] > from[axis] {
		from = b[0]
	}
	if b[1][axis] < end[axis] {
		end = b[1]
	}
	if from[axis] > end[axis]+2*margin {
		return s, false, true
	}
	for k := range 3 {
		s.box.low[k], s.box.high[k] = min(from[k], end[k])-margin, max(from[k], end[k])+margin
		s.mid[k] = (from[k] + end[k]) / 2
	}
	return s, true, true
}

// steep returns the axis that the line of two planes is nearest to; false where they are too
// near to being parallel.
func steep(n, m [3]float64) (axis int, ok bool) {
	var d [3]float64
	square := func(v [3]float64) float64 { return v[0]*v[0] + v[1]*v[1] + v[2]*v[2] }
	for k := range d {
		i, j := (k+1)%3, (k+2)%3
		if d[k] = n[i]*m[j] - n[j]*m[i]; math.Abs(d[k]) > math.Abs(d[axis]) {
			axis = k
		}
	}
	return axis, square(d) > parallel*parallel*square(n)*square(m)
}

// about returns about what of a triangle is on another's plane, whose sides its corners are on,
// in order along an axis; false where there is doubt.
func (c *cutter) about(t, plane *triangle, sides [3]int, axis int) (ends [2][3]float64, ok bool) {
	n := 0
	add := func(at [3]float64) {
		if n == 0 {
			ends[0] = at
		}
		ends[1] = at
		n++
	}
	for k, s := range sides {
		p, q := t.corners[k], t.corners[(k+1)%3]
		if s == 0 {
			add(c.points[p].at)
		}
		if s*sides[(k+1)%3] >= 0 {
			continue
		}
		hp, offP := c.height(plane, p)
		hq, offQ := c.height(plane, q)
		if offP+offQ > doubt*math.Abs(hp-hq) {
			return ends, false
		}
		var at [3]float64
		for x := range at {
			a, b := c.points[p].at[x], c.points[q].at[x]
			at[x] = a + (b-a)*hp/(hp-hq)
		}
		add(at)
	}
	if ends[0][axis] > ends[1][axis] {
		ends[0], ends[1] = ends[1], ends[0]
	}
	return ends, n > 0
}

// matters tells whether what is kept may change where a triangle of one mesh meets one of
// another: at no place there does the rule hang on both of them, where their cut divides
// nothing that is told apart. Where a third mesh lies on either, it does.
func (c *cutter) matters(p pair, s stretch) bool {
	a, b := c.triangles[p.i].mesh, c.triangles[p.j].mesh
	open := c.stateAt(a, b, s)
	if len(open) > mostOpen || meets(open, c.flush[p.i]) || meets(open, c.flush[p.j]) {
		return true
	}
	in, keep := c.in, c.keep
	ask := func(first, second bool) bool {
		in[a] = first
		in[b] = second
		return keep(in)
	}
	for n := range 1 << len(open) {
		for k, m := range open {
			in[m] = n>>k&1 == 1
		}
		none, both := ask(false, false), ask(true, true)
		if a == b {
			if none != both {
				return true
			}
			continue
		}
		first, second := ask(true, false), ask(false, true)
		if (none != first || second != both) && (none != second || first != both) {
			return true
		}
	}
	return false
}

// meets tells whether two lists have something in common.
func meets(a, b []int) bool {
	return slices.ContainsFunc(b, func(m int) bool { return slices.Contains(a, m) })
}

// stateAt sets which meshes a stretch is in, other than two; it returns those of which it is
// not told because they have a surface there.
func (c *cutter) stateAt(a, b int, s stretch) (open []int) {
	clear(c.in)
	clear(c.wound)
	c.open = c.open[:0]
	doubted := func(mesh int) {
		if !c.in[mesh] {
			c.in[mesh] = true
			c.open = append(c.open, mesh)
		}
	}
	c.columns(2).over(s.box, func(n int) {
		t := &c.triangles[n]
		if t.mesh == a || t.mesh == b || t.box.high[2] < s.box.low[2] || c.in[t.mesh] {
			return
		}
		if t.box.meets(&s.box) && c.touches(t, s) {
			doubted(t.mesh)
			return
		}
		turn, told := c.leaves(2, t, s.mid)
		if !told {
			doubted(t.mesh)
		}
		c.wound[t.mesh] += turn
	})
	for m := range c.in {
		if !c.in[m] {
			c.in[m] = c.wound[m] > 0
		}
	}
	return c.open
}

// touches tells whether a triangle's plane comes into the box of a stretch.
func (c *cutter) touches(t *triangle, s stretch) bool {
	h, off := c.heightAt(t, s.mid)
	for k, n := range t.normal {
		off += math.Abs(n) * (s.box.high[k] - s.box.low[k]) / 2 * (1 + 1e-9)
	}
	return math.Abs(h) <= off
}

// leaves tells how the winding number of a mesh changes at a triangle where a ray along an axis from
// about a place leaves it (1) or enters it (-1); not told: it may meet an edge, or begin on it. What is
// told is so of all places within a lattice step.
func (s *space) leaves(axis int, t *triangle, at [3]float64) (turn int, told bool) {
	i, j := (axis+1)%3, (axis+2)%3
	left, right := 0, 0
	if t.box.low[i] > at[i]+1 || t.box.high[i] < at[i]-1 || t.box.low[j] > at[j]+1 || t.box.high[j] < at[j]-1 || t.box.high[axis] < at[axis]-1 {
		return 0, true
	}
	sure := 0
	for k, p := range t.corners {
		u, v := &s.points[p].at, &s.points[t.corners[(k+1)%3]].at
		ax, ay, bx, by := u[i]-at[i], u[j]-at[j], v[i]-at[i], v[j]-at[j]
		det, wide := ax*by-ay*bx, math.Abs(ax)+math.Abs(ay)+math.Abs(bx)+math.Abs(by)
		if math.Abs(det) <= 8*epsilon*wide*wide+2*wide+2 {
			continue
		}
		sure++
		if det > 0 {
			left++
		} else {
			right++
		}
	}
	if left > 0 && right > 0 {
		return 0, true
	}
	h, off := s.heightAt(t, at)
	for _, n := range t.normal {
		off += 2 * math.Abs(n)
	}
	if sure < 3 || math.Abs(h) <= off {
		return 0, false
	}
	turn = 1
	if right > 0 {
		turn = -1
	}
	if h*float64(turn) > 0 { // the place is above it
		return 0, true
	}
	return turn, true
}

// height returns how far a place is in front of a triangle's plane, times the length of its
// normal, and by how much that may be off.
func (s *space) height(t *triangle, p int) (h, off float64) {
	h, off = s.heightAt(t, s.points[p].at)
	if s.points[p].rounded {
		for k := range 3 {
			off += 4 * epsilon * (t.most[k] + math.Abs(t.normal[k])) * math.Abs(s.points[p].at[k])
		}
	}
	return h, off
}

// heightAt is that of a place that is not rounded.
func (s *space) heightAt(t *triangle, at [3]float64) (h, off float64) {
	a := &s.points[t.corners[0]].at
	for k := range 3 {
		d := at[k] - a[k]
		h += t.normal[k] * d
		off += 8 * epsilon * t.most[k] * math.Abs(d)
	}
	return h, off
}
