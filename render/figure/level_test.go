package figure_test

import (
	"bytes"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"pappus/render/figure"
	"pappus/timing"
)

// levellings are that of the demo, and ones that are hard to draw.
func levellings(t *testing.T) (*timing.Plan, map[string]timing.Levelling) {
	t.Helper()
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	demo, err := timing.Level(&d.plan.Spot)
	if err != nil {
		t.Fatal(err)
	}
	many, even, odd := demo, demo, demo
	many.Nulls = nil
	for hz := 500.0; hz < 8000; hz *= 1.3 {
		many.Nulls = append(many.Nulls, timing.Null{Low: hz, High: 1.1 * hz, Loss: 8}, timing.Null{Low: 1.2 * hz, High: 1.2 * hz, Loss: 31})
	}
	even.Nulls, even.Before, even.After = nil, filled(len(demo.Frequency), 80), filled(len(demo.Frequency), 80)
	odd.Before, odd.After = filled(len(demo.Frequency), math.Inf(-1)), filled(len(demo.Frequency), math.NaN())
	return d.plan, map[string]timing.Levelling{"levelling": demo, "levelling_many_nulls": many, "levelling_even": even, "levelling_odd": odd}
}

func TestLevelling(t *testing.T) {
	p, all := levellings(t)
	for name, l := range all {
		t.Run(name, func(t *testing.T) {
			var out, again bytes.Buffer
			for _, b := range []*bytes.Buffer{&out, &again} {
				if err := figure.Levelling(b, figure.PNG, p, l); err != nil {
					t.Fatal(err)
				}
			}
			leave(t, name+".png", out.Bytes())
			if !bytes.Equal(out.Bytes(), again.Bytes()) {
				t.Error("two drawings differ")
			}
			img, err := png.Decode(&out)
			if err != nil {
				t.Fatal(err)
			}
			if size := img.Bounds().Size(); size.X != 1400 || size.Y != 900 {
				t.Errorf("size %v, want 1400 by 900", size)
			}
			// Shaded dots in the lower part, where there is no legend.
			shaded := 0
			for y := 400; y < 800; y++ {
				for x := range 1400 {
					if r, g, b, _ := img.At(x, y).RGBA(); r>>8 == 239 && g == r && b == r {
						shaded++
					}
				}
			}
			if (shaded > 5000) != (len(l.Nulls) > 0) {
				t.Errorf("%d shaded dots for %d nulls", shaded, len(l.Nulls))
			}
			out.Reset()
			if err := figure.Levelling(&out, figure.SVG, p, l); err != nil {
				t.Fatal(err)
			}
			if n := elements(t, &out); n < 40 {
				t.Errorf("only %d elements", n)
			}
		})
	}
	if err := figure.Levelling(io.Discard, figure.PNG, p, timing.Levelling{}); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("got %v", err)
	}
}
