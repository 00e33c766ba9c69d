package carve

import (
	"cmp"
	"math/big"
	"slices"
)

// cutter gathers what triangles have in common.
type cutter struct {
	*space
	triangles []triangle
	// cuts has, for each triangle, the segments and, with both ends alike, the places that
	// others have in it.
	cuts    [][][2]int
	parts   int            // how many there are
	flat    map[int]bool   // parts with triangles on a line
	crossed map[[3]int]int // where the edge between two corners meets a triangle's plane
	pairs   []pair         // that may cross
	flush   map[int][]int  // meshes that lie on a triangle
	along   [3]*columns
	keep    func([]bool) bool
	all     bool   // cut, whatever the rule says
	in      []bool // of each mesh, for one place
	wound   []int
	open    []int
}

// pair is two triangles of different planes, and the sides on which the corners of the first are
// of the second, and the other way about.
type pair struct {
	i, j   int
	to, of [3]int
}

// meetAll finds what each two triangles have in common.
func (c *cutter) meetAll() {
	c.cuts = make([][][2]int, len(c.triangles))
	c.crossed = make(map[[3]int]int)
	c.flush = make(map[int][]int)
	order := make([]int, len(c.triangles))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(c.triangles[i].box.low[0], c.triangles[j].box.low[0]), cmp.Compare(i, j))
	})
	boxes := make([]box, len(order)) // one after the other, as they are gone through
	for n, i := range order {
		boxes[n] = c.triangles[i].box
	}
	for n, i := range order {
		own := &boxes[n]
		for m := n + 1; m < len(boxes) && boxes[m].low[0] <= own.high[0]; m++ { // those that begin along x before it ends
			if own.meets(&boxes[m]) {
				c.meet(min(i, order[m]), max(i, order[m]))
			}
		}
	}
	for _, p := range c.pairs {
		if s, met, sure := c.stretch(p); c.all || !sure || met && c.matters(p, s) {
			c.cross(p.i, p.j, p.to, p.of)
		}
	}
}

// meet finds what two triangles have in common.
func (c *cutter) meet(i, j int) {
	t, o := &c.triangles[i], &c.triangles[j]
	if t.part == o.part && !c.flat[t.part] {
		return
	}
	var of, to [3]int
	for k := range 3 {
		to[k] = c.side(o, t.corners[k])
	}
	if apart(to) {
		return
	}
	for k := range 3 {
		of[k] = c.side(t, o.corners[k])
	}
	shared := c.shared(t, o)
	switch {
	case apart(of):
	case of == [3]int{} && (shared != 2 || !c.unfolded(t, o)):
		c.overlap(i, j)
	case shared > 1:
		if t.mesh != o.mesh { // an edge in common: what is kept may change there
			c.common(i, j)
		}
	case shared == 1 && (beside(of) || beside(to)):
		// A corner in common and no more.
	default:
		c.pairs = append(c.pairs, pair{i, j, to, of})
	}
}

func apart(s [3]int) bool { return s == [3]int{1, 1, 1} || s == [3]int{-1, -1, -1} }

// beside tells whether all corners but one on the plane are on one side of it.
func beside(s [3]int) bool {
	sum := s[0] + s[1] + s[2]
	return sum == 2 || sum == -2
}

func (c *cutter) shared(t, o *triangle) (n int) {
	for _, v := range t.corners {
		if slices.Contains(o.corners[:], v) {
			n++
		}
	}
	return n
}

// common notes the edge that two triangles share.
func (c *cutter) common(i, j int) {
	t, o := &c.triangles[i], &c.triangles[j]
	for k, p := range t.corners {
		q := t.corners[(k+1)%3]
		if slices.Contains(o.corners[:], p) && slices.Contains(o.corners[:], q) {
			c.note(i, p, q)
			c.note(j, p, q)
		}
	}
}

// unfolded tells whether two triangles of one plane that share an edge are on either side of it.
func (c *cutter) unfolded(t, o *triangle) bool {
	for k := range 3 {
		a, b, tip := t.corners[k], t.corners[(k+1)%3], t.corners[(k+2)%3]
		if !slices.Contains(o.corners[:], a) || !slices.Contains(o.corners[:], b) {
			continue
		}
		for _, v := range o.corners {
			if v != a && v != b {
				return c.turn(t.axis, a, b, tip)*c.turn(t.axis, a, b, v) < 0
			}
		}
	}
	return false
}

// cross notes the segment that two triangles of different planes have in common.
func (c *cutter) cross(i, j int, to, of [3]int) {
	a, ok := c.chord(i, j, to)
	b, okay := c.chord(j, i, of)
	if !ok || !okay {
		return
	}
	from, end := a[0], a[1]
	if c.order(b[0], from) > 0 {
		from = b[0]
	}
	if c.order(b[1], end) < 0 {
		end = b[1]
	}
	if c.order(from, end) <= 0 {
		c.note(i, from, end)
		c.note(j, from, end)
	}
}

// chord returns what of a triangle is on another's plane, whose sides its corners are on.
func (c *cutter) chord(i, plane int, sides [3]int) (ends [2]int, ok bool) {
	t := &c.triangles[i]
	var on []int
	for k, s := range sides {
		next := (k + 1) % 3
		if s == 0 {
			on = append(on, t.corners[k])
		}
		if s*sides[next] < 0 {
			on = append(on, c.pierce(t.corners[k], t.corners[next], plane))
		}
	}
	if len(on) == 0 {
		return ends, false
	}
	ends = [2]int{on[0], on[len(on)-1]}
	if c.order(ends[0], ends[1]) > 0 {
		ends[0], ends[1] = ends[1], ends[0]
	}
	return ends, true
}

// pierce returns where an edge meets the plane of a triangle.
func (c *cutter) pierce(p, q, plane int) int {
	key := [3]int{min(p, q), max(p, q), plane}
	at, ok := c.crossed[key]
	if !ok {
		t := &c.triangles[plane]
		at = c.between(key[0], key[1], c.above(t, key[0]), c.above(t, key[1]))
		c.put(at, key[0], key[1])
		c.crossed[key] = at
	}
	return at
}

func (c *cutter) note(i, p, q int) {
	if p == q && slices.Contains(c.triangles[i].corners[:], p) {
		return
	}
	c.cuts[i] = append(c.cuts[i], [2]int{p, q})
}

// overlap notes the edges of what two triangles of one plane have in common.
func (c *cutter) overlap(i, j int) {
	t, o := &c.triangles[i], &c.triangles[j]
	left := o.corners[:]
	for k := range 3 {
		left = c.clip(left, t, t.corners[k], t.corners[(k+1)%3])
	}
	if len(left) == 0 {
		return
	}
	c.flush[i], c.flush[j] = append(c.flush[i], o.mesh), append(c.flush[j], t.mesh)
	for k, p := range left {
		c.note(i, p, left[(k+1)%len(left)])
		c.note(j, p, left[(k+1)%len(left)])
	}
}

// clip returns what of a flat convex outline is not to the right of an edge of a triangle.
func (c *cutter) clip(outline []int, t *triangle, a, b int) (out []int) {
	var line func(int) *big.Int
	for k, p := range outline {
		q := outline[(k+1)%len(outline)]
		here, there := t.up*c.turn(t.axis, a, b, p), t.up*c.turn(t.axis, a, b, q)
		if here >= 0 {
			out = append(out, p)
		}
		if here*there < 0 {
			if line == nil {
				line = c.line(t.axis, a, b)
			}
			x := c.between(p, q, line(p), line(q))
			c.put(x, p, q)
			c.put(x, a, b)
			out = append(out, x)
		}
	}
	return slices.Compact(out)
}
