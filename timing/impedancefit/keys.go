package impedancefit

import (
	"math"
	"strconv"
)

// usual is where data sheets take the inductance, in Hz (common practice).
const usual = 1000

// Key is one key of the design's driver with its value, rounded to what the error
// leaves sure and one digit more, and its standard error.
type Key struct {
	Name  string // as in driver.fs_hz
	Value float64
	Error float64
}

// Keys returns what a design's [driver] can be given from a measurement in free
// air. The inductance is that at 1 kHz, or at the highest frequency of the
// measurement where that is lower; what is not above 0 is 0. m may be nil.
func (f Fit) Keys(m *Mechanical) []Key {
	le := f.InductanceAt(max(f.seen[0], min(usual, f.seen[1])))
	keys := []Key{
		key("fs_hz", f.Resonance, 1), key("qms", f.Qms, 1), key("qes", f.Qes, 1), key("dc_ohm", f.DCOhm, 1),
		key("le_mh", Estimate{max(0, le.Value), le.Error}, 1e3),
	}
	if m != nil {
		keys = append(keys, key("vas_l", m.Vas, 1e3), key("bl_tm", m.BL, 1), key("mms_g", m.Mass, 1e3))
	}
	return keys
}

// key rounds a value in the design's unit, of which there are per in one of SI.
func key(name string, e Estimate, per float64) Key {
	return Key{"driver." + name, rounded(per*e.Value, per*e.Error), per * e.Error}
}

// rounded keeps one digit more than a standard error leaves sure, three at least and
// six at most.
func rounded(v, sigma float64) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	digits := math.MaxInt
	if sigma > 0 {
		digits = int(math.Floor(math.Log10(math.Abs(v)))-math.Floor(math.Log10(sigma))) + 2
	}
	out, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', max(3, min(6, digits)), 64), 64) // free: of a float64
	return out
}
