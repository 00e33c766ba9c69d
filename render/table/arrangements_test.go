package table_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/wiring"
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

// TestFourWaysAreShown of those with unequal strings, and the rest counted.
func TestFourWaysAreShown(t *testing.T) {
	uneven := timing.Option{Arrangement: wiring.Arrangement{{Series: 3, Parallel: 1}, {Series: 2, Parallel: 1}}}
	group := timing.Stringing{Drivers: 5, Channels: []int{1, 2, 3, 5}}
	for n, end := range map[int]string{4: "", 5: "  and 1 more with unequal strings\n", 6: "  and 2 more with unequal strings\n"} {
		group.Options = slices.Repeat([]timing.Option{uneven}, n)
		var b bytes.Buffer
		p := &timing.Plan{Spot: timing.Spot{Array: &layout.Array{}}}
		if err := table.ArrangementScreen(&b, p, []timing.Stringing{group}, false); err != nil {
			t.Fatal(err)
		}
		if strings.Count(b.String(), "1 of 3 + 1 of 2") != 4 || !strings.Contains(b.String(), "5 drivers (channels 1 to 3, 5)\n") || strings.Contains(b.String(), "more with") != (end != "") || !strings.Contains(b.String(), end) {
			t.Errorf("%d ways:\n%s", n, b.String())
		}
	}
}
