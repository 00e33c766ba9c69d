package table

import (
	"fmt"
	"io"
	"strings"

	"pappus/layout/advice"
)

// mostFindings is how many findings a screen shows: what is read at one glance. The
// rest is in plan.json.
const mostFindings = 7

// leads are the words before a finding of each rank.
var leads = map[advice.Rank]string{
	advice.Danger:  "Danger:",
	advice.Misfit:  "Does not work:",
	advice.Caution: "Take care:",
	advice.Cost:    "Costs:",
	advice.Note:    "Note:",
}

// Advice writes what to look out for, worst first: at most seven findings, each with
// what cures it, and a line that says how many more there are. Every screen begins with
// it. Nothing is written where there is nothing to say.
func Advice(w io.Writer, all []advice.Finding, colour bool) error {
	if len(all) == 0 {
		return nil
	}
	b, s := &strings.Builder{}, style(colour)
	shown, left := Shown(all)
	for _, f := range shown {
		fmt.Fprintln(b, s.lead(f.Rank), wrapAfter(len(leads[f.Rank])+1, sentence(f)))
	}
	if left > 0 {
		fmt.Fprintf(b, "and %d more in plan.json, none worse\n", left)
	}
	fmt.Fprintln(b)
	_, err := io.WriteString(w, b.String())
	return err
}

// Shown returns the findings that a screen shows, worst first, and how many more there
// are.
func Shown(all []advice.Finding) (shown []advice.Finding, more int) {
	sorted := advice.Sorted(all)
	shown = sorted[:min(len(sorted), mostFindings)]
	return shown, len(sorted) - len(shown)
}

// Lead returns the words that stand before a finding of a rank, without their colon.
func Lead(r advice.Rank) string { return strings.TrimSuffix(leads[r], ":") }

// lead writes the word before a finding so that the worst stand out.
func (s style) lead(r advice.Rank) string {
	if r >= advice.Caution {
		return s.alert(leads[r])
	}
	return s.faint(leads[r])
}

// sentence writes a finding and its cure as sentences.
func sentence(f advice.Finding) string {
	text := capital(f.What) + "."
	if f.Cure != "" {
		text += " " + capital(f.Cure) + "."
	}
	return text
}

// capital returns text with its first letter in upper case.
func capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// AdviceOfEach writes what to look out for in each of several designs, under its name.
func AdviceOfEach(w io.Writer, designs []Candidate, colour bool) error {
	for _, d := range designs {
		if len(d.Plan.Warnings) == 0 {
			continue
		}
		if _, err := fmt.Fprintln(w, style(colour).strong(d.Plan.Array.Name)); err != nil {
			return err
		}
		if err := Advice(w, d.Plan.Warnings, colour); err != nil {
			return err
		}
	}
	return nil
}
