package sorting

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"pappus/timing/cores"
)

// Problem is drivers, and the places that there are for them.
type Problem struct {
	// Ohm and Velocity are the logarithms of each driver's impedance and of its velocity for
	// an ampere, over those of a nominal driver, at each frequency.
	Ohm, Velocity [][]complex128
	Strings       [][]int   // places, numbered from 0, each in one string
	Weight        []float64 // of each place at the spot; they sum to 1
}

// starts is from how many orders swaps begin: the one along the greatest difference, the drivers
// as they come, and others by chance.
const starts = 10 // free: effort; the test against all orders fails with five

// Sort returns which driver goes to each place, and which are spare, in their order. It panics
// unless there is a driver for each place, and as many curves as drivers. Once ctx ends it
// returns what it has found by then.
func (p Problem) Sort(ctx context.Context) (driver, spare []int) {
	p.check()
	orders, costs := make([][]int, starts), make([]float64, starts)
	cores.Each(starts, func(_, i int) {
		s := p.newState(p.start(i))
		s.improve(ctx)
		orders[i], costs[i] = s.order, s.Cost()
	})
	best := 0
	for i, c := range costs {
		if c < costs[best]*(1-1e-9) { // free: more than rounding
			best = i
		}
	}
	n := len(p.Weight)
	spare = slices.Clone(orders[best][n:])
	slices.Sort(spare)
	return orders[best][:n], spare
}

// Cost returns the cost of a driver in each place: the mean square of what they give over their
// mean, a relative error.
func (p Problem) Cost(driver []int) float64 {
	p.check()
	return p.newState(slices.Clone(driver)).Cost()
}

func (p Problem) check() {
	places := 0
	for _, s := range p.Strings {
		places += len(s)
	}
	if places == 0 || places != len(p.Weight) || len(p.Ohm) < places || len(p.Velocity) != len(p.Ohm) {
		panic("sorting: a driver and a weight for each place, and as many curves as drivers")
	}
}

// start returns an order of all drivers: those for the places first.
func (p Problem) start(which int) []int {
	order := make([]int, len(p.Ohm))
	for i := range order {
		order[i] = i
	}
	switch which {
	case 0:
		return p.along(order)
	case 1:
		return order
	}
	random := rand.New(rand.NewPCG(1965, uint64(which))) // free: a seed
	random.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
	return order
}

// along orders drivers along the direction in which they differ most, those furthest from the
// mean last, and deals them to the places string by string.
func (p Problem) along(order []int) []int {
	far, on := spread(p.features())
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(far[a], far[b]) })
	used := order[:len(p.Weight)]
	slices.SortStableFunc(used, func(a, b int) int { return cmp.Compare(on[a], on[b]) })
	next, out := 0, slices.Clone(order)
	for _, s := range p.Strings {
		for _, place := range s {
			out[place] = used[next]
			next++
		}
	}
	return out
}

// features are all that is known of each driver, as real numbers about their means.
func (p Problem) features() [][]float64 {
	out := make([][]float64, len(p.Ohm))
	for d := range out {
		for _, curve := range [][]complex128{p.Ohm[d], p.Velocity[d]} {
			for _, v := range curve {
				out[d] = append(out[d], real(v), imag(v))
			}
		}
	}
	for f := range out[0] {
		mean := 0.0
		for _, row := range out {
			mean += row[f] / float64(len(out))
		}
		for _, row := range out {
			row[f] -= mean
		}
	}
	return out
}

// spread returns how far each row is from the mean, and where it is along the direction of the
// greatest variance (power iteration).
func spread(rows [][]float64) (far, on []float64) {
	far, on = make([]float64, len(rows)), make([]float64, len(rows))
	furthest := 0
	for i, row := range rows {
		far[i] = math.Sqrt(dot(row, row))
		if far[i] > far[furthest] {
			furthest = i
		}
	}
	axis := slices.Clone(rows[furthest])
	const rounds = 30 // free: the order along it is a start, no more
	for range rounds {
		next := make([]float64, len(axis))
		for _, row := range rows {
			along := dot(row, axis)
			for f, v := range row {
				next[f] += along * v
			}
		}
		size := math.Sqrt(dot(next, next))
		if !(size > 0) {
			break // all alike
		}
		for f := range next {
			axis[f] = next[f] / size
		}
	}
	for i, row := range rows {
		on[i] = dot(row, axis)
	}
	return far, on
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}
