package excursion

import (
	"fmt"
	"math"
	"math/cmplx"

	"pappus/timing/crossover"
)

// Cause is what limits the voltage.
type Cause int8

// The causes of a limit.
const (
	ByAmplifier Cause = iota
	ByHeat
	ByExcursion
)

// String names the cause.
func (c Cause) String() string {
	switch c {
	case ByAmplifier:
		return "amplifier"
	case ByHeat:
		return "heat"
	case ByExcursion:
		return "excursion"
	}
	return fmt.Sprintf("Cause(%d)", int8(c))
}

// Bounds are what a driver and its amplifier bear.
type Bounds struct {
	Excursion float64 // Xmax in m, one way
	Power     float64 // W, long term
	Volt      float64 // RMS, the most that reaches one driver
}

// Check returns an error that wraps ErrLimit where a value is not above 0.
func (b Bounds) Check() error {
	return check(ErrLimit, []named{{"greatest excursion in m", b.Excursion}, {"power in W", b.Power}, {"voltage", b.Volt}})
}

// HeatVolt returns the voltage RMS over a driver at which its coil of dcOhm
// takes up no more than a power in W at any frequency.
func HeatVolt(power, dcOhm float64) float64 { return math.Sqrt(power * dcOhm) }

// Limit is the highest voltage at one frequency.
type Limit struct {
	Volt float64 // RMS, at the high-pass's input
	By   Cause
}

// Limits fills dst with the highest voltage RMS of a sine at each frequency in
// Hz, above 0, counted per driver at the high-pass's input, that keeps within
// the bounds, and what sets it; where several do, the first by name of Amplifier,
// Heat, Excursion. The amplifier's own limit holds before the high-pass as well
// as after. Without a high-pass give the zero Filter. Limits panics where the
// lengths differ and allocates nothing.
func (d Driver) Limits(dst []Limit, frequency []float64, highPass crossover.Filter, b Bounds) {
	if len(dst) != len(frequency) {
		panic("excursion: lengths differ")
	}
	heat := HeatVolt(b.Power, d.DCOhm)
	for i, hz := range frequency {
		pass := cmplx.Abs(highPass.Response(hz))
		dst[i] = Limit{b.Volt, ByAmplifier}
		if v := heat / pass; v < dst[i].Volt {
			dst[i] = Limit{v, ByHeat}
		}
		if v := b.Excursion / (d.Excursion(hz) * pass); v < dst[i].Volt {
			dst[i] = Limit{v, ByExcursion}
		}
	}
}
