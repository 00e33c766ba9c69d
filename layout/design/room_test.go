package design_test

import (
	"testing"

	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// Edges of octave bands are those of IEC 61260-1:2014, 5.3 and 5.4, base ten:
// exact centres of 1000 Hz times 10^(0.3 n), edges a factor of 10^0.15 off.
func TestAbsorptionAt(t *testing.T) {
	a := design.Absorption{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7}
	cases := []struct {
		name      string
		frequency float64
		want      float64
	}{
		{"far below", 1, 0.1},
		{"125 Hz", 125, 0.1},
		{"under the edge of 125 and 250", 177.8, 0.1},
		{"over it", 177.9, 0.2},
		{"500 Hz", 500, 0.3},
		{"under the edge of 500 and 1000", 707.9, 0.3},
		{"over it", 708, 0.4},
		{"1 kHz", 1000, 0.4},
		{"2 kHz", 2000, 0.5},
		{"4 kHz", 4000, 0.6},
		{"under the edge of 4 and 8 kHz", 5623, 0.6},
		{"over it", 5624, 0.7},
		{"8 kHz", 8000, 0.7},
		{"far above", 1e5, 0.7},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if got := a.At(c.frequency); got != c.want {
				t.Errorf("%g Hz: %g, want %g", c.frequency, got, c.want)
			}
		})
	}
}

func TestRoomContains(t *testing.T) {
	room := design.Room{Present: true, Size: r3.Vec{X: 6, Y: 5, Z: 2.5}, Body: r3.Vec{X: 1, Y: 2, Z: 0.5}}
	for _, c := range []struct {
		p    r3.Vec
		want bool
	}{
		{r3.Vec{}, true},
		{r3.Vec{X: 5, Y: 3, Z: 2}, true}, // the far corner
		{r3.Vec{X: -1, Y: -2, Z: -0.5}, true},
		{r3.Vec{X: 5.001}, false}, {r3.Vec{X: -1.001}, false},
		{r3.Vec{Y: 3.001}, false}, {r3.Vec{Y: -2.001}, false},
		{r3.Vec{Z: 2.001}, false}, {r3.Vec{Z: -0.501}, false},
	} {
		if got := room.Contains(c.p); got != c.want {
			t.Errorf("%v inside: %t", c.p, got)
		}
	}
	if !(design.Room{}).Contains(r3.Vec{X: 1e6}) {
		t.Error("nothing is in the way where there is no room")
	}
}
