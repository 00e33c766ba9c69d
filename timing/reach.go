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
		cells := c.join(start, func(cell int) bool { return math.Abs(level[cell]-level[start]) <= decibels })
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
	cells := c.join(start, func(cell int) bool { return c.Smear[cell] <= limit })
	return float64(cells) * c.Step * c.Step
}

// cell returns the cell that a point stands in, seen along the slice's normal.
func (c *Coverage) cell(at r3.Vec) (int, bool) {
	d := r3.Sub(at, c.Origin)
	column := int(math.Round(r3.Dot(d, c.Right) / c.Step))
	row := int(math.Round(r3.Dot(d, c.Up) / c.Step))
	if column < 0 || row < 0 || column >= c.Columns || row >= c.Rows {
		return 0, false
	}
	return row*c.Columns + column, true
}

// join counts the cells that can be reached from one, by their sides, over
// cells that are good.
func (c *Coverage) join(start int, good func(cell int) bool) int {
	if !good(start) {
		return 0 // NaN: inside the body
	}
	seen := make([]bool, c.Columns*c.Rows)
	seen[start] = true
	count := 0
	for queue := []int{start}; len(queue) > 0; count++ {
		cell := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		column := cell % c.Columns
		for _, next := range [...]struct {
			cell int
			in   bool
		}{{cell - 1, column > 0}, {cell + 1, column < c.Columns-1}, {cell - c.Columns, true}, {cell + c.Columns, true}} {
			if next.in && next.cell >= 0 && next.cell < len(seen) && !seen[next.cell] && good(next.cell) {
				seen[next.cell] = true
				queue = append(queue, next.cell)
			}
		}
	}
	return count
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
