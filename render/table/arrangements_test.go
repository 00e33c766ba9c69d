package table_test

import (
	"bytes"
	"strings"
	"testing"

	"pappus/render/table"
	"pappus/timing"
)

// ways counts the rows of the table of arrangements, its head included.
func ways(p *timing.Plan) int {
	n := 1
	for _, s := range timing.Stringings(p) {
		n += len(s.Options)
	}
	return n
}

func TestArrangementScreen(t *testing.T) {
	a := *demo(t).Array
	a.Wiring.WireLength, a.Wiring.WireSection = 10, 0.75e-6
	a.Wiring.LongestString = 5 // for channels of five
	p, err := timing.Make(t.Context(), &a)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := table.ArrangementScreen(&b, p, timing.Stringings(p), false); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	for _, want := range []string{"under the minimum", " <\n", "1 of 3 + 1 of 2", "gauge",
		"and 3 with unequal strings under the minimum"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if len(line) > 84 {
			t.Errorf("%d letters: %s", len(line), line)
		}
	}
}

// TestUnequalShownAreAllowed: the ways with unequal strings that are shown are those that
// the amplifier may drive.
func TestUnequalShownAreAllowed(t *testing.T) {
	p := demo(t)
	var b bytes.Buffer
	if err := table.ArrangementScreen(&b, p, timing.Stringings(p), false); err != nil {
		t.Fatal(err)
	}
	shown := 0
	for _, line := range strings.Split(b.String(), "\n") {
		if !strings.Contains(line, " of 1 ") || !strings.Contains(line, " + ") {
			continue
		}
		if shown++; strings.Contains(line, "under the minimum") {
			t.Errorf("refused: %s", line)
		}
	}
	if shown == 0 {
		t.Error("none is shown")
	}
}
