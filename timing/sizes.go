package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/ball"
	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/radiate"
)

// Sizes are looked up between sizeDistances distances, evenly spaced in one over the distance,
// and every half degree: their sum over all drivers is within 0.04 dB, and the smear within 0.3 us:
// TestHeardIsOneByOne.
const (
	sizeDistances = 16
	sizeAngles    = 361
)

// sizes are how large the pressure of one cap on a ball is, and its energy over the
// frequencies that weigh arrivals, for many distances: real functions of the angle from the
// cap's axis. Both are times the distance, without the loss in air.
type sizes struct {
	cap       ball.Cap
	slabs     []sizeSlab
	energy    [][]float64 // [distance][angle]
	low, step float64     // one over the first distance, and from one to the next, 1/m
}

// sizeSlab is a run of frequencies, [from, to), whose series share a degree.
type sizeSlab struct {
	from, to int
	degree   int
	series   [][]float64 // [distance][n*(to-from)+f]
}

// newSizes returns the sizes at a medium's frequencies, of which [low, high) weigh arrivals
// by response, for distances from near to far in m. Errors are those of package ball.
func newSizes(c ball.Cap, m *radiate.Medium, response []complex128, low, high int, near, far float64) (*sizes, error) {
	s := &sizes{cap: c, low: 1 / far, step: max(1/near-1/far, 1e-9) / (sizeDistances - 1), energy: make([][]float64, sizeDistances)}
	for from := 0; from < len(m.Frequency); from += slabMost {
		to := min(from+slabMost, len(m.Frequency))
		terms, err := c.Coefficients(nil, m.Wavenumber[to-1], near, seriesTolerance)
		if err != nil {
			return nil, err
		}
		s.slabs = append(s.slabs, sizeSlab{from: from, to: to, degree: len(terms) * 5 / 4, series: make([][]float64, sizeDistances)})
	}
	var failed [sizeDistances]error
	cores.Each(sizeDistances, func(_, i int) { failed[i] = s.distance(i, m, response, low, high) })
	for _, err := range failed {
		if err != nil {
			return nil, err
		}
	}
	return s, nil
}

// distance fills in one distance.
func (s *sizes) distance(i int, m *radiate.Medium, response []complex128, low, high int) error {
	r := 1 / (s.low + float64(i)*s.step)
	for b := range s.slabs {
		slab := &s.slabs[b]
		series, err := ball.NewSeries(s.cap, m.Wavenumber[slab.from:slab.to], r)
		if err != nil {
			return err
		}
		n := slab.to - slab.from
		t := harmonic.NewTransform(slab.degree, 2*slab.degree)
		values, row := make([]float64, len(t.Nodes())*n), make([]complex128, n)
		for j, x := range t.Nodes() {
			series.At(row, math.Acos(x))
			for f, v := range row {
				values[j*n+f] = r * cmplx.Abs(v)
			}
		}
		slab.series[i] = make([]float64, (slab.degree+1)*n)
		t.Series(slab.series[i], values, n)
	}
	series, err := ball.NewSeries(s.cap, m.Wavenumber[low:high], r)
	if err != nil {
		return err
	}
	s.energy[i] = make([]float64, sizeAngles)
	row := make([]complex128, high-low)
	for j := range s.energy[i] {
		series.At(row, math.Pi*float64(j)/(sizeAngles-1))
		for f, v := range row {
			row[f] = v * response[low+f] * complex(r, 0)
		}
		s.energy[i][j] = meanEnergy(row)
	}
	return nil
}

// between returns the four distances round r in m to interpolate from, the first of them, and
// their weights (Lagrange's cubic).
func (s *sizes) between(r float64) (first int, weight [4]float64) {
	at := min(max((1/r-s.low)/s.step, 0), sizeDistances-1)
	first = min(max(int(at)-1, 0), sizeDistances-4)
	x := at - float64(first)
	return first, [4]float64{
		-(x - 1) * (x - 2) * (x - 3) / 6, x * (x - 2) * (x - 3) / 2,
		-x * (x - 1) * (x - 3) / 2, x * (x - 1) * (x - 2) / 6,
	}
}

// seriesAt sets dst[n*(to-from)+f] to the series of a slab at a distance in m.
func (s *sizes) seriesAt(dst []float64, slab *sizeSlab, r float64) {
	first, weight := s.between(r)
	a, b, c, d := slab.series[first], slab.series[first+1], slab.series[first+2], slab.series[first+3]
	for i := range dst {
		dst[i] = (weight[0]*a[i] + weight[1]*b[i] + weight[2]*c[i] + weight[3]*d[i]) / r
	}
}

// energyAt sets dst, one for each angle, to the mean energy at a distance in m.
func (s *sizes) energyAt(dst []float64, r float64) {
	first, weight := s.between(r)
	for i := range dst {
		v := 0.0
		for j, w := range weight {
			v += w * s.energy[first+j][i]
		}
		dst[i] = v / (r * r)
	}
}
