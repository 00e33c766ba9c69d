package radiate

import (
	"math"
	"math/cmplx"
	"slices"

	"pappus/timing/cores"
	"pappus/timing/harmonic"
)

// Sizes are looked up between sizeDistances distances, evenly spaced in one over the distance,
// and SizeAngles angles from the front to the back, every half degree: their sum over all
// drivers is within 0.04 dB.
const (
	sizeDistances = 16
	SizeAngles    = 361
)

// Sizes are how large the pressure of one driver on a ball is, and its energy, for many
// distances: real functions of the angle from the cap's axis, the same for all drivers but
// for their gains, so that harmonics sum them too. Both are times the distance, without the
// loss in air.
type Sizes struct {
	scene     *Scene
	rings     *Rings
	terms     []int       // of the series for each frequency
	series    [][]float64 // [distance][frequency][n], degree+1 to a row
	degree    int
	energy    [][]float64 // [distance][angle]
	grid      *grid       // of drivers on a body with faces, whose energies are the ball's all the same
	low, step float64     // one over the first distance, and from one to the next, 1/m
}

// NewSizes returns the sizes at places on rings, of which there must be one. The energy is
// the mean over the frequencies [from, to) behind a response that all drivers have.
func (s *Scene) NewSizes(rings *Rings, response []complex128, from, to int) *Sizes {
	near, far := rings.Ring[0].R, rings.Ring[len(rings.Ring)-1].R
	z := &Sizes{scene: s, rings: rings, low: 1 / far, step: max(1/near-1/far, 1e-9) / (sizeDistances - 1)}
	n := len(s.Medium.Frequency)
	longest := s.ball().series(seriesTolerance)
	longest.Move(near)
	for f := range n {
		re, _ := longest.Terms(f)
		z.terms = append(z.terms, len(re)*5/4+sizeMargin)
		z.degree = max(z.degree, z.terms[f]-1)
	}
	transform := harmonic.NewTransform(z.degree, 2*z.degree)
	z.series, z.energy = make([][]float64, sizeDistances), make([][]float64, sizeDistances)
	cores.Each(sizeDistances, func(_, i int) { z.distance(i, transform, response, from, to) })
	if field, ok := s.Field.(*bodyField); ok && len(field.below) > 0 {
		z.grid = s.newGrid(rings)
	}
	return z
}

// ball returns the field of the caps on the ball.
func (s *Scene) ball() *sphere {
	if b, ok := s.Field.(*bodyField); ok {
		return b.full
	}
	return s.Field.(*sphere)
}

// sizeMargin is how many terms more than a quarter the size of a field needs than the field.
const sizeMargin = 4

// distance fills in one distance.
func (z *Sizes) distance(i int, t *harmonic.Transform, response []complex128, from, to int) {
	n, nodes := len(z.terms), t.Nodes()
	series, row := z.scene.ball().series(seriesTolerance), make([]complex128, n)
	series.Move(1 / (z.low + float64(i)*z.step))
	values := make([]float64, n*len(nodes))
	for j, x := range nodes {
		series.At(row, math.Acos(x))
		for f, v := range row {
			values[f*len(nodes)+j] = cmplx.Abs(v)
		}
	}
	z.series[i] = make([]float64, n*(z.degree+1))
	t.Series(z.series[i], values)
	z.energy[i] = make([]float64, SizeAngles)
	for j := range z.energy[i] {
		series.At(row, math.Pi*float64(j)/(SizeAngles-1))
		for f := from; f < to; f++ {
			v := row[f] * response[f]
			z.energy[i][j] += (real(v)*real(v) + imag(v)*imag(v)) / float64(to-from)
		}
	}
}

// between sets dst to the cubic between tables at the four distances round r in m (Lagrange).
func (z *Sizes) between(dst []float64, tables [][]float64, r float64) {
	first, w := lagrange4((1/r-z.low)/z.step, sizeDistances, false)
	a, b, c, d := tables[first], tables[first+1], tables[first+2], tables[first+3]
	for i := range dst {
		dst[i] = w[0]*a[i] + w[1]*b[i] + w[2]*c[i] + w[3]*d[i]
	}
}

// Energy sets dst, one for each of SizeAngles, to a driver's energy times the squared
// distance, at a distance in m.
func (z *Sizes) Energy(dst []float64, r float64) { z.between(dst, z.energy, r) }

// SummedSizes is the sum over a body's drivers of the sizes of gain and pressure, ready for
// places on rings, some after others.
type SummedSizes struct {
	*Sizes
	response []complex128
	pairs    int // two real series are one complex one
	worker   []sizesWorker
	gridded  [][]float64 // of a grid, at the frequencies that it is for; the response is 0 there
}

// Sum returns the sum for gains of groups: a driver of group[m] has the gain of that group, and
// all one response.
func (z *Sizes) Sum(group []int, gain []float64, response []complex128) *SummedSizes {
	n, weight := len(z.terms), make([]complex128, len(gain))
	for g, v := range gain {
		weight[g] = complex(math.Abs(v), 0)
	}
	at, group := z.scene.fromBall(z.rings.way.Body, group)
	sum := harmonic.NewSum(z.rings.frame, at, group, [][]complex128{weight}, []int{z.degree + 1})
	s := &SummedSizes{z, response, (n + 1) / 2, make([]sizesWorker, cores.Count()), nil}
	if z.grid != nil {
		s.gridded, s.response = z.grid.sum(group, gain, response), slices.Clone(response)
		for _, f := range z.grid.below {
			s.response[f] = 0
		}
		if len(z.grid.below) == n {
			return s
		}
	}
	for i := range s.worker {
		s.worker[i] = sizesWorker{harmonic.NewRing(sum, s.pairs), make([]float64, 2*s.pairs*(z.degree+1)), make([]complex128, s.pairs), make([]float64, n)}
	}
	return s
}

// Add adds to dst[place][frequency] the sums at the places of some of the rings that the sizes
// are for.
func (s *SummedSizes) Add(dst []float64, rings *Rings) {
	z, n := s.Sizes, len(s.terms)
	if z.grid != nil {
		z.grid.add(dst, s.gridded, rings, z.scene.Medium)
		if len(z.grid.below) == n {
			return
		}
	}
	cores.Each(len(rings.Ring), func(w, i int) {
		k, ring := &s.worker[w], &rings.Ring[i]
		z.between(k.series[:n*(z.degree+1)], z.series, ring.R)
		k.ring.Set(ring.cos, ring.sin, func(pair int) (re, im []float64) {
			terms := z.terms[min(2*pair+1, n-1)]
			return row(k.series, 2*pair, z.degree+1)[:terms], row(k.series, 2*pair+1, z.degree+1)[:terms]
		})
		for f := range k.factor {
			k.factor[f] = cmplx.Abs(s.response[f] * z.scene.Medium.spread(f, ring.R))
		}
		for p, place := range ring.Place {
			k.ring.At(k.one, ring.azimuth[p])
			to := row(dst, place, n)
			for f := range to {
				if f%2 == 0 {
					to[f] += real(k.one[f/2]) * k.factor[f]
				} else {
					to[f] += imag(k.one[f/2]) * k.factor[f]
				}
			}
		}
	})
}

// sizesWorker is one goroutine's room to work.
type sizesWorker struct {
	ring   *harmonic.Ring
	series []float64 // [frequency][n]
	one    []complex128
	factor []float64
}
