package rehearsal

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"

	"pappus/layout/impedance"
	"pappus/timing"
)

// Of an impedance that is made up: two measurements of the same thing differ by some tenths
// of a percent (common practice).
const (
	meterNoise = 0.002 // of the impedance, real and imaginary part alike
	meterLow   = 20.0  // Hz
	perOctave  = 24
	octaves    = 10
)

// Impedance returns what a meter would read at a channel's terminals, of which the strings
// given by their indices are open, from 20 Hz to 20 kHz. known is false where the plan knows
// no more of the driver than its resistance; then there are no points. Errors wrap
// errSetting. The same seed gives the same points.
func Impedance(p *timing.Plan, channel int, open []int, seed uint64) (points []impedance.Point, known bool, err error) {
	if channel < 0 || channel >= len(p.Channels) {
		return nil, false, fmt.Errorf("%w: channel %d", errSetting, channel)
	}
	bank, driver, known := p.PlannedLoad(channel)
	if !known {
		return nil, false, nil
	}
	for _, s := range open {
		if s < 0 || s >= len(bank.Strings) || len(open) >= len(bank.Strings) {
			return nil, false, fmt.Errorf("%w: strings %v of %d are open", errSetting, open, len(bank.Strings))
		}
		drivers := slices.Clone(bank.Strings[s].Drivers)
		drivers[0] = impedance.Open
		bank.Strings[s].Drivers = drivers
	}
	random := rand.New(rand.NewPCG(seed, 1972))
	for i := range octaves*perOctave + 1 {
		hz := meterLow * math.Exp2(float64(i)/perOctave)
		z := bank.Of(driver.At(hz)) * complex(1+meterNoise*random.NormFloat64(), meterNoise*random.NormFloat64())
		points = append(points, impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi})
	}
	return points, true, nil
}
