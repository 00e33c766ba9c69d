package radiate

import (
	"fmt"
	"math"
	"math/cmplx"
	"sync"

	"pappus/layout"
	"pappus/timing/ball"
	"pappus/timing/path"

	"gonum.org/v1/gonum/spatial/r3"
)

// nearest is the least distance, in radii of the ball, at which the remainder
// is taken: points nearer take the remainder of this distance along their own
// path. A mount on a flat face may be a little inside the ball, and so may a
// point in front of it.
const nearest = 1.02

// alike is how near, in proportion, two distances are one.
const alike = 1e-12

// Sphere returns the field of a polar cap on a rigid ball, for points whose
// distances from the body's centre are from near to far, in m. The cap's axis
// is the direction of the mount; the ball's centre is the origin:
//
//	H = R(r, gamma, k) exp(-i k d)/d times the loss in air
//
// with d the way of the sound from the mount itself, round the body where it
// must (package path), and R the remainder that is left of the ball's exact
// field when exp(-i k d)/d of a mount on the ball is taken out of it. For a mount
// on the ball H is exact: the series of package ball where near and far are one
// distance, else its table, within 0.05 dB and 1 degree up to ka = 60. Morse and
// Ingard, Theoretical Acoustics, ch. 7; Beranek and Mellow, Acoustics: Sound
// Fields, Transducers and Vibration, 12.6.
//
// The loss in air is taken along the point's distance from the centre. Points
// outside of the range take the remainder at its end. Frequencies must not
// fall. The errors are those of package ball.
func Sphere(m *Medium, c ball.Cap, near, far float64) (Field, error) {
	near = max(near, nearest*c.Radius)
	far = max(far, near)
	if far-near <= alike*far {
		series, err := ball.NewSeries(c, m.Wavenumber, near)
		if err != nil {
			return nil, fmt.Errorf("radiate: %w", err)
		}
		return newShell(m, c, near, series), nil
	}
	table, err := ball.NewTable(c, m.Wavenumber, near, far, m.Loss)
	if err != nil {
		return nil, fmt.Errorf("radiate: %w", err)
	}
	return &sphere{medium: m, table: table, near: near, far: far}, nil
}

// sphere looks the field up.
type sphere struct {
	medium    *Medium
	table     *ball.Table
	near, far float64
}

func (s *sphere) Add(dst []complex128, mount layout.Mount, points []r3.Vec, weight []complex128) {
	s.medium.check(dst, len(points), weight)
	rho := math.Sqrt(r3.Dot(mount.Point, mount.Point))
	for i, at := range points {
		r := math.Sqrt(r3.Dot(at, at))
		gamma, way := look(mount.Point, at, rho, r)
		row := dst[i*len(weight) : (i+1)*len(weight)]
		if way == 0 {
			fillNaN(row)
			continue
		}
		distance, _ := s.table.At(min(max(r, s.near), s.far))
		s.table.Add(row, weight, distance, gamma, way)
	}
}

// look returns the angle between a mount and a point seen from the centre and
// the way from the one to the other, given their distances from the centre: as
// path.Angle and path.Round do, in a third of the time and to about 1e-8, which
// a table does not show.
func look(mount, at r3.Vec, rho, r float64) (gamma, way float64) {
	dot := r3.Dot(mount, at)
	if rho == 0 || r == 0 {
		return 0, max(rho, r)
	}
	gamma = math.Acos(min(max(dot/(rho*r), -1), 1))
	inner := min(rho, r)
	if dot >= inner*inner {
		d := r3.Sub(at, mount)
		return gamma, math.Sqrt(r3.Dot(d, d))
	}
	outer := max(rho, r)
	return gamma, math.Sqrt((outer-inner)*(outer+inner)) + inner*(gamma-math.Acos(inner/outer))
}

func fillNaN(row []complex128) {
	for f := range row {
		row[f] = cmplx.NaN()
	}
}

// shell is the exact field at one distance.
type shell struct {
	medium  *Medium
	cap     ball.Cap
	r       float64
	series  *ball.Series
	fall    []float64 // loss in air over the distance
	scratch sync.Pool // of *[]complex128
}

func newShell(m *Medium, c ball.Cap, r float64, series *ball.Series) *shell {
	s := &shell{medium: m, cap: c, r: r, series: series, fall: make([]float64, len(m.Loss))}
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
	rho := r3.Norm(mount.Point)
	held := s.scratch.Get().(*[]complex128)
	defer s.scratch.Put(held)
	value := *held
	for i, at := range points {
		gamma := path.Angle(mount.Point, at)
		way, _ := path.Round(rho, r3.Norm(at), gamma)
		row := dst[i*len(weight) : (i+1)*len(weight)]
		if way == 0 {
			fillNaN(row)
			continue
		}
		onBall := s.cap.Path(s.r, gamma)
		s.series.At(value, gamma)
		for f, w := range weight {
			h := value[f] * complex(s.fall[f]*onBall/way, 0)
			if way != onBall {
				sin, cos := math.Sincos(s.medium.Wavenumber[f] * (way - onBall))
				h *= complex(cos, -sin)
			}
			row[f] += w * h
		}
	}
}
