package table

import (
	"fmt"
	"io"

	"pappus/layout/advice"
	"pappus/render/words"
	"pappus/timing"
)

// Advice writes what to look out for, worst first: at most seven findings, each with
// what cures it, and a line that says how many more there are. Every screen begins with
// it. Nothing is written where there is nothing to say.
func Advice(w io.Writer, all []timing.Finding, colour bool) error {
	if len(all) == 0 {
		return nil
	}
	s := &screen{style: style(colour)}
	shown, left := words.Shown(all)
	for _, f := range shown {
		lead := words.Lead(f.Rank) + ":"
		fmt.Fprintln(s, s.lead(f.Rank, lead), wrapAfter(len(lead)+1, words.Sentence(f)))
	}
	if left > 0 {
		fmt.Fprintf(s, "and %d more in plan.json, none worse\n", left)
	}
	fmt.Fprintln(s)
	return s.to(w)
}

// lead writes the word before a finding so that the worst stand out.
func (s style) lead(r advice.Rank, text string) string {
	if r >= advice.Caution {
		return s.alert(text)
	}
	return s.faint(text)
}

// AdviceOfEach writes what to look out for in each of several designs, under its name.
func AdviceOfEach(w io.Writer, designs []timing.Candidate, colour bool) error {
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
