package timing_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing"
	"pappus/timing/band"
)

// TestStringsAddUp: what the strings give alone is what all give together.
func TestStringsAddUp(t *testing.T) {
	p := plan(t, demo(t))
	frequency := make([]float64, 40)
	band.Log(frequency, 100, 15000)
	for _, c := range []timing.Case{timing.AsBuilt, timing.Aligned} {
		want := p.Transfer(nil, c, frequency)
		got := make([]complex128, len(frequency))
		for i, strings := range p.StringTransfers(c, frequency) {
			if len(strings) != len(p.Banks[i].Strings) {
				t.Fatalf("channel %d: %d strings", p.Channels[i].ID, len(strings))
			}
			for _, one := range strings {
				for f, v := range one {
					got[f] += v
				}
			}
		}
		for f := range want {
			if off(got[f], want[f]) > 1e-9 || cmplx.IsNaN(got[f]) {
				t.Errorf("case %d at %.0f Hz: %v, want %v", c, frequency[f], got[f], want[f])
			}
		}
	}
}

// TestChannelTimes: the exact delays, but for what all have in common, are the latest
// channel's time less a channel's own.
func TestChannelTimes(t *testing.T) {
	p := plan(t, demo(t))
	latest := 0.0
	for c := range p.Channels {
		latest = max(latest, p.ChannelTime(c))
	}
	for c, ch := range p.Channels {
		if got := latest - p.ChannelTime(c); math.Abs(got-ch.Exact+p.Rounding.Common) > 1e-12 {
			t.Errorf("channel %d: %g s, exact delay %g", ch.ID, got, ch.Exact)
		}
	}
}
