package trialtable

import (
	"slices"
	"strings"
	"testing"

	"pappus/timing/trial"

	"github.com/google/go-cmp/cmp"
)

// counted is a trial of six cases: even ones are of one thing, odd ones of another, and the third of each happens.
func counted(missed int) Trial {
	return Trial{File: "some.csv", Cases: 6, One: func(i int) (of Tally) {
		of.Add([]string{"even", "odd"}[i%2], trial.Missed, i == missed)
		of.Add("all", trial.Covered, true)
		return of
	}}
}

// TestAgain: cases that are made again come to what is stored of them, whichever they are, and the one that does not is
// named; the table is their sum, also where its rows are sorted.
func TestAgain(t *testing.T) {
	all := []int{0, 1, 2, 3, 4, 5}
	for _, sorted := range []func(a, b trial.Row) int{nil, func(a, b trial.Row) int { return strings.Compare(a.What, b.What) }} {
		was := counted(5)
		was.Sorted = sorted
		table := was.sum(was.made(all)).Table
		text := was.text(table, was.made(all))
		stored, err := was.stored(table, text)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(table, was.sum(stored).Table); diff != "" || table.Of("odd", trial.Missed) != (trial.Count{Cases: 3, Times: 1}) {
			t.Errorf("the sum is another: %v, %s", table, diff)
		}
		if got := was.again(table, stored, []int{5, 2}); len(got) > 0 {
			t.Error(got)
		}
		if got := counted(3).again(table, stored, []int{0, 3, 4}); len(got) != 1 || !strings.HasPrefix(got[0], "case 3 ") {
			t.Error(got)
		}
		other := counted(5)
		other.One = func(int) (of Tally) {
			of.Add("new", trial.Missed, false)
			return of
		}
		if got := other.again(table, stored, []int{1}); len(got) != 1 || !strings.Contains(got[0], "new") {
			t.Error(got)
		}
		lines := strings.Split(text, "\n")
		for _, wrong := range []string{strings.Join(lines[:6], "\n"), strings.Join(slices.Concat(lines[:3], lines[4:], lines[3:4]), "\n"), strings.Replace(text, "0:", "9:", 1), strings.Replace(text, "/1", "/0", 1)} {
			if _, err := was.stored(table, wrong); err == nil {
				t.Errorf("%q passes", wrong)
			}
		}
	}
}
