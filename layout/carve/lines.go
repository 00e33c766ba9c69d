package carve

import "slices"

// piece is a line in a triangle between two places with nothing on it, or, with both ends
// alike, a place; cut tells whether it is where another triangle meets this one.
type piece struct {
	ends [2]int
	cut  bool
}

// divide cuts the edges of a triangle and the lines in it wherever they meet.
func (f *plot) divide(t *triangle, cuts [][2]int) []piece {
	var lines []piece
	for k, p := range t.corners {
		lines = append(lines, piece{[2]int{p, t.corners[(k+1)%3]}, false})
	}
	seen := make(map[[2]int]bool, len(cuts))
	for _, l := range cuts {
		if e := edge(l[0], l[1]); !seen[e] {
			seen[e] = true
			lines = append(lines, piece{e, true})
		}
	}
	on := make([][]int, len(lines))
	boxes := make([]box, len(lines))
	for i, l := range lines {
		boxes[i] = f.boxOf(l.ends)
		for k := range i {
			if boxes[i].meets(boxes[k]) {
				f.meetLines(lines, on, i, k)
			}
		}
	}
	var out []piece
	for i, l := range lines {
		all := append(on[i], l.ends[0], l.ends[1])
		slices.SortFunc(all, f.order)
		all = slices.Compact(all)
		if len(all) == 1 {
			out = append(out, piece{l.ends, l.cut})
		}
		for k := 1; k < len(all); k++ {
			out = append(out, piece{[2]int{all[k-1], all[k]}, l.cut})
		}
	}
	return out
}

// boxOf returns a box that holds a line, rounding included.
func (f *plot) boxOf(ends [2]int) (b box) {
	p, q := f.points[ends[0]].at, f.points[ends[1]].at
	for k := range p {
		b.low[k], b.high[k] = min(p[k], q[k])-1, max(p[k], q[k])+1
	}
	return b
}

// meetLines notes where two lines meet, on both.
func (f *plot) meetLines(lines []piece, on [][]int, i, k int) {
	a, b := lines[i].ends[0], lines[i].ends[1]
	c, d := lines[k].ends[0], lines[k].ends[1]
	fromA, fromB := f.turn(f.axis, c, d, a), f.turn(f.axis, c, d, b)
	fromC, fromD := f.turn(f.axis, a, b, c), f.turn(f.axis, a, b, d)
	if a != b && c != d && fromA*fromB < 0 && fromC*fromD < 0 {
		line := f.line(f.axis, c, d)
		x := f.between(a, b, line(a), line(b))
		on[i], on[k] = append(on[i], x), append(on[k], x)
		return
	}
	add := func(n, p, side int, ends [2]int) {
		if side == 0 && ends[0] != ends[1] && f.within(p, ends[0], ends[1]) {
			on[n] = append(on[n], p)
		}
	}
	add(k, a, fromA, lines[k].ends)
	add(k, b, fromB, lines[k].ends)
	add(i, c, fromC, lines[i].ends)
	add(i, d, fromD, lines[i].ends)
}
