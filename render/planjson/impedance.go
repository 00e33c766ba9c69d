package planjson

import (
	"io"
	"strings"

	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

// estimate is a value with its standard error.
type estimate struct {
	Value number `json:"value"`
	Error number `json:"error"`
}

func estimateOf(places int, e impedancefit.Estimate, per float64) estimate {
	return estimate{to(places, per*e.Value), to(places, per*e.Error)}
}

// WriteImpedance writes what was found in a driver's impedance; each found value as
// value and error, one standard error:
//
//	coil            how its inductance was taken
//	resonance_hz, qms, qes, qts, re_ohm, peak_over_re, le_mh (the series inductance; null with a
//	                power law, which has exponent)
//	inductance_1k_mh, vas_l, mms_g, bl_tm: the last three null without a second measurement
//	misfit_percent, systematic (not for noise), rough (and by more than a percent),
//	points, left_out_hz
//	driver          the keys of a design's [driver] with their values
func WriteImpedance(w io.Writer, f impedancefit.Fit, m *impedancefit.Mechanical) error {
	out := impedanceFit{Coil: f.Coil.String(), Resonance: estimateOf(4, f.Resonance, 1), Qms: estimateOf(5, f.Qms, 1), Qes: estimateOf(5, f.Qes, 1),
		Qts: estimateOf(5, f.Qts, 1), DCOhm: estimateOf(5, f.DCOhm, 1), Peak: estimateOf(5, f.PeakOver, 1), At1k: estimateOf(6, f.InductanceAt(1000), 1000),
		Misfit: to(4, 100*f.Misfit), Systematic: f.Systematic, Rough: f.Rough(), Points: f.Points, LeftOut: all(3, f.LeftOut), Driver: map[string]number{}}
	if f.Coil == impedancefit.Power {
		n := estimateOf(5, f.Exponent, 1)
		out.Exponent = &n
	} else {
		le := estimateOf(6, f.Inductance, 1000)
		out.Inductance = &le
	}
	if m != nil {
		vas, mass, bl := estimateOf(6, m.Vas, 1000), estimateOf(6, m.Mass, 1000), estimateOf(5, m.BL, 1)
		out.Vas, out.Mass, out.BL = &vas, &mass, &bl
	}
	for _, k := range f.Keys(m) {
		out.Driver[strings.TrimPrefix(k.Name, "driver.")] = number(k.Value)
	}
	return encode(w, out)
}

type impedanceFit struct {
	Coil       string            `json:"coil"`
	Resonance  estimate          `json:"resonance_hz"`
	Qms        estimate          `json:"qms"`
	Qes        estimate          `json:"qes"`
	Qts        estimate          `json:"qts"`
	DCOhm      estimate          `json:"re_ohm"`
	Peak       estimate          `json:"peak_over_re"`
	Inductance *estimate         `json:"le_mh"`
	Exponent   *estimate         `json:"exponent,omitempty"`
	At1k       estimate          `json:"inductance_1k_mh"`
	Vas        *estimate         `json:"vas_l"`
	Mass       *estimate         `json:"mms_g"`
	BL         *estimate         `json:"bl_tm"`
	Misfit     number            `json:"misfit_percent"`
	Systematic bool              `json:"systematic"`
	Rough      bool              `json:"rough"`
	Points     int               `json:"points"`
	LeftOut    []number          `json:"left_out_hz"`
	Driver     map[string]number `json:"driver"`
}

// WriteLoad writes what a channel's impedance says about its strings: channel,
// over_planned, cause, sure, others, alike (what else would measure the same), flat (no
// resonance is to be seen), impedance_known (of the design's driver).
func WriteLoad(w io.Writer, channel int, l impedancefit.Load, known bool) error {
	out := loadFound{Channel: channel, Ratio: to(4, l.Ratio), Cause: l.Cause.String(), Sure: l.Sure && !l.Flat, Others: []string{}, Alike: []string{}, Flat: l.Flat, Known: known}
	for _, m := range l.Alike {
		out.Alike = append(out.Alike, m.String())
	}
	for _, c := range l.Others {
		out.Others = append(out.Others, c.String())
	}
	return encode(w, out)
}

type loadFound struct {
	Channel int      `json:"channel"`
	Ratio   number   `json:"over_planned"`
	Cause   string   `json:"cause"`
	Sure    bool     `json:"sure"`
	Others  []string `json:"others"`
	Alike   []string `json:"alike"`
	Flat    bool     `json:"flat"`
	Known   bool     `json:"impedance_known"`
}

// WriteTuning writes a damping log made sense of:
//
//	target_q, most_stuffing_g, most_vents
//	trials[]   vents, vent_mm, stuffing_g, depth_mm, date, remark; resonance_hz, peak_over_re
//	           and q as value and error; uneven_db (null without a response); flat: no
//	           resonance is to be seen
//	changes[]  from, to (trials, from 1), thing, clear; q, peak_over_re and resonance_hz, the
//	           differences, as value and error
//	next       reached, base (a trial, from 1), thing, vents, vent_mm, stuffing_g, depth_mm,
//	           bracketed, q (as value and error; null where nothing tells); null where there
//	           is none, and why says why
func WriteTuning(w io.Writer, s damping.Study) error {
	g, n := s.Goal, s.Next
	out := tuning{Target: to(4, g.Q), MostG: to(1, g.MostG), MostVents: g.MostVents, Trials: []trial{}, Changes: []change{}}
	for _, t := range s.Trials {
		out.Trials = append(out.Trials, trial{t.Vents, to(2, t.VentMM), to(2, t.StuffingG), to(2, t.DepthMM), t.Date, t.Remark,
			estimateOf(3, t.Resonance, 1), estimateOf(4, t.PeakOver, 1), estimateOf(4, t.Q, 1), to(3, t.Uneven), t.Flat})
	}
	for _, c := range damping.Changes(s.Trials) {
		out.Changes = append(out.Changes, change{c.From + 1, c.To + 1, c.Thing.String(), c.Clear,
			estimateOf(4, c.Q, 1), estimateOf(4, c.PeakOver, 1), estimateOf(3, c.Resonance, 1)})
	}
	if s.Why != nil {
		out.Why = s.Why.Error()
		return encode(w, out)
	}
	out.Next = &next{n.Reached, n.Base + 1, n.Thing.String(), n.Trial.Vents, to(2, n.Trial.VentMM), to(2, n.Trial.StuffingG), to(2, n.Trial.DepthMM),
		n.Bracketed, estimateOf(4, n.Q, 1)}
	return encode(w, out)
}

type tuning struct {
	Target    number   `json:"target_q"`
	MostG     number   `json:"most_stuffing_g"`
	MostVents int      `json:"most_vents"`
	Trials    []trial  `json:"trials"`
	Changes   []change `json:"changes"`
	Next      *next    `json:"next"`
	Why       string   `json:"why,omitempty"`
}

type trial struct {
	Vents     int      `json:"vents"`
	VentMM    number   `json:"vent_mm"`
	StuffingG number   `json:"stuffing_g"`
	DepthMM   number   `json:"depth_mm"`
	Date      string   `json:"date,omitempty"`
	Remark    string   `json:"remark,omitempty"`
	Resonance estimate `json:"resonance_hz"`
	Peak      estimate `json:"peak_over_re"`
	Q         estimate `json:"q"`
	Uneven    number   `json:"uneven_db"`
	Flat      bool     `json:"flat"`
}

type change struct {
	From      int      `json:"from"`
	To        int      `json:"to"`
	Thing     string   `json:"thing"`
	Clear     bool     `json:"clear"`
	Q         estimate `json:"q"`
	Peak      estimate `json:"peak_over_re"`
	Resonance estimate `json:"resonance_hz"`
}

type next struct {
	Reached   bool     `json:"reached"`
	Base      int      `json:"base"`
	Thing     string   `json:"thing"`
	Vents     int      `json:"vents"`
	VentMM    number   `json:"vent_mm"`
	StuffingG number   `json:"stuffing_g"`
	DepthMM   number   `json:"depth_mm"`
	Bracketed bool     `json:"bracketed"`
	Q         estimate `json:"q"`
}
