package table_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/render/table"
	"pappus/timing"
)

// found is a finding of layout.
func found(rank advice.Rank, what, cure string) timing.Finding {
	return timing.Finding{Rank: rank, Fact: advice.Finding{Rank: rank, What: what, Cure: cure}}
}

func said(t *testing.T, all []timing.Finding) string {
	t.Helper()
	var b strings.Builder
	if err := table.Advice(&b, all, false); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestAdvice: the worst comes first, each with its cure, in lines that fit a terminal.
func TestAdvice(t *testing.T) {
	if got := said(t, nil); got != "" {
		t.Errorf("of nothing: %q", got)
	}
	got := said(t, []timing.Finding{
		found(advice.Cost, "2 of 8 channels stay unused", "set channels = 6"),
		found(advice.Danger, "the load is 2 ohm "+strings.Repeat("and so on ", 12), "do not connect it"),
	})
	lines := strings.Split(strings.TrimSpace(got), "\n")
	if !strings.HasPrefix(lines[0], "Danger: The load is 2 ohm") || lines[len(lines)-1] != "Costs: 2 of 8 channels stay unused. Set channels = 6." {
		t.Error(got)
	}
	for _, l := range lines {
		if utf8.RuneCountInString(l) > 80 {
			t.Errorf("%d columns: %s", utf8.RuneCountInString(l), l)
		}
	}
}

// TestAdviceIsShort: seven findings at most, however many there are, and the rest counted.
func TestAdviceIsShort(t *testing.T) {
	for _, c := range []struct {
		n    int
		last string
	}{{7, "Note: Finding 7."}, {8, "and 1 more in plan.json, none worse"}, {30, "and 23 more in plan.json, none worse"}} {
		t.Run(fmt.Sprint(c.n), func(t *testing.T) {
			var all []timing.Finding
			for i := range c.n {
				all = append(all, found(advice.Note, fmt.Sprintf("finding %d", i+1), ""))
			}
			got := strings.TrimSpace(said(t, all))
			if strings.Count(got, "Note:") != 7 || !strings.HasSuffix(got, c.last) {
				t.Error(got)
			}
		})
	}
}

// TestAdviceOfEach: designs with something to look out for, under their names.
func TestAdviceOfEach(t *testing.T) {
	design := func(name string, all ...timing.Finding) timing.Candidate {
		return timing.Candidate{Plan: &timing.Plan{Spot: timing.Spot{Array: &layout.Array{Name: name}, Warnings: all}}}
	}
	var b strings.Builder
	if err := table.AdviceOfEach(&b, []timing.Candidate{design("one"), design("two", found(advice.Cost, "dear", ""))}, false); err != nil {
		t.Fatal(err)
	}
	if b.String() != "two\nCosts: Dear.\n\n" {
		t.Errorf("says %q", b.String())
	}
}
