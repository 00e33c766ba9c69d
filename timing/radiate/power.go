package radiate

import (
	"math"

	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// farAway is where the far field of a model without a ball is heard, in m: far from any
// body that a person can lift.
const farAway = 100.0

// Power returns, for each frequency, the mean over all directions of the squared far-field
// pressure of the bodies alone in open air, times the distance: the power over that of a point
// source of strength 1. The medium should take nothing from the sound. Powers of several bodies
// add up, as those of sources far apart do over a band. On a ball it comes out of the harmonics
// of the whole array; else the field is heard in all directions.
func (s *Scene) Power(feed Feed) []float64 {
	out := make([]float64, len(s.Medium.Frequency))
	for _, way := range s.Direct() {
		s.power(out, feed, way)
	}
	return out
}

// power adds that of the body of a way.
func (s *Scene) power(out []float64, feed Feed, way Way) {
	switch field := s.Field.(type) {
	case *sphere:
		for f, v := range s.ballPower(field, feed, way.Body) {
			out[f] += v
		}
		return
	case *bodyField:
		// Where the one goes over into the other, so does their power.
		for f, v := range s.ballPower(field.full, feed, way.Body) {
			out[f] += field.share[f] * v
		}
		if len(field.below) == 0 {
			return
		}
		degree, waves := field.sum(s.Array.Mounts, way.Body, feed)
		sum, radial := harmonic.NewSumOf(degree, waves), newBodyRadial(field, degree)
		radial.Move(math.Inf(1))
		for i, f := range field.below {
			re, im := radial.Terms(i)
			out[f] += sum.Power(i, re, im) / (1 - field.share[f])
		}
		return
	}
	around := NewAround(r3.Vec{Z: 1}, false, degree(s.reach()))
	energy := s.around([]Way{way}, []Feed{feed}, around, farAway)[0]
	for i, share := range around.Share {
		for f := range out {
			out[f] += share * farAway * farAway * energy[i*len(out)+f]
		}
	}
}

// reach returns the wavenumber of the highest frequency times the radius of a sphere round a
// body's origin that holds it and all drivers.
func (s *Scene) reach() float64 {
	extent := s.Array.Body.Radius
	for _, m := range s.Array.Mounts {
		extent = max(extent, r3.Norm(m.Point))
	}
	return extent * s.Medium.Wavenumber[len(s.Medium.Wavenumber)-1]
}

// ballPower returns that of caps on a ball.
func (s *Scene) ballPower(ball *sphere, feed Feed, body int) []float64 {
	series := ball.series(seriesTolerance)
	series.Move(math.Inf(1))
	sum := s.harmonics(body, feed, harmonic.Round(r3.Vec{Z: 1}), series)
	out := make([]float64, len(s.Medium.Frequency))
	for f := range out {
		re, im := series.Terms(f)
		out[f] = sum.Power(f, re, im)
	}
	return out
}

// degree returns the degree N of spherical harmonics that the far field of a source needs,
// for the wavenumber times the radius of a sphere that holds all of it:
//
//	N = ka + 3 (ka)^(1/3) + 8, rounded up
//
// Spherical Hankel functions grow without bound beyond; the factor is 1.8 d^(2/3) for d = 2
// right digits of pressure (Chew, Jin, Michielssen and Song, Fast and Efficient Algorithms in
// Computational Electromagnetics, 2001, chapter 3, from memory), and the constant is found by
// trial. What is left out adds to the power by its square: a degree of double that changes
// it by less than 1e-6 for one driver up to ka 60.
func degree(ka float64) int { return int(math.Ceil(ka + 3*math.Cbrt(ka) + 8)) }
