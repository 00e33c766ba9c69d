package verdict

import (
	"math"
	"testing"

	"pappus/timing/recording"
)

// ofThird returns a level and what is heard of it at one position, at each Hz from 850 to 1200, measured as a function
// of the frequency has it, with a variance of 0.02 and noise of 0.005, through a gate of 50 ms.
func ofThird(measured func(hz float64) float64) (*Level, heard) {
	v, h := &Level{Low: 500, High: 4000, Bands: []Band{{Centre: 1000}}}, heard{length: 0.05}
	for hz := 850.0; hz <= 1200; hz++ {
		v.Frequency = append(v.Frequency, hz)
		h.measured, h.planned = append(h.measured, measured(hz)), append(h.planned, 1)
		h.variance, h.noise = append(h.variance, 0.02), append(h.noise, 0.005)
	}
	return v, h
}

// TestPartsOfABand holds the parts of a band's error to sums by hand. The third at 1 kHz goes from 891.25 to 1122.02 Hz
// (IEC 61260-1): 231 of the frequencies, of which a gate of 50 ms tells 11.54 apart.
func TestPartsOfABand(t *testing.T) {
	const apart, share = 230.767 * 0.05, 4.342945 // dB in a part of an energy
	flat, risen := func(float64) float64 { return 1 }, func(hz float64) float64 { return hz / 1000 }
	v, one := ofThird(flat)
	_, other := ofThird(risen)
	mean := 0.0
	for hz := 892.0; hz <= 1122; hz++ {
		mean += hz / 1000 / 231
	}
	// Of two values that differ by d the mean is off by d/2, and 95 percent of means are within 12.706 of that.
	between := 10 * math.Log10(mean) / 2 * 12.706 / 2
	// Quarters of a third, up to 944.06, 1000, 1059.25 and 1122.02 Hz: 53, 56 (1000 belongs to both), 60 and 63.
	var left []float64
	for _, q := range [][2]float64{{892, 944}, {945, 1000}, {1000, 1059}, {1060, 1122}} {
		sum, count := 231*mean, 231.0
		for hz := q[0]; hz <= q[1]; hz++ {
			sum, count = sum-hz/1000, count-1
		}
		left = append(left, 10*math.Log10(sum/count))
	}
	middle, square := (left[0]+left[1]+left[2]+left[3])/4, 0.0
	for _, x := range left {
		square += (x - middle) * (x - middle)
	}
	for _, test := range []struct {
		why       string
		got, want float64
	}{
		{"noise and gate", v.noise(v.Bands[0], []heard{one}), 0.02 * 231 / (231 * 231) * (231 / apart) * share * share},
		{"noise at two positions", v.noise(v.Bands[0], []heard{one, one}), 0.02 * 2 * 231 / (4 * 231 * 231) * (231 / apart) * share * share},
		{"noise alone", v.byNoise(one, 891.25, 1122.02), 2 * 0.005 * 231 / (231 * 231) * (231 / apart) * share * share},
		{"one position", v.between(v.Bands[0], []heard{other}), 0},
		{"two positions", v.between(v.Bands[0], []heard{one, other}), between},
		{"all alike within", v.within(v.Bands[0], []heard{one}), 0},
		{"rising within", v.within(v.Bands[0], []heard{other}), 3.0 / 4 * square},
	} {
		if math.Abs(test.got-test.want) > 2e-3*math.Abs(test.want)+1e-12 {
			t.Errorf("%s: %.6f, want %.6f", test.why, test.got, test.want)
		}
	}
	for i, hz := range v.Frequency { // two of its quarters, and then one
		if hz < 1000.5 {
			other.measured[i] = math.NaN()
		}
	}
	if got := v.within(v.Bands[0], []heard{other}); !(got > 0.01) {
		t.Errorf("of two quarters: %g", got)
	}
	for i, hz := range v.Frequency {
		if hz < 1059.5 {
			other.measured[i] = math.NaN()
		}
	}
	if got := v.within(v.Bands[0], []heard{other}); got != 0 {
		t.Errorf("of one quarter: %g", got)
	}
}

// TestRepeatsOfABand: of two recordings of a place, the second 1 dB up within a third and not elsewhere, the mean is off
// by half of that, which Student's t makes 12.706 times as much, but for what noise does; of one nothing is known.
func TestRepeatsOfABand(t *testing.T) {
	v, h := ofThird(func(float64) float64 { return 1 })
	h.wired = true
	up := make([]float64, len(h.measured))
	for i, hz := range v.Frequency {
		if up[i] = math.Pow(10, 0.1); hz < 891.25 || hz > 1122.02 {
			up[i] = 100
		}
	}
	h.repeats = [][]float64{h.measured, up}
	want := math.Pow(0.5*12.706/2, 2) - v.byNoise(h, 891.25, 1122.02)
	if got := v.again([]heard{h})[0]; math.Abs(got-want) > 1e-4*want {
		t.Errorf("%.5f dB2, want %.5f", got, want)
	}
	h.repeats = h.repeats[:1]
	if got := v.again([]heard{h})[0]; got != 0 {
		t.Errorf("of one: %g dB2", got)
	}
}

// TestJackknife: of 1, 2 and 3, each without one of three parts, the variance is 4/3, and 95 of 100 are within 4.303
// errors; of two 12.706 are; one tells nothing.
func TestJackknife(t *testing.T) {
	for _, test := range []struct {
		of   []float64
		want float64
	}{
		{[]float64{1, 2, 3}, math.Sqrt(4.0/3) * 4.302653 / 2},
		{[]float64{1, 2}, math.Sqrt(0.25) * 12.706205 / 2},
		{[]float64{1}, math.Inf(1)},
	} {
		if got := jackknife(test.of); got != test.want && !(math.Abs(got-test.want) < 1e-5) {
			t.Errorf("%v: %.5f, want %.5f", test.of, got, test.want)
		}
	}
}

// TestBlocks: half an octave each, three at least, and none narrower than what is said, but for those three.
func TestBlocks(t *testing.T) {
	for _, test := range []struct {
		low, high, narrowest float64
		want                 int
	}{{500, 4000, 1, 6}, {500, 8000, 1, 8}, {1000, 1400, 1, 3}, {500, 4000, 250, 5}, {500, 4000, 1e4, 3}} {
		edges := blocks(test.low, test.high, test.narrowest)
		if n := len(edges) - 1; n != test.want || math.Abs(edges[n]-test.high) > 1e-9 || math.Abs(edges[1]/edges[0]-math.Pow(test.high/test.low, 1/float64(n))) > 1e-12 {
			t.Errorf("%g to %g Hz: %.0f, want %d blocks", test.low, test.high, edges, test.want)
		}
	}
}

// TestApart: bands are apart by what the band of matching is not.
func TestApart(t *testing.T) {
	v := &Level{Low: 900, High: 1100, Bands: []Band{{Centre: 1000}, {Centre: 1258.925}}}
	var sum, other []complex128
	for hz := 850.0; hz < 1500; hz += 2 {
		v.Frequency = append(v.Frequency, hz)
		by := 1.0
		if hz > 1122.02 && hz < 1412.54 {
			by = 2
		} else if hz < 891.25 || hz > 1412.54 {
			by = 9
		} else if hz < 930 || hz > 1090 && hz < 1122.02 {
			by = 1.1 // at the edges of the third, which are its own
		}
		sum, other = append(sum, complex(by, 0)), append(other, 1)
	}
	edges, all := 0.0, 0.0
	for _, hz := range v.Frequency {
		if hz > 891.25 && hz < 1122.02 {
			if all++; hz < 930 || hz > 1090 {
				edges++
			}
		}
	}
	want := 20*math.Log10(2) - 10*math.Log10(1+0.21*edges/all)
	if got := v.apart(sum, other); math.Abs(got[0]) > 1e-9 || math.Abs(got[1]-want) > 1e-6 {
		t.Errorf("%.4f dB, want 0 and %.4f", got, want)
	}
}

// TestMatch: a third's level is that of the mean energy within its edges, and the measurement is brought to the plan's.
func TestMatch(t *testing.T) {
	v := Level{Low: 900, High: 1100}
	var measured, planned []float64
	edge, all := 0.0, 0.0
	for hz := 850.0; hz < 1500; hz += 2 {
		v.Frequency = append(v.Frequency, hz)
		m := 4.0
		if hz < 930 && hz > 891.25 {
			m, edge = 5, edge+1
		}
		if hz > 891.25 && hz < 1122.02 {
			all++
		}
		if hz > 1122.02 && hz < 1412.54 {
			m = 8
		}
		measured, planned = append(measured, m), append(planned, 2)
	}
	v.match(measured, planned)
	offset := 10 * math.Log10((4+edge/all)/2)
	if len(v.Bands) != 2 || math.Abs(v.Offset-offset) > 1e-6 || math.Abs(v.Bands[0].Measured-3.0103) > 1e-4 || math.Abs(v.Bands[0].Planned-3.0103) > 1e-4 ||
		math.Abs(v.Bands[1].Difference-6.0206+offset) > 1e-4 || math.Abs(v.Measured[0]-6.0206+offset) > 1e-4 || math.Abs(v.Planned[0]-3.0103) > 1e-4 {
		t.Errorf("%+v", v)
	}
}

// TestNewHeard: of a pressure of 2 with an error of 0.3 dB and a floor of -20 dB, the energy is 4, its standard
// deviation 0.3 ln(10)/10 of it, and that of noise 0.01.
func TestNewHeard(t *testing.T) {
	h := newHeard(recording.Response{To: 0.02, Transfer: []complex128{2i}, Error: []float64{0.3}, Floor: []float64{-20}}, 0.005, []complex128{3})
	if h.measured[0] != 4 || h.planned[0] != 9 || math.Abs(h.noise[0]-0.01) > 1e-9 || math.Abs(h.variance[0]-math.Pow(4*0.3*0.2302585, 2)) > 1e-6 || math.Abs(h.length-0.015) > 1e-12 {
		t.Errorf("%+v", h)
	}
}

// TestAboveNoiseOfAThird: the noise of a third is the mean of its energy from 891.25 to 1122.02 Hz, be it loud at its
// edges or beside it.
func TestAboveNoiseOfAThird(t *testing.T) {
	l := Level{Bands: []Band{{Centre: 1000, Measured: 90}}}
	loud, all := 0.0, 0.0
	for hz := 800.0; hz < 1250; hz++ {
		noise := 60.0
		if hz < 900 || hz > 1110 {
			noise = 70
		}
		if hz >= 891.25 && hz <= 1122.02 {
			if all++; noise == 70 {
				loud++
			}
		} else {
			noise = 90
		}
		l.Frequency, l.Noise = append(l.Frequency, hz), append(l.Noise, noise)
	}
	want := 90 - 10*math.Log10((loud*1e7+(all-loud)*1e6)/all)
	if got := l.AboveNoise(); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.3f dB, want %.3f", got, want)
	}
}
