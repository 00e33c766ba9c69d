package preview

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// bass puts a woofer beside the lantern.
func bass(order int) func(*layout.Array) {
	return func(a *layout.Array) {
		a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -0.3, Y: 0.8, Z: 0.2}, Crossover: 220, Order: order, Sensitivity: 88}
	}
}

// TestImpulseWithWoofer: what is heard with a woofer has the level that the plan says of
// both, between the frequencies of its own grid too, however long the filters ring.
func TestImpulseWithWoofer(t *testing.T) {
	for _, order := range []int{2, 4, 8} {
		p := lantern(t, bass(order))
		w, err := timing.WithWoofer(p)
		if err != nil {
			t.Fatal(err)
		}
		h := Impulse(p, timing.Aligned, rate)
		for f, hz := range w.Frequency {
			if hz > 18000 {
				break
			}
			got := 20 * math.Log10(cmplx.Abs(at(h, rate, hz)))
			if off := got - w.Sum[f]; math.Abs(off) > 0.1 && w.Sum[f] > 60 {
				t.Errorf("order %d, %.1f Hz: %.2f dB, want %.2f", order, hz, got, w.Sum[f])
			}
		}
		alone := *p.Array
		alone.Woofer = layout.Woofer{}
		without, err := timing.Make(t.Context(), &alone)
		if err != nil {
			t.Fatal(err)
		}
		if more := 20 * math.Log10(cmplx.Abs(at(h, rate, 60))/cmplx.Abs(at(Impulse(&without.Spot, timing.Aligned, rate), rate, 60))); more < 20 {
			t.Errorf("order %d: at 60 Hz the woofer adds %.1f dB", order, more)
		}
	}
}

// TestWalkWithWoofer: where the way begins, what is heard is what a listener hears who
// stands there, the woofer in it.
func TestWalkWithWoofer(t *testing.T) {
	p := lantern(t, bass(4))
	short := Way{Places: []r3.Vec{{X: 0.9, Y: -0.3, Z: 0.4}, {X: 0.9, Y: -0.1, Z: 0.4}}}
	b := newTestBank(t, p, Listener{}, short, timing.Aligned)
	source := [][2]float64{{1, 1}}
	heard := drain(b.through(&once{source}), 512)
	x := make([]float64, len(heard))
	for i, v := range heard {
		x[i] = v[0]
	}
	who := Listener{At: &short.Places[0]}
	stands := response(t, p, who, timing.Aligned)
	worst, most := 0.0, 0.0
	for f := 30.0; f < 12000; f *= 1.05 {
		want := cmplx.Abs(at(stands.Left, rate, f))
		most = max(most, want)
		worst = max(worst, math.Abs(cmplx.Abs(at(x, rate, f))-want))
	}
	if worst > 0.005*most {
		t.Errorf("off by %.2g of the most", worst/most)
	}
}
