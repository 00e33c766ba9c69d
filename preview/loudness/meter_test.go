package loudness

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// part is a stretch of a sine; level is its peak in dBFS.
type part struct{ level, seconds float64 }

// sine plays parts one after the other, without a step in phase, with a weight
// for left and right.
func sine(hz float64, rate int, weight [2]float64, parts ...part) [][2]float64 {
	var out [][2]float64
	for _, p := range parts {
		amplitude := math.Pow(10, p.level/20)
		for range int(math.Round(p.seconds * float64(rate))) {
			v := amplitude * math.Sin(2*math.Pi*hz*float64(len(out))/float64(rate))
			out = append(out, [2]float64{weight[0] * v, weight[1] * v})
		}
	}
	return out
}

var left, both = [2]float64{1, 0}, [2]float64{1, 1}

// measured feeds a Meter in uneven pieces.
func measured(samples [][2]float64, rate int) *Meter {
	m := New(rate)
	for piece := 1; len(samples) > 0; piece = piece*7%4099 + 1 {
		n := min(piece, len(samples))
		m.Push(samples[:n])
		samples = samples[n:]
	}
	return m
}

// ITU-R BS.1770-5, Annex 1: a sine of 997 Hz at 0 dBFS on one front channel
// reads -3.01 LKFS. It does so to 0.01 at the rate of the tables and above, and
// within the 0.1 LU of EBU Tech 3341 down to 22050; below it is bent a little.
func TestFullScaleSine(t *testing.T) {
	for _, c := range []struct {
		rate      int
		tolerance float64
	}{{48000, 0.01}, {8000, 0.25}, {11025, 0.15}, {22050, 0.1}, {32000, 0.1}, {44100, 0.01}, {88200, 0.01}, {96000, 0.01}, {192000, 0.01}, {384000, 0.01}} {
		samples := sine(997, c.rate, left, part{0, 3})
		m := measured(samples, c.rate)
		for name, have := range map[string]float64{"integrated": m.Integrated(0), "momentary": momentary(m), "ungated": m.Ungated()} {
			if !(math.Abs(have+3.01) <= c.tolerance) {
				t.Errorf("%d samples a second: %s %.3f LUFS, want -3.01", c.rate, name, have)
			}
		}
	}
}

// The signals of EBU Tech 3341 (2023), table 1, that a formula gives: stereo
// sines of 1 kHz, cases 1 to 5, each to read within 0.1 LU. Levels and lengths
// from memory.
func TestTech3341Integrated(t *testing.T) {
	for _, c := range []struct {
		name  string
		parts []part
		want  float64
		rates []int
	}{
		{"case 1", []part{{-23, 20}}, -23, []int{44100, 48000, 96000}},
		{"case 2", []part{{-33, 20}}, -33, []int{48000}},
		{"case 3", []part{{-36, 10}, {-23, 60}, {-36, 10}}, -23, []int{48000}},
		{"case 4", []part{{-72, 10}, {-36, 10}, {-23, 60}, {-36, 10}, {-72, 10}}, -23, []int{48000}},
		{"case 5", []part{{-26, 20}, {-20, 20.1}, {-26, 20}}, -23, []int{44100, 48000, 96000}},
	} {
		for _, rate := range c.rates {
			m := measured(sine(1000, rate, both, c.parts...), rate)
			if have := m.Integrated(0); !(math.Abs(have-c.want) <= 0.1) {
				t.Errorf("%s at %d: %.3f LUFS, want %g", c.name, rate, have, c.want)
			}
		}
	}
}

// momentary is the loudness in LUFS of the last whole block.
func momentary(m *Meter) float64 {
	if m.whole < steps {
		return math.Inf(-1)
	}
	return lufs(m.block())
}

// EBU Tech 3341 (2023), table 1, case 12 (from memory): 25 times 0.18 s at -20
// dBFS and 0.22 s at -30 dBFS read -23.0 LUFS momentary, from the first second on.
func TestTech3341Momentary(t *testing.T) {
	var parts []part
	for range 25 {
		parts = append(parts, part{-20, 0.18}, part{-30, 0.22})
	}
	samples := sine(1000, 48000, both, parts...)
	m := New(48000)
	for at := 0; at < len(samples); at += 4800 {
		m.Push(samples[at : at+4800])
		if have := momentary(m); at > 48000 && !(math.Abs(have+23) <= 0.1) {
			t.Errorf("after %g s: %.3f LUFS, want -23", float64(at)/48000, have)
		}
	}
}

// ITU-R BS.1770-5, Annex 1, equations 5 to 7, block by block over a list of all
// blocks and with a filter over the whole: the histogram and the stream must give
// the same.
func TestAgainstTheEquations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1770))
		rate := rapid.SampledFrom([]int{8000, 11025, 16000}).Draw(t, "rate")
		var x [][2]float64
		for _, level := range rapid.SliceOfN(rapid.Float64Range(-90, 0), 1, 6).Draw(t, "levels") {
			for range rapid.IntRange(0, rate).Draw(t, "length") {
				a := math.Pow(10, level/20)
				x = append(x, [2]float64{a * random.NormFloat64(), a * random.NormFloat64()})
			}
		}
		want := written(x, rate)
		have := measured(x, rate).Integrated(0)
		if math.IsInf(want, -1) != math.IsInf(have, -1) || math.Abs(have-want) > 0.01 && want > -1e9 {
			t.Fatalf("%.4f LUFS, want %.4f", have, want)
		}
	})
}

// written is the integrated loudness as the standard writes it down.
func written(x [][2]float64, rate int) float64 {
	square := make([]float64, len(x)+1) // running sum
	var channel [2]filter
	for c := range channel {
		channel[c].sections = Weighting(float64(rate))
	}
	for i, v := range x {
		l, r := channel[0].next(v[0]), channel[1].next(v[1])
		square[i+1] = square[i] + l*l + r*r
	}
	var blocks []float64
	for j := 0; (j+4)*rate/10 <= len(x); j++ {
		from, to := j*rate/10, (j+4)*rate/10
		blocks = append(blocks, (square[to]-square[from])/float64(to-from))
	}
	mean := func(gate float64) float64 {
		sum, n := 0.0, 0.0
		for _, z := range blocks {
			if -0.691+10*math.Log10(z) > gate {
				sum += z
				n++
			}
		}
		if n == 0 {
			return math.Inf(-1)
		}
		return -0.691 + 10*math.Log10(sum/n)
	}
	gated := mean(-70)
	return mean(max(-70, gated-10))
}

func TestShortAndSilent(t *testing.T) {
	none := math.Inf(-1)
	for _, c := range []struct {
		name                           string
		samples                        [][2]float64
		integrated, momentary, ungated float64
	}{
		{"nothing", nil, none, none, none},
		{"silence", make([][2]float64, 96000), none, none, none},
		{"no numbers", [][2]float64{{math.NaN(), math.Inf(1)}}, none, none, none},
		{"shorter than a block", sine(997, 48000, both, part{-10, 0.39}), none, none, -10},
		{"one block", sine(997, 48000, both, part{-10, 0.4}), -10, -10, -10},
		{"under the gate", sine(997, 48000, both, part{-71, 2}), none, -71, -71},
		{"loud", sine(997, 48000, both, part{60, 2}), 60, 60, 60},
		{"over all bins", sine(997, 48000, both, part{220, 2}), 220, 220, 220},
	} {
		m := measured(c.samples, 48000)
		for _, v := range []struct {
			name       string
			have, want float64
		}{{"integrated", m.Integrated(0), c.integrated}, {"momentary", momentary(m), c.momentary}, {"ungated", m.Ungated(), c.ungated}} {
			if v.have != v.want && !(math.Abs(v.have-v.want) < 0.05) { // the filter's beginning
				t.Errorf("%s: %s %.3f LUFS, want %.3f", c.name, v.name, v.have, v.want)
			}
		}
	}
}

// Played louder, a programme reads what it would had the samples been louder.
func TestIntegratedLouder(t *testing.T) {
	parts := []part{{-40, 3}, {-85, 6}, {-45, 2}}
	m := measured(sine(1000, 48000, both, parts...), 48000)
	for _, gain := range []float64{-35, -20, 0, 10, 30, 110} {
		louder := make([]part, len(parts))
		for i, p := range parts {
			louder[i] = part{p.level + gain, p.seconds}
		}
		want := measured(sine(1000, 48000, both, louder...), 48000).Integrated(0)
		if have := m.Integrated(gain); have != want && !(math.Abs(have-want) < 0.01) {
			t.Errorf("%g dB louder: %.3f LUFS, want %.3f", gain, have, want)
		}
	}
}

func TestAllocateNothing(t *testing.T) {
	m := New(48000)
	buffer := sine(997, 48000, both, part{-10, 0.05})
	if n := testing.AllocsPerRun(50, func() { m.Push(buffer) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkPush(b *testing.B) {
	m := New(48000)
	second := sine(997, 48000, both, part{-10, 1})
	b.ReportAllocs()
	for b.Loop() {
		m.Push(second)
	}
}

func BenchmarkIntegrated(b *testing.B) {
	m := measured(sine(997, 48000, both, part{-10, 5}), 48000)
	b.ReportAllocs()
	for b.Loop() {
		m.Integrated(0)
	}
}

func ExampleMeter() {
	m := New(48000)
	for _, v := range sine(1000, 48000, both, part{-23, 3}) {
		m.Push([][2]float64{v})
	}
	fmt.Printf("%.1f LUFS", m.Integrated(0))
	// Output: -23.0 LUFS
}
