package table_test

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"pappus/layout"
	"pappus/render/table"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestWooferWords(t *testing.T) {
	for _, test := range []struct {
		name   string
		woofer layout.Woofer
		want   []string
	}{
		{"far and weak", layout.Woofer{At: r3.Vec{X: -2, Z: 0.1}, Crossover: 500, Order: 2, Sensitivity: 60},
			[]string{"Linkwitz-Riley low-pass of order 2 at 500 Hz", "ms; every channel of the array waits for it, with", "weaker than the array"}},
		{"near and loud", layout.Woofer{At: r3.Vec{X: 1.5, Z: 0.1}, Crossover: 500, Order: 4, Sensitivity: 118},
			[]string{"delay 3.9375 ms", "louder than the array"}},
		{"not known", layout.Woofer{At: r3.Vec{X: 1, Z: 0.1}, Crossover: 500, Order: 4},
			[]string{"For want of a sensitivity"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := *demo(t).Array
			a.Woofer = test.woofer
			a.Woofer.Present = true
			p, err := timing.Make(t.Context(), &a)
			if err != nil {
				t.Fatal(err)
			}
			rows := settings(t, p)
			var b bytes.Buffer
			if err := table.ChannelScreen(&b, p, rows, false); err != nil {
				t.Fatal(err)
			}
			words := strings.Join(strings.Fields(b.String()), " ")
			for _, want := range append(test.want, "Both meet at") {
				if !strings.Contains(words, want) {
					t.Errorf("no %q in\n%s", want, b.String())
				}
			}
			for _, line := range strings.Split(b.String(), "\n") {
				if !strings.HasPrefix(line, "Look out:") && utf8.RuneCountInString(line) > 100 || strings.Contains(line, "NaN") {
					t.Errorf("line %q", line)
				}
			}
			b.Reset()
			if err := table.Processor(&b, rows, p.Array.Processor.Rate); err != nil {
				t.Fatal(err)
			}
			if n := strings.Count(b.String(), "\nwoofer,"); n != test.woofer.Order/2 {
				t.Errorf("%d rows of the woofer, want one for each section", n)
			}
		})
	}
}
