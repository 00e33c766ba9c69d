package timing

import (
	"math"

	"pappus/timing/contour"

	"gonum.org/v1/gonum/spatial/r3"
)

// LeanLoss is by how many dB more than at the spot the sum may fall short of all drivers in
// step, from 500 Hz to 8 kHz, where one may lean: the least change of level that is surely
// heard in programme (about 1 dB: Zwicker and Fastl, Psychoacoustics, 7.1).
const LeanLoss = 1.0

// Edge is the edge of a part of a slice that joins up with a place: lines in columns and rows,
// and whether the place is in the slice at all.
type Edge struct {
	Lines [][]contour.Point
	Cells int // that are in it; 0: the place is not in the slice, or no sound is there
}

// Lean returns the edge of what joins up with a listener's place and where no more than
// LeanLoss more is lost than there, of the loss at each of a slice's cells: as far as one may
// lean, in the plane of the slice.
func (s Slice) Lean(loss []float64, at r3.Vec) Edge {
	return s.edge(loss, at, func(v, own float64) float64 { return v - own - LeanLoss })
}

// Listeners returns where those are who listen, in m: the seats that are planned for, else the
// spot.
func (p *Spot) Listeners() []r3.Vec {
	if p.Seating == nil {
		return []r3.Vec{p.Array.Spot}
	}
	out := make([]r3.Vec, len(p.Array.Seats))
	for i, s := range p.Array.Seats {
		out[i] = s.At
	}
	return out
}

// LevelEdge returns the edge of what joins up with a place and where the level, of each of the
// slice's cells, is within 3 dB of that there, up or down: what AreaWithin counts.
func (s Slice) LevelEdge(level []float64, at r3.Vec) Edge {
	return s.edge(level, at, func(v, own float64) float64 { return math.Abs(v-own) - reachLevel })
}

// edge returns the edge of the cells that join up with a place's and where what beyond makes
// of their value and of that at the place is not above 0.
func (s Slice) edge(values []float64, at r3.Vec, beyond func(v, own float64) float64) Edge {
	start, ok := s.cell(at)
	if !ok {
		return Edge{}
	}
	over := make([]float64, len(values))
	for i, v := range values {
		over[i] = beyond(v, values[start])
	}
	in, cells := s.join(start, func(cell int) bool { return over[cell] <= 0 })
	for i := range over {
		if over[i] <= 0 && !in[i] {
			over[i] = math.Inf(1) // good, too, but elsewhere
		}
	}
	return Edge{contour.Lines(over, s.Columns, s.Rows, math.SmallestNonzeroFloat64), cells}
}
