package timing

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// perOctave is how many frequencies stand in each octave band of a coverage
// slice: enough for a band's energy mean, and for a comb onset good to the
// spacing of a semitone.
const perOctave = 12

// Cover fills a slice of the room for a plan: level in each octave band, smear
// and comb onset, all with the plan's delays. Levels are of all that is heard; smear and
// comb onset are of the direct sound. Cells inside the body, below the surface or outside
// the room are NaN.
// The cost is linear in cells; all cores are used and the result is the same to the bit for
// any number of them.
func Cover(p *Spot, s Slice) (*Coverage, error) {
	c := newCoverage(s)
	places, cells := s.within(p.Array)
	if len(places) == 0 {
		return c, nil
	}
	frequency := band.Frequencies(c.Band, 1, perOctave)
	h, err := newHeard(p, frequency, s.frame(), places)
	if err != nil {
		return nil, err
	}
	total, nf := h.sum, len(frequency)
	if ways := (scene{p.Array, h.medium}).images(); len(ways) > 1 {
		total = slices.Clone(h.sum)
		if err := newSum(p.Array, h.medium, ways[1:], s.frame(), h.weight).add(total, places); err != nil {
			return nil, err
		}
	}
	loud := make([][]float64, cores.Count())
	for i := range loud {
		loud[i] = make([]float64, nf)
	}
	cores.Each(len(cells), func(worker, i int) {
		cell := cells[i]
		for b := range c.Band {
			from := i*nf + b*perOctave
			c.Level[b][cell] = measure.Decibels(meanEnergy(total[from : from+perOctave]))
		}
		c.Smear[cell] = h.smear[i]
		c.CombOnset[cell] = h.combOnset(i, loud[worker])
	})
	return c, nil
}

// frame returns the frame in which the slice's points are on the fewest rings.
func (s Slice) frame() harmonic.Frame {
	return harmonic.Frame{X: s.Right, Y: s.Up, Z: r3.Cross(s.Right, s.Up)}
}

// newCoverage returns the slice with all its cells out of reach.
func newCoverage(s Slice) *Coverage {
	c := &Coverage{Slice: s, Band: band.Octaves()}
	cells := s.Columns * s.Rows
	c.Smear = make([]float64, cells)
	c.CombOnset = make([]float64, cells)
	c.Level = make([][]float64, len(c.Band))
	for b := range c.Level {
		c.Level[b] = make([]float64, cells)
	}
	for cell := range cells {
		c.blank(cell)
	}
	return c
}

// kernel is what the cells of a slice share.
type kernel struct {
	plan      *Spot
	field     radiate.Field
	frequency []float64
	driver    []complex128 // the driver's own response
	weight    []complex128 // [mount][frequency]
	delay     []float64    // s, for each mount
	low, high int          // the frequencies that weigh arrivals
}

func newKernel(p *Spot, field radiate.Field, frequency []float64) *kernel {
	d := newFeed(p)
	k := &kernel{plan: p, field: field, frequency: frequency, delay: d.delay}
	nf := len(frequency)
	k.weight = make([]complex128, nf*len(p.Arrivals))
	k.driver = p.response(frequency)
	for m := range p.Arrivals {
		d.weights(k.weight[m*nf:(m+1)*nf], m, true, frequency, k.driver)
	}
	k.low, k.high = indexRange(frequency, layout.WeightLowHz, layout.WeightHighHz)
	return k
}

// kernelScratch is one goroutine's room to work.
type kernelScratch struct {
	points  []r3.Vec
	sum     []complex128 // [point][frequency]
	one     []complex128 // [point][frequency], of one driver
	parts   []float64    // [point][frequency], sum of magnitudes
	energy  []float64    // [point][mount]
	arrival []float64    // for each mount
	hearer  hearer
}

func (k *kernel) scratch(points int) kernelScratch {
	nf, nm := len(k.frequency), len(k.delay)
	return kernelScratch{
		points:  make([]r3.Vec, 0, points),
		sum:     make([]complex128, points*nf),
		one:     make([]complex128, points*nf),
		parts:   make([]float64, points*nf),
		energy:  make([]float64, points*nm),
		arrival: make([]float64, nm),
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

// blank marks a cell as out of reach.
func (c *Coverage) blank(cell int) {
	for b := range c.Level {
		c.Level[b][cell] = math.NaN()
	}
	c.Smear[cell] = math.NaN()
	c.CombOnset[cell] = math.NaN()
}
