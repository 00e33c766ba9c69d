package seats

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/mat"
)

// Together is Bound with Worst and Mean for all places at once, which are closer: one set of
// phases cannot be the best for each seat. Seats and bands are those of Bound.
//
// With x the channels' phase factors at a frequency, g(p) what they give at place p over all
// in step, and any weights l(p) that sum to 1,
//
//	least over p of the mean over f of r(p,f) <= mean over f of x* A(f) x,  A(f) = sum of l(p) g(p)* g(p)'
//
// and for any real d(k) that make the least eigenvalue of diag(d) - A not less than -e,
// x* A x is no more than sum of d + e per channel, since |x(k)| = 1 (the dual of the
// semidefinite relaxation; A. M.-C. So, J. Zhang and Y. Ye, Math. Program. 110 (2007) 93).
// The logarithms of Mean come under it by the inequality of weighted means,
//
//	sum of w(p) ln e(p) <= ln sum of (w(p)/c(p)) e(p) + sum of w(p) ln c(p)
//
// for any c above 0. It holds for any weights; those taken, and d, are of phases that were
// found to be good (free), where d(k) = Re conj(x(k)) (A x)(k).
func (f *Field) Together(groups [][]int, gain []float64) Figures {
	out := f.Bound(groups, gain)
	if len(groups) > mostTogether {
		return out
	}
	out.Worst = max(out.Worst, newPhased(f, groups, gain).worst())
	out.Mean = max(out.Mean, newPhased(f, groups, gain).mean())
	return out
}

// mostTogether is the most channels that are bounded together: eigenvalues of more take
// seconds.
const mostTogether = 32

// phased are channels with free phases at some places.
type phased struct {
	*Field
	channels int
	give     [][]complex128 // [frequency][place*channels+c] over all in step
	weight   []float64      // [place], sum 1
	turn     [][]complex128 // [frequency][channel] found phases
}

func newPhased(f *Field, groups [][]int, gain []float64) *phased {
	n, k := len(f.Frequency), len(groups)
	p := &phased{Field: f, channels: k}
	for i := range n {
		give, turn := make([]complex128, len(f.Place)*k), make([]complex128, k)
		for place := range f.Place {
			f.channels(give[place*k:(place+1)*k], place, i, groups, gain)
		}
		for c := range turn {
			turn[c] = 1
		}
		p.give, p.turn = append(p.give, give), append(p.turn, turn)
	}
	p.weight = f.parts()
	return p
}

// shares sets dst, [place], to the mean of r over frequencies from from to to.
func (p *phased) shares(dst []float64, from, to int) {
	clear(dst)
	for i := from; i < to; i++ {
		for place := range dst {
			dst[place] += energy(p.sum(i, place)) / float64(to-from)
		}
	}
}

// sum is what all channels give at a frequency and place.
func (p *phased) sum(i, place int) (sum complex128) {
	for c, x := range p.turn[i] {
		sum += x * p.give[i][place*p.channels+c]
	}
	return sum
}

// align turns each channel in turn into phase with the others, places weighted: one round of
// ascent of x* A x by coordinates.
func (p *phased) align(i int, lambda []float64) {
	sums := make([]complex128, len(lambda))
	for place := range sums {
		sums[place] = p.sum(i, place)
	}
	for c, x := range p.turn[i] {
		var to complex128
		for place, l := range lambda {
			g := p.give[i][place*p.channels+c]
			to += complex(l, 0) * cmplx.Conj(g) * (sums[place] - x*g)
		}
		if to == 0 {
			continue
		}
		now := to / complex(cmplx.Abs(to), 0)
		for place := range sums {
			sums[place] += (now - x) * p.give[i][place*p.channels+c]
		}
		p.turn[i][c] = now
	}
}

// freeRounds is how often weights and phases are settled in turn; twice as many change no
// bound of the lantern by 0.01 dB.
const freeRounds = 60

// worst bounds Worst: weights go to the places with the least energy, by a power that grows.
func (p *phased) worst() float64 {
	n := len(p.Frequency)
	share, lambda := make([]float64, len(p.Place)), make([]float64, len(p.Place))
	for i := range lambda {
		lambda[i] = 1 / float64(len(lambda))
	}
	best := math.Inf(-1)
	for round := range freeRounds {
		for i := range n {
			p.align(i, lambda)
		}
		if round%10 == 9 {
			top := 0.0
			for i := range n {
				top += p.most(i, lambda) / float64(n)
			}
			best = max(best, -10*math.Log10(top))
		}
		p.shares(share, 0, n)
		total := 0.0
		for place, e := range share {
			lambda[place] *= math.Pow(max(e, least), -0.5)
			total += lambda[place]
		}
		for place := range lambda {
			lambda[place] /= total
		}
	}
	return best
}

// mean bounds Mean, band by band.
func (p *phased) mean() float64 {
	sum, from := 0.0, 0
	share, lambda := make([]float64, len(p.Place)), make([]float64, len(p.Place))
	for _, end := range p.Ends {
		best := math.Inf(-1)
		for place := range share {
			share[place], lambda[place] = 1, p.weight[place]
		}
		for range freeRounds / 2 {
			for place, e := range share {
				lambda[place] = math.Sqrt(lambda[place] * p.weight[place] / max(e, least))
			}
			for i := from; i < end; i++ {
				p.align(i, lambda)
			}
			p.shares(share, from, end)
		}
		top, known := 0.0, 0.0
		for i := from; i < end; i++ {
			top += p.most(i, lambda) / float64(end-from)
		}
		for place, l := range lambda {
			known += p.weight[place] * math.Log10(p.weight[place]/l)
		}
		best = max(best, -10*math.Log10(top)-10*known)
		sum, from = sum+best/float64(len(p.Ends)), end
	}
	return sum
}

// most returns what x* A x cannot be above at a frequency, whatever the phases.
func (p *phased) most(i int, lambda []float64) float64 {
	k := p.channels
	a := make([]complex128, k*k)
	for place, l := range lambda {
		g := p.give[i][place*k : (place+1)*k]
		for r := range k {
			for c := range k {
				a[r*k+c] += complex(l, 0) * cmplx.Conj(g[r]) * g[c]
			}
		}
	}
	x, sum, trace := p.turn[i], 0.0, 0.0
	dual := make([]float64, k)
	for r := range k {
		var row complex128
		for c := range k {
			row += a[r*k+c] * x[c]
		}
		dual[r] = real(cmplx.Conj(x[r]) * row)
		sum, trace = sum+dual[r], trace+real(a[r*k+r])
	}
	// A Hermitian matrix has the eigenvalues, twice, of [Re -Im; Im Re]. It is brought to a size near
	// 1: the decomposition cannot do with one of 1e-150.
	if !(trace > 0) {
		return sum
	}
	m := mat.NewSymDense(2*k, nil)
	for r := range k {
		for c := range k {
			v := -a[r*k+c]
			if r == c {
				v += complex(dual[r], 0)
			}
			v /= complex(trace, 0)
			m.SetSym(r, k+c, -imag(v))
			if c >= r {
				m.SetSym(r, c, real(v))
				m.SetSym(k+r, k+c, real(v))
			}
		}
	}
	var eigen mat.EigenSym
	lowest := -trace // no eigenvalue of A is above its trace; dual is not below 0 where phases are aligned
	if eigen.Factorize(m, false) {
		lowest = trace * eigen.Values(nil)[0]
	}
	const rounding = 1e-12
	return sum + float64(k)*(max(0, -lowest)+rounding*trace)
}
