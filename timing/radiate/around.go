package radiate

import (
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// Around is directions from a source, far away, with the share of the area that each stands
// for: of the whole sphere, or of a half.
type Around struct {
	Share     []float64 // they add to one
	direction []r3.Vec  // unit vectors in the room
	frame     harmonic.Frame
}

// NewAround returns directions on rings round an axis, which are exact for the squared size of
// sums of harmonics up to a degree, see harmonic.Sphere; half of them, those on the axis' side,
// where half is true. An even degree has some square to the axis, so that halves should have an
// odd one.
func NewAround(axis r3.Vec, half bool, degree int) *Around {
	x := &Around{frame: harmonic.Round(axis)}
	direction, share := harmonic.Sphere(degree)
	for i, d := range direction {
		if half && d.Z < 0 {
			continue
		}
		if half {
			share[i] *= 2
		}
		x.Share = append(x.Share, share[i])
		x.direction = append(x.direction, r3.Add(r3.Scale(d.X, x.frame.X), r3.Add(r3.Scale(d.Y, x.frame.Y), r3.Scale(d.Z, x.frame.Z))))
	}
	return x
}

// soFar is how far away in m energies are heard: the pressure of a cap on a ball of radius a is
// up to 1.5 a/r off the far field, and this far by less than 0.001 dB.
const soFar = 1e4

// Energy returns for each feed, direction and frequency the squared far-field pressure times
// the distance, [feed][direction*frequency]: over that of a point source of strength 1. Each
// body is heard with its mirror images; energies of several bodies add up, as those of sources
// far apart do over a band. The medium should take nothing from the sound. All cores are used;
// the result is the same to the bit for any number of them.
func (s *Scene) Energy(feeds []Feed, around *Around) [][]float64 {
	out := make([][]float64, len(feeds))
	for i := range out {
		out[i] = make([]float64, len(around.direction)*len(s.Medium.Frequency))
	}
	for body := range s.Array.Bodies() {
		var ways []Way
		for _, way := range s.Ways {
			if way.Body == body {
				ways = append(ways, way)
			}
		}
		for i, energy := range s.around(ways, feeds, around, soFar) {
			for j, v := range energy {
				out[i][j] += soFar * soFar * v
			}
		}
	}
	return out
}

// around returns the squared pressure that a body gives by its ways, so far from it in m,
// [feed][direction*frequency].
func (s *Scene) around(ways []Way, feeds []Feed, around *Around, far float64) [][]float64 {
	n, centre := len(s.Medium.Frequency), s.centre(ways[0].Body)
	place := make([]r3.Vec, len(around.direction))
	for i, d := range around.direction {
		place[i] = r3.Add(centre, r3.Scale(far, d))
	}
	sum := make([][]complex128, len(feeds))
	for i := range sum {
		sum[i] = make([]complex128, len(place)*n)
	}
	for _, way := range ways {
		rings := s.Rings(way, around.frame, place)
		for i, feed := range feeds {
			s.OnRings(feed, rings).Add(sum[i], nil)
		}
		s.EachNear(rings, func(_, at int, pressure []complex128) {
			for i, feed := range feeds {
				feed.AddTo(row(sum[i], at, n), pressure)
			}
		})
	}
	energy := make([][]float64, len(feeds))
	for i := range energy {
		energy[i] = make([]float64, len(sum[i]))
		for j, v := range sum[i] {
			energy[i][j] = real(v)*real(v) + imag(v)*imag(v)
		}
	}
	return energy
}

// centre returns where a body's ball has its centre in the room, in m, in models that have
// one, so that directions round an axis are on one ring; else where the body is.
func (s *Scene) centre(body int) r3.Vec {
	placing := s.Array.Bodies()[body]
	if m := s.Array.Timing.Model; m != SphereModel && m != BodyModel {
		return placing.At
	}
	return placing.Place(s.Array.Body.BallCentre)
}
