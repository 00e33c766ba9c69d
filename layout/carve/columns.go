package carve

import "math"

// columns are triangles by what they are over, seen along an axis.
type columns struct {
	i, j  int // the axes across
	low   [2]float64
	step  [2]float64
	cells [][]int32 // rows of n
	n     int
	seen  []int32 // of each triangle, the last look in which it was met
	look  int32
}

// mostColumns is how many there are along a side at most.
const mostColumns = 128

// columns returns those along an axis.
func (c *cutter) columns(axis int) *columns {
	if c.along[axis] == nil {
		c.along[axis] = newColumns(axis, c.triangles)
	}
	return c.along[axis]
}

func newColumns(axis int, all []triangle) *columns {
	g := &columns{i: (axis + 1) % 3, j: (axis + 2) % 3, seen: make([]int32, len(all))}
	g.n = min(max(int(math.Sqrt(float64(len(all)))), 1), mostColumns)
	for k, x := range [2]int{g.i, g.j} {
		low, high := math.Inf(1), math.Inf(-1)
		for n := range all {
			low, high = min(low, all[n].box.low[x]), max(high, all[n].box.high[x])
		}
		g.low[k], g.step[k] = low-2, (high-low+4)/float64(g.n)
	}
	g.cells = make([][]int32, g.n*g.n)
	for n := range all {
		g.each(all[n].box, 2, func(cell int) { g.cells[cell] = append(g.cells[cell], int32(n)) })
	}
	return g
}

// each goes through the columns that a box is over, wider by some steps.
func (g *columns) each(b box, by float64, do func(cell int)) {
	place := func(k int, x float64) int { return min(max(int((x-g.low[k])/g.step[k]), 0), g.n-1) }
	for p := place(0, b.low[g.i]-by); p <= place(0, b.high[g.i]+by); p++ {
		for q := place(1, b.low[g.j]-by); q <= place(1, b.high[g.j]+by); q++ {
			do(p*g.n + q)
		}
	}
}

// over goes once through the triangles of all columns that a box is over.
func (g *columns) over(b box, do func(triangle int)) {
	g.look++
	g.each(b, 0, func(cell int) {
		for _, n := range g.cells[cell] {
			if g.seen[n] != g.look {
				g.seen[n] = g.look
				do(int(n))
			}
		}
	})
}

// at returns the triangles that may be over a place; all that are are among them.
func (g *columns) at(place [3]float64) (out []int32) {
	g.each(box{place, place}, 0, func(cell int) { out = g.cells[cell] })
	return out
}
