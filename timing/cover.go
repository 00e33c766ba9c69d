package timing

import (
	"math"
	"slices"

	"pappus/timing/band"
	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/measure"

	"gonum.org/v1/gonum/spatial/r3"
)

// perOctave is how many frequencies stand in each octave band of a coverage
// slice: enough for a band's energy mean, and for a comb onset good to the
// spacing of a semitone.
const perOctave = 12

// Cover fills a slice of the room for a plan: level in each octave band, smear, comb onset
// and loss, all with the plan's delays. Levels are of all that is heard; the others are of
// the direct sound. Cells inside the body, below the surface or outside
// the room are NaN.
// The cost is linear in cells; all cores are used and the result is the same to the bit for
// any number of them.
func Cover(p *Spot, s Slice) (*Coverage, error) {
	c := newCoverage(s)
	at, cells := s.within(p.Array)
	frequency := band.Frequencies(c.Band, 1, perOctave)
	x, err := newPlaces(p, frequency, s.frame(), at, true)
	if err != nil {
		return nil, err
	}
	n := len(frequency)
	h := heard{make([]complex128, len(at)*n), make([]float64, len(at)*n), make([]float64, len(at))}
	x.hear(h, p)
	total := slices.Clone(h.sum)
	x.echoes(p).Add(total, nil)
	loud := table(cores.Count(), n)
	cores.Each(len(cells), func(worker, i int) {
		cell := cells[i]
		for b := range c.Band {
			from := i*n + b*perOctave
			c.Level[b][cell] = measure.Decibels(meanEnergy(total[from : from+perOctave]))
		}
		c.Smear[cell] = h.smear[i]
		c.CombOnset[cell] = x.combOnset(h, i, loud[worker])
		c.Loss[cell] = x.loss(h, i)
	})
	return c, nil
}

// frame returns the frame in which the slice's points are on the fewest rings.
func (s Slice) frame() harmonic.Frame {
	return harmonic.Frame{X: s.Right, Y: s.Up, Z: r3.Cross(s.Right, s.Up)}
}

// newCoverage returns the slice with all its cells out of reach.
func newCoverage(s Slice) *Coverage {
	cells, octaves := s.Columns*s.Rows, band.Octaves()
	c := &Coverage{Slice: s, Band: octaves, Level: table(len(octaves), cells), Smear: make([]float64, cells), CombOnset: make([]float64, cells), Loss: make([]float64, cells)}
	for _, values := range append(c.Level, c.Smear, c.CombOnset, c.Loss) {
		blank(values)
	}
	return c
}

// blank marks cells as out of reach.
func blank(values []float64) {
	for i := range values {
		values[i] = math.NaN()
	}
}

// table returns rows of one length.
func table(rows, columns int) [][]float64 {
	t := make([][]float64, rows)
	for i := range t {
		t[i] = make([]float64, columns)
	}
	return t
}
