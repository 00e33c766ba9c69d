package truepeak

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/dsp/fourier"
	"pgregory.net/rapid"
)

// tone is a sine with a phase in degrees that rises and falls over 5 ms, so that
// its ends do not ring.
func tone(hz, amplitude, phase float64, rate, n int) [][2]float64 {
	x := make([][2]float64, n)
	edge := float64(rate) * 0.005
	for i := range x {
		gain := min(1, float64(i)/edge, float64(n-1-i)/edge)
		gain = (1 - math.Cos(math.Pi*gain)) / 2
		v := gain * amplitude * math.Sin(2*math.Pi*hz*float64(i)/float64(rate)+phase*math.Pi/180)
		x[i] = [2]float64{v, v}
	}
	return x
}

func peakOf(x [][2]float64, rate int) float64 {
	m := New(rate)
	m.Push(x)
	return m.Peak()
}

func dB(v float64) float64 { return 20 * math.Log10(v) }

// EBU Tech 3341 (2023), table 1, cases 15 to 19: sines whose peaks fall between
// the samples, to be read within +0.2 and -0.4 dB. Frequencies, phases and
// amplitudes from memory. The samples' own peaks follow from the phases.
func TestTech3341(t *testing.T) {
	for _, c := range []struct {
		name             string
		part             float64 // of the rate
		phase, amplitude float64
		want             float64 // dBTP
		samples          float64 // dBFS, of the highest sample
	}{
		{"case 15", 4, 0, 0.5, -6, dB(0.5)},
		{"case 16", 4, 45, 0.5, -6, dB(0.5 * math.Sqrt(0.5))},
		{"case 17", 6, 60, 0.5, -6, dB(0.5 * math.Sqrt(0.75))},
		{"case 18", 8, 67.5, 0.5, -6, dB(0.5 * math.Sin(67.5*math.Pi/180))},
		{"case 19", 4, 45, 1.41, 3, dB(1.41 * math.Sqrt(0.5))},
	} {
		for _, rate := range []int{44100, 48000, 96000, 192000, 384000} {
			x := tone(float64(rate)/c.part, c.amplitude, c.phase, rate, rate/10)
			have := dB(peakOf(x, rate))
			if !(have <= c.want+0.2 && have >= c.want-0.4) {
				t.Errorf("%s at %d: %.3f dBTP, want %g", c.name, rate, have, c.want)
			}
			highest := 0.0
			for _, v := range x {
				highest = max(highest, v[0])
			}
			if math.Abs(dB(highest)-c.samples) > 0.01 {
				t.Errorf("%s at %d: highest sample at %.3f dBFS, want %.3f", c.name, rate, dB(highest), c.samples)
			}
		}
	}
}

// Any tone up to 20 kHz must read its amplitude whatever its phase, at most as
// low as the distance of the points allows: cos(pi f / points), as ITU-R BS.1770-5,
// Annex 2, appendix 1 has it, and not more than 0.05 dB too high.
func TestTonesOfAnyPhase(t *testing.T) {
	for _, rate := range []int{44100, 48000, 96000} {
		for _, hz := range []float64{50, 997, 5003, 9973, 14983, 18013, 20000} {
			if hz > 0.42*float64(rate) {
				continue
			}
			low := dB(math.Cos(math.Pi*hz/points)) - 0.02
			for phase := 0.0; phase < 180; phase += 7 {
				have := dB(peakOf(tone(hz, 1, phase, rate, rate/20), rate))
				if !(have > low && have < 0.05) {
					t.Errorf("%g Hz at %d, %g degrees: %.3f dBTP, at least %.3f", hz, rate, phase, have, low)
				}
			}
		}
	}
}

// annex is the interpolator that ITU-R BS.1770-5 prints in Annex 2: four phases of
// twelve taps, of which the last two are the first two backwards.
var annex = [2][12]float64{
	{0.0017089843750, 0.0109863281250, -0.0196533203125, 0.0332031250000, -0.0594482421875, 0.1373291015625,
		0.9721679687500, -0.1022949218750, 0.0476074218750, -0.0266113281250, 0.0148925781250, -0.0083007812500},
	{-0.0291748046875, 0.0292968750000, -0.0517578125000, 0.0891113281250, -0.1665039062500, 0.4650878906250,
		0.7797851562500, -0.2003173828125, 0.1015625000000, -0.0582275390625, 0.0330810546875, -0.0189208984375},
}

// byAnnex returns the peak that the printed interpolator finds.
func byAnnex(x [][2]float64) float64 {
	peak := 0.0
	for i := 11; i < len(x); i++ {
		for _, taps := range annex {
			forth, back := 0.0, 0.0
			for k, h := range taps {
				forth += h * x[i-k][0]
				back += h * x[i-11+k][0]
			}
			peak = max(peak, math.Abs(forth), math.Abs(back))
		}
	}
	return peak
}

// On music-like noise below 16 kHz both interpolators must find the same peak to
// 0.3 dB, which is what four and eight points a sample may differ by there.
func TestAgainstTheAnnex(t *testing.T) {
	for seed := range uint64(5) {
		x := noise(4096, 16000, seed)
		have, want := dB(peakOf(x, 48000)), dB(byAnnex(x))
		if math.Abs(have-want) > 0.3 {
			t.Errorf("noise %d: %.3f dBTP, by the printed filter %.3f", seed, have, want)
		}
	}
}

// noise is band-limited and periodic, so that its Fourier series is the sound
// between its samples.
func noise(n int, top float64, seed uint64) [][2]float64 {
	mono := fourier.NewFFT(n).Sequence(nil, spectrum(n, top, seed))
	x := make([][2]float64, n)
	for i, v := range mono {
		x[i] = [2]float64{v, v}
	}
	return x
}

func spectrum(n int, top float64, seed uint64) []complex128 {
	random := rand.New(rand.NewPCG(seed, 2))
	c := make([]complex128, n/2+1)
	for k := 1; k < int(top/48000*float64(n)); k++ {
		c[k] = complex(random.NormFloat64(), random.NormFloat64()) / complex(float64(n), 0)
	}
	return c
}

// The Fourier series of periodic noise up to 20 kHz, drawn with 64 points for
// each sample, is the sound itself: the reading may not be above it, and below it
// only by what eight points miss.
func TestAgainstTheFourierSeries(t *testing.T) {
	const n, fine = 2048, 64
	for seed := range uint64(8) {
		x := noise(n, 20000, seed)
		c := append(spectrum(n, 20000, seed), make([]complex128, n*fine/2-n/2)...)
		want := 0.0
		for _, v := range fourier.NewFFT(n*fine).Sequence(nil, c) {
			want = max(want, math.Abs(v))
		}
		m := New(48000)
		m.Push(x)
		before := m.peak
		m.Push(x) // now without a beginning
		have := dB(max(m.peak, before) / want)
		if !(have < 0.02 && have > -0.12) {
			t.Errorf("noise %d: %+.3f dB from the sound", seed, have)
		}
	}
}

// What is said of a sample comes Delay later, also in two unlike channels.
func TestDelay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 9))
		f := NewFinder(rapid.SampledFrom([]int{8000, 44100, 48000, 192000, 500000}).Draw(t, "rate"))
		var x [][2]float64
		for i := range 200 {
			v := random.NormFloat64()
			x = append(x, [2]float64{v, v})
			if random.IntN(40) == 0 {
				x[i][random.IntN(2)] = 0
			}
			peak := f.Push(x[i], 0)
			if i <= Delay {
				continue
			}
			a, b := x[i-Delay], x[i-Delay+1]
			if sample := max(math.Abs(a[0]), math.Abs(a[1]), math.Abs(b[0]), math.Abs(b[1])); !(peak >= sample) {
				t.Fatalf("at %d: %g, below the sample's %g", i, peak, sample)
			}
		}
	})
}

// A floor must hide nothing that passes it.
func TestFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		floor := rapid.Float64Range(0, 4).Draw(t, "floor")
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 9))
		all, some := NewFinder(48000), NewFinder(48000)
		loud := 0.0
		for i := range 2000 {
			if i%50 == 0 {
				loud = random.Float64()
			}
			v := [2]float64{loud * random.NormFloat64(), loud * random.NormFloat64()}
			want, have := all.Push(v, 0), some.Push(v, floor)
			if want > floor && have != want || have > want {
				t.Fatalf("at %d: %g over a floor of %g, want %g", i, have, floor, want)
			}
		}
	})
}

func TestOddSamples(t *testing.T) {
	for _, c := range []struct {
		name string
		x    [][2]float64
		want float64
	}{
		{"nothing", nil, 0},
		{"silence", make([][2]float64, 100), 0},
		{"one sample", [][2]float64{{0, -0.5}}, 0.5},
		{"no numbers", [][2]float64{{math.NaN(), math.Inf(1)}, {math.Inf(-1), 0.25}}, 0.25},
	} {
		if have := peakOf(c.x, 48000); math.Abs(have-c.want) > 1e-12 {
			t.Errorf("%s: %g, want %g", c.name, have, c.want)
		}
	}
	largest := [][2]float64{{math.MaxFloat64, 1}, {-math.MaxFloat64, 1}, {math.MaxFloat64, 1}}
	if have := peakOf(largest, 48000); !(have > 1e299 && have < math.Inf(1)) {
		t.Errorf("the largest numbers: %g", have)
	}
}

func TestAllocateNothing(t *testing.T) {
	m := New(48000)
	x := tone(997, 1, 0, 48000, 480)
	if n := testing.AllocsPerRun(20, func() { m.Push(x) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkPush(b *testing.B) {
	for _, c := range []struct {
		name  string
		right float64
	}{{"left and right alike", 1}, {"unlike", -1}} {
		b.Run(c.name, func(b *testing.B) {
			second := tone(997, 0.5, 0, 48000, 48000)
			for i := range second {
				second[i][1] *= c.right
			}
			m := New(48000)
			b.ReportAllocs()
			for b.Loop() {
				m.Push(second)
			}
		})
	}
}

func ExampleMeter() {
	m := New(48000)
	m.Push(tone(12000, 1, 45, 48000, 4800)) // samples at 0.707
	fmt.Printf("%.2f", m.Peak())
	// Output: 1.00
}
