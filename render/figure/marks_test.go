package figure

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
)

// TestSpaced: ten discs on one point, in a row, or in a corner come apart and stay within.
func TestSpaced(t *testing.T) {
	within := vg.Rectangle{Max: vg.Point{X: 300, Y: 150}}
	for name, at := range map[string]func(i int) vg.Point{
		"one point": func(int) vg.Point { return vg.Point{X: 100, Y: 70} },
		"a row":     func(i int) vg.Point { return vg.Point{X: 100 + vg.Length(i)*5, Y: 70} },
		"a corner":  func(i int) vg.Point { return vg.Point{X: vg.Length(i), Y: 1} },
		"apart":     func(i int) vg.Point { return vg.Point{X: 20 + 25*vg.Length(i), Y: 40} },
	} {
		var points []vg.Point
		for i := range 10 {
			points = append(points, at(i))
		}
		out := spaced(points, 15, within)
		for i, a := range out {
			for _, b := range out[:i] {
				if d := math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)); d < 14 {
					t.Errorf("%s: %.1f apart", name, d)
				}
			}
			if a.X < 7 || a.Y < 7 || a.X > 293 || a.Y > 143 {
				t.Errorf("%s: at %v", name, a)
			}
		}
		if name == "apart" && !slices.Equal(out, points) {
			t.Errorf("moved to %v", out)
		}
	}
}

// TestBestOf: the stairs have what is best at each value across, whichever way better is.
func TestBestOf(t *testing.T) {
	points := plotter.XYs{{X: 3, Y: 5}, {X: 1, Y: 2}, {X: 2, Y: 1}, {X: 2, Y: 4}, {X: 4, Y: 5}}
	for _, c := range []struct {
		name         string
		across, more bool
		want         plotter.XYs
	}{
		{"more for less", false, true, plotter.XYs{{X: 1, Y: 2}, {X: 2, Y: 2}, {X: 2, Y: 4}, {X: 3, Y: 4}, {X: 3, Y: 5}}},
		{"less for less", false, false, plotter.XYs{{X: 1, Y: 2}, {X: 2, Y: 2}, {X: 2, Y: 1}}},
		{"more for more", true, true, plotter.XYs{{X: 4, Y: 5}}},
	} {
		if got := bestOf(points, c.across, c.more); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
