package intake

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestFewest: five are held against each other, four are not.
func TestFewest(t *testing.T) {
	for _, n := range []int{4, 5, 6} {
		l := lotOf(rand.New(rand.NewPCG(9, 9)), n, 0, func(i int, v *[values]float64) {
			if i == 0 {
				v[Resonance] += math.Log(1.5)
			}
		})
		l.Judge(nil)
		if l.Drivers[0].is(Odd) != (n >= 5) {
			t.Errorf("%d drivers: %v", n, l.Drivers[0].Reasons)
		}
	}
}

// TestRough: an impedance that is no driver's counts where those of others are better by half.
func TestRough(t *testing.T) {
	for _, c := range []struct {
		count    int
		misfit   float64
		rejected bool
	}{{6, 0.012 * 1.9, false}, {6, 0.012 * 2.1, true}, {4, 0.012 * 4, false}} {
		l := lotOf(rand.New(rand.NewPCG(9, 9)), c.count, 0.01, nil)
		for i := range l.Drivers {
			l.Drivers[i].Fit.Misfit, l.Drivers[i].Fit.Systematic = 0.012, true
		}
		l.Drivers[0].Fit.Misfit = c.misfit
		l.Judge(nil)
		if d := l.Drivers[0]; d.is(Rough) != c.rejected || !c.rejected && len(d.Notes) != 1 {
			t.Errorf("%+v: %v, %v", c, d.Reasons, d.Notes)
		}
	}
}

// heardLot is a lot of so many drivers that were heard alike in some thirds, 20 dB over the noise.
func heardLot(count int, centres ...float64) *Lot {
	l := &Lot{at: make([]float64, count), sign: make([]int, count), bands: make([][]band, count), Drivers: make([]Driver, count)}
	for i := range count {
		l.Drivers[i].Heard, l.sign[i], l.at[i] = &Heard{}, 1, nan
		for _, c := range centres {
			l.bands[i] = append(l.bands[i], band{Centre: c, Noise: -20})
		}
	}
	return l
}

// TestVotes: of three the odd one is turned; of two nobody knows.
func TestVotes(t *testing.T) {
	for _, n := range []int{2, 3, 4} {
		l := heardLot(n, 1000)
		l.sign[0] = -1
		l.Judge(nil)
		if l.Drivers[0].Heard.Reversed != (n >= 3) || l.Drivers[1].Heard.Reversed {
			t.Errorf("%d drivers: %v", n, l.Drivers[0].Heard)
		}
	}
}

// TestThirdsThatCount: those from 200 Hz to 8 kHz, 10 dB over the noise.
func TestThirdsThatCount(t *testing.T) {
	for _, c := range []struct {
		centre, snr float64
		counts      bool
	}{{158.5, 20, false}, {199.5, 20, true}, {7943, 20, true}, {10000, 20, false}, {1995, 9, false}, {1995, 11, true}} {
		l := heardLot(5, 1000, c.centre)
		for i := range l.bands {
			l.bands[i][1].Noise = -c.snr
		}
		l.bands[0][1].Level, l.bands[0][1].Noise = 4, 4-c.snr
		l.Judge(nil)
		if h := l.Drivers[0].Heard; (h.Uneven > 0.1) != c.counts {
			t.Errorf("%+v: uneven by %g dB", c, h.Uneven)
		}
	}
}
