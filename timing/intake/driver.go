package intake

import (
	"math"

	"pappus/timing/impedancefit"
	"pappus/timing/unlike"
)

// Driver is what was measured of one driver.
type Driver struct {
	Name  string
	Files []string // their names in the folder

	Fit   *impedancefit.Fit // of its impedance; nil: not measured
	Henry float64           // its inductance at 1 kHz
	Heard *Heard            // by a microphone; nil: not recorded

	Reasons []Reason // why it is rejected; none: it is good
	Notes   []Reason // what else to know of it
	Bin     Bin      // of a good one
}

// Heard is what a microphone heard of a driver, against the middle of all.
type Heard struct {
	Level    float64 // dB, mean over thirds from 500 Hz to 4 kHz
	Error    float64 // dB, one standard error of Level
	Uneven   float64 // dB, RMS of thirds from 200 Hz to 8 kHz about Level
	Late     float64 // s; NaN: not known, for want of the wire from the player
	Reversed bool    // against the greater part of three or more
}

// Value is a value by which drivers are judged.
type Value int

// The values.
const (
	Resonance Value = iota // ln Hz
	Q                      // ln Qts
	Ohm                    // ln Re
	Level                  // dB
	Response               // dB, how uneven it is against the middle
	values
)

// Code says why a driver is rejected, or what else is to be known of it.
type Code int

// The codes.
const (
	Unreadable Code = iota // Err says why
	Copy                   // of the driver named Other
	Odd                    // Value against the others
	OffDesign              // Value against the design, for want of others
	Rough                  // its impedance is not that of a driver, by more than that of others
	Turned                 // its wires are the other way round
	Second                 // file Other was not looked at: there is one before it
)

// Reason is one of those.
type Reason struct {
	Code  Code
	Value Value
	Is    float64 // the value, in Hz, ohm, dB or one
	Other string
	Want  float64 // what it is against
	Err   error
}

// Good tells whether a driver may be used.
func (d Driver) Good() bool { return len(d.Reasons) == 0 }

// value returns a value that is judged, with its standard error; NaN where it is not known.
func (d Driver) value(v Value) (is, sigma float64) {
	log := func(e impedancefit.Estimate) (float64, float64) { return math.Log(e.Value), e.Error / e.Value }
	switch {
	case v <= Ohm && d.Fit == nil, v > Ohm && d.Heard == nil:
		return math.NaN(), math.NaN()
	case v == Resonance:
		return log(d.Fit.Resonance)
	case v == Q:
		return log(d.Fit.Qts)
	case v == Ohm:
		return log(d.Fit.DCOhm)
	case v == Level:
		return d.Heard.Level, d.Heard.Error
	}
	return d.Heard.Uneven, 0
}

// shown turns a value that is judged into one for people.
func (v Value) shown(x float64) float64 {
	if v <= Ohm {
		return math.Exp(x)
	}
	return x
}

// unlike returns a driver as a network takes it, values that were not measured from a middle one.
func (d Driver) unlike(middle unlike.Driver) unlike.Driver {
	out := middle
	if f := d.Fit; f != nil {
		out = unlike.Driver{Resonance: f.Resonance.Value, Qms: f.Qms.Value, Qes: f.Qes.Value, DCOhm: f.DCOhm.Value,
			Inductance: d.Henry}
	}
	if h := d.Heard; h != nil && !math.IsNaN(h.Level) {
		out.Level = math.Pow(10, h.Level/20)
		if !math.IsNaN(h.Late) {
			out.Late = h.Late
		}
	}
	return out
}
