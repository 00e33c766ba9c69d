package document

import (
	"fmt"
	"strings"

	"pappus/timing/impedancefit"
)

// Estimate is a value with one standard error.
type Estimate struct {
	Value Number `json:"value"`
	Error Number `json:"error"`
}

// estimate rounds an estimate, in a unit of which there are so many in one of SI.
func estimate(places int, e impedancefit.Estimate, per float64) Estimate {
	return Estimate{To(places, per*e.Value), To(places, per*e.Error)}
}

// Impedance is what was found in a driver's impedance.
type Impedance struct {
	Coil       string            `json:"coil"` // how its inductance was taken
	Resonance  Estimate          `json:"resonance_hz"`
	Qms        Estimate          `json:"qms"`
	Qes        Estimate          `json:"qes"`
	Qts        Estimate          `json:"qts"`
	DCOhm      Estimate          `json:"re_ohm"`
	Peak       Estimate          `json:"peak_over_re"`
	Inductance *Estimate         `json:"le_mh"`              // in series; null: the coil follows a power law
	Exponent   *Estimate         `json:"exponent,omitempty"` // of that law
	At1k       Estimate          `json:"inductance_1k_mh"`
	Vas        *Estimate         `json:"vas_l"` // null: there is no second measurement
	Mass       *Estimate         `json:"mms_g"` // null: there is no second measurement
	BL         *Estimate         `json:"bl_tm"` // null: there is no second measurement
	Misfit     Number            `json:"misfit_percent"`
	Systematic bool              `json:"systematic"` // not for noise
	Rough      bool              `json:"rough"`      // and by more than a percent
	Points     int               `json:"points"`
	LeftOut    Numbers           `json:"left_out_hz"`
	Driver     map[string]Number `json:"driver"` // the keys of a design's [driver] with their values
}

// OfImpedance returns the document of a fit; m is nil without a second measurement.
func OfImpedance(f impedancefit.Fit, m *impedancefit.Mechanical) Impedance {
	out := Impedance{Coil: f.Coil.String(), Resonance: estimate(4, f.Resonance, 1), Qms: estimate(5, f.Qms, 1), Qes: estimate(5, f.Qes, 1),
		Qts: estimate(5, f.Qts, 1), DCOhm: estimate(5, f.DCOhm, 1), Peak: estimate(5, f.PeakOver, 1), At1k: estimate(6, f.InductanceAt(1000), 1000),
		Misfit: To(4, 100*f.Misfit), Systematic: f.Systematic, Rough: f.Rough(), Points: f.Points, LeftOut: All(3, f.LeftOut), Driver: map[string]Number{}}
	if f.Coil == impedancefit.Power {
		n := estimate(5, f.Exponent, 1)
		out.Exponent = &n
	} else {
		le := estimate(6, f.Inductance, 1000)
		out.Inductance = &le
	}
	if m != nil {
		vas, mass, bl := estimate(6, m.Vas, 1000), estimate(6, m.Mass, 1000), estimate(5, m.BL, 1)
		out.Vas, out.Mass, out.BL = &vas, &mass, &bl
	}
	for _, k := range f.Keys(m) {
		out.Driver[strings.TrimPrefix(k.Name, "driver.")] = Number(k.Value)
	}
	return out
}

// LoadFound is what a channel's impedance says about its strings.
type LoadFound struct {
	Channel int      `json:"channel"`
	Ratio   Number   `json:"over_planned"`
	Cause   string   `json:"cause"`
	Sure    bool     `json:"sure"`
	Others  []string `json:"others"`
	Alike   []string `json:"alike"`           // what else would measure the same
	Flat    bool     `json:"flat"`            // no resonance is to be seen
	Loose   bool     `json:"loose"`           // the resonance is not that of equal drivers in a closed box
	Known   bool     `json:"impedance_known"` // of the design's driver
}

// OfLoad returns the document of a channel's impedance.
func OfLoad(channel int, l impedancefit.Load, known bool) LoadFound {
	return LoadFound{channel, To(4, l.Ratio), l.Cause.String(), l.Sure && !l.Flat, names(l.Others), names(l.Alike), l.Flat, l.Loose, known}
}

func names[T fmt.Stringer](in []T) []string { return each(in, T.String) }
