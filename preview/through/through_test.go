package through_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/preview/through"

	"github.com/gopxl/beep/v2"
	"pgregory.net/rapid"
)

// samples streams a slice in pieces of at most chunk samples, as the contract
// of beep.Streamer allows only at the end, and as file readers do all the same.
type samples struct {
	left  [][2]float64
	chunk int
	err   error
}

func (s *samples) Stream(dst [][2]float64) (int, bool) {
	if len(s.left) == 0 || s.err != nil {
		return 0, false
	}
	n := min(len(dst), s.chunk, len(s.left))
	copy(dst, s.left[:n])
	s.left = s.left[n:]
	return n, true
}

func (s *samples) Err() error { return s.err }

// drain reads a stream in buffers of the given sizes, over and over.
func drain(s beep.Streamer, sizes []int) [][2]float64 {
	var all [][2]float64
	for i := 0; ; i++ {
		buffer := make([][2]float64, sizes[i%len(sizes)])
		n, ok := s.Stream(buffer)
		all = append(all, buffer[:n]...)
		if !ok {
			return all
		}
	}
}

func noise(n int, random *rand.Rand) [][2]float64 {
	x := make([][2]float64, n)
	for i := range x {
		x[i] = [2]float64{random.NormFloat64(), random.NormFloat64()}
	}
	return x
}

// The definition of convolution is the outside value here.
func direct(x [][2]float64, h []float64) [][2]float64 {
	if len(x) == 0 {
		return nil
	}
	y := make([][2]float64, len(x)+len(h)-1)
	for i, v := range x {
		for k, g := range h {
			y[i+k][0] += g * v[0]
			y[i+k][1] += g * v[1]
		}
	}
	return y
}

func TestAnyLengthAndChunk(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		x := noise(rapid.IntRange(0, 3000).Draw(t, "source"), random)
		h := make([]float64, rapid.IntRange(1, 2600).Draw(t, "impulse"))
		for i := range h {
			h[i] = random.NormFloat64()
		}
		chunk := rapid.IntRange(1, 2000).Draw(t, "chunk")
		sizes := rapid.SliceOfN(rapid.IntRange(1, 1500), 1, 5).Draw(t, "buffers")
		have := drain(through.New(&samples{left: x, chunk: chunk}, h), sizes)
		want := direct(x, h)
		if len(have) != len(want) {
			t.Fatalf("%d samples, want %d", len(have), len(want))
		}
		scale, worst := 0.0, 0.0
		for i := range want {
			for c := range want[i] {
				scale = max(scale, math.Abs(want[i][c]))
				worst = max(worst, math.Abs(want[i][c]-have[i][c]))
			}
		}
		if worst > 1e-10*scale {
			t.Fatalf("off by %g of a peak of %g", worst, scale)
		}
	})
}

// Two ears hear the mean of left and right, each through its own response.
func TestEars(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 2))
		x := noise(rapid.IntRange(0, 3000).Draw(t, "source"), random)
		left := make([]float64, rapid.IntRange(1, 2600).Draw(t, "impulse"))
		right, mean := make([]float64, len(left)), make([][2]float64, len(x))
		for i := range left {
			left[i], right[i] = random.NormFloat64(), random.NormFloat64()
		}
		for i, v := range x {
			m := (v[0] + v[1]) / 2
			mean[i] = [2]float64{m, m}
		}
		sizes := rapid.SliceOfN(rapid.IntRange(1, 1500), 1, 5).Draw(t, "buffers")
		have := drain(through.Ears(&samples{left: x, chunk: 700}, left, right), sizes)
		wantLeft, wantRight := direct(mean, left), direct(mean, right)
		if len(have) != len(wantLeft) {
			t.Fatalf("%d samples, want %d", len(have), len(wantLeft))
		}
		for i, v := range have {
			if math.Abs(v[0]-wantLeft[i][0]) > 1e-9 || math.Abs(v[1]-wantRight[i][1]) > 1e-9 {
				t.Fatalf("sample %d: %v, want %g and %g", i, v, wantLeft[i][0], wantRight[i][1])
			}
		}
	})
}

func TestLeftAndRightStayApart(t *testing.T) {
	x := make([][2]float64, 700)
	x[3][0] = 1
	for _, v := range drain(through.New(&samples{left: x, chunk: 700}, []float64{1, 0.5, 0.25}), []int{512}) {
		if math.Abs(v[1]) > 1e-15 {
			t.Fatalf("%g on the right from a click on the left", v[1])
		}
	}
}

func TestSourceError(t *testing.T) {
	broken := errors.New("broken")
	s := through.New(&samples{left: make([][2]float64, 9), chunk: 4, err: broken}, []float64{1, 1})
	if n, ok := s.Stream(make([][2]float64, 4)); n != 0 || ok {
		t.Errorf("%d %v after an error, want 0 false", n, ok)
	}
	if !errors.Is(s.Err(), broken) {
		t.Errorf("error %v", s.Err())
	}
}

func TestAllocatesNothing(t *testing.T) {
	h := make([]float64, 4096)
	for name, s := range map[string]beep.Streamer{"one": through.New(forever{}, h), "ears": through.Ears(forever{}, h, h)} {
		buffer := make([][2]float64, 512)
		if n := testing.AllocsPerRun(50, func() { s.Stream(buffer) }); n != 0 {
			t.Errorf("%s: %g allocations", name, n)
		}
	}
}

type forever struct{}

func (forever) Stream(s [][2]float64) (int, bool) {
	for i := range s {
		s[i] = [2]float64{float64(i&1) - 0.5, float64(i&3) - 1.5}
	}
	return len(s), true
}
func (forever) Err() error { return nil }

func BenchmarkStream(b *testing.B) {
	for _, n := range []int{512, 4096, 32768} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			s := through.New(forever{}, make([]float64, n))
			buffer := make([][2]float64, 4800)
			b.ReportAllocs()
			for b.Loop() {
				s.Stream(buffer)
			}
			b.ReportMetric(0.1*float64(b.N)/b.Elapsed().Seconds(), "x_real_time")
		})
	}
}

func ExampleNew() {
	click := beep.Take(3, &samples{left: [][2]float64{{1, 1}, {0, 0}, {0, 0}}, chunk: 3})
	heard := through.New(click, []float64{1, 0, 0.5})
	buffer := make([][2]float64, 8)
	n, _ := heard.Stream(buffer)
	for _, v := range buffer[:n] {
		fmt.Printf("%.2f ", math.Abs(v[0]))
	}
	// Output: 1.00 0.00 0.50 0.00 0.00
}
