package timing

import (
	"testing"

	"pappus/layout"

	"github.com/google/go-cmp/cmp"
)

// TestNulls: a null reaches 6 dB of summing loss and lasts while there are 3 dB.
func TestNulls(t *testing.T) {
	frequency := []float64{100, 200, 300, 400, 500, 600, 700, 800}
	lost := []float64{0, 2.9, 3.1, 6.1, 3.1, 2.9, 5.9, 0}
	if diff := cmp.Diff([]Null{{Low: 300, High: 500, Loss: 6.1}}, nulls(frequency, lost)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// TestLevelFrom: the level is evened out from a quarter above the high-pass and the
// resonance on, from an octave above a crossover, and from 100 Hz.
func TestLevelFrom(t *testing.T) {
	a := EvenBall(t, 2)
	p, err := Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		name                         string
		corner, resonance, crossover float64
		want                         float64
	}{
		{"nothing", 0, 0, 0, 100},
		{"a high-pass", 200, 150, 0, 250},
		{"a resonance", 200, 300, 0, 375},
		{"a woofer", 200, 300, 400, 800},
	} {
		p.Protection.Corner, p.Protection.Resonance = test.corner, test.resonance
		p.Array.Woofer = layout.Woofer{Present: test.crossover > 0, Crossover: test.crossover}
		if got := p.levelFrom().low(); got != test.want {
			t.Errorf("%s: from %g Hz, want %g", test.name, got, test.want)
		}
	}
}
