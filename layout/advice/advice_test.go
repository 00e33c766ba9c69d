package advice_test

import (
	"testing"

	"pappus/layout/advice"

	"github.com/google/go-cmp/cmp"
)

func TestSorted(t *testing.T) {
	all := []advice.Finding{
		{Code: "a", Rank: advice.Note}, {Code: "b", Rank: advice.Misfit}, {Code: "c", Rank: advice.Danger},
		{Code: "d", Rank: advice.Misfit}, {Code: "e", Rank: advice.Caution}, {Code: "f", Rank: advice.Cost},
	}
	codes := func(list []advice.Finding) string {
		s := ""
		for _, f := range list {
			s += f.Code
		}
		return s
	}
	if got := codes(advice.Sorted(all)); got != "cbdefa" {
		t.Errorf("sorted: %s", got)
	}
	if got := codes(advice.Stopping(all)); got != "cbd" {
		t.Errorf("stopping: %s", got)
	}
	if got := codes(all); got != "abcdef" {
		t.Errorf("the list itself was changed: %s", got)
	}
}

func TestWords(t *testing.T) {
	var got []string
	for r := advice.Note - 1; r <= advice.Danger+1; r++ {
		got = append(got, r.String())
	}
	if d := cmp.Diff([]string{"unknown", "note", "cost", "caution", "misfit", "danger", "unknown"}, got); d != "" {
		t.Error(d)
	}
	for _, c := range []struct {
		name string
		f    advice.Finding
		want string
	}{
		{"with a cure", advice.Finding{What: "too hot", Cure: "wait"}, "too hot: wait"},
		{"without", advice.Finding{What: "too hot"}, "too hot"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.f.String(); got != c.want {
				t.Errorf("got %q", got)
			}
		})
	}
}
