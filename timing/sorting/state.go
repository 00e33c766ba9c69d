package sorting

import "context"

// state is drivers in their places, with what the cost is made of.
type state struct {
	Problem
	order  []int     // of drivers: those in the places, then the spares
	string []int     // of each place
	share  []float64 // of each place: a
	n      int       // frequencies

	// Of each string, at each frequency: the mean of z, the weighted sum of t; and the sum of
	// its weights.
	mean, once [][]complex128
	all        []float64
	total      []complex128 // the weighted mean of e
	cost       float64      // times the frequencies

	ohm, velocity, shift []complex128 // of the swap that is tried
	tries                [2]try
}

// newState works out the cost of an order of drivers.
func (p Problem) newState(order []int) *state {
	places, n := len(p.Weight), len(p.Ohm[0])
	s := &state{Problem: p, order: order, string: make([]int, places), share: make([]float64, places), n: n,
		all: make([]float64, len(p.Strings)), total: make([]complex128, n)}
	for _, to := range []*[]complex128{&s.ohm, &s.velocity, &s.shift, &s.tries[0].mean, &s.tries[0].once, &s.tries[1].mean, &s.tries[1].once} {
		*to = make([]complex128, n)
	}
	for place, w := range p.Weight {
		s.share[place] = (1/float64(places) + w) / 2
	}
	for i, str := range p.Strings {
		mean, once := make([]complex128, n), make([]complex128, n)
		for _, place := range str {
			s.string[place] = i
			s.all[i] += s.share[place]
			d := order[place]
			s.cost += s.share[place] * square(p.Velocity[d])
			for f := range n {
				mean[f] += p.Ohm[d][f] / complex(float64(len(str)), 0)
				once[f] += complex(s.share[place], 0) * p.Velocity[d][f]
			}
		}
		s.mean, s.once = append(s.mean, mean), append(s.once, once)
	}
	for i := range p.Strings {
		for f := range n {
			s.cost += rest(s.all[i], s.mean[i][f], s.once[i][f])
			s.total[f] += s.once[i][f] - complex(s.all[i], 0)*s.mean[i][f]
		}
	}
	s.cost -= square(s.total)
	return s
}

// Cost returns the cost.
func (s *state) Cost() float64 { return max(0, s.cost/float64(s.n)) }

func square(v []complex128) float64 {
	sum := 0.0
	for _, z := range v {
		sum += real(z)*real(z) + imag(z)*imag(z)
	}
	return sum
}

// rest is what a string adds to the cost beside a abs(t)2: a abs(z)2 - 2 re(conj(z) sum of a t).
func rest(all float64, mean, once complex128) float64 {
	return all*(real(mean)*real(mean)+imag(mean)*imag(mean)) - 2*(real(mean)*real(once)+imag(mean)*imag(once))
}

// worth is what a swap must lower the cost by to be made, over the cost: more than rounding.
const worth = 1e-9 // free: rounding is far less, what anybody gains far more

// improve swaps pairs while that lowers the cost, until ctx ends.
func (s *state) improve(ctx context.Context) {
	for swapped := true; swapped; {
		swapped = false
		for place := range s.string {
			if ctx.Err() != nil {
				return
			}
			for other := place + 1; other < len(s.order); other++ {
				if s.swap(place, other) {
					swapped = true
				}
			}
		}
	}
}

// swap swaps the driver in a place with another in a place or spare, and tells whether that
// lowered the cost; else all stays.
func (s *state) swap(place, other int) bool {
	a, b := s.order[place], s.order[other]
	one, two := s.string[place], -1
	give, take := s.share[place], 0.0
	if other < len(s.string) {
		two, take = s.string[other], s.share[other]
	}
	for f := range s.n {
		s.ohm[f], s.velocity[f], s.shift[f] = s.Ohm[b][f]-s.Ohm[a][f], s.Velocity[b][f]-s.Velocity[a][f], 0
	}
	change := (give - take) * (square(s.Velocity[b]) - square(s.Velocity[a]))
	switch two {
	case one:
		change += s.push(0, one, 0, give-take)
	case -1:
		change += s.push(0, one, 1, give)
	default:
		change += s.push(0, one, 1, give) + s.push(1, two, -1, -take)
	}
	for f, v := range s.total {
		s.shift[f] += v
	}
	change += square(s.total) - square(s.shift)
	if !(change < -worth*s.cost) {
		return false
	}
	s.order[place], s.order[other] = b, a
	s.cost += change
	s.total, s.shift = s.shift, s.total
	s.take(0, one)
	if two >= 0 && two != one {
		s.take(1, two)
	}
	return true
}

// try is a string as it would be.
type try struct{ mean, once []complex128 }

// push works out what a string becomes where one of its drivers has by the difference of the swap
// another z, so many times, and its weighted sum so much of t. It returns what that changes of the
// cost, and adds what it changes of the mean to shift.
func (s *state) push(which, str int, z, t float64) (change float64) {
	to, all, mean, once := &s.tries[which], s.all[str], s.mean[str], s.once[str]
	of, weight := complex(z/float64(len(s.Strings[str])), 0), complex(t, 0)
	for f := range s.n {
		m, o := mean[f]+of*s.ohm[f], once[f]+weight*s.velocity[f]
		to.mean[f], to.once[f] = m, o
		change += rest(all, m, o) - rest(all, mean[f], once[f])
		s.shift[f] += o - once[f] - complex(all, 0)*(m-mean[f])
	}
	return change
}

// take makes a string what was tried.
func (s *state) take(which, str int) {
	to := &s.tries[which]
	s.mean[str], to.mean = to.mean, s.mean[str]
	s.once[str], to.once = to.once, s.once[str]
}
