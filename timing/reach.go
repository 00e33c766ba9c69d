package timing

import (
	"math"
	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// AreaWithin returns, for each octave band, the area in m2 of the slice's cells
// that join up with the listening spot's and whose level is within the given dB
// of it, up or down. It is 0 where the spot is not in the slice.
func (c *Coverage) AreaWithin(spot r3.Vec, decibels float64) []float64 {
	area := make([]float64, len(c.Band))
	start, ok := c.cell(spot)
	if !ok {
		return area
	}
	for b, level := range c.Level {
		_, cells := c.join(start, func(cell int) bool { return math.Abs(level[cell]-level[start]) <= decibels })
		area[b] = float64(cells) * c.Step * c.Step
	}
	return area
}

// AreaInStep returns the area in m2 of the slice's cells that join up with the
// listening spot's and where the smear stays within a limit in s. It is 0 where
// the spot is not in the slice or its own smear is above the limit.
func (c *Coverage) AreaInStep(spot r3.Vec, limit float64) float64 {
	start, ok := c.cell(spot)
	if !ok {
		return 0
	}
	_, cells := c.join(start, func(cell int) bool { return c.Smear[cell] <= limit })
	return float64(cells) * c.Step * c.Step
}

// cell returns the cell that a point stands in, seen along the slice's normal.
func (s Slice) cell(at r3.Vec) (int, bool) {
	d := r3.Sub(at, s.Origin)
	column := int(math.Round(r3.Dot(d, s.Right) / s.Step))
	row := int(math.Round(r3.Dot(d, s.Up) / s.Step))
	if column < 0 || row < 0 || column >= s.Columns || row >= s.Rows {
		return 0, false
	}
	return row*s.Columns + column, true
}

// join returns which cells can be reached from one, by their sides, over cells that are
// good, and how many.
func (s Slice) join(start int, good func(cell int) bool) (in []bool, count int) {
	if !good(start) {
		return make([]bool, s.Columns*s.Rows), 0 // NaN: inside the body
	}
	in = make([]bool, s.Columns*s.Rows)
	in[start] = true
	for queue := []int{start}; len(queue) > 0; count++ {
		cell := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		column := cell % s.Columns
		for _, next := range [...]struct {
			cell int
			in   bool
		}{{cell - 1, column > 0}, {cell + 1, column < s.Columns-1}, {cell - s.Columns, true}, {cell + s.Columns, true}} {
			if next.in && next.cell >= 0 && next.cell < len(in) && !in[next.cell] && good(next.cell) {
				in[next.cell] = true
				queue = append(queue, next.cell)
			}
		}
	}
	return in, count
}

// MeanFrom500To4k returns the mean of values that stand for the octave bands,
// over the bands from 500 Hz to 4 kHz.
func MeanFrom500To4k(band, value []float64) float64 {
	var sum, n float64
	for b, centre := range band {
		if centre > 0.9*layout.WeightLowHz && centre < 1.1*layout.WeightHighHz {
			sum += value[b]
			n++
		}
	}
	return sum / max(n, 1)
}
