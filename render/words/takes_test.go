package words_test

import (
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing/bill"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestHanging: hook and second line are rated for ten times the weight, and how it leans is told
// from a degree on; what stands has none of it.
func TestHanging(t *testing.T) {
	b := bill.Balance{Mass: 1.5, Centre: r3.Vec{X: 0.002, Z: 0.068}, Lean: 2 * math.Pi / 180, Counter: 0.023}
	for _, c := range []struct {
		name  string
		on    string
		known bool
		lean  float64
		says  []string
	}{
		{"stands", layout.OnSurface, true, 2, nil},
		{"askew", layout.OnCeiling, true, 2, []string{"15 kg", "second line", "qualified", "2, 0, 68 mm", "leans by 2.0 degrees", "fix 23 g"}},
		{"nearly straight", layout.OnCeiling, true, 0.9, []string{"nobody sees"}},
		{"over the hook", layout.OnCeiling, true, math.NaN(), []string{"turn over"}},
		{"on a wall", layout.OnWall, true, 2, []string{"lever"}},
		{"no masses", layout.OnCeiling, false, 2, []string{"driver.mass_g", "10 times"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b.Lean = c.lean * math.Pi / 180
			got := strings.Join(words.Hanging(&layout.Array{On: c.on}, b, c.known), " ")
			if len(c.says) == 0 && got != "" {
				t.Error(got)
			}
			for _, say := range c.says {
				if !strings.Contains(got, say) {
					t.Errorf("%q is not in: %s", say, got)
				}
			}
		})
	}
}

// TestTakes: what is not known is named once, prices only where any is known.
func TestTakes(t *testing.T) {
	b := bill.Bill{Mass: 1.25, Work: 7200, Print: 3600, Joints: 1, NoMass: []bill.Kind{bill.Driver, bill.Driver}, NoPrice: []bill.Kind{bill.Own}}
	want := "It takes 2 hours of soldering 1 joint and putting drivers in, 1 hour of printing the plain shell, without what `pappus kit` adds, and weighs 1.2 kg; parts.csv has it all. What is not known weighs nothing there: driver."
	if got := words.Takes(b); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	b.Price, b.NoMass = 40, nil
	if got := words.Takes(b); !strings.HasSuffix(got, "it costs 40; parts.csv has it all. What is not known costs nothing there: the design's own parts.") {
		t.Error(got)
	}
}
