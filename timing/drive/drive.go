// Package drive is the driver's own response: what it makes of a flat signal
// before the body and the room have their say.
//
// A driver is controlled by its mass above its resonance: its acceleration, and
// so the pressure of its volume velocity in free air, follows the voltage with a
// flat response; below, it falls by 12 dB per octave. In a closed box this is a
// second-order high-pass:
//
//	H = -x^2 / (1 - x^2 + i x/q),  x = f/resonance
//
// with time factor exp(+i omega t), and H -> 1 far above the resonance (R. H.
// Small, "Closed-box loudspeaker systems, part 1", J. Audio Eng. Soc. 20 (1972)
// 798; Beranek and Mellow, Acoustics: Sound Fields, Transducers and Vibration,
// chapters 6 and 7). Resonance and q are those of the driver in its box, not in
// free air.
//
// A measured response replaces it; a sensitivity makes levels absolute.
package drive

import (
	"math"
	"math/cmplx"

	"pappus/layout"

	"gonum.org/v1/gonum/interp"
)

// fall is the slope in dB per octave below a measured response: that of a closed
// box below its resonance.
const fall = 12

// Response is a driver's response over frequency, relative to its passband. The
// zero Response leaves everything as it is. It is never changed after it is made,
// and serves several goroutines at once.
type Response struct {
	resonance, q float64
	log          []float64              // ln Hz, of a measured response
	level, phase interp.PiecewiseLinear // dB and rad unwrapped, over log
	reference    float64                // dB
}

// HighPass returns a second-order high-pass with a resonance in Hz and a quality
// factor q, both above 0: at the resonance the level is 20 log10 q dB. A q of
// 1/sqrt(2) is flattest; 0.5 to 1.2 is common practice for small closed boxes.
func HighPass(resonance, q float64) Response { return Response{resonance: resonance, q: q} }

// Measured returns the response that a table gives as layout reads it: two points or more,
// their frequencies rising, that cover some of the band of weights. Between points, level in
// dB and phase run straight over log frequency. Phase is unwrapped: each point's is taken
// within half a turn of the one before, so points must stand close enough together for
// that, and a long delay is best taken out of the table beforehand. A delay that is left in
// is common to all drivers and shifts the whole sound.
//
// The table gives the shape alone: 0 dB is the energy mean over log frequency
// from 500 Hz to 4 kHz, or over the part of that band which the table covers. Below the
// table the level falls by 12 dB per octave from the first point's, as a closed box does;
// above, it stays the last point's; phase stays that of the point at the end.
func Measured(points []layout.ResponsePoint) Response {
	var r Response
	var level, phase []float64
	for i, p := range points {
		turn := p.Phase
		if i > 0 {
			turn = phase[i-1] + math.Remainder(turn-phase[i-1], 2*math.Pi)
		}
		r.log, level, phase = append(r.log, math.Log(p.Frequency)), append(level, p.Level), append(phase, turn)
	}
	// Neither gives an error where frequencies rise.
	_, _ = r.level.Fit(r.log, level), r.phase.Fit(r.log, phase)
	r.reference = r.mean()
	return r
}

// mean returns the energy mean in dB over log frequency, of the part of
// the table that is in the band of weights.
func (r Response) mean() float64 {
	low, high := math.Log(layout.WeightLowHz), math.Log(layout.WeightHighHz)
	low, high = max(low, r.log[0]), min(high, r.log[len(r.log)-1])
	sum := 0.0
	for i, log := range r.log[1:] {
		if from, to := max(low, r.log[i]), min(high, log); from < to {
			sum += (to - from) * meanEnergy(r.level.Predict(from), r.level.Predict(to))
		}
	}
	return 10 * math.Log10(sum/(high-low))
}

// meanEnergy returns the mean energy along a line whose level runs straight from
// one dB value to another.
func meanEnergy(first, last float64) float64 {
	e := math.Pow(10, first/10)
	rise := (last - first) * math.Ln10 / 10
	if rise == 0 {
		return e
	}
	return e * math.Expm1(rise) / rise
}

// Fill fills dst with the complex response at the frequencies, in Hz and 0 or
// above, in any order. It panics where the lengths differ and allocates nothing.
func (r Response) Fill(dst []complex128, frequency []float64) {
	if len(dst) != len(frequency) {
		panic("drive: lengths differ")
	}
	for f, hz := range frequency {
		dst[f] = r.value(hz)
	}
}

func (r Response) value(hz float64) complex128 {
	switch {
	case r.log != nil:
		log := math.Log(hz)
		level := r.level.Predict(log) - r.reference - fall*max(0, r.log[0]-log)/math.Ln2
		return cmplx.Rect(math.Pow(10, level/20), r.phase.Predict(log))
	case r.resonance > 0:
		x := hz / r.resonance
		return complex(-x*x, 0) / complex(1-x*x, x/r.q)
	}
	return 1
}

// sensitivityVolts is the voltage that a driver's sensitivity is stated for.
const sensitivityVolts = 2.83

// Offset returns what must be added to the relative level of one driver to
// make it absolute, in dB SPL (20 uPa): the level at 1 m in free air of a point
// source with the volume velocity that the driver has in its passband.
//
// sensitivity is in dB SPL at 1 m on the axis for 2.83 V. It is commonly
// measured in a large baffle, into half space, where the pressure is twice that
// of the same volume velocity in free air: 20 log10 2 = 6.02 dB are taken off
// (common practice; Beranek and Mellow, chapter 4, simple source near a rigid wall).
//
// volts is the RMS voltage over one driver, 0 or above: the amplifier's voltage
// over the number of drivers in series. 0 V gives -Inf.
//
// The figure takes no account of heat, excursion or the amplifier's limits, which
// make the real level lower; it is no licence to try. Begin low: loud sound
// harms hearing before it hurts, and small drivers burn without warning.
func Offset(sensitivity, volts float64) float64 {
	return sensitivity - 20*math.Log10(2) + 20*math.Log10(volts/sensitivityVolts)
}
