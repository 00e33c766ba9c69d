package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/band"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// perOctave is how many frequencies stand in each octave band of a coverage
// slice: enough for a band's energy mean, and for a comb onset good to the
// spacing of a semitone.
const perOctave = 12

// Cover fills a slice of the room for a plan: level in each octave band, smear
// and comb onset, all with the plan's delays. Cells inside the body,
// below the surface or outside the room are NaN.
// The cost is linear in cells and drivers; all cores are used and the result
// is the same to the bit for any number of them.
func Cover(p *Plan, s Slice) (*Coverage, error) {
	c := newCoverage(s)
	frequency := band.Frequencies(c.Band, 1, perOctave)
	medium := radiate.NewMedium(p.airState(), frequency)
	field, err := newField(p.Array, medium, s.within(p.Array))
	if err != nil {
		return nil, err
	}
	k := newKernel(p, field, frequency)
	scratch := make([]kernelScratch, workers())
	for i := range scratch {
		scratch[i] = k.scratch(s.Columns)
	}
	spread(s.Rows, func(worker, row int) {
		k.row(c, row, &scratch[worker])
	})
	return c, nil
}

func newCoverage(s Slice) *Coverage {
	c := &Coverage{Slice: s, Band: band.Octaves()}
	cells := s.Columns * s.Rows
	c.Smear = make([]float64, cells)
	c.CombOnset = make([]float64, cells)
	c.Level = make([][]float64, len(c.Band))
	for b := range c.Level {
		c.Level[b] = make([]float64, cells)
	}
	return c
}

// kernel is what the cells of a slice share.
type kernel struct {
	plan      *Plan
	field     radiate.Field
	frequency []float64
	driver    []complex128 // the driver's own response
	weight    []complex128 // [mount][frequency]
	delay     []float64    // s, for each mount
	low, high int          // the frequencies that weigh arrivals
}

func newKernel(p *Plan, field radiate.Field, frequency []float64) *kernel {
	d := newFeed(p)
	k := &kernel{plan: p, field: field, frequency: frequency, delay: d.delay}
	nf := len(frequency)
	k.weight = make([]complex128, nf*len(p.Arrivals))
	k.driver = p.response(frequency)
	for m := range p.Arrivals {
		d.weights(k.weight[m*nf:(m+1)*nf], m, true, frequency, k.driver)
	}
	k.low, k.high = indexRange(frequency, weightLow, weightHigh)
	return k
}

// kernelScratch is one goroutine's room to work.
type kernelScratch struct {
	points   []r3.Vec
	cell     []int        // the cell of each point
	sum      []complex128 // [point][frequency]
	one      []complex128 // [point][frequency], of one driver
	parts    []float64    // [point][frequency], sum of magnitudes
	energy   []float64    // [point][mount]
	arrival  []float64    // for each mount
	loudness []float64    // magnitude of the sum at one point
}

func (k *kernel) scratch(points int) kernelScratch {
	nf, nm := len(k.frequency), len(k.delay)
	return kernelScratch{
		points:   make([]r3.Vec, 0, points),
		cell:     make([]int, 0, points),
		sum:      make([]complex128, points*nf),
		one:      make([]complex128, points*nf),
		parts:    make([]float64, points*nf),
		energy:   make([]float64, points*nm),
		arrival:  make([]float64, nm),
		loudness: make([]float64, nf),
	}
}

// row fills one row of a slice.
func (k *kernel) row(c *Coverage, row int, s *kernelScratch) {
	s.points, s.cell = s.points[:0], s.cell[:0]
	for column := range c.Columns {
		at, cell := c.Point(column, row), row*c.Columns+column
		if outOfReach(k.plan.Array, at) {
			c.blank(cell)
			continue
		}
		s.points, s.cell = append(s.points, at), append(s.cell, cell)
	}
	k.hear(s)
	for i, cell := range s.cell {
		k.measure(c, cell, i, s)
	}
}

// hear sums all drivers at the points in the scratch space.
func (k *kernel) hear(s *kernelScratch) {
	nf, nm := len(k.frequency), len(k.delay)
	n := len(s.points) * nf
	clear(s.sum[:n])
	clear(s.parts[:n])
	for m, mount := range k.plan.Array.Mounts {
		one := s.one[:n]
		clear(one)
		k.field.Add(one, mount, s.points, k.weight[m*nf:(m+1)*nf])
		for i, v := range one {
			s.sum[i] += v
			s.parts[i] += math.Sqrt(energyOf(v))
		}
		for i := range s.points {
			s.energy[i*nm+m] = meanEnergy(one[i*nf+k.low : i*nf+k.high])
		}
	}
}

func meanEnergy(pressure []complex128) float64 {
	sum := 0.0
	for _, v := range pressure {
		sum += energyOf(v)
	}
	return sum / float64(len(pressure))
}

// measure fills one cell from the sums at point i.
func (k *kernel) measure(c *Coverage, cell, i int, s *kernelScratch) {
	nf, nm := len(k.frequency), len(k.delay)
	sum := s.sum[i*nf : (i+1)*nf]
	for b := range c.Band {
		energy := meanEnergy(sum[b*perOctave : (b+1)*perOctave])
		c.Level[b][cell] = measure.Decibels(energy)
	}
	for m, mount := range k.plan.Array.Mounts {
		s.arrival[m] = k.plan.heardAt(mount, s.points[i]) + k.delay[m]
	}
	c.Smear[cell] = measure.Smear(s.arrival, s.energy[i*nm:(i+1)*nm])
	for f, v := range sum {
		s.loudness[f] = cmplx.Abs(v)
	}
	c.CombOnset[cell] = measure.CombOnset(k.frequency, s.loudness, s.parts[i*nf:(i+1)*nf])
}

// blank marks a cell as out of reach.
func (c *Coverage) blank(cell int) {
	for b := range c.Level {
		c.Level[b][cell] = math.NaN()
	}
	c.Smear[cell] = math.NaN()
	c.CombOnset[cell] = math.NaN()
}
