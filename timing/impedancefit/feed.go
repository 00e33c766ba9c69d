package impedancefit

import (
	"errors"
	"math"

	"pappus/layout/design"
	"pappus/layout/impedance"
	"pappus/timing/crossover"
	"pappus/timing/excursion"
)

// The sweep for impedances: from well below the resonance of any driver that goes into a small
// body to where coils are all inductance, and so slow that it is 2.6 s for each factor e, in
// which a cone of 20 Hz and a Q of 10 has died away by 140 dB.
const (
	SweepLow    = 10.0    // Hz
	SweepHigh   = 20000.0 // Hz
	SweepLength = 20.0    // s

	usualLow = 20.0 // Hz, of a sweep that was made for hearing
)

// How a driver is fed to measure its impedance.
const (
	// mostVolt is 11 mW into 8 ohm: what keeps unknown small drivers in their linear part (common
	// practice: 0.1 to 0.5 V).
	mostVolt = 0.3
	// smallPart of what the cone may move is taken for linear: the values are those of small signals
	// (R. H. Small, J. Audio Eng. Soc. 20 (1972) 383).
	smallPart = 0.1
	leastVolt = 0.02 // free: in steps of 0.01 V a fifth more is as much; below, a recorder hears little else than hum
	// ofDC is the resistor over Re where the peak is not known: of Qms/Qes = 3, the mean of both.
	ofDC = 2.0
)

// e12 are the values that resistors come in to a decade (IEC 60063).
var e12 = [...]float64{1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10}

// Feed returns what to measure a design's driver with: the voltage in V (RMS) of a sine from the
// amplifier, by which the cone moves no further than a tenth of what it may, and the resistor in
// ohm. An error dH of the ratio H of both sides makes one of
//
//	dZ/Z = dH/(H (1-H)),  H (1-H) = R Z/(R+Z)^2
//
// of the impedance, least for R = Z, and as large at Re as at the peak Re (1 + Qms/Qes) for the
// geometric mean of both; the next in E12 is taken.
func Feed(d design.Driver) (volt, ohm float64) {
	s, re := d.Small, d.DCOhm
	if re == 0 {
		re = d.NominalOhm
	}
	aim := re * ofDC
	if s.Qms > 0 && s.Qes > 0 {
		aim = re * math.Sqrt(1+s.Qms/s.Qes)
	}
	volt = mostVolt
	if of := (excursion.Driver{BL: s.BL, Mass: s.Mass, DCOhm: re, Resonance: s.Fs, Q: s.Qms * s.Qes / (s.Qms + s.Qes)}); of.IsKnown() && s.Reach > 0 {
		volt = max(leastVolt, min(volt, smallPart*s.Reach/of.Peak(1, crossover.Filter{})))
	}
	return math.Floor(100*volt) / 100, nearestE12(aim)
}

// nearestE12 returns the value of E12 nearest to some ohm, by their ratio.
func nearestE12(ohm float64) float64 {
	decade := math.Pow(10, math.Floor(math.Log10(ohm)))
	best := e12[0]
	for _, v := range e12 {
		if math.Abs(math.Log(v*decade/ohm)) < math.Abs(math.Log(best*decade/ohm)) {
			best = v
		}
	}
	return best * decade
}

// impedance returns that of a recording of the sweep for it, or of one from usualLow on, where
// nobody said which it is.
func (r Recording) impedance() ([]impedance.Point, error) {
	if r.Low != 0 {
		return r.Impedance()
	}
	r.Low = SweepLow
	out, err := r.Impedance()
	if errors.Is(err, errSwept) || errors.Is(err, errFew) {
		r.Low = usualLow
		return r.Impedance()
	}
	return out, err
}
