package verdict

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/planned"
	"pappus/timing"
)

// TestWindow: from 1 ms before a channel's first driver to 6 ms after its last, or three periods of the lowest
// frequency, the outer halves of which are faded; a brief one is three quarters of what is not faded in.
func TestWindow(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 1.5, 0.8, 0.4))
	for c, channel := range p.Channels {
		first, last := math.Inf(1), math.Inf(-1)
		for _, m := range channel.Mounts {
			at := p.Arrivals[m].Heard() + channel.Delay
			first, last = min(first, at), max(last, at)
		}
		for low, after := range map[float64]float64{1000: 0.006, 300: 0.01} {
			w := windowOf(p, c, Setting{Case: timing.Aligned}, low)
			want := window{first - 0.001, first - 0.0005, last + after/2, last + after}
			for name, off := range map[string]float64{"from": w.from - want.from, "rise": w.rise - want.rise, "fall": w.fall - want.fall, "to": w.to - want.to} {
				if math.Abs(off) > 1e-9 {
					t.Errorf("channel %d from %g Hz: %s is %.1f us off", c+1, low, name, 1e6*off)
				}
			}
		}
	}
	w := window{1, 1.5, 3.5, 5.5}
	if b := w.brief(); b != (window{1, 1.5, 2.5, 4.5}) {
		t.Errorf("the brief one is %v", b)
	}
	for at, want := range map[float64]float64{0.9: 0, 1: 0, 1.25: 0.5, 1.5: 1, 3: 1, 4.5: 0.5, 4: math.Pow(math.Cos(math.Pi/8), 2), 5.5: 0, 6: 0} {
		if got := w.weight(at); math.Abs(got-want) > 1e-12 {
			t.Errorf("at %g: %g, want %g", at, got, want)
		}
	}
}

// TestGrid: of something planned that comes at once, 3 ms late and as late as a window ends, what a window leaves is what
// it weighs each by, over the band.
func TestGrid(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 1.5, 0.8, 0.4))
	g := newGrid(p, timing.Aligned, 4000)
	w := window{0.003, 0.004, 0.008, 0.014}
	times := []float64{0.005, 0.0101, 0.0145}
	planned := make([]complex128, len(g.frequency))
	for i, hz := range g.frequency {
		for _, at := range times {
			planned[i] += cmplx.Rect(1, -2*math.Pi*hz*at)
		}
	}
	frequency := []float64{500, 1000, 2000, 3900}
	for i, got := range g.seen(planned, w, frequency) {
		var want complex128
		for _, at := range times {
			want += cmplx.Rect(w.weight(at), -2*math.Pi*frequency[i]*at)
		}
		if cmplx.Abs(got-want) > 2e-3 {
			t.Errorf("%g Hz: %.4f, want %.4f", frequency[i], got, want)
		}
	}
}
