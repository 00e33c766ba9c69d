package timing

import (
	"context"
	"math"

	"pappus/timing/band"
	"pappus/timing/cores"

	"gonum.org/v1/gonum/spatial/r3"
)

// own plans for each place of a map by itself.
type own struct {
	planners []*Planner // one for each core
	at       []r3.Vec
	from, to int       // the planners' frequencies that the quantity is of
	value    []float64 // at each place; NaN: not yet known
}

// NewOwnLive prepares a map as NewLive does in which each place is heard with the delays that
// are best there, as Planner.Spot finds them, the array having no seats: what one can have by
// sitting there and setting the delays anew. It does not change with the plan's spot, and what
// was filled once is kept. The planners hear all octaves with perOctave frequencies in each.
func NewOwnLive(ctx context.Context, p *Spot, s Slice, q Quantity, centre float64, perOctave int) (*Live, error) {
	a := *p.Array
	a.Seats = nil
	at, cells := s.within(&a)
	frequency := band.Frequencies(band.Octaves(), 1, perOctave)
	o := &own{at: at, to: len(frequency), value: make([]float64, len(at))}
	if q.InOctave() {
		low, high := band.Edges(centre, 1)
		o.from, o.to = band.Range(frequency, low, high)
	}
	for i := range o.value {
		o.value[i] = math.NaN()
	}
	for range cores.Count() {
		planner, err := newPlanner(&a, frequency)
		if err != nil {
			return nil, err
		}
		o.planners = append(o.planners, planner)
	}
	return &Live{slice: s, quantity: q, cells: cells, own: o}, ctx.Err()
}

// ownStrip fills in some places, each with its own delays; those where nothing can be planned
// stay NaN.
func (f *Filling) ownStrip(ctx context.Context, some []int) error {
	l, o := f.live, f.live.own
	cores.Each(len(some), func(worker, i int) {
		at := some[i]
		if math.IsNaN(o.value[at]) && ctx.Err() == nil {
			p := o.planners[worker]
			if s, err := p.heardFrom(o.at[at]); err == nil {
				o.value[at] = p.own(s, l.quantity, o.from, o.to)
			}
		}
		f.dst[l.cells[at]] = o.value[at]
	})
	return ctx.Err()
}

// heardFrom is Spot for a place where nobody need sit, as cells of a map are.
func (p *Planner) heardFrom(at r3.Vec) (*Spot, error) {
	a := *p.array
	a.Spot = at
	return p.settle(&a, served{})
}
