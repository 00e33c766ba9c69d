package timing

import (
	"context"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/cores"
	"pappus/timing/measure"
	"pappus/timing/radiate"
	"pappus/timing/seats"
)

// Quantity is what a live map shows.
type Quantity int

const (
	LiveLevel       Quantity = iota // dB in one octave, with the delays, echoes in it
	LiveSummingLoss                 // dB in one octave, by energy, 0 or above, of the direct sound
	LiveSmear                       // s, of the direct sound
	LiveCombOnset                   // Hz, of the direct sound, +Inf where there is none up to the highest computed
	LiveLoss                        // dB, of the direct sound from 500 Hz to 8 kHz against all drivers in step, as at seats
	LiveDirectLevel                 // dB in one octave, of the direct sound
)

// Live computes one quantity over a slice for one plan of an array after another,
// as while the listening spot is being moved. What does not change with the spot is made
// once. It is for one goroutine.
type Live struct {
	slice    Slice
	quantity Quantity
	places   *places
	cells    []int // of the places
	own      *own  // each place with its own delays; nil: with those of the plan
}

// NewLive prepares a map of a plan's array over a slice. centre is the exact centre
// in Hz of the octave of LiveLevel and LiveSummingLoss, perOctave how many
// frequencies stand in each octave; with 12 all is as Cover has it.
func NewLive(ctx context.Context, p *Spot, s Slice, q Quantity, centre float64, perOctave int) (*Live, error) {
	at, cells := s.within(p.Array)
	x, err := newPlaces(p, liveFrequencies(q, centre, perOctave), s.frame(), at, q != LiveLevel && q != LiveDirectLevel)
	if err != nil {
		return nil, err
	}
	return &Live{slice: s, quantity: q, places: x, cells: cells}, ctx.Err()
}

// InOctave tells whether it is of one octave alone.
func (q Quantity) InOctave() bool {
	return q == LiveLevel || q == LiveSummingLoss || q == LiveDirectLevel
}

// liveFrequencies returns the frequencies in Hz that a quantity is computed from.
func liveFrequencies(q Quantity, centre float64, perOctave int) []float64 {
	if q.InOctave() {
		return band.Frequencies([]float64{centre}, 1, perOctave)
	}
	all := band.Frequencies(band.Octaves(), 1, perOctave)
	switch q {
	case LiveSmear:
		low, high := band.Range(all, layout.WeightLowHz, layout.WeightHighHz)
		return all[low:high]
	case LiveLoss:
		low, high := band.Range(all, seats.LowHz, seats.HighHz)
		return all[low:high]
	}
	return all
}

// Filling is a map of one plan that is being filled, strip after strip. It is for one
// goroutine.
type Filling struct {
	live    *Live
	dst     []float64
	heard   heard
	hearing *hearing
	echoes  *radiate.Summed // nil: not asked for
	loud    [][]float64
}

// Begin begins to fill dst, row-major and Columns*Rows long, for a plan of the same array: all
// of it is NaN, as cells where no sound can be stay. It panics where the length of dst is
// another.
func (l *Live) Begin(dst []float64, p *Spot) *Filling {
	if len(dst) != l.slice.Columns*l.slice.Rows {
		panic("timing: lengths differ")
	}
	blank(dst)
	if l.own != nil {
		return &Filling{live: l, dst: dst}
	}
	x, n := l.places, len(l.places.frequency)
	f := &Filling{live: l, dst: dst, loud: table(cores.Count(), n)}
	if l.quantity == LiveSmear {
		f.heard.smear = make([]float64, len(l.cells))
	} else {
		f.heard.sum = make([]complex128, len(l.cells)*n)
	}
	if l.quantity == LiveSummingLoss || l.quantity == LiveCombOnset || l.quantity == LiveLoss {
		f.heard.parts = make([]float64, len(l.cells)*n)
	}
	f.hearing = x.hearing(f.heard, p)
	if l.quantity == LiveLevel {
		f.echoes = x.echoes(p)
	}
	return f
}

// Strip fills one strip. It uses all cores; the result is the same to the bit for any number of
// them, and for any strips. It works until ctx ends, whose error it gives then.
func (f *Filling) Strip(ctx context.Context, s Strip) error {
	l := f.live
	keep, some := make([]bool, len(l.cells)), make([]int, 0, len(l.cells))
	for i, cell := range l.cells {
		if keep[i] = s.Has(l.slice, cell); keep[i] {
			some = append(some, i)
		}
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if l.own != nil {
		return f.ownStrip(ctx, some)
	}
	f.hearing.hear(f.heard, keep)
	if f.echoes != nil {
		f.echoes.Add(f.heard.sum, keep)
	}
	cores.Each(len(some), func(worker, i int) { f.dst[l.cells[some[i]]] = l.value(f.heard, some[i], f.loud[worker]) })
	return ctx.Err()
}

// value returns the quantity at a place. loud is room for one number for each frequency.
func (l *Live) value(h heard, place int, loud []float64) float64 {
	n := len(loud)
	switch l.quantity {
	case LiveSmear:
		return h.smear[place]
	case LiveLevel, LiveDirectLevel:
		return measure.Decibels(meanEnergy(h.sum[place*n : (place+1)*n]))
	case LiveLoss:
		return l.places.loss(h, place)
	case LiveSummingLoss:
		inStep := 0.0
		for _, v := range h.parts[place*n : (place+1)*n] {
			inStep += v * v / float64(n)
		}
		return measure.Decibels(inStep / meanEnergy(h.sum[place*n:(place+1)*n]))
	}
	return l.places.combOnset(h, place, loud)
}

// WithCells returns a plan whose slices have so many cells along each side.
func (p *Spot) WithCells(cells int) *Spot {
	a, out := *p.Array, *p
	a.Coverage.Cells, out.Array = cells, &a
	return &out
}
