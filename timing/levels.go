package timing

import (
	"math"

	"pappus/timing/band"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Levels computes band levels over a slice, fast enough to follow a spot that is
// being moved: it keeps the radiation table and fills levels alone.
type Levels struct {
	slice  Slice
	bands  int
	count  int // frequencies in each band
	field  radiate.Field
	kernel *kernel
	points []r3.Vec // of the cells that sound can reach, row by row
	cell   []int
	rows   [][2]int // where each row's points begin and end
	sums   [][]complex128
}

// NewLevels prepares the levels of a plan over a slice for bands of 1/b octave
// round the given exact centres in Hz, rising, each the energy mean of count
// frequencies.
func NewLevels(p *Plan, s Slice, centre []float64, b, count int) (*Levels, error) {
	frequency := band.Frequencies(centre, b, count)
	l := &Levels{slice: s, bands: len(centre), count: count}
	longest := 0
	for row := range s.Rows {
		start := len(l.points)
		for column := range s.Columns {
			if at := s.Point(column, row); !outOfReach(p.Array, at) {
				l.points, l.cell = append(l.points, at), append(l.cell, row*s.Columns+column)
			}
		}
		l.rows = append(l.rows, [2]int{start, len(l.points)})
		longest = max(longest, len(l.points)-start)
	}
	var err error
	l.field, err = newField(p.Array, radiate.NewMedium(p.airState(), frequency), l.points)
	if err != nil {
		return nil, err
	}
	l.kernel = newKernel(p, l.field, frequency)
	for range workers() {
		l.sums = append(l.sums, make([]complex128, longest*len(frequency)))
	}
	return l, nil
}

// Follow takes the delays and gains of another plan of the same array.
func (l *Levels) Follow(p *Plan) { l.kernel = newKernel(p, l.field, l.kernel.frequency) }

// Fill fills dst, one slice of Columns*Rows for each band, with levels in dB,
// NaN where no
// sound can be. It uses all cores; the result is the same to the bit for
// any number of them. It panics where the shape of dst is another.
func (l *Levels) Fill(dst [][]float64) {
	if len(dst) != l.bands {
		panic("timing: lengths differ")
	}
	for _, level := range dst {
		if len(level) != l.slice.Columns*l.slice.Rows {
			panic("timing: lengths differ")
		}
		for i := range level {
			level[i] = math.NaN()
		}
	}
	spread(l.slice.Rows, func(worker, row int) { l.row(dst, row, l.sums[worker]) })
}

func (l *Levels) row(dst [][]float64, row int, sum []complex128) {
	from, to := l.rows[row][0], l.rows[row][1]
	nf := len(l.kernel.frequency)
	sum = sum[:(to-from)*nf]
	clear(sum)
	for m, mount := range l.kernel.plan.Array.Mounts {
		l.field.Add(sum, mount, l.points[from:to], l.kernel.weight[m*nf:(m+1)*nf])
	}
	for i, cell := range l.cell[from:to] {
		for b := range dst {
			start := i*nf + b*l.count
			dst[b][cell] = measure.Decibels(meanEnergy(sum[start : start+l.count]))
		}
	}
}
