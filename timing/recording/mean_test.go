package recording_test

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/timing/recording"
	"pappus/timing/sweep"
)

// repeats returns recordings of one place: noise is another in each, and they begin at other
// times and, without a reference, have other gains.
func repeats(s sweep.Sweep, count int, reference bool, snr float64) []recording.Take {
	var out []recording.Take
	x := s.Samples(rate)
	for i := range count {
		late, gain := 2e-3+3.7e-6*float64(i), 1.0
		if !reference {
			gain = 1 + 0.1*float64(i)
		}
		heard := through(x, rate, func(hz float64) complex128 { return combed(hz) * cmplx.Rect(gain, -2*math.Pi*hz*late) })
		t := recording.Take{Rate: rate, Samples: noisy(heard, 1, snr, uint64(i+1))}
		if reference {
			t.Reference = scaled(x, 0.5)
		}
		t.Samples = scaled(t.Samples, 0.4)
		out = append(out, t)
	}
	return out
}

// combed is a system that is 3 dB up and down by an echo 1 ms late.
func combed(hz float64) complex128 { return (1 + cmplx.Rect(0.4, -2*math.Pi*hz*1e-3)) / 2 }

// off returns how far a level is from the system's, RMS in dB over what is known, and the mean
// error that is said.
func off(m recording.Measured) (rms, said float64) {
	var by []float64
	for f, hz := range m.Frequency {
		if v := m.Whole.Level[f] - 20*math.Log10(cmplx.Abs(combed(hz))); !math.IsNaN(v) {
			by, said = append(by, v), said+m.Whole.Error[f]
		}
	}
	n, mean := float64(len(by)), 0.0
	for _, v := range by {
		mean += v / n
	}
	for _, v := range by {
		rms += (v - mean) * (v - mean) / n
	}
	return math.Sqrt(rms), said / n
}

// TestMeanHalvesTheNoise: the mean of four recordings is half as far from the truth as one is,
// says half of the error, and has a floor 6 dB lower. RMS of some 360 frequencies, of which a
// third or so tell of different noise, is known to about a fifteenth.
func TestMeanHalvesTheNoise(t *testing.T) {
	s := usual(t, 2)
	for name, reference := range map[string]bool{"with a wire": true, "without one": false} {
		t.Run(name, func(t *testing.T) {
			mean, each, errs := recording.Mean(repeats(s, 4, reference, 20), s, recording.Options{})
			if slices.ContainsFunc(errs, func(err error) bool { return err != nil }) {
				t.Fatal(errs)
			}
			var rms, said float64
			for _, m := range each {
				r, e := off(m)
				rms, said = rms+r/4, said+e/4
			}
			got, ours := off(mean)
			if by := got / rms; math.Abs(by-0.5) > 0.1 {
				t.Errorf("off by %.3f dB, one recording by %.3f: %.2f of that", got, rms, by)
			}
			if by := ours / said; math.Abs(by-0.5) > 0.05 {
				t.Errorf("an error of %.3f dB, of one recording %.3f: %.2f of that", ours, said, by)
			}
			floor := 0.0
			for f := range mean.Whole.Floor {
				floor += (each[0].Whole.Floor[f] - mean.Whole.Floor[f]) / float64(len(mean.Whole.Floor))
			}
			if math.Abs(floor-6) > 0.7 {
				t.Errorf("the floor is %.2f dB lower", floor)
			}
			if mean.At != each[0].At && math.Abs(mean.At-each[0].At) > 2e-6 {
				t.Errorf("the mean is heard at %.6f s, the first at %.6f", mean.At, each[0].At)
			}
		})
	}
}

// TestMeanLeavesOut: a recording that cannot be used or is of another place is named, and the
// others count; one alone is itself.
func TestMeanLeavesOut(t *testing.T) {
	s := usual(t, 1)
	takes := repeats(s, 3, true, 40)
	other := through(s.Samples(rate), rate, func(hz float64) complex128 {
		return cmplx.Rect(0.4, -2*math.Pi*hz*2e-3-8*math.Pow(math.Log(1+hz), 2)) // all at other times
	})
	takes[1].Samples = make([]float64, len(takes[1].Samples))
	part := func(alike float64) recording.Take {
		x := scaled(takes[0].Samples, alike)
		for i, v := range other {
			x[i] += v * math.Sqrt(1-alike*alike) * 0.5 * math.Sqrt(1.16) // as loud as combed is
		}
		return recording.Take{Rate: rate, Samples: x, Reference: takes[0].Reference}
	}
	for name, c := range map[string]struct {
		takes []recording.Take
		wrong []bool
	}{
		"hardly alike":   {[]recording.Take{takes[0], part(0.56)}, []bool{false, false}},
		"hardly unlike":  {[]recording.Take{takes[0], part(0.44)}, []bool{false, true}},
		"silent":         {takes, []bool{false, true, false}},
		"another place":  {[]recording.Take{takes[0], {Rate: rate, Samples: other, Reference: takes[0].Reference}, takes[2]}, []bool{false, true, false}},
		"upside down":    {[]recording.Take{takes[0], {Rate: rate, Samples: scaled(takes[2].Samples, -1), Reference: takes[0].Reference}}, []bool{false, true}},
		"no wire":        {[]recording.Take{takes[0], {Rate: rate, Samples: takes[2].Samples}}, []bool{false, true}},
		"the first":      {[]recording.Take{takes[1], takes[0]}, []bool{true, false}},
		"one and itself": {[]recording.Take{takes[0], takes[0]}, []bool{false, false}},
	} {
		mean, each, errs := recording.Mean(c.takes, s, recording.Options{})
		for i, wrong := range c.wrong {
			if (errs[i] != nil) != wrong {
				t.Errorf("%s: take %d: %v", name, i+1, errs[i])
			}
		}
		if name == "the first" || name == "hardly alike" {
			continue
		}
		if r, _ := off(mean); r > 0.2 {
			t.Errorf("%s: the mean is off by %.3f dB", name, r)
		}
		if name == "one and itself" && math.Abs(mean.Gated.Level[100]-each[0].Gated.Level[100]) > 1e-9 {
			t.Errorf("%s: %g and %g dB", name, mean.Gated.Level[100], each[0].Gated.Level[100])
		}
	}
}

// TestOneRate: two clocks of one make are of one rate, 44.1 and 48 kHz are not.
func TestOneRate(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		want bool
	}{{48000, 48000 * 1.0045, true}, {48000, 48000 * 0.9955, true}, {48000, 48000 * 1.0055, false}, {48000, 44100, false}} {
		if got := recording.IsOneRate(c.a, c.b); got != c.want {
			t.Errorf("%g and %g Hz: %v", c.a, c.b, got)
		}
	}
}
