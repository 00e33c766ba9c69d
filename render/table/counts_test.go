package table_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/render/table"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
)

// TestCountRows: the screen shows the first numbers of channels, those up to where
// more stop paying, the plan's own and the last; the table shows them all.
func TestCountRows(t *testing.T) {
	byHand := func(a *layout.Array) {
		a.Mounts = a.Mounts[:6]
		for i := range 2 {
			a.Channels = append(a.Channels, layout.Channel{ID: i + 1, Mounts: []int{3 * i, 3*i + 1, 3*i + 2}, Series: 3, Parallel: 1, NominalOhm: 12, DCOhm: 10, Delay: math.NaN()})
		}
	}
	tests := []struct {
		name      string
		with      func(*layout.Array)
		screen    int // rows of the screen
		own, last string
		note      string
	}{
		{"the demo", func(*layout.Array) {}, 16 + 1 + 1, "8", "39", "< as planned\n"},
		{"beyond the knee", func(a *layout.Array) { a.Wiring.Channels = 20 }, 20 + 1 + 1, "20", "39", "< as planned\n"},
		{"by height", func(a *layout.Array) { a.Wiring.Split = "height" }, 39, "8", "39", "< as planned; all split by height"},
		{"by hand", byHand, 6 + 1, "by hand", "hand", "< as planned; the others split by arrival"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := *demo(t).Array
			test.with(&a)
			p, err := timing.Make(t.Context(), &a)
			if err != nil {
				t.Fatal(err)
			}
			var b bytes.Buffer
			if err := table.ChannelScreen(&b, p, settings(t, p), false); err != nil {
				t.Fatal(err)
			}
			screen, _, _ := strings.Cut(b.String(), "\n\n")
			if !strings.Contains(screen, test.note) {
				t.Errorf("no %q in\n%s", test.note, screen)
			}
			rows := strings.Split(screen[:strings.Index(screen, "  < as planned")], "\n")
			rows = rows[1 : len(rows)-1]
			if len(rows) != test.screen {
				t.Errorf("%d rows, want %d:\n%s", len(rows), test.screen, screen)
			}
			var marked []string
			for _, r := range rows {
				if strings.HasSuffix(r, " ") {
					t.Errorf("blanks at the end of %q", r)
				}
				if strings.HasSuffix(r, "<") {
					marked = append(marked, strings.TrimSpace(r[:8]))
				}
			}
			if diff := cmp.Diff([]string{test.own}, marked); diff != "" {
				t.Error(diff)
			}
			b.Reset()
			if err := table.Counts(&b, p); err != nil {
				t.Fatal(err)
			}
			all, err := csv.NewReader(&b).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			end := all[len(all)-1]
			if end[0] != test.last && end[1] != test.last {
				t.Errorf("the table ends with %v", end)
			}
		})
	}
}

// TestCountsTellOfStrings: 96 drivers with 16 channels leave 25.9 us and with 15 only 23.1,
// for the rule for the strings takes two in a string in place of three; a row that looks
// worse for more channels has its reason beside it.
func TestCountsTellOfStrings(t *testing.T) {
	p := *demo(t)
	p.Counts = append([]timing.Count(nil), p.Counts[:4]...)
	screen := func() string {
		var b bytes.Buffer
		if err := table.ChannelScreen(&b, &p, settings(t, &p), false); err != nil {
			t.Fatal(err)
		}
		text, _, _ := strings.Cut(b.String(), "\n\n")
		return text
	}
	if got := screen(); !strings.Contains(got, "in a string\n") || strings.Contains(got, "play louder") {
		t.Errorf("nothing is traded:\n%s", got)
	}
	p.Counts[3].Smear, p.Counts[3].Longest = p.Counts[2].Smear+2e-6, p.Counts[2].Longest-1
	if got := screen(); !strings.Contains(got, "they play louder") {
		t.Errorf("says nothing of what is traded:\n%s", got)
	}
}
