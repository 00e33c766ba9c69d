package programme

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/dsp/fourier"
)

var rates = []int{8000, 44100, 48000, 96000}

func TestEveryProgramme(t *testing.T) {
	for _, p := range All {
		for _, rate := range rates {
			t.Run(fmt.Sprint(p.Name, rate), func(t *testing.T) {
				l := p.Make(rate)
				sum, square, peak := 0.0, 0.0, 0.0
				for _, v := range l {
					sum += v
					square += v * v
					peak = max(peak, math.Abs(v))
				}
				n := float64(len(l))
				if math.Abs(peak-Peak) > 1e-12 {
					t.Errorf("peak %g, want %g", peak, Peak)
				}
				if dc := math.Abs(sum / n); dc > 1e-6 {
					t.Errorf("DC %g", dc)
				}
				// A sound, not one stray sample.
				bound := mostCrest(p.Name, len(l), rate)
				if crest := 20 * math.Log10(peak/math.Sqrt(square/n)); crest > bound {
					t.Errorf("crest factor %.1f dB, want at most %.1f", crest, bound)
				}
				if s := n / float64(rate); s < 0.2 || s > 12 {
					t.Errorf("%g s long", s)
				}
				again := p.Make(rate)
				for i := range l {
					if l[i] != again[i] {
						t.Fatalf("sample %d differs when made again", i)
					}
				}
			})
		}
	}
}

// mostCrest returns the crest factor in dB that a programme may have. A sum of m
// sines reaches at most the square root of 2m times its RMS, where all are alike
// and in step (Cauchy-Schwarz): a click train comes near that by its nature. For
// the others 26 dB is ample: speech has 12 to 20 dB, plucked strings as much
// (common practice).
func mostCrest(name string, n, rate int) float64 {
	if name != "clicks" {
		return 26
	}
	sines := (top(rate) - clickLow) * float64(n) / float64(rate)
	return 10 * math.Log10(2*sines)
}

// The seam must not click: the step over it is no larger than the largest step
// within.
func TestSeam(t *testing.T) {
	for _, p := range All {
		l := p.Make(48000)
		largest := 0.0
		for i := 1; i < len(l); i++ {
			largest = max(largest, math.Abs(l[i]-l[i-1]))
		}
		if step := math.Abs(l[0] - l[len(l)-1]); step > largest {
			t.Errorf("%s: step of %g over the seam, %g within", p.Name, step, largest)
		}
	}
}

func TestStreamerRepeats(t *testing.T) {
	l := Loop{0.1, -0.2, 0.3}
	s := l.Streamer()
	buffer := make([][2]float64, 5)
	for call := range 3 {
		n, ok := s.Stream(buffer)
		if n != 5 || !ok {
			t.Fatalf("%d %v", n, ok)
		}
		for i, v := range buffer {
			if want := l[(5*call+i)%3]; v != [2]float64{want, want} {
				t.Errorf("call %d sample %d: %v, want %g twice", call, i, v, want)
			}
		}
	}
	if n, ok := Loop(nil).Streamer().Stream(buffer); n != 0 || ok {
		t.Errorf("empty loop: %d %v, want 0 false", n, ok)
	}
}

// power returns the energy in a band of one loop, from its transform.
func power(spectrum []complex128, step, low, high float64) float64 {
	sum := 0.0
	for k, c := range spectrum {
		if f := float64(k) * step; f >= low && f < high {
			sum += real(c)*real(c) + imag(c)*imag(c)
		}
	}
	return sum
}

// Equal power in every octave is what makes noise pink; over constant bandwidth
// it falls by 3 dB an octave (IEC 60268-1, pink noise). Octaves by IEC 61260-1.
func TestPinkOctaves(t *testing.T) {
	for _, rate := range []int{44100, 48000, 96000} {
		l := Pink(rate)
		spectrum := fourier.NewFFT(len(l)).Coefficients(nil, l)
		step := float64(rate) / float64(len(l))
		reference := 0.0
		for i := -5; i <= 3; i++ { // 31.5 Hz to 8 kHz
			centre := 1000 * math.Pow(10, 0.3*float64(i))
			half := math.Pow(10, 0.15)
			level := 10 * math.Log10(power(spectrum, step, centre/half, centre*half))
			if i == -5 {
				reference = level
			}
			if math.Abs(level-reference) > 0.1 {
				t.Errorf("%d Hz rate, octave at %.0f Hz: %+.2f dB of the lowest", rate, centre, level-reference)
			}
		}
	}
}

// An exponential sweep holds the same energy in every octave: over constant
// bandwidth it falls by 3 dB an octave (Farina 2000). Octaves by IEC 61260-1.
func TestSweepOctaves(t *testing.T) {
	for _, rate := range []int{44100, 48000, 96000} {
		l := Sweep(rate)
		spectrum := fourier.NewFFT(len(l)).Coefficients(nil, l)
		step := float64(rate) / float64(len(l))
		var levels []float64
		mean := 0.0
		for i := -4; i <= 3; i++ { // 63 Hz to 8 kHz
			centre := 1000 * math.Pow(10, 0.3*float64(i))
			half := math.Pow(10, 0.15)
			levels = append(levels, 10*math.Log10(power(spectrum, step, centre/half, centre*half)))
			mean += levels[len(levels)-1] / 8
		}
		for i, level := range levels {
			if math.Abs(level-mean) > 0.15 {
				t.Errorf("%d Hz rate, octave %d: %+.2f dB of the mean", rate, i, level-mean)
			}
		}
	}
}

// By a time t an exponential sweep has made f L (exp(t/L) - 1) turns, with L =
// T/log(F/f) (Farina 2000, equation for the swept sine).
func TestSweepTurns(t *testing.T) {
	const rate = 48000
	l := Sweep(rate)
	growth := 5 / math.Log(20000.0/40)
	turns := 0.0
	for i := 1; i < 5*rate; i++ {
		if l[i-1] < 0 && l[i] >= 0 {
			turns++
		}
		if i%rate == 0 && i > rate/2 {
			want := 40 * growth * (math.Exp(float64(i)/rate/growth) - 1)
			if math.Abs(turns-want) > 1 {
				t.Errorf("%d s: %g turns, want %.1f", i/rate, turns, want)
			}
		}
	}
	for i, v := range l[5*rate:] {
		if math.Abs(v) > 1e-12 {
			t.Fatalf("%g in the rest, sample %d", v, i)
		}
	}
}

// Bursts at independent random times make the energy fluctuate alike at all
// frequencies well below the inverse of a burst's length: relative to its mean,
// by the sum of the bursts' squared energies over the square of their sum
// (Campbell's theorem: S. O. Rice, Bell Syst. Tech. J. 23 (1944) 282). Energies
// spread evenly over 6 dB in level make that 1/n times (1 + 0.155).
func TestApplauseModulation(t *testing.T) {
	for _, rate := range []int{16000, 48000} {
		l := Applause(rate)
		energy := make([]float64, len(l))
		for i, v := range l {
			energy[i] = v * v
		}
		spectrum := fourier.NewFFT(len(l)).Coefficients(nil, energy)
		seconds := float64(len(l)) / float64(rate)
		first, last := 1, int(16*seconds) // up to 16 Hz
		mean := 0.0
		for _, c := range spectrum[first : last+1] {
			mean += (real(c)*real(c) + imag(c)*imag(c)) / float64(last)
		}
		mean /= real(spectrum[0]) * real(spectrum[0])
		want := 1.155 / (clapsASec * seconds)
		// Each line is a sum over random phases, with a standard deviation as large
		// as its mean: three of them for the mean of all lines.
		if have, bound := mean/want-1, 3/math.Sqrt(float64(last)); math.Abs(have) > bound {
			t.Errorf("rate %d: fluctuation %.3g, want %.3g within %.0f %%", rate, mean, want, 100*bound)
		}
	}
}

// Applause is loudest where hands are (Repp 1987) and keeps its band.
func TestApplauseKeepsItsBand(t *testing.T) {
	l := Applause(48000)
	spectrum := fourier.NewFFT(len(l)).Coefficients(nil, l)
	step := 48000 / float64(len(l))
	all := power(spectrum, step, 0, 25000)
	if share := power(spectrum, step, 500, 3000) / all; share < 0.8 {
		t.Errorf("%.2f of the energy from 500 to 3000 Hz", share)
	}
	for _, edge := range [][2]float64{{0, 199}, {10001, 25000}} {
		if db := 10 * math.Log10(power(spectrum, step, edge[0], edge[1])/all); db > -200 {
			t.Errorf("%.0f dB from %g to %g Hz", db, edge[0], edge[1])
		}
	}
}

func TestClicksKeepTheirBand(t *testing.T) {
	l := Clicks(48000)
	spectrum := fourier.NewFFT(len(l)).Coefficients(nil, l)
	step := 48000 / float64(len(l))
	all := power(spectrum, step, 0, 25000)
	for _, edge := range [][2]float64{{0, 149}, {20001, 25000}} {
		if db := 10 * math.Log10(power(spectrum, step, edge[0], edge[1])/all); db > -200 {
			t.Errorf("%.0f dB from %g to %g Hz", db, edge[0], edge[1])
		}
	}
	at := 0
	for i, v := range l {
		if math.Abs(v) > math.Abs(l[at]) {
			at = i
		}
	}
	if at != len(l)/4 || l[at] < 0 {
		t.Errorf("peak %g at %d, want a rise at %d", l[at], at, len(l)/4)
	}
	// Nothing but the click: 10 ms away it has died down.
	for i, v := range l {
		if d := i - at; (d > 480 || d < -480) && math.Abs(v) > 2e-3*Peak {
			t.Fatalf("%g at %d samples from the click", v, d)
		}
	}
}

// Equal temperament on 440 Hz: middle C is 261.626 Hz, the E string of a guitar
// 82.407 Hz (handbook table of pitches).
func TestHertz(t *testing.T) {
	for _, c := range []struct{ pitch, want float64 }{{69, 440}, {60, 261.626}, {40, 82.407}, {81, 880}} {
		if have := hertz(c.pitch); math.Abs(have-c.want) > 0.0005 {
			t.Errorf("pitch %g: %g Hz, want %g", c.pitch, have, c.want)
		}
	}
}

// A string must sound within 2 cents, which few ears tell apart (common
// practice), at any rate: the fundamental by the phase it gains between two
// windows.
func TestStringsAreInTune(t *testing.T) {
	for _, rate := range []int{22050, 44100, 48000, 96000} {
		for _, n := range tune {
			want := hertz(n.pitch)
			have := pitchOf(t, rate, want)
			if cents := 1200 * math.Log2(have/want); math.Abs(cents) > 2 {
				t.Errorf("rate %d, %.2f Hz: %+.2f cents", rate, want, cents)
			}
		}
	}
}

func pitchOf(t *testing.T, rate int, near float64) float64 {
	t.Helper()
	one := make([]float64, rate)
	pluck(one, rate, near, rand.New(rand.NewPCG(1, 2)))
	window := rate / 4
	phase := func(start int) float64 {
		var re, im float64
		for i := range window {
			w := 1 - math.Cos(2*math.Pi*float64(i)/float64(window))
			sin, cos := math.Sincos(2 * math.Pi * near * float64(start+i) / float64(rate))
			re += w * one[start+i] * cos
			im -= w * one[start+i] * sin
		}
		return math.Atan2(im, re)
	}
	apart := rate / 10
	gained := math.Remainder(phase(rate/5+apart)-phase(rate/5), 2*math.Pi)
	return near + gained/(2*math.Pi)*float64(rate)/float64(apart)
}

// The mouth's resonances must stand where Peterson and Barney measured them.
func TestVowelsHaveTheirFormants(t *testing.T) {
	for name, v := range map[string]vowel{"heed": heed, "head": head, "had": had, "hod": hod, "hawed": hawed, "whod": whod} {
		tr := newTract(48000)
		tr.mouth = v
		tr.shape()
		response := make([]float64, 1<<15)
		in := 1.0
		for i := range response {
			out := in
			for k := range tr.formant {
				out = tr.formant[k].step(out)
			}
			response[i], in = out, 0
		}
		spectrum := fourier.NewFFT(len(response)).Coefficients(nil, response)
		level := func(k int) float64 {
			return real(spectrum[k])*real(spectrum[k]) + imag(spectrum[k])*imag(spectrum[k])
		}
		for i, want := range v {
			best, step := 0.0, 48000/float64(len(response))
			for k := int(0.9 * want / step); float64(k)*step < 1.1*want; k++ {
				if level(k) > level(k-1) && level(k) > level(k+1) {
					best = float64(k) * step
				}
			}
			if math.Abs(best-want) > 0.03*want {
				t.Errorf("%s, formant %d: %.0f Hz, want %g", name, i+1, best, want)
			}
		}
	}
}

func BenchmarkMake(b *testing.B) {
	for _, p := range All {
		b.Run(p.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				p.Make(48000)
			}
		})
	}
}

func ExampleLoop_Streamer() {
	s := Clicks(48000).Streamer()
	buffer := make([][2]float64, 48000)
	n, _ := s.Stream(buffer)
	loud := 0
	for _, v := range buffer[:n] {
		if v[0] > 0.99*Peak {
			loud++
		}
	}
	fmt.Println(loud, "clicks in a second")
	// Output: 3 clicks in a second
}
