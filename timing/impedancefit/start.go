package impedancefit

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/impedance"
	"pappus/layout/prose"
)

const (
	leastPoints = 12  // for five values, and some to spare
	leastInPeak = 5   // points over sqrt(Re Rmax): for the three values that make the peak, and two to spare
	mostLooked  = 600 // free: points among which the peak is looked for; then among all beside it, so that nothing hangs on it
	// A peak must rise this far, as a logarithm, which is more than a meter's step between two ranges, and
	// this many times the noise, of which the highest of 600 points stands 3 out on both sides.
	leastPeak, overNoise = 0.05, 6
	// The phase must have this share of the one that goes with the magnitude, within so
	// many standard errors: drivers have all of it, tables without phases none.
	leastPhase, phaseSigmas = 0.25, 3
	highPeak                = 1.3 // times Re; that turns the phase by 8 degrees
)

// definitions are the values that Small's definitions give when read off a curve,
// without any fit.
type definitions struct {
	Resonance     float64 // Hz, of the greatest magnitude
	PeakOhm       float64 // Rmax
	DCOhm         float64 // Re: about the least magnitude
	Low, High     float64 // Hz, f1 and f2, where the magnitude is sqrt(Re Rmax)
	Qms, Qes, Qts float64
}

// define reads the small-signal values off a measured impedance, frequencies
// rising:
//
//	r0 = Rmax/Re,  Qms = fs sqrt(r0)/(f2-f1),  Qes = Qms/(r0-1),  Qts = Qms/r0
//
// which is exact for a coil without inductance. Re is the least magnitude, five points
// averaged. Where one of f1 and f2 is outside of the measurement it follows from f1 f2 = fs2.
func define(points []impedance.Point) (definitions, error) {
	if err := check(points); err != nil {
		return definitions{}, err
	}
	step := (len(points)-1)/mostLooked + 1
	log := make([]float64, 0, mostLooked)
	for i := 0; i < len(points); i += step {
		log = append(log, math.Log(points[i].Ohm))
	}
	thin, err := peak(log)
	if err != nil {
		return definitions{}, err
	}
	at := highest(points, thin*step-step+1, thin*step+step)
	d := definitions{Resonance: points[at].Frequency, PeakOhm: points[at].Ohm, DCOhm: leastOhm(points)}
	return d, d.width(points, at)
}

// leastOhm returns the least mean magnitude of five points in a row.
func leastOhm(points []impedance.Point) float64 {
	const row = 5
	least := math.Inf(1)
	for i := range points[row-1:] {
		sum := 0.0
		for _, p := range points[i : i+row] {
			sum += p.Ohm
		}
		least = min(least, sum/row)
	}
	return least
}

// highest returns where the magnitude is greatest from one index up to another.
func highest(points []impedance.Point, from, to int) int {
	at := max(0, from)
	for i := at; i < min(to, len(points)); i++ {
		if points[i].Ohm > points[at].Ohm {
			at = i
		}
	}
	return at
}

// width finds f1 and f2 and what follows from them.
func (d *definitions) width(points []impedance.Point, at int) error {
	half := math.Sqrt(d.DCOhm * d.PeakOhm)
	if !(d.PeakOhm > d.DCOhm) {
		return prose.Errorf("%w: the peak of %.3g ohm is not above the coil's %.3g", ErrNoPeak, d.PeakOhm, d.DCOhm)
	}
	left, right := at, at
	for left > 0 && over(points, left, -1, half) {
		left--
	}
	for right < len(points)-1 && over(points, right, 1, half) {
		right++
	}
	if right-left-1 < leastInPeak {
		return prose.Errorf("%w: %d over the peak at %.4g Hz, %d are needed", errFew, right-left-1, d.Resonance, leastInPeak)
	}
	square := d.Resonance * d.Resonance
	below, above := points[left].Ohm <= half, points[right].Ohm <= half
	if below {
		d.Low = crossing(points[left], points[left+1], half)
	}
	switch {
	case above:
		d.High = crossing(points[right], points[right-1], half)
	case below:
		d.High = square / d.Low
	default:
		return fmt.Errorf("%w: it does not come down on either side; measure further", errEdge)
	}
	if !below {
		d.Low = square / d.High
	}
	over := d.PeakOhm / d.DCOhm
	d.Qms = d.Resonance * math.Sqrt(over) / (d.High - d.Low)
	d.Qes, d.Qts = d.Qms/(over-1), d.Qms/over
	return nil
}

// phases refuses phases that clearly do not go with the magnitudes. Over the peak, from
// f1 to f2, that of a driver is nearly the phase of Re + Res/(1 + i Qms (f/fs - fs/f)):
// it goes from above 0 to below. How much of it the measured phases have, and its
// standard error, is found by least squares. Of a low peak nothing is said: there the
// coil and the air behind turn the phase as much.
func (d definitions) phases(points []impedance.Point) error {
	if d.PeakOhm < highPeak*d.DCOhm {
		return nil
	}
	var both, one, all, count float64
	for _, p := range points {
		if p.Frequency < d.Low || p.Frequency > d.High {
			continue
		}
		want := cmplx.Phase(complex(d.DCOhm, 0) + impedance.Motional(d.PeakOhm-d.DCOhm, d.Qms, p.Frequency/d.Resonance))
		got := p.Degrees * math.Pi / 180
		both += want * got
		one += want * want
		all += got * got
		count++
	}
	share := both / one
	sigma := math.Sqrt(max(0, all-share*both) / one / max(1, count-1))
	switch most := share + phaseSigmas*sigma; {
	case most < -leastPhase:
		return prose.Errorf("%w: over the peak at %.4g Hz the phase must go from above 0 to below, and goes the other way; turn the sign of all phases", errPhase, d.Resonance)
	case most < leastPhase:
		return prose.Errorf("%w: over the peak at %.4g Hz the phase must go from above 0 to below, and hardly moves; magnitudes without phases do not tell enough", errPhase, d.Resonance)
	}
	return nil
}

// over tells whether a point, or one of the two beyond it, is over a magnitude: a
// single one below may be noise.
func over(points []impedance.Point, at, step int, ohm float64) bool {
	for i := at; i >= 0 && i < len(points) && i != at+3*step; i += step {
		if points[i].Ohm > ohm {
			return true
		}
	}
	return false
}

// crossing returns where a magnitude is reached between two points, on logarithmic
// axes.
func crossing(a, b impedance.Point, ohm float64) float64 {
	share := math.Log(ohm/a.Ohm) / math.Log(b.Ohm/a.Ohm)
	return a.Frequency * math.Pow(b.Frequency/a.Frequency, share)
}

// check looks at a table by itself.
func check(points []impedance.Point) error {
	if len(points) < leastPoints {
		return fmt.Errorf("%w: %d, %d are needed", errFew, len(points), leastPoints)
	}
	if _, err := impedance.Measured(points); err != nil {
		return fmt.Errorf("%w: %w", errValue, err)
	}
	return nil
}

// peak returns the index of the peak that stands out most from what is on both
// sides of it.
func peak(log []float64) (int, error) {
	best, most := -1, 0.0
	for i := 1; i < len(log)-1; i++ {
		if log[i] < log[i-1] || log[i] < log[i+1] {
			continue
		}
		if p := min(fall(log, i, -1), fall(log, i, 1)); p > most {
			best, most = i, p
		}
	}
	if most >= max(leastPeak, overNoise*noise(log)) {
		return best, nil
	}
	least := slices.Min(log)
	switch {
	case log[0]-least > leastPeak && log[0]-least > overNoise*noise(log):
		return 0, fmt.Errorf("%w: the impedance falls from the lowest frequency on; measure lower", errEdge)
	case len(log) > 1 && log[len(log)-1] == slices.Max(log) && log[len(log)-1]-least > leastPeak:
		return 0, fmt.Errorf("%w: the impedance only rises; measure higher, and lower", ErrNoPeak)
	}
	return 0, fmt.Errorf("%w: the impedance is flat but for noise", ErrNoPeak)
}

// fall returns how far a curve falls from a place in one direction before it rises
// higher, or ends.
func fall(log []float64, at, step int) float64 {
	least := log[at]
	for i := at + step; i >= 0 && i < len(log) && log[i] <= log[at]; i += step {
		least = min(least, log[i])
	}
	return log[at] - least
}

// noise estimates the standard deviation of what is not smooth in a curve, from
// its second differences.
func noise(log []float64) float64 {
	if len(log) < 3 {
		return 0
	}
	bends := make([]float64, len(log)-2)
	for i := range bends {
		bends[i] = math.Abs(log[i] - 2*log[i+1] + log[i+2])
	}
	slices.Sort(bends)
	// A normal deviate's median magnitude is 0.6745 sigma; a second difference has
	// sqrt 6 times the deviation of its parts.
	return bends[len(bends)/2] / (0.6745 * math.Sqrt(6))
}
