package timing

import (
	"context"
	"math"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/cores"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Quantity is what a live map shows.
type Quantity int

const (
	LiveLevel       Quantity = iota // dB in one octave, with the delays, echoes in it
	LiveSummingLoss                 // dB in one octave, by energy, 0 or above, of the direct sound
	LiveSmear                       // s, of the direct sound
	LiveCombOnset                   // Hz, of the direct sound, +Inf where there is none up to the highest computed
)

// liveMost is the most that a live map keeps, in bytes. One that would need more
// hears the drivers afresh for every plan.
const liveMost = 24 << 20

// Live computes one quantity over a slice for one plan of an array after another,
// as while the listening spot is being moved. What each driver gives in each cell
// does not change with the spot, so it is kept: what is left for each plan is the
// sum. It is for one goroutine.
type Live struct {
	slice     Slice
	quantity  Quantity
	frequency []float64
	field     radiate.Field
	plan      *Spot // whose channels and delays do not matter
	ones      []complex128
	rows      []liveRow
	kept      bool
	scratch   []liveScratch
}

// liveRow is one row's cells that sound can reach, and what is kept of them.
type liveRow struct {
	points []r3.Vec
	cell   []int
	heard  []complex64 // [point][mount][frequency], all drivers fed alike
	when   []float64   // [point][mount] s; for smear
}

// liveScratch is one goroutine's room to work.
type liveScratch struct {
	one     []complex128 // [point][frequency] of one driver
	row     liveRow
	sum     []complex128
	parts   []float64
	arrival []float64
	energy  []float64
	loud    []float64
	hearer  hearer
}

// NewLive prepares a map of a plan's array over a slice. centre is the exact centre
// in Hz of the octave of LiveLevel and LiveSummingLoss, perOctave how many
// frequencies stand in each octave; with 12 all is as Cover has it.
// It works until ctx ends, whose error it gives then.
func NewLive(ctx context.Context, p *Spot, s Slice, q Quantity, centre float64, perOctave int) (*Live, error) {
	l := &Live{slice: s, quantity: q, frequency: liveFrequencies(q, centre, perOctave), plan: p}
	nf, nm := len(l.frequency), len(p.Array.Mounts)
	l.ones = make([]complex128, nf)
	for f := range l.ones {
		l.ones[f] = 1
	}
	l.rows = make([]liveRow, s.Rows)
	longest, count := 0, 0
	var places []r3.Vec
	for row := range l.rows {
		r := &l.rows[row]
		for column := range s.Columns {
			if at := s.Point(column, row); p.Array.Reach(at) == nil {
				r.points, r.cell = append(r.points, at), append(r.cell, row*s.Columns+column)
			}
		}
		longest, count, places = max(longest, len(r.points)), count+len(r.points), append(places, r.points...)
	}
	if count == 0 {
		return l, nil
	}
	var err error
	heard := directField // what the delays do shows in the direct sound
	if q == LiveLevel {
		heard = newField
	}
	if l.field, err = heard(p.Array, radiate.NewMedium(p.airState(), l.frequency), places); err != nil {
		return nil, err
	}
	l.kept = 8*count*nm*nf <= liveMost
	for range cores.Count() {
		k := liveScratch{
			one: make([]complex128, longest*nf), sum: make([]complex128, nf), parts: make([]float64, nf),
			arrival: make([]float64, nm), energy: make([]float64, nm), loud: make([]float64, nf),
		}
		if !l.kept {
			k.row.grow(longest, nm, nf, q)
		}
		l.scratch = append(l.scratch, k)
	}
	if !l.kept {
		return l, nil
	}
	cores.Each(s.Rows, func(worker, row int) {
		if r := &l.rows[row]; ctx.Err() == nil {
			r.grow(len(r.points), nm, nf, q)
			l.hear(r, r, &l.scratch[worker])
		}
	})
	return l, ctx.Err()
}

// liveFrequencies returns the frequencies in Hz that a quantity is computed from.
func liveFrequencies(q Quantity, centre float64, perOctave int) []float64 {
	if q == LiveLevel || q == LiveSummingLoss {
		return band.Frequencies([]float64{centre}, 1, perOctave)
	}
	all := band.Frequencies(band.Octaves(), 1, perOctave)
	if q == LiveSmear {
		low, high := indexRange(all, layout.WeightLowHz, layout.WeightHighHz)
		return all[low:high]
	}
	return all
}

// grow makes room for so many points.
func (r *liveRow) grow(points, mounts, frequencies int, q Quantity) {
	r.heard = make([]complex64, points*mounts*frequencies)
	if q == LiveSmear {
		r.when = make([]float64, points*mounts)
	}
}

// hear fills in what each driver gives at the points of a row.
func (l *Live) hear(dst, at *liveRow, k *liveScratch) {
	nf, nm := len(l.frequency), len(l.plan.Array.Mounts)
	for m, mount := range l.plan.Array.Mounts {
		one := k.one[:len(at.points)*nf]
		clear(one)
		l.field.Add(one, mount, at.points, l.ones)
		for i := range at.points {
			to := dst.heard[(i*nm+m)*nf:][:nf]
			for f, v := range one[i*nf : (i+1)*nf] {
				to[f] = complex64(v)
			}
		}
	}
	if l.quantity == LiveSmear {
		l.time(dst, at, k)
	}
}

// time fills in when each driver is heard at the points of a row.
func (l *Live) time(dst, at *liveRow, k *liveScratch) {
	nm := len(l.plan.Array.Mounts)
	for i, point := range at.points {
		k.hearer.move(l.plan, point)
		for m, mount := range l.plan.Array.Mounts {
			dst.when[i*nm+m] = k.hearer.heard(mount)
		}
	}
}

// Fill fills dst, row-major and Columns*Rows long, for a plan of the same array;
// NaN where no sound can be. It uses all cores; the result is the same to the bit
// for any number of them. It works until ctx ends, whose error it gives then. Fill
// panics where the length of dst is another.
func (l *Live) Fill(ctx context.Context, dst []float64, p *Spot) error {
	if len(dst) != l.slice.Columns*l.slice.Rows {
		panic("timing: lengths differ")
	}
	for i := range dst {
		dst[i] = math.NaN()
	}
	if l.field == nil {
		return ctx.Err()
	}
	k := newKernel(p, l.field, l.frequency)
	size := make([]float64, len(k.weight))
	for i, w := range k.weight {
		size[i] = math.Sqrt(energyOf(w))
	}
	cores.Each(l.slice.Rows, func(worker, row int) {
		if ctx.Err() != nil {
			return
		}
		s, r := &l.scratch[worker], l.rows[row]
		if !l.kept {
			l.hear(&s.row, &r, s)
			r.heard, r.when = s.row.heard, s.row.when
		}
		for i, cell := range r.cell {
			dst[cell] = l.cell(k, size, r, i, s)
		}
	})
	return ctx.Err()
}

// cell returns the quantity at one point of a row.
func (l *Live) cell(k *kernel, size []float64, r liveRow, i int, s *liveScratch) float64 {
	nf, nm := len(l.frequency), len(l.plan.Array.Mounts)
	heard := r.heard[i*nm*nf:][:nm*nf]
	switch l.quantity {
	case LiveSmear:
		for m := range nm {
			s.arrival[m] = r.when[i*nm+m] + k.delay[m]
			s.energy[m] = weighed(heard[m*nf:(m+1)*nf], size[m*nf:(m+1)*nf])
		}
		return measure.Smear(s.arrival, s.energy)
	case LiveLevel:
		add(s.sum, heard, k.weight)
		return measure.Decibels(meanEnergy(s.sum))
	}
	add(s.sum, heard, k.weight)
	addSizes(s.parts, heard, size)
	if l.quantity == LiveSummingLoss {
		inStep := 0.0
		for _, v := range s.parts {
			inStep += v * v
		}
		return measure.Decibels(inStep / float64(nf) / meanEnergy(s.sum))
	}
	for f, v := range s.sum {
		s.loud[f] = math.Sqrt(energyOf(v))
	}
	return measure.CombOnset(l.frequency, s.loud, s.parts)
}

// weighed returns the mean energy of what one driver gives, fed with weights of so
// much.
func weighed(heard []complex64, size []float64) float64 {
	sum := 0.0
	for f, v := range heard {
		re, im := float64(real(v))*size[f], float64(imag(v))*size[f]
		sum += re*re + im*im
	}
	return sum / float64(len(heard))
}

// add sets dst to the sum over drivers of weight times what is heard of each.
func add(dst []complex128, heard []complex64, weight []complex128) {
	clear(dst)
	for len(heard) > 0 {
		h, w := heard[:len(dst)], weight[:len(dst)]
		for f := range dst {
			dst[f] += w[f] * complex128(h[f])
		}
		heard, weight = heard[len(dst):], weight[len(dst):]
	}
}

// addSizes sets dst to the sum over drivers of the magnitudes.
func addSizes(dst []float64, heard []complex64, size []float64) {
	clear(dst)
	for len(heard) > 0 {
		h, w := heard[:len(dst)], size[:len(dst)]
		for f := range dst {
			re, im := real(h[f]), imag(h[f])
			dst[f] += w[f] * float64(float32(math.Sqrt(float64(re*re+im*im))))
		}
		heard, size = heard[len(dst):], size[len(dst):]
	}
}

// WithCells returns a plan whose slices have so many cells along each side.
func (p *Spot) WithCells(cells int) *Spot {
	a, out := *p.Array, *p
	a.Coverage.Cells, out.Array = cells, &a
	return &out
}

// Bytes is the size of what is kept.
func (l *Live) Bytes() int {
	n := 0
	for _, r := range l.rows {
		n += 8*len(r.heard) + 8*len(r.when) + 32*len(r.points)
	}
	return n
}
