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
	Fibre     *Fibre   `json:"fibre"` // in vents; null: trials tell nothing of it
}

// Fibre is what trials tell of the fibre in vents, each value as likely as not and between what it is in
// 95 of 100 cases.
type Fibre struct {
	Trials  []int    `json:"trials"`  // from 1
	Resists Bounds   `json:"resists"` // flow resistance over that of the published model
	Grams   *Bounds  `json:"fill_g"`  // in each vent, to try; null: none brings Q clearly nearer
	Q       Estimate `json:"q"`       // to expect of it
}

// Bounds are a value and between what it is.
type Bounds struct {
	Least  Number `json:"least"`
	Likely Number `json:"likely"`
	Most   Number `json:"most"`
}

func fibreOf(f *damping.Fibre) *Fibre {
	if f == nil {
		return nil
	}
	out := &Fibre{Resists: boundsOf(f.Resists), Q: estimate(4, f.Q, 1)}
	for _, i := range f.Trials {
		out.Trials = append(out.Trials, i+1)
	}
	if f.Grams.Likely > 0 {
		grams := boundsOf(f.Grams)
		out.Grams = &grams
	}
	return out
}

func boundsOf(b damping.Bounds) Bounds { return Bounds{To(2, b.Least), To(2, b.Likely), To(2, b.Most)} }

// OfTuning returns the document of a log's trials and of what to try next; with why there
// is nothing.
func OfTuning(s damping.Study) Tuning {
	g, n := s.Goal, s.Next
	out := Tuning{To(4, g.Q), To(1, g.MostG), g.MostVents, each(s.Trials, trialOf), each(damping.Changes(s.Trials), changeOf), nil, "", fibreOf(s.Fibre)}
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
