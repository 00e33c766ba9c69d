package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/harmonic"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// seriesTolerance is where the series of a driver's field ends that are summed over
// harmonics: the rest is below this share of the sizes of its terms, which no level
// shows (1e-5 dB).
const seriesTolerance = 1e-5

// axes is the frame of the room: z is the polar axis, azimuth counts from x.
var axes = harmonic.Frame{X: r3.Vec{X: 1}, Y: r3.Vec{Y: 1}, Z: r3.Vec{Z: 1}}

// fromBall returns where each mount is, seen from the ball's centre, in m.
func fromBall(a *layout.Array) []r3.Vec {
	at := make([]r3.Vec, len(a.Mounts))
	for m, mount := range a.Mounts {
		at[m] = r3.Sub(mount.Point, a.Body.BallCentre)
	}
	return at
}

// newMoments returns the moments of an array on its ball, up to a degree, for weights
// [mount][frequency] at nf frequencies: pair f of sets is frequency f.
func newMoments(a *layout.Array, frame harmonic.Frame, weight []complex128, nf, degree int) *harmonic.Moments {
	sets := make([][]float64, 2*nf)
	for s := range sets {
		sets[s] = make([]float64, len(a.Mounts))
	}
	for m := range a.Mounts {
		for f, w := range weight[m*nf : (m+1)*nf] {
			sets[2*f][m], sets[2*f+1][m] = real(w), imag(w)
		}
	}
	return harmonic.NewMoments(frame, fromBall(a), sets, degree)
}

// radiated fills dst, one for each frequency of a medium, with the mean over all
// directions of the squared far-field pressure of an array on its ball in open air, for
// weights [mount][frequency]: the power over that of a point source of strength 1.
// Loss in air is left out. Errors are those of package ball.
func radiated(dst []float64, a *layout.Array, m *radiate.Medium, weight []complex128) error {
	c := coneCap(a)
	z := make([][]complex128, len(dst))
	degree := 0
	for f, k := range m.Wavenumber {
		var err error
		if z[f], err = c.Coefficients(nil, k, math.Inf(1), seriesTolerance); err != nil {
			return err
		}
		degree = max(degree, len(z[f])-1)
	}
	moments := newMoments(a, axes, weight, len(dst), degree)
	for f := range dst {
		dst[f] = moments.Power(z[f], 2*f, 2*f+1)
	}
	return nil
}
