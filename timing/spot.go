package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// spotSums holds each driver's pressure at the listening spot, without delays,
// and room for the sums.
type spotSums struct {
	frequencies int
	direct      []complex128 // [mount][frequency], by the body alone
	whole       []complex128 // with the echoes, where there are any
	echoed      bool
	driver      []complex128 // the driver's own response
	step        []float64    // sum of magnitudes
	built       []float64    // magnitude of the sum, as built
	aligned     []float64    // and with the delays
	sum         []complex128
}

func (s *spotSums) grow(mounts int, driver []complex128) {
	frequencies := len(driver)
	s.frequencies, s.driver = frequencies, driver
	s.direct = make([]complex128, mounts*frequencies)
	s.whole = make([]complex128, mounts*frequencies)
	s.step = make([]float64, frequencies)
	s.built = make([]float64, frequencies)
	s.aligned = make([]float64, frequencies)
	s.sum = make([]complex128, frequencies)
}

// hear fills in the pressure of every mount at a spot: by the body alone, and with the
// echoes, of which there may be none.
func (s *spotSums) hear(scene *radiate.Scene, spot r3.Vec) {
	scene.Hear(s.direct, scene.Ways[:1], spot)
	if s.echoed = len(scene.Ways) > 1; s.echoed {
		scene.Hear(s.whole, scene.Ways[1:], spot)
	}
	for i := range s.direct {
		s.direct[i] *= s.driver[i%s.frequencies]
		s.whole[i] = s.direct[i] + s.whole[i]*s.driver[i%s.frequencies]
	}
}

// row returns the direct sound of a mount.
func (s *spotSums) row(m int) []complex128 {
	return s.direct[m*s.frequencies : (m+1)*s.frequencies]
}

// energy returns the mean squared pressure of a driver's direct sound over an index
// range.
func (s *spotSums) energy(m, from, to int) float64 {
	sum := 0.0
	for _, p := range s.row(m)[from:to] {
		sum += energyOf(p)
	}
	return sum / float64(to-from)
}

func energyOf(p complex128) float64 { return real(p)*real(p) + imag(p)*imag(p) }

// respond sums the drivers at the spot in step, as built and with the delays: what is
// heard there gives the levels, the direct sound the measures.
func (p *Planner) respond(plan *Plan) {
	s, n := &p.spot, len(p.medium.Frequency)
	fed := newFeed(plan)
	plan.Response = Response{
		Frequency: append([]float64(nil), p.medium.Frequency...),
		InStep:    make([]float64, n),
		Aligned:   make([]float64, n),
		Unaligned: make([]float64, n),
	}
	if s.echoed {
		s.sumAll(s.whole, fed, p.medium.Frequency)
	} else {
		s.sumAll(s.direct, fed, p.medium.Frequency)
	}
	levels(plan.Response.InStep, s.step)
	levels(plan.Response.Aligned, s.aligned)
	levels(plan.Response.Unaligned, s.built)
	plan.Protection.lower(plan.Response)
	if s.echoed {
		s.sumAll(s.direct, fed, p.medium.Frequency)
	}
	plan.Unaligned = plan.measures(make([]float64, len(fed.delay)))
	plan.Aligned = plan.measures(fed.delay)
	plan.Unaligned.CombOnset = measure.CombOnset(p.medium.Frequency, s.built, s.step)
	plan.Aligned.CombOnset = measure.CombOnset(p.medium.Frequency, s.aligned, s.step)
}

// sumAll fills in the sums over the drivers' pressures, direct or whole: in step, as
// built and with the delays.
func (s *spotSums) sumAll(pressure []complex128, fed feed, frequency []float64) {
	s.sumInto(s.built, pressure, fed.gain, nil, frequency)
	s.sumInto(s.aligned, pressure, fed.gain, fed.delay, frequency)
	clear(s.step)
	for m, g := range fed.gain {
		for f, v := range pressure[m*s.frequencies : (m+1)*s.frequencies] {
			s.step[f] += math.Abs(g) * cmplx.Abs(v)
		}
	}
}

// sumInto fills dst with the magnitude of the sum over the drivers' pressures; no delays
// where delay is nil.
func (s *spotSums) sumInto(dst []float64, pressure []complex128, gain, delay, frequency []float64) {
	clear(s.sum)
	for m, g := range gain {
		for f, v := range pressure[m*s.frequencies : (m+1)*s.frequencies] {
			if delay != nil {
				v *= turn(frequency[f], delay[m])
			}
			s.sum[f] += complex(g, 0) * v
		}
	}
	for f, v := range s.sum {
		dst[f] = cmplx.Abs(v)
	}
}

// turn returns exp(-i 2 pi frequency delay).
func turn(frequency, delay float64) complex128 {
	sin, cos := math.Sincos(2 * math.Pi * frequency * delay)
	return complex(cos, -sin)
}

// levels fills dst with 20 log10 of magnitudes.
func levels(dst, magnitude []float64) {
	for i, v := range magnitude {
		dst[i] = 20 * math.Log10(v)
	}
}

// measures returns smear and spread at the spot with the given delays.
func (plan *Plan) measures(delay []float64) Measures {
	arrival := make([]float64, len(delay))
	weight := make([]float64, len(delay))
	for m, r := range plan.Arrivals {
		arrival[m] = r.Heard() + delay[m]
		weight[m] = math.Pow(10, r.Level/10)
	}
	return Measures{Smear: measure.Smear(arrival, weight), Spread: measure.Spread(arrival)}
}
