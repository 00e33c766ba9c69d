package radiate

import (
	"fmt"
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

// alike is how near, in proportion, two distances are one.
const alike = 1e-12

// Sphere returns the field of a polar cap on a rigid ball with its centre at a place
// in m, for points whose distances from there are from near to far, in m. The cap's
// axis points from the centre to the mount, and it lies on the ball wherever on that
// line the mount is:
//
//	H = R(r, gamma, k) exp(-i k d)/d times the loss in air
//
// with d the way of the sound round the ball where it must (package path), and R the
// remainder that is left of the ball's exact field when exp(-i k d)/d is taken out
// of it. H is exact: the series of package ball where near and far are one
// distance, else its table, within 0.05 dB and 1 degree up to ka = 60. Morse and
// Ingard, Theoretical Acoustics, ch. 7; Beranek and Mellow, Acoustics: Sound
// Fields, Transducers and Vibration, 12.6.
//
// The loss in air is taken along the point's distance from the centre. Points
// outside of the range take the remainder at its end; those nearer than 1.02 radii
// are heard as at that distance. Frequencies must not fall. The errors are those of
// package ball.
func Sphere(m *Medium, c ball.Cap, centre r3.Vec, near, far float64) (Field, error) {
	near = max(near, nearest*c.Radius)
	far = max(far, near)
	if far-near <= alike*far {
		series, err := ball.NewSeries(c, m.Wavenumber, near)
		if err != nil {
			return nil, fmt.Errorf("radiate: %w", err)
		}
		return newShell(m, c, centre, near, series), nil
	}
	table, err := ball.NewTable(c, m.Wavenumber, near, far, m.Loss)
	if err != nil {
		return nil, fmt.Errorf("radiate: %w", err)
	}
	return &sphere{medium: m, cap: c, centre: centre, table: table, near: near, far: far}, nil
}

// sphere looks the field up.
type sphere struct {
	medium    *Medium
	cap       ball.Cap
	centre    r3.Vec
	table     *ball.Table
	near, far float64
}

func (s *sphere) Add(dst []complex128, mount layout.Mount, points []r3.Vec, weight []complex128) {
	s.medium.check(dst, len(points), weight)
	from := r3.Sub(mount.Point, s.centre)
	rho := math.Sqrt(r3.Dot(from, from))
	for i, at := range points {
		at = r3.Sub(at, s.centre)
		r := math.Sqrt(r3.Dot(at, at))
		gamma := between(from, at, rho, r)
		r = max(r, nearest*s.cap.Radius)
		distance, _ := s.table.At(min(max(r, s.near), s.far))
		s.table.Add(dst[i*len(weight):(i+1)*len(weight)], weight, distance, gamma, s.cap.Path(r, gamma))
	}
}

// between returns the angle between two directions of known lengths: as path.Angle
// does, in a third of the time and to about 1e-8, which a table does not show.
func between(from, at r3.Vec, rho, r float64) float64 {
	if rho == 0 || r == 0 {
		return 0
	}
	return math.Acos(min(max(r3.Dot(from, at)/(rho*r), -1), 1))
}

// shell is the exact field at one distance.
type shell struct {
	medium  *Medium
	cap     ball.Cap
	centre  r3.Vec
	r       float64
	series  *ball.Series
	fall    []float64 // loss in air over the distance
	scratch sync.Pool // of *[]complex128
}

func newShell(m *Medium, c ball.Cap, centre r3.Vec, r float64, series *ball.Series) *shell {
	s := &shell{medium: m, cap: c, centre: centre, r: r, series: series, fall: make([]float64, len(m.Loss))}
	for f, loss := range m.Loss {
		s.fall[f] = math.Exp(-loss * r)
	}
	s.scratch.New = func() any {
		row := make([]complex128, len(m.Wavenumber))
		return &row
	}
	return s
}

func (s *shell) Add(dst []complex128, mount layout.Mount, points []r3.Vec, weight []complex128) {
	s.medium.check(dst, len(points), weight)
	from := r3.Sub(mount.Point, s.centre)
	held := s.scratch.Get().(*[]complex128)
	defer s.scratch.Put(held)
	value := *held
	for i, at := range points {
		at = r3.Sub(at, s.centre)
		gamma := path.Angle(from, at)
		s.series.At(value, gamma)
		row := dst[i*len(weight) : (i+1)*len(weight)]
		r := max(r3.Norm(at), nearest*s.cap.Radius)
		if math.Abs(r-s.r) <= alike*s.r {
			for f, w := range weight {
				row[f] += w * value[f] * complex(s.fall[f], 0)
			}
			continue
		}
		s.stretch(row, weight, value, s.cap.Path(s.r, gamma), s.cap.Path(r, gamma))
	}
}

// stretch adds what was worked out for one way as it is heard after another.
func (s *shell) stretch(row, weight, value []complex128, worked, way float64) {
	for f, w := range weight {
		sin, cos := math.Sincos(s.medium.Wavenumber[f] * (way - worked))
		row[f] += w * value[f] * complex(s.fall[f]*worked/way, 0) * complex(cos, -sin)
	}
}
