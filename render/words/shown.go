package words

import (
	"strings"

	"pappus/layout/advice"
	"pappus/timing"
)

// mostFindings is how many findings a screen shows: what is read at one glance. The
// rest is in plan.json.
const mostFindings = 7

// leads are the words before a finding of each rank.
var leads = map[advice.Rank]string{
	advice.Danger:  "Danger",
	advice.Misfit:  "Does not work",
	advice.Caution: "Take care",
	advice.Cost:    "Costs",
	advice.Note:    "Note",
}

// Lead returns the words that stand before a finding of a rank.
func Lead(r advice.Rank) string { return leads[r] }

// Shown returns the findings that a screen shows, worst first, and how many more there
// are.
func Shown(all []timing.Finding) (shown []advice.Finding, more int) {
	sorted := Findings(all)
	shown = sorted[:min(len(sorted), mostFindings)]
	return shown, len(sorted) - len(shown)
}

// Sentence writes a finding and its cure as sentences.
func Sentence(f advice.Finding) string {
	text := Capital(f.What) + "."
	if f.Cure != "" {
		text += " " + Capital(f.Cure) + "."
	}
	return text
}

// Capital returns text with its first letter in upper case.
func Capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
