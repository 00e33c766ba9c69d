package impedance

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/interp"
)

// Driver holds the values that make one driver's impedance.
type Driver struct {
	Resonance  float64 // Hz, above 0
	QMS, QES   float64 // mechanical and electrical quality factor, above 0
	DCOhm      float64 // Re, above 0
	Inductance float64 // Le in H, 0 or above
}

// Point is one line of a measured impedance.
type Point struct {
	Frequency float64 // Hz, above 0
	Ohm       float64 // magnitude, above 0
	Degrees   float64 // phase, positive where inductive, -180 to 180
}

// Curve is a driver's impedance over frequency. It is never changed after it is
// made, and serves several goroutines at once. The zero Curve is no driver: its
// impedance is 0.
type Curve struct {
	driver      Driver
	log         []float64              // ln Hz, of a table
	size, phase interp.PiecewiseLinear // ln ohm and rad, over log
}

// New returns the impedance of a driver. The error says which value cannot be.
func New(d Driver) (Curve, error) {
	for _, v := range []struct {
		name  string
		value float64
	}{{"resonance in Hz", d.Resonance}, {"Qms", d.QMS}, {"Qes", d.QES}, {"resistance in ohm", d.DCOhm}} {
		if !(v.value > 0) || math.IsInf(v.value, 0) {
			return Curve{}, prose.Errorf("impossible driver: %s %g, must be above 0", v.name, v.value)
		}
	}
	if !(d.Inductance >= 0) || math.IsInf(d.Inductance, 0) {
		return Curve{}, prose.Errorf("impossible driver: inductance %g H, must be 0 or above", d.Inductance)
	}
	return Curve{driver: d}, nil
}

// Measured returns the impedance that a table of two or more points gives, their
// frequencies rising. Between points the logarithm of the magnitude and the
// phase run straight over log frequency, the phase by the shorter way round;
// outside the table they stay those of the point at the end. The error names
// the point.
func Measured(points []Point) (Curve, error) {
	if len(points) < 2 {
		return Curve{}, fmt.Errorf("impossible impedance table: %s, must be 2 or more", prose.Count(len(points), "point", "points"))
	}
	var c Curve
	var size, phase []float64
	for i, p := range points {
		switch {
		case !(p.Frequency > 0) || math.IsInf(p.Frequency, 0):
			return Curve{}, prose.Errorf("impossible impedance table: point %d: %g Hz, must be above 0", i+1, p.Frequency)
		case !(p.Ohm > 0) || math.IsInf(p.Ohm, 0):
			return Curve{}, prose.Errorf("impossible impedance table: point %d: %g ohm, must be above 0", i+1, p.Ohm)
		case !(math.Abs(p.Degrees) <= 180):
			return Curve{}, prose.Errorf("impossible impedance table: point %d: %g degrees, must be from -180 to 180", i+1, p.Degrees)
		case i > 0 && math.Log(p.Frequency) <= c.log[i-1]:
			return Curve{}, prose.Errorf("impossible impedance table: point %d: %g Hz does not rise above %g Hz",
				i+1, p.Frequency, points[i-1].Frequency)
		}
		turn := p.Degrees * math.Pi / 180
		if i > 0 {
			turn = phase[i-1] + math.Remainder(turn-phase[i-1], 2*math.Pi)
		}
		c.log, size, phase = append(c.log, math.Log(p.Frequency)), append(size, math.Log(p.Ohm)), append(phase, turn)
	}
	return c, errors.Join(c.size.Fit(c.log, size), c.phase.Fit(c.log, phase))
}

// Fill fills dst with the complex impedance in ohm at the frequencies, in Hz and
// above 0. It panics where the lengths differ and allocates nothing.
func (c Curve) Fill(dst []complex128, frequency []float64) {
	if len(dst) != len(frequency) {
		panic("impedance: lengths differ")
	}
	for f, hz := range frequency {
		dst[f] = c.At(hz)
	}
}

// At returns the complex impedance in ohm at one frequency in Hz, above 0.
func (c Curve) At(hz float64) complex128 {
	if c.log != nil {
		log := math.Log(hz)
		return cmplx.Rect(math.Exp(c.size.Predict(log)), c.phase.Predict(log))
	}
	d := c.driver
	if d.DCOhm == 0 {
		return 0
	}
	return complex(d.DCOhm, 2*math.Pi*hz*d.Inductance) + Motional(d.DCOhm*d.QMS/d.QES, d.QMS, hz/d.Resonance)
}

// Motional returns what the moving cone adds to a coil's impedance in ohm at a frequency over
// that of its resonance: res at the resonance, less beside it by qms.
func Motional(res, qms, ratio float64) complex128 {
	return complex(res, 0) / complex(1, qms*(ratio-1/ratio))
}
