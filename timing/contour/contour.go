// Package contour draws lines of one value over a grid: marching squares (W. Lorensen and
// H. Cline, "Marching cubes", Computer Graphics 21 (1987) 163, in two dimensions), with the
// pieces of all cells joined. A saddle is cut by the mean of its four corners.
package contour

import "math"

// Point is a place on a grid, in columns and rows: the middles of cells are at whole numbers.
type Point struct{ Column, Row float64 }

// Lines returns the lines of a level over values, row-major and columns*rows long; a line that
// is closed ends with the point that it begins with. Between two cells it is drawn straight,
// beside an infinite one half-way. There is no line through four cells of which one is NaN. Lines
// panics where the lengths differ.
func Lines(values []float64, columns, rows int, level float64) [][]Point {
	if len(values) != columns*rows {
		panic("contour: lengths differ")
	}
	g := grid{values, columns, level, make([][2]int, 2*len(values))}
	for row := range rows - 1 {
		for column := range columns - 1 {
			g.cell(row*columns + column)
		}
	}
	var out [][]Point
	for _, closed := range []bool{false, true} { // those with ends first, so that they begin there
		for edge := range g.joined {
			if n := g.joined[edge]; n[0] != 0 && (closed || n[1] == 0) {
				out = append(out, g.follow(edge))
			}
		}
	}
	return out
}

// grid is a grid whose edges are being joined. The edge from a cell to the next in its row is
// numbered twice the cell, that to the one above it one more.
type grid struct {
	values  []float64
	columns int
	level   float64
	joined  [][2]int // for each edge up to two others, plus 1; 0: none
}

// cell joins the edges that the line crosses round the square of four cells, of which at is
// the lower left.
func (g grid) cell(at int) {
	n := g.columns
	corner := [4]float64{g.values[at], g.values[at+1], g.values[at+n+1], g.values[at+n]} // counter-clockwise
	edge := [4]int{2 * at, 2*(at+1) + 1, 2 * (at + n), 2*at + 1}                         // each after its corner
	var crossed []int
	sum := 0.0
	for i, v := range corner {
		if math.IsNaN(v) {
			return
		}
		sum += v
		if (v < g.level) != (corner[(i+1)%4] < g.level) {
			crossed = append(crossed, edge[i])
		}
	}
	switch {
	case len(crossed) == 2:
		g.join(crossed[0], crossed[1])
	case len(crossed) == 4 && (sum/4 < g.level) == (corner[0] < g.level): // the first corner joins the third
		g.join(crossed[0], crossed[1])
		g.join(crossed[2], crossed[3])
	case len(crossed) == 4:
		g.join(crossed[3], crossed[0])
		g.join(crossed[1], crossed[2])
	}
}

func (g grid) join(a, b int) {
	for _, pair := range [2][2]int{{a, b}, {b, a}} {
		to := &g.joined[pair[0]]
		if to[0] == 0 {
			to[0] = pair[1] + 1
		} else {
			to[1] = pair[1] + 1
		}
	}
}

// follow returns the line that an edge is on, and takes it out.
func (g grid) follow(edge int) []Point {
	var out []Point
	for first, last := edge, -1; ; {
		out = append(out, g.point(edge))
		next := -1
		for _, n := range g.joined[edge] {
			if n != 0 && n-1 != last && (n-1 == first || g.joined[n-1] != [2]int{}) {
				next = n - 1
				break
			}
		}
		if edge != first {
			g.joined[edge] = [2]int{}
		}
		if next < 0 || next == first {
			if next == first {
				out = append(out, out[0])
			}
			g.joined[first] = [2]int{}
			return out
		}
		last, edge = edge, next
	}
}

// point returns where the line crosses an edge.
func (g grid) point(edge int) Point {
	cell, up := edge/2, edge%2
	next := cell + 1
	if up == 1 {
		next = cell + g.columns
	}
	a, b := g.values[cell], g.values[next]
	share := (g.level - a) / (b - a)
	if math.IsInf(a, 0) || math.IsInf(b, 0) {
		share = 0.5
	}
	p := Point{float64(cell % g.columns), float64(cell / g.columns)}
	if up == 1 {
		p.Row += share
	} else {
		p.Column += share
	}
	return p
}
