package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pappus/layout/prose"
	"pappus/timing/rehearsal"
	odds "pappus/timing/trial"
	"pappus/timing/verdict"
)

// called says what a channel is called by a fact of which made-up loudspeakers tell how often it is
// wrong.
var called = map[verdict.Code]string{
	verdict.Reversed: "in reverse polarity", verdict.DeadString: "without one of its strings", verdict.Silent: "silent",
	verdict.Late: "late", verdict.Quiet: "too quiet", verdict.Loud: "too loud", verdict.Unlike: "unlike the plan",
	verdict.Vague: "hardly like the plan", verdict.Exchanged: "exchanged", verdict.Alike: "alike with another",
}

// Trial says how sure is what was found of channels that were recorded one by one, or, where no fault
// was found, what cannot be excluded, by made-up loudspeakers (verdict.Trial); empty where a table
// tells nothing of it.
func Trial(f verdict.Found, table odds.Table) string {
	if f.Channels == nil {
		return ""
	}
	var wrong []string
	cases := 0
	said := map[verdict.Code]bool{}
	for _, fact := range f.Faults {
		if count := table.Of(string(fact.Code), odds.FalseAlarm); count.Cases > 0 && called[fact.Code] != "" && !said[fact.Code] {
			said[fact.Code], cases = true, max(cases, count.Cases)
			wrong = append(wrong, called[fact.Code]+" "+inHundred(count))
		}
	}
	switch {
	case len(wrong) > 0:
		return fmt.Sprintf("Of up to %d made-up loudspeakers, in rooms with noise, echoes and a microphone placed by hand, a channel of which that was not true was called %s; %s.", cases, prose.Each(wrong), brackets)
	case len(f.Faults) > 0:
		return ""
	}
	return excluded(table)
}

// excluded says which faults a measurement may miss.
func excluded(table odds.Table) string {
	var missed []odds.Row
	var found []string
	most := 0
	for _, kind := range rehearsal.Kinds {
		switch count := table.Of(string(kind), odds.Missed); {
		case count.Times > 0:
			missed = append(missed, odds.Row{Of: string(kind), Count: count})
		case count.Cases > 0:
			found = append(found, string(kind))
			most = max(most, count.Cases)
		}
	}
	slices.SortStableFunc(missed, func(a, b odds.Row) int { return int(math.Copysign(1, b.Share()-a.Share())) })
	var said []string
	for _, r := range missed {
		said = append(said, fmt.Sprintf("%s %s", r.Of, inHundred(r.Count)))
	}
	switch {
	case len(said) == 0 && len(found) == 0:
		return ""
	case len(said) == 0:
		return fmt.Sprintf("Of up to %d made-up loudspeakers with each kind of fault none was missed.", most)
	}
	text := "No fault was found, which does not exclude all: of made-up ones were missed: " + strings.Join(said, ", ") + "; " + brackets + "."
	if len(found) > 0 {
		text += fmt.Sprintf(" Of up to %d each of these none was: %s.", most, strings.Join(found, ", "))
	}
	return text
}

// brackets says what inHundred has in its.
const brackets = "in brackets is the 95 percent interval, which so many cases leave open"

// inHundred says how often something happened, with the 95 percent interval of that.
func inHundred(c odds.Count) string {
	low, high := c.Interval()
	return fmt.Sprintf("in %s of 100 (%.0f to %.0f)", hundredth(c.Share()), 100*low, math.Ceil(100*high))
}

// hundredth writes a share in hundredths: none, fewer than 1, or so many.
func hundredth(share float64) string {
	switch {
	case share == 0:
		return "none"
	case share < 0.01:
		return "fewer than 1"
	}
	return fmt.Sprintf("%.0f", 100*share)
}
