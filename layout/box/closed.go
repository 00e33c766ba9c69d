package box

import (
	"fmt"
	"math"

	"pappus/layout/prose"
)

// Closed is the low end of drivers in one closed box (Small 1972).
type Closed struct {
	Alpha     float64 // stiffness of the box over that of the drivers
	Resonance float64 // Hz
	Q         float64
	F3        float64 // Hz, where the level is 3 dB (a factor of sqrt 2) down
	Peak      float64 // dB over the level far above; 0 where there is none
	PeakAt    float64 // Hz; +Inf where there is none
}

// Close puts n drivers, alike and in step, on one closed box of a volume in m3.
// It takes Fs, Qts and Vas. Errors wrap [ErrMissing] and [ErrValue].
func Close(d Driver, n int, volume float64) (Closed, error) {
	if err := check(d, n, volume); err != nil {
		return Closed{}, err
	}
	alpha := float64(n) * d.Vas / volume
	up := math.Sqrt(1 + alpha)
	return closed(alpha, d.Fs*up, d.Qts*up), nil
}

func check(d Driver, n int, volume float64) error {
	if err := d.need("Fs", "Qts", "Vas"); err != nil {
		return err
	}
	if n < 1 {
		return fmt.Errorf("the number of drivers %w, not %d", ErrValue, n)
	}
	return positive("volume in m3", volume)
}

func closed(alpha, resonance, q float64) Closed {
	c := Closed{Alpha: alpha, Resonance: resonance, Q: q, PeakAt: math.Inf(1)}
	a := 1/(q*q) - 2
	c.F3 = resonance * math.Sqrt((a+math.Hypot(a, 2))/2)
	if q > math.Sqrt2/2 {
		c.Peak = 20 * math.Log10(q*q/math.Sqrt(q*q-0.25))
		c.PeakAt = resonance / math.Sqrt(1-1/(2*q*q))
	}
	return c
}

// VolumeFor returns the volume in m3 that gives n drivers on one closed box a Q.
// Errors wrap [ErrMissing], [ErrValue] and [ErrTarget]: a box only ever raises
// the driver's own Qts.
func VolumeFor(d Driver, n int, q float64) (float64, error) {
	if err := check(d, n, 1); err != nil {
		return 0, err
	}
	if !(q > d.Qts) || math.IsInf(q, 1) {
		return 0, prose.Errorf("%w: %g; a closed box gives more than the driver's own %g", ErrTarget, q, d.Qts)
	}
	return float64(n) * d.Vas / ((q/d.Qts)*(q/d.Qts) - 1), nil
}
