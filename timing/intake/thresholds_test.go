package intake

import (
	"fmt"
	"math"
	"math/rand/v2"
	"pappus/timing/unlike"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
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

// TestThirdsOfTheLevel: those from 500 Hz to 4 kHz, as they are called.
func TestThirdsOfTheLevel(t *testing.T) {
	for _, c := range []struct {
		centre float64
		counts bool
	}{{398.1, false}, {501.2, true}, {3981, true}, {5012, false}} {
		l := heardLot(5, 1000, c.centre)
		l.bands[0][1].Level, l.bands[0][1].Noise = 4, -16
		l.Judge(nil)
		if h := l.Drivers[0].Heard; (math.Abs(h.Level) > 0.1) != c.counts {
			t.Errorf("%g Hz: %g dB", c.centre, h.Level)
		}
	}
}

// TestUnlike: a level of 6 dB is a factor of 1.995.
func TestUnlike(t *testing.T) {
	d := Driver{Heard: &Heard{Level: 6, Late: 1e-5}}
	if out := d.unlike(unlike.Driver{Level: 1}); math.Abs(out.Level-1.99526231) > 1e-8 || out.Late != 1e-5 {
		t.Errorf("%+v", out)
	}
}

// lotOf is a lot of drivers with values that are known, judged without their impedances being fitted.
func lotOf(random *rand.Rand, count int, scatter float64, odd func(i int, v *[values]float64)) *Lot {
	l := &Lot{}
	for i := range count {
		v := [values]float64{math.Log(150) + scatter*random.NormFloat64(), math.Log(0.84) + scatter*random.NormFloat64(), math.Log(7.1) + scatter/2*random.NormFloat64()}
		if odd != nil {
			odd(i, &v)
		}
		l.Drivers = append(l.Drivers, Driver{Name: fmt.Sprint(i), Fit: fitOf(v)})
	}
	l.bands, l.at, l.sign = make([][]band, count), make([]float64, count), make([]int, count)
	return l
}

// TestOddness shows where the rule stands: false alarms among drivers that all scatter alike, and
// misses of one that is off by half.
func TestOddness(t *testing.T) {
	const lots = 300
	for _, c := range []struct {
		count   int
		scatter float64
		alarms  float64 // at most, of all drivers
		misses  float64 // at most, of the odd ones
	}{{5, 0.03, 0.03, 0.12}, {12, 0.03, 0.01, 0.01}, {48, 0.03, 0.005, 0.01}, {12, 0.08, 0.032, 0.42}} {
		random := rand.New(rand.NewPCG(5, uint64(c.count)))
		alarms, misses := 0, 0
		for range lots {
			l := lotOf(random, c.count, c.scatter, func(i int, v *[values]float64) {
				if i == 0 {
					v[Resonance] += math.Log(1.4)
				}
			})
			l.Judge(nil)
			for i, d := range l.Drivers {
				switch {
				case i == 0 && d.Good():
					misses++
				case i > 0 && !d.Good():
					alarms++
				}
			}
		}
		false1, missed := float64(alarms)/float64(lots*(c.count-1)), float64(misses)/lots
		t.Logf("%d drivers that scatter by %g: %.4f false alarms, %.3f missed", c.count, c.scatter, false1, missed)
		if false1 > c.alarms || missed > c.misses {
			t.Errorf("%d drivers that scatter by %g: %.4f false alarms, %.3f missed", c.count, c.scatter, false1, missed)
		}
	}
}

// TestLeastOff: in a lot that is very alike a driver stays that is off by a little less than data
// sheets leave open, and goes for a little more; of few drivers the design judges, twice as mildly.
func TestLeastOff(t *testing.T) {
	a := array(t)
	for v := range Level {
		for _, c := range []struct {
			count int
			off   float64
			good  bool
		}{{12, 0.93, true}, {12, 1.07, false}, {1, 1.9, true}, {1, 2.1, false}} {
			for _, sign := range []float64{-1, 1} {
				l := lotOf(rand.New(rand.NewPCG(8, 8)), c.count, 0, func(i int, is *[values]float64) {
					if i == 0 {
						want := wanted(&a.Driver)
						is[v] = want[v] + sign*c.off*leastOff[v]
					}
				})
				l.Judge(&a.Driver)
				if l.Drivers[0].Good() != c.good {
					t.Errorf("value %d, %d drivers, %g times what is left open: good %v", v, c.count, sign*c.off, !c.good)
				}
			}
		}
	}
	if diff := cmp.Diff([values]float64{math.Log(1.1), math.Log(1.15), math.Log(1.05), 1, 1.5}, leastOff); diff != "" {
		t.Error(diff)
	}
}

// TestBinsAreWorthIt: what the halves of bins say of themselves.
func TestBinsAreWorthIt(t *testing.T) {
	small := unlike.Driver{Resonance: 150, Qms: 3.2, Qes: 1.14, DCOhm: 7.1}
	n := unlike.Network{Nominal: small, Strings: []unlike.String{{Places: []int{0, 1, 2, 3}}}, Volt: []float64{4}, Stiffness: 1}
	tests := []struct {
		name        string
		which       Value
		off         func(d *unlike.Driver, k float64)
		least, most float64 // dB
	}{
		{"resonance", Resonance, func(d *unlike.Driver, k float64) { d.Resonance, d.Qms, d.Qes = d.Resonance*k, d.Qms*k, d.Qes*k }, 0.85, 1.1},
		{"Q", Q, func(d *unlike.Driver, k float64) { d.Qms, d.Qes = d.Qms*k, d.Qes*k }, 0.65, 0.85},
		{"resistance", Ohm, func(d *unlike.Driver, k float64) { d.DCOhm, d.Qes = d.DCOhm*k, d.Qes*k }, 0.37, 0.5},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			worst := 0.0
			for _, sign := range []float64{-1, 1} {
				worst = max(worst, rise(t, n, small, func(d *unlike.Driver) { test.off(d, math.Exp(sign*halfBin[test.which])) }, test.which == Ohm))
			}
			t.Logf("%.3f dB", worst)
			if worst < test.least || worst > test.most {
				t.Errorf("%.2f dB, want %g to %g", worst, test.least, test.most)
			}
		})
	}
}

// rise returns by how many dB, at most, a driver moves further than its twin would where one is
// off: the furthest of its string, or by itself.
func rise(t *testing.T, n unlike.Network, small unlike.Driver, off func(d *unlike.Driver), alone bool) float64 {
	t.Helper()
	if alone {
		n.Strings = []unlike.String{{Places: []int{0}}}
	}
	s, err := n.NewSolver()
	if err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for hz := 20.0; hz < 20000; hz *= 1.02 {
		drivers := slices.Repeat([]unlike.Driver{small}, len(s.Velocity))
		if err := s.Fill(drivers); err != nil {
			t.Fatal(err)
		}
		s.At(hz)
		twin := s.Velocity[0]
		off(&drivers[0])
		if err := s.Fill(drivers); err != nil {
			t.Fatal(err)
		}
		s.At(hz)
		if alone && hz < 2000 {
			continue // at its own resonance damping changes as well
		}
		for _, v := range s.Velocity {
			worst = max(worst, 20*math.Log10(abs(v)/abs(twin)))
		}
	}
	return worst
}
