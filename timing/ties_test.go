package timing_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestEqualArrivals: a spot on the axis of a ring of drivers hears all at once but
// for rounding. Channels are then as even as they can be wired, and those of as
// many drivers get the same gain and delay.
func TestEqualArrivals(t *testing.T) {
	tests := []struct {
		name              string
		drivers, channels int
		ohm               float64
		want              []int // drivers of each channel
	}{
		{"six in three", 6, 3, 7, []int{2, 2, 2}},
		{"seven in three", 7, 3, 7, []int{1, 2, 4}},
		{"six in four", 6, 4, 7, []int{1, 1, 2, 2}},
		{"not alone on a channel", 8, 3, 3, []int{2, 3, 3}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := plain(t)
			a.Timing.Model, a.Timing.DelaysBy = "sphere", "path"
			a.Spot = r3.Vec{Z: 2.5}
			a.Driver.DCOhm, a.Wiring.Channels = test.ohm, test.channels
			a.Mounts = nil
			for i := range test.drivers {
				// As a list in mm to five places has them.
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(test.drivers))
				at := r3.Vec{X: math.Round(0.15e8*cos) / 1e8, Y: math.Round(0.15e8*sin) / 1e8}
				a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: at, Normal: r3.Unit(at), Face: -1})
			}
			p := plan(t, a)
			var sizes []int
			gains := map[int]string{}
			next := 0
			for _, c := range p.Channels {
				sizes = append(sizes, len(c.Mounts))
				for _, m := range c.Mounts {
					if m != next {
						t.Errorf("channel %d has drivers %v: not in the order of their numbers", c.ID, c.Mounts)
					}
					next++
				}
				set := fmt.Sprintf("%.3f dB, %.6f us", c.Gain, math.Abs(1e6*c.Delay))
				if other, ok := gains[len(c.Mounts)]; ok && other != set {
					t.Errorf("channels of %d drivers get %s and %s", len(c.Mounts), other, set)
				}
				gains[len(c.Mounts)] = set
			}
			if diff := cmp.Diff(test.want, sizes); diff != "" {
				t.Error(diff)
			}
		})
	}
}
