package impedancefit

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pappus/layout/impedance"
)

// driver is 200 points of a driver's impedance, each with what is said to be wrong with it.
func driver(off func(i int) float64) []impedance.Point {
	c := circuit{coil: Ideal, x: []float64{math.Log(7), math.Log(20), math.Log(150), math.Log(3), 1e-3}, henry: 0.1}
	var slope [most]complex128
	out := make([]impedance.Point, 200)
	for i := range out {
		hz := 20 * math.Pow(1000, float64(i)/199)
		z := c.at(&slope, hz)
		out[i] = impedance.Point{Frequency: hz, Ohm: math.Hypot(real(z), imag(z)) * (1 + off(i)), Degrees: math.Atan2(imag(z), real(z)) * 180 / math.Pi}
	}
	return out
}

// TestLeftOut: which points stand out from their neighbours, and how many at most.
func TestLeftOut(t *testing.T) {
	out := func(off func(i int) float64) int {
		_, _, out, err := ready(driver(off))
		if err != nil {
			t.Fatal(err)
		}
		return len(out)
	}
	one := func(at float64) func(int) float64 {
		return func(i int) float64 {
			if i == 100 {
				return at
			}
			return 0
		}
	}
	// So many noises over values that change sign from point to point: each of those is off the
	// median of its neighbours by twice its size, and so is the median of them all.
	noisy := func(noises float64) func(int) float64 {
		const size = 0.004
		return func(i int) float64 {
			if i == 100 {
				return noises*2*size/1.1774 - size
			}
			return size * float64(1-2*(i%2))
		}
	}
	row := func(n int) func(int) float64 {
		return func(i int) float64 {
			if i >= 100 && i < 100+n {
				return 0.03
			}
			return 0
		}
	}
	many := func(i int) float64 {
		if i%6 == 3 {
			return 0.03 + 1e-4*float64(i)
		}
		return 0
	}
	for _, test := range []struct {
		why       string
		got, want int
	}{
		{"0.18 percent off is within what a meter shows", out(one(0.0018)), 0},
		{"0.23 percent is not", out(one(0.0023)), 1},
		{"5.5 times the noise may be noise", out(noisy(5.5)), 0},
		{"6.5 times is hum", out(noisy(6.5)), 1},
		{"three in a row stand out", out(row(3)), 3},
		{"four of seven are what the driver does", out(row(4)), 0},
		{"no more than a tenth of all go", out(many), 20},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Errorf("%d, want %d", test.got, test.want)
			}
		})
	}
}

// wave is residuals of which those that are neighbours have a correlation.
func wave(correlation float64) func(i int) float64 {
	return func(i int) float64 { return 0.005 * math.Cos(math.Acos(correlation)*float64(i)) }
}

// TestAlike: where what a circuit leaves over is not noise, and what that does to errors.
func TestAlike(t *testing.T) {
	systematic := func(correlation float64) bool {
		f, err := Make(driver(wave(correlation)), Ideal)
		if err != nil {
			t.Fatal(err)
		}
		return f.Systematic
	}
	tells := func(correlation float64) bool {
		v := make([]complex128, 200)
		for i := range v {
			v[i] = complex(wave(correlation)(i), 0)
		}
		return together(v) > 1
	}
	for _, test := range []struct {
		why       string
		got, want bool
	}{
		{"neighbours whose correlation is 0.45 may be noise", systematic(0.45), false},
		{"at 0.55 the circuit errs", systematic(0.55), true},
		{"among 200 points a correlation of 0.14 is within three sigmas of noise", tells(0.14), false},
		{"0.16 is not", tells(0.16), true},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Error(test.got)
			}
		})
	}
}

// TestEnough: how much there must be of what is measured.
func TestEnough(t *testing.T) {
	few := func(points int) bool { return errors.Is(check(driver(wave(0))[:points]), errFew) }
	// A channel whose drivers are about resistors, up to 1.3 times their least, at so many points.
	resistors := func(count int, ratio float64) error {
		points := driver(wave(0))[:20]
		for i := range points {
			points[i].Ohm, points[i].Degrees = 10, 0
			if i < count {
				points[i].Ohm = 7 + float64(i)*7*(ratio-1)/float64(count-1)
			}
		}
		curve, err := impedance.Measured(points)
		if err != nil {
			t.Fatal(err)
		}
		bank, err := impedance.NewBank([]int{2, 2}, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		_, err = Compare(points, bank, curve)
		return err
	}
	ways := func(lengths ...int) int {
		bank, err := impedance.NewBank(lengths, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		return len(causes(bank, 7))
	}
	flat := func(reach float64) bool {
		points, planned := driver(wave(0))[:30], make([]complex128, 30)
		for i := range points {
			points[i].Frequency, points[i].Ohm, planned[i] = 20*math.Pow(reach, float64(i)/29), 7, 7
		}
		return flatThrough(points, planned)
	}
	// A recording of a level over full scale, with the resistor bridged of so much more on the right.
	recording := func(level, gain float64) Recording {
		r := Recording{Rate: 8000, SeriesOhm: 10, Low: 100, High: 1000}
		for i := range 9000 {
			r.Whole = append(r.Whole, level*math.Sqrt2*math.Sin(math.Pi*(100+0.05*float64(i))*float64(i)/8000))
			r.Driver = append(r.Driver, gain*r.Whole[i])
		}
		return r
	}
	quiet := func(level float64) bool { return errors.Is(recording(level, 1).check(), errQuiet) }
	gain := func(gain float64) bool {
		r, bridged := recording(0.1, 1), recording(0.1, gain)
		r.Bridged = &bridged
		_, err := r.gains()
		return errors.Is(err, errGain)
	}
	long := func(samples int) error {
		r := Recording{Whole: make([]float64, samples), Rate: 48000, SeriesOhm: 10, Low: 20, High: 20000}
		r.Driver = r.Whole
		return r.check()
	}
	for _, test := range []struct {
		why       string
		got, want any
	}{
		{"eleven points are too few", few(11), true},
		{"twelve will do", few(12), false},
		{"five points within 1.25 of the least are resistors enough", resistors(5, 1.25) == nil, true},
		{"four are too few", errors.Is(resistors(4, 1.25), errFew), true},
		{"the fifth is none at 1.35", errors.Is(resistors(5, 1.35), errFew), true},
		{"one, two and all drivers of a string shorted, one and two strings open, none or all", ways(8, 8, 8, 8), 7},
		{"17 times as high has any driver's resonance in it", flat(17), true},
		{"15 times may be beside it", flat(15), false},
		{"60 times the load and any more is open alike", bounded(60) == bounded(math.Inf(1)), true},
		{"50 is a load", bounded(50) < bounded(math.Inf(1)), true},
		{"a load 7.8 times what was planned has no driver in its way", Load{Ratio: math.Exp(2.05)}.conducts(), false},
		{"6.7 times may be one", Load{Ratio: math.Exp(1.9)}.conducts(), true},
		{"81 dB below full scale is too quiet", quiet(0.9e-4), true},
		{"79 dB is not", quiet(1.1e-4), false},
		{"a gain of 2.1 is no gain", gain(2.1), true},
		{"1.9 may be one", gain(1.9), false},
		{"half of the voltage known to 4.5 percent makes an impedance known to 9", certain(0.5, 0.0225), true},
		{"to 5.5 percent one that nobody wants", certain(0.5, 0.0275), false},
		{"three minutes are as much as is held", errors.Is(long(1<<23), errQuiet), true},
		{"and no more", errors.Is(long(1<<23+1), errValue), true},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Errorf("%v, want %v", test.got, test.want)
			}
		})
	}
}

// TestUsual: the design's inductance is that at 1 kHz, where data sheets take it.
func TestUsual(t *testing.T) {
	f, err := Make(driver(wave(0)), Semi)
	if err != nil {
		t.Fatal(err)
	}
	f.circuit.x[overK] = 0.5 // so that it falls with frequency
	keys := f.Keys(nil)
	at := slices.IndexFunc(keys, func(k Key) bool { return k.Name == "driver.le_mh" })
	if want := 1e3 * f.InductanceAt(1000).Value; math.Abs(keys[at].Value/want-1) > 0.02 {
		t.Errorf("%g mH, want %g", keys[at].Value, want)
	}
}
