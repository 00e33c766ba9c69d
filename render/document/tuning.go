package document

import (
	"pappus/timing/damping"
)

// Tuning is a damping log made sense of.
type Tuning struct {
	Target    Number   `json:"target_q"`
	MostG     Number   `json:"most_stuffing_g"`
	MostVents int      `json:"most_vents"`
	Trials    []Trial  `json:"trials"`
	Changes   []Change `json:"changes"`
	Next      *Next    `json:"next"` // null: there is none, and why says why
	Why       string   `json:"why,omitempty"`
}

// OfTuning returns the document of a log's trials and of what to try next; with why there
// is nothing.
func OfTuning(s damping.Study) Tuning {
	g, n := s.Goal, s.Next
	out := Tuning{To(4, g.Q), To(1, g.MostG), g.MostVents, each(s.Trials, trialOf), each(damping.Changes(s.Trials), changeOf), nil, ""}
	if s.Why != nil {
		out.Why = s.Why.Error()
		return out
	}
	out.Next = &Next{n.Reached, n.Base + 1, n.Thing.String(), n.Trial.Vents, To(2, n.Trial.VentMM), To(2, n.Trial.StuffingG), To(2, n.Trial.DepthMM),
		n.Bracketed, estimate(4, n.Q, 1), To(2, n.Trial.FillG)}
	return out
}

// Trial is what was tried and what it gave.
type Trial struct {
	Vents     int      `json:"vents"`
	VentMM    Number   `json:"vent_mm"`
	StuffingG Number   `json:"stuffing_g"`
	DepthMM   Number   `json:"depth_mm"`
	Date      string   `json:"date,omitempty"`
	Remark    string   `json:"remark,omitempty"`
	Resonance Estimate `json:"resonance_hz"`
	Peak      Estimate `json:"peak_over_re"`
	Q         Estimate `json:"q"`
	Uneven    Number   `json:"uneven_db"` // null: without a response
	Flat      bool     `json:"flat"`      // no resonance is to be seen
	FillG     Number   `json:"fill_g"`    // of filling in each vent
}

func trialOf(t damping.Trial) Trial {
	return Trial{t.Vents, To(2, t.VentMM), To(2, t.StuffingG), To(2, t.DepthMM), t.Date, t.Remark,
		estimate(3, t.Resonance, 1), estimate(4, t.PeakOver, 1), estimate(4, t.Q, 1), To(3, t.Uneven), t.Flat, To(2, t.FillG)}
}

// Change is what one trial brought over another.
type Change struct {
	From      int      `json:"from"` // trials, from 1
	To        int      `json:"to"`
	Thing     string   `json:"thing"`
	Clear     bool     `json:"clear"`
	Q         Estimate `json:"q"` // the differences
	Peak      Estimate `json:"peak_over_re"`
	Resonance Estimate `json:"resonance_hz"`
}

func changeOf(c damping.Change) Change {
	return Change{c.From + 1, c.To + 1, c.Thing.String(), c.Clear, estimate(4, c.Q, 1), estimate(4, c.PeakOver, 1), estimate(3, c.Resonance, 1)}
}

// Next is what to try.
type Next struct {
	Reached   bool     `json:"reached"`
	Base      int      `json:"base"` // a trial, from 1
	Thing     string   `json:"thing"`
	Vents     int      `json:"vents"`
	VentMM    Number   `json:"vent_mm"`
	StuffingG Number   `json:"stuffing_g"`
	DepthMM   Number   `json:"depth_mm"`
	Bracketed bool     `json:"bracketed"`
	Q         Estimate `json:"q"` // null: nothing tells
	FillG     Number   `json:"fill_g"`
}
