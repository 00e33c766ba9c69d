package limit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/preview/loudness/truepeak"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/dsp/fourier"
	"pgregory.net/rapid"
)

const rate = 48000

// slice streams samples once.
type slice struct{ left [][2]float64 }

func (s *slice) Stream(dst [][2]float64) (int, bool) {
	n := copy(dst, s.left)
	s.left = s.left[n:]
	return n, n > 0
}
func (s *slice) Err() error { return nil }

func drain(s beep.Streamer, size int) [][2]float64 {
	var all [][2]float64
	buffer := make([][2]float64, size)
	for {
		n, ok := s.Stream(buffer)
		if !ok {
			return all
		}
		all = append(all, buffer[:n]...)
	}
}

func TestNeverAboveCeiling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ceiling := rapid.Float64Range(0.01, 2).Draw(t, "ceiling")
		loud := rapid.Float64Range(0, 400).Draw(t, "loudness")
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 3))
		x := make([][2]float64, rapid.IntRange(0, 3000).Draw(t, "length"))
		for i := range x {
			x[i] = [2]float64{loud * random.NormFloat64() * random.Float64(), random.NormFloat64()}
			if random.IntN(500) == 0 {
				x[i][0] = []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300}[random.IntN(4)]
			}
		}
		y := drain(New(&slice{x}, ceiling, rate), rapid.IntRange(1, 900).Draw(t, "buffer"))
		if len(y) != len(x) {
			t.Fatalf("%d samples from %d", len(y), len(x))
		}
		for i, v := range y {
			for c := range v {
				if !(math.Abs(v[c]) <= ceiling) {
					t.Fatalf("sample %d is %g over a ceiling of %g", i, v[c], ceiling)
				}
			}
		}
	})
}

func TestQuietPassesInPlace(t *testing.T) {
	x := sine(997, 0.5, 4800)
	for i, v := range drain(New(&slice{x}, 0.891, rate), 333) {
		if math.Abs(v[0]-x[i][0]) > 1e-15 {
			t.Fatalf("sample %d: %g, was %g", i, v[0], x[i][0])
		}
	}
}

// The gain must have come down by the time the peak comes, so that the clamp
// behind it has nothing to do: a tone that is too loud by 12 dB comes out as
// that tone and not as a square wave. Symmetric clipping at that depth would
// give a third harmonic at about -12 dB.
func TestLoudToneStaysATone(t *testing.T) {
	const n = 48000
	y := drain(New(&slice{sine(1000, 4, 2*n)}, 1, rate), 512)
	tail := make([]float64, n)
	for i := range tail {
		tail[i] = y[n+i][0]
	}
	spectrum := fourier.NewFFT(n).Coefficients(nil, tail)
	level := func(k int) float64 { return math.Hypot(real(spectrum[k]), imag(spectrum[k])) }
	if db := 20 * math.Log10(level(3000)/level(1000)); db > -60 {
		t.Errorf("third harmonic at %.1f dB", db)
	}
	if db := 20 * math.Log10(level(1000)/(n/2)); db > 0.01 || db < -0.1 {
		t.Errorf("tone at %.2f dB of the ceiling", db)
	}
}

// A sine at a quarter of the rate with a phase of 45 degrees has all its samples
// at 0.707 of its peak, which is 3.01 dB over them (EBU Tech 3341, table 1, cases
// 16 and 19, from memory). As far as its samples alone go it would pass.
func TestPeaksBetweenSamples(t *testing.T) {
	ceiling := math.Pow(10, -1.0/20)
	for _, c := range []struct {
		name            string
		hz, amplitude   float64
		phase           float64
		low, high, gain float64 // of the peak that comes out, dBTP; of the middle, dB
	}{
		{"under the ceiling", 12000, 0.88, 45, -1.12, -1.1, 0},
		{"samples under it", 12000, 1.25, 45, -1.05, -0.9, -2.94},
		{"case 19", 12000, 1.41, 45, -1.05, -0.9, -3.98},
		{"a sixth of the rate", 8000, 1.1, 60, -1.05, -0.9, -1.83},
		{"an eighth", 6000, 4, 67.5, -1.05, -0.9, -13.04},
	} {
		x := make([][2]float64, rate/4)
		for i := range x {
			edge := min(1, float64(i)/480, float64(len(x)-1-i)/480)
			v := edge * c.amplitude * math.Sin(2*math.Pi*c.hz*float64(i)/rate+c.phase*math.Pi/180)
			x[i] = [2]float64{v, -v / 2}
		}
		y := drain(New(&slice{x}, ceiling, rate), 512)
		have := 20 * math.Log10(drawn(y))
		if !(have >= c.low && have <= c.high) {
			t.Errorf("%s: %.3f dBTP, want %g to %g", c.name, have, c.low, c.high)
		}
		middle := len(x) / 2
		if have := 20 * math.Log10(y[middle][0]/x[middle][0]); !(math.Abs(have-c.gain) < 0.05) {
			t.Errorf("%s: %.3f dB of gain, want %g", c.name, have, c.gain)
		}
		if c.gain == 0 {
			for i := range x {
				if math.Abs(y[i][0]-x[i][0]) > 1e-15 {
					t.Fatalf("%s: sample %d is %g, was %g", c.name, i, y[i][0], x[i][0])
				}
			}
		}
	}
}

// drawn returns the highest peak of the left channel by its Fourier series, with
// 16 points for each sample.
func drawn(y [][2]float64) float64 {
	const fine = 16
	n := 1
	for n < len(y)+256 {
		n *= 2
	}
	mono := make([]float64, n)
	for i, v := range y {
		mono[128+i] = v[0]
	}
	c := fourier.NewFFT(n).Coefficients(nil, mono)
	c[n/2] = 0
	c = append(c, make([]complex128, n*fine/2-n/2)...)
	peak := 0.0
	for _, v := range fourier.NewFFT(n*fine).Sequence(nil, c) {
		peak = max(peak, math.Abs(v)/float64(n))
	}
	return peak
}

// Noise up to 20 kHz that swells far over the ceiling must come out within 0.1 dB
// of it, and a meter by ITU-R BS.1770-5 must say so too.
func TestTruePeakOfNoise(t *testing.T) {
	const n = 16384
	for _, loud := range []float64{1, 4, 30} {
		for seed := range uint64(4) {
			random := rand.New(rand.NewPCG(seed, 3))
			c := make([]complex128, n/2+1)
			for k := range c[:n*20000/rate] {
				c[k] = complex(random.NormFloat64(), random.NormFloat64()) * complex(loud/math.Sqrt(n), 0)
			}
			x := make([][2]float64, n)
			for i, v := range fourier.NewFFT(n).Sequence(nil, c) {
				swell := math.Sin(7 * math.Pi * float64(i) / n)
				x[i][0] = v * swell * swell
			}
			y := drain(New(&slice{x}, 1, rate), 512)
			if over := 20 * math.Log10(drawn(y)); over > 0.1 || over < -0.3 {
				t.Errorf("noise %d at %g: highest peak %.3f dB over the ceiling", seed, loud, over)
			}
			m := truepeak.New(rate)
			m.Push(y)
			if over := 20 * math.Log10(m.Peak()); over > 0.1 {
				t.Errorf("noise %d at %g: the meter says %.3f dB over the ceiling", seed, loud, over)
			}
		}
	}
}

func TestGainComesBack(t *testing.T) {
	x := sine(500, 0.25, rate)
	x[100] = [2]float64{8, 8}
	y := drain(New(&slice{x}, 1, rate), 512)
	if y[100][0] < 0.999 {
		t.Errorf("peak at %g, want the ceiling", y[100][0])
	}
	if y[110][0] > 0.5*x[110][0] {
		t.Errorf("gain back at once")
	}
	for i := rate / 2; i < rate; i++ {
		if math.Abs(y[i][0]-x[i][0]) > 0.002 {
			t.Fatalf("still limited half a second later: %g, was %g", y[i][0], x[i][0])
		}
	}
}

func TestSlidingLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.IntRange(1, 9).Draw(t, "length")
		values := rapid.SliceOf(rapid.Float64Range(0, 4)).Draw(t, "values")
		s := newSliding(length)
		for i, v := range values {
			want := v
			for _, u := range values[max(0, i-length+1):i] {
				want = min(want, u)
			}
			if have := s.push(v); have != want {
				t.Fatalf("at %d: %g, want %g", i, have, want)
			}
		}
	})
}

func TestFadeIn(t *testing.T) {
	y := drain(Fade(&slice{ones(2000)}, 1000, 10), 77)
	if len(y) != 2000 {
		t.Fatalf("%d samples", len(y))
	}
	for _, c := range []struct {
		at   int
		want float64
	}{{0, 0}, {500, 0.5}, {250, 0.5 - math.Sqrt2/4}, {1000, 1}, {1980, 1}} {
		if math.Abs(y[c.at][0]-c.want) > 1e-12 || y[c.at][0] != y[c.at][1] {
			t.Errorf("sample %d: %v, want %g", c.at, y[c.at], c.want)
		}
	}
}

// What ends by itself comes down to silence too, however short it is and in
// whatever pieces it is read, and loses nothing of its length.
func TestEndFalls(t *testing.T) {
	for _, length := range []int{0, 1, 5, 300, 2000, 5000} {
		for _, size := range []int{1, 77, 4096} {
			y := drain(Fade(&slice{ones(length)}, 480, 480), size)
			if len(y) != length {
				t.Fatalf("%d samples of %d", len(y), length)
			}
			last := 0.0
			for i, v := range append(y, [2]float64{}) {
				if d := math.Abs(v[0] - last); d > 1.01*math.Pi/2/480 {
					t.Fatalf("%d samples in pieces of %d: a step of %g at %d", length, size, d, i)
				}
				last = v[0]
			}
			if length >= 2000 && y[length-481][0] != 1 {
				t.Errorf("%d samples: %g before the fall", length, y[length-481][0])
			}
		}
	}
}

func TestStopFallsAndEnds(t *testing.T) {
	const out = 30 * rate / 1000
	for _, before := range []int{0, 100, 5000} { // in the rise and after it
		f := Fade(&slice{ones(3 * rate)}, 1000, out)
		head := make([][2]float64, before)
		if before > 0 {
			f.Stream(head)
		}
		f.Stop()
		f.Stop()
		tail := drain(f, 256)
		if len(tail) > out+1 {
			t.Errorf("stopped after %d: %d samples more, want at most %d", before, len(tail), out+1)
		}
		last := 0.0
		if before > 0 {
			last = head[before-1][0]
		}
		for i, v := range append(tail, [2]float64{}) {
			if d := math.Abs(v[0] - last); d > 0.0025 {
				t.Fatalf("stopped after %d: a step of %g at %d", before, d, i)
			}
			last = v[0]
		}
	}
}

func TestAllocateNothing(t *testing.T) {
	s := New(Fade(forever{}, 10, 10), 0.5, rate)
	buffer := make([][2]float64, 512)
	if n := testing.AllocsPerRun(50, func() { s.Stream(buffer) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

type forever struct{}

func (forever) Stream(s [][2]float64) (int, bool) {
	for i := range s {
		s[i] = [2]float64{float64(i&7) - 3.5, 0.1}
	}
	return len(s), true
}
func (forever) Err() error { return nil }

func ones(n int) [][2]float64 {
	x := make([][2]float64, n)
	for i := range x {
		x[i] = [2]float64{1, 1}
	}
	return x
}

func sine(hz, amplitude float64, n int) [][2]float64 {
	x := make([][2]float64, n)
	for i := range x {
		v := amplitude * math.Sin(2*math.Pi*hz*float64(i)/rate)
		x[i] = [2]float64{v, v}
	}
	return x
}

func BenchmarkStream(b *testing.B) {
	for _, c := range []struct {
		name    string
		ceiling float64
	}{{"limiting", 0.5}, {"far below the ceiling", 100}} {
		b.Run(c.name, func(b *testing.B) {
			s := New(Fade(forever{}, 10, 10), c.ceiling, rate)
			buffer := make([][2]float64, 4800)
			b.ReportAllocs()
			for b.Loop() {
				s.Stream(buffer)
			}
		})
	}
}

func ExampleNew() {
	loud := &slice{[][2]float64{{0.2, 0.2}, {3, 1.5}, {0.2, 0.2}}}
	for _, v := range drain(New(loud, 0.5, 48000), 8) {
		fmt.Printf("%.3f %.3f\n", v[0], v[1])
	}
	// Output:
	// 0.033 0.033
	// 0.500 0.250
	// 0.033 0.033
}
