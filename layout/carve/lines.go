package carve

import "slices"

// piece is a line in a triangle between two places with nothing on it, or, with both ends
// alike, a place; cut tells whether it is where another triangle meets this one.
type piece struct {
	ends [2]int
	cut  bool
}

// lined is a triangle with the lines in it, its edges first, and the places on each.
type lined struct {
	triangle int
	lines    []piece
	on       [][]int
}

// lined gathers the edges of a triangle and the lines in it.
func (c *cutter) lined(i int) *lined {
	out := &lined{triangle: i}
	t := &c.triangles[i]
	for k, p := range t.corners {
		out.lines = append(out.lines, piece{edge(p, t.corners[(k+1)%3]), false})
	}
	seen := make(map[[2]int]bool, len(c.cuts[i]))
	for _, l := range c.cuts[i] {
		if e := edge(l[0], l[1]); !seen[e] {
			seen[e] = true
			out.lines = append(out.lines, piece{e, true})
		}
	}
	out.on = make([][]int, len(out.lines))
	return out
}

// divide cuts the edges of a triangle and the lines in it wherever they meet.
func (s *space) divide(axis int, l *lined) {
	boxes := make([]box, len(l.lines))
	for i, line := range l.lines {
		boxes[i] = s.boxOf(line.ends)
		for k := range i {
			if boxes[i].meets(&boxes[k]) {
				s.meetLines(axis, l, i, k)
			}
		}
	}
}

// lines finds the lines in all triangles. What is on a line in one triangle is on it in the
// others, too, that have it.
func (c *cutter) lines() []*lined {
	all := make([]*lined, len(c.triangles))
	on := make(map[[2]int][]int)
	for i := range c.triangles {
		if len(c.cuts[i]) == 0 {
			continue
		}
		all[i] = c.lined(i)
		c.divide(c.triangles[i].axis, all[i])
		for k, l := range all[i].lines {
			share(on, l.ends, all[i].on[k])
		}
	}
	for again := true; again; {
		again = false
		for i := range c.triangles {
			again = c.learn(i, &all[i], on) || again
		}
	}
	return all
}

// share adds places to those on a line, and tells whether there was one to add.
func share(on map[[2]int][]int, line [2]int, places []int) (added bool) {
	for _, p := range places {
		if !slices.Contains(on[line], p) {
			on[line] = append(on[line], p)
			added = true
		}
	}
	return added
}

// learn puts on the lines of a triangle what others have on them, and on all of its lines that
// go through such a place; it tells whether others have something to learn from that.
func (c *cutter) learn(i int, l **lined, on map[[2]int][]int) (again bool) {
	t := &c.triangles[i]
	if *l == nil {
		for k, p := range t.corners {
			if len(on[edge(p, t.corners[(k+1)%3])]) > 0 {
				*l = c.lined(i)
				break
			}
		}
	}
	if *l == nil {
		return false
	}
	for k, line := range (*l).lines {
		for _, p := range on[line.ends] {
			if slices.Contains((*l).on[k], p) {
				continue
			}
			(*l).on[k] = append((*l).on[k], p)
			for n, other := range (*l).lines {
				e := other.ends
				if n != k && e[0] != e[1] && !slices.Contains((*l).on[n], p) && c.turn(t.axis, e[0], e[1], p) == 0 && c.within(p, e[0], e[1]) {
					c.put(p, e[0], e[1])
					(*l).on[n] = append((*l).on[n], p)
					again = share(on, e, []int{p}) || again
				}
			}
		}
	}
	return again
}

// pieces are the lines between the places on them.
func (s *space) pieces(l *lined) (out []piece) {
	for i, line := range l.lines {
		all := append(l.on[i], line.ends[0], line.ends[1])
		slices.SortFunc(all, s.order)
		all = slices.Compact(all)
		if len(all) == 1 {
			out = append(out, piece{line.ends, line.cut})
		}
		for k := 1; k < len(all); k++ {
			out = append(out, piece{[2]int{all[k-1], all[k]}, line.cut})
		}
	}
	return out
}

// boxOf returns a box that holds a line, rounding included.
func (s *space) boxOf(ends [2]int) (b box) {
	p, q := s.points[ends[0]].at, s.points[ends[1]].at
	for k := range p {
		b.low[k], b.high[k] = min(p[k], q[k])-1, max(p[k], q[k])+1
	}
	return b
}

// meetLines notes where two lines meet, on both.
func (s *space) meetLines(axis int, all *lined, i, k int) {
	a, b := all.lines[i].ends[0], all.lines[i].ends[1]
	c, d := all.lines[k].ends[0], all.lines[k].ends[1]
	on := all.on
	fromA, fromB := s.turn(axis, c, d, a), s.turn(axis, c, d, b)
	fromC, fromD := s.turn(axis, a, b, c), s.turn(axis, a, b, d)
	if a != b && c != d && fromA*fromB < 0 && fromC*fromD < 0 {
		line := s.line(axis, c, d)
		x := s.between(a, b, line(a), line(b))
		s.put(x, a, b)
		s.put(x, c, d)
		on[i], on[k] = append(on[i], x), append(on[k], x)
		return
	}
	add := func(n, p, side int, ends [2]int) {
		if side == 0 && ends[0] != ends[1] && s.within(p, ends[0], ends[1]) {
			s.put(p, ends[0], ends[1])
			on[n] = append(on[n], p)
		}
	}
	add(k, a, fromA, all.lines[k].ends)
	add(k, b, fromB, all.lines[k].ends)
	add(i, c, fromC, all.lines[i].ends)
	add(i, d, fromD, all.lines[i].ends)
}
