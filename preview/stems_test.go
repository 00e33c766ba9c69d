package preview

import (
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"

	"gonum.org/v1/gonum/dsp/fourier"
)

// TestStemsSumUp: what stems give together, each behind its filter and as a case feeds it, is
// what the listener hears of a click in that case, 1 ms later: of pink noise up to 20 kHz within
// -70 dB, where walls are even over frequency.
func TestStemsSumUp(t *testing.T) {
	for _, c := range []struct {
		name, set string
		value     any
		most      float64
	}{
		{"demo", "name", "Demo", -70},
		{"with a woofer", "woofer.x_m", -0.5, -70},
		{"in a room", "name", "Room", -70},
	} {
		text := design.DefaultTOML()
		set := map[string]any{c.set: c.value}
		switch c.name {
		case "with a woofer":
			set["woofer.y_m"], set["woofer.z_m"], set["woofer.crossover_hz"] = 0.3, 0.1, 120
		case "in a room":
			text = []byte(strings.Replace(string(text), "[surface]\nabsorption = 0.1 ", "[room]\nsize_m = [6, 4.5, 2.7]\nbody_at_m = [1.5, 2.2, 1.2]\nabsorption = 0.3 ", 1))
			set = nil
		}
		for key, value := range set {
			var err error
			if text, err = design.Set(text, key, value); err != nil {
				t.Fatal(err)
			}
		}
		d, err := design.Parse("mine.toml", text)
		if err != nil {
			t.Fatal(err)
		}
		a, err := layout.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		planner, err := timing.NewPlanner(a)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planner.Spot(a.Spot)
		if err != nil {
			t.Fatal(err)
		}
		for _, two := range []bool{false, true} {
			who := Listener{TwoEars: two}
			cases := plain(CasesOf(p))
			s, err := who.Stems(p, cases)
			if err != nil {
				t.Fatal(err)
			}
			want, err := who.Responses(p, cases, Rate)
			if err != nil {
				t.Fatal(err)
			}
			for i := range cases {
				for side, heard := range [][]float64{want[i].Left, want[i].Right} {
					if heard == nil {
						continue
					}
					if db := pinkApart(mixed(s, i, side, len(heard)), heard); db > c.most {
						t.Errorf("%s, two ears %t, case %d, side %d: %.1f dB", c.name, two, i, side, db)
					}
				}
			}
		}
	}
}

// later is by how many samples stems are later than responses.
const later = preRoll * Rate

// pinkApart returns the energy of a difference over that of what is wanted in dB, of pink noise
// up to 20 kHz.
func pinkApart(have, want []float64) float64 {
	off, n := make([]float64, len(want)), len(want)
	for i, v := range want {
		off[i] = have[i] - v
	}
	fft, sums := fourier.NewFFT(n), [2]float64{}
	for i, samples := range [][]float64{off, want} {
		for k, v := range fft.Coefficients(nil, samples) {
			if hz := float64(k) * Rate / float64(n); k > 0 && hz < 20000 {
				sums[i] += math.Pow(cmplx.Abs(v), 2) / hz
			}
		}
	}
	return 10 * math.Log10(sums[0]/sums[1])
}

// mixed sums a case's stems up as their comment says, in the frequencies.
func mixed(s *Stems, c, side, n int) []float64 {
	long := 4 * n
	fft := fourier.NewFFT(long)
	sum := make([]complex128, long/2+1)
	of := func(samples []float64) []complex128 {
		padded := make([]float64, long)
		copy(padded, samples)
		return fft.Coefficients(nil, padded)
	}
	for _, fed := range s.Cases[c] {
		stem := s.Stems[fed.Stem]
		samples := [][]float64{stem.Left, stem.Right}[side]
		filter := of(s.Filters[stem.Filter])
		for k, v := range of(samples) {
			at := float64(stem.From) + fed.Delay - later
			sum[k] += complex(fed.Gain/float64(long), 0) * v * filter[k] * cmplx.Rect(1, -2*math.Pi*float64(k)*at/float64(long))
		}
	}
	return fft.Sequence(nil, sum)[:n]
}

// TestStemsCompact: they are no longer than what is heard, and the drivers' own filter is one.
func TestStemsCompact(t *testing.T) {
	d, err := design.Parse("mine.toml", design.DefaultTOML())
	if err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	planner, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Spot(a.Spot)
	if err != nil {
		t.Fatal(err)
	}
	s, err := Listener{}.Stems(p, []timing.Case{timing.AsBuilt, timing.Aligned, timing.StraightLine})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Stems) != len(p.Channels) || len(s.Filters) != 1 || len(s.Cases) != 3 {
		t.Errorf("%d stems of %d channels, %d filters", len(s.Stems), len(p.Channels), len(s.Filters))
	}
	for _, stem := range s.Stems {
		if len(stem.Left) > 400 || stem.Right != nil {
			t.Errorf("channel %d: %d samples", stem.Channel, len(stem.Left))
		}
	}
}

// BenchmarkStems hears the demo at a place, with one ear and with two.
func BenchmarkStems(b *testing.B) {
	d, _ := design.Parse("mine.toml", design.DefaultTOML())
	a, _ := layout.Build(d)
	planner, _ := timing.NewPlanner(a)
	p, err := planner.Spot(a.Spot)
	if err != nil {
		b.Fatal(err)
	}
	for name, who := range map[string]Listener{"one": {}, "two": {TwoEars: true}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := who.Stems(p, plain(CasesOf(p))); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
