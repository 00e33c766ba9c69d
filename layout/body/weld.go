package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// weld joins each point to the first one within slack of it. It returns the
// points that are left and, for each that was given, its place among them.
func weld(points []r3.Vec, slack float64) (left []r3.Vec, place []int) {
	same := make(map[r3.Vec]int, len(points)/2)
	w := welder{slack: slack, cells: make(map[[3]int64][]int, len(points)/2)}
	place = make([]int, len(points))
	for i, p := range points {
		at, ok := same[p]
		if !ok {
			at = w.place(p)
			same[p] = at
		}
		place[i] = at
	}
	return w.points, place
}

// welder finds near points by cells of a grid twice as wide as the slack.
type welder struct {
	slack  float64
	points []r3.Vec
	cells  map[[3]int64][]int
}

func (w *welder) place(p r3.Vec) int {
	low := w.cell(r3.Sub(p, r3.Vec{X: w.slack, Y: w.slack, Z: w.slack}))
	high := w.cell(r3.Add(p, r3.Vec{X: w.slack, Y: w.slack, Z: w.slack}))
	for x := low[0]; x <= high[0]; x++ {
		for y := low[1]; y <= high[1]; y++ {
			for z := low[2]; z <= high[2]; z++ {
				for _, at := range w.cells[[3]int64{x, y, z}] {
					if r3.Norm(r3.Sub(w.points[at], p)) <= w.slack {
						return at
					}
				}
			}
		}
	}
	at, cell := len(w.points), w.cell(p)
	w.points = append(w.points, p)
	w.cells[cell] = append(w.cells[cell], at)
	return at
}

func (w *welder) cell(p r3.Vec) [3]int64 {
	step := func(v float64) int64 { return int64(math.Floor(v / (2 * w.slack))) }
	return [3]int64{step(p.X), step(p.Y), step(p.Z)}
}
