package planjson

import (
	"pappus/layout/advice"
	"pappus/render/words"
	"pappus/timing"
)

// Finding is one thing to know, as it stands in documents.
type Finding struct {
	Code string `json:"code"`
	Rank string `json:"rank"` // danger, misfit, caution, cost or note
	What string `json:"what"`
	Cure string `json:"cure,omitempty"`
}

// Findings returns all that there are, worst first.
func Findings(all []timing.Finding) []Finding {
	out := make([]Finding, len(all))
	for i, f := range words.Findings(all) {
		out[i] = Finding{f.Code, f.Rank.String(), f.What, f.Cure}
	}
	return out
}

// lines says what all findings say, a line each, worst first.
func lines(all []timing.Finding) []string { return advice.Lines(words.Findings(all)) }
