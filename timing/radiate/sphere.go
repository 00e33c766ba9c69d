package radiate

import (
	"math"
	"sync"

	"pappus/layout"
	"pappus/timing/ball"
	"pappus/timing/path"

	"gonum.org/v1/gonum/spatial/r3"
)

// nearest is the least distance, in radii of the ball, at which the field is
// taken: what is nearer, or in the ball where that stands out of the body, is
// heard as at this distance.
const nearest = 1.02

// Where series end, see ball.NewSeries: exact where only rounding is left.
const (
	exact = 1e-16
	quick = 1e-7
)

// ConeCap returns the cap that stands for a driver's cone on the ball of the
// body's volume: as wide as the cone, from 1 to 60 degrees of half angle.
func ConeCap(a *layout.Array) ball.Cap {
	const degree = math.Pi / 180
	half := math.Asin(min(1, a.Driver.ConeRadius/a.Body.BallRadius))
	return ball.Cap{Radius: a.Body.BallRadius, HalfAngle: min(max(half, degree), 60*degree)}
}

// sphere is a polar cap on a rigid ball.
type sphere struct {
	medium  *Medium
	cap     ball.Cap
	centre  r3.Vec
	scratch sync.Pool // of *sphereScratch
}

// sphereScratch is one call's room to work.
type sphereScratch struct {
	series *ball.Series
	spread []complex128
}

// Sphere returns the field of a polar cap on a rigid ball with its centre at a place
// in m. The cap's axis points from the centre to the mount, and it lies on the ball
// wherever on that line the mount is. The field is the series of package ball, with the
// loss in air along the place's distance from the centre; a place nearer than 1.02 radii is
// heard as at that distance. Morse and Ingard, Theoretical Acoustics, ch. 7; Beranek and
// Mellow, Acoustics: Sound Fields, Transducers and Vibration, 12.6. The errors are those
// of package ball, and tolerance is as ball.NewSeries has it.
func Sphere(m *Medium, c ball.Cap, centre r3.Vec, tolerance float64) (Field, error) {
	if _, err := ball.NewSeries(c, m.Wavenumber, tolerance); err != nil {
		return nil, err
	}
	s := &sphere{medium: m, cap: c, centre: centre}
	s.scratch.New = func() any {
		return &sphereScratch{s.series(tolerance), make([]complex128, len(m.Frequency))}
	}
	return s, nil
}

// series returns the cap's series to a tolerance, see ball.NewSeries.
func (s *sphere) series(tolerance float64) *ball.Series {
	series, err := ball.NewSeries(s.cap, s.medium.Wavenumber, tolerance)
	if err != nil {
		panic(err) // Sphere has tried this cap and these wavenumbers
	}
	return series
}

func (s *sphere) At(dst []complex128, mounts []layout.Mount, place r3.Vec) {
	s.medium.check(dst, len(mounts))
	held := s.scratch.Get().(*sphereScratch)
	defer s.scratch.Put(held)
	at := r3.Sub(place, s.centre)
	r := max(r3.Norm(at), nearest*s.cap.Radius)
	held.series.Move(r)
	for f := range held.spread {
		held.spread[f] = s.medium.spread(f, r)
	}
	n := len(held.spread)
	for m, mount := range mounts {
		row := dst[m*n : (m+1)*n]
		held.series.At(row, path.Angle(r3.Sub(mount.Point, s.centre), at))
		for f, v := range held.spread {
			row[f] *= v
		}
	}
}
