package figure

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// TestRuns: what is not known parts a curve, and a stretch too short to be one is left
// out; only the first carries the name.
func TestRuns(t *testing.T) {
	nan := math.NaN()
	frequency := []float64{100, 110, 120, 130, 140, 150, 160, 170, 180, 190, 200}
	level := []float64{nan, 1, 1, 1, nan, 2, nan, 3, 3, 3, 3}
	got := runs("it", frequency, level, stroke(0, 1))
	if len(got) != 2 || got[0].name != "it" || got[1].name != "" || len(got[0].level) != 3 || len(got[1].level) != 4 {
		t.Fatalf("%+v", got)
	}
	for i, want := range []float64{1, 3} {
		for _, v := range got[i].level {
			if math.Abs(v-want) > 1e-9 {
				t.Errorf("curve %d is %g, want %g", i, v, want)
			}
		}
	}
}

func TestMeasuredNeedsSomething(t *testing.T) {
	p := &timing.Plan{Spot: timing.Spot{Array: &layout.Array{Name: "a lantern"}}}
	if err := Measured(new(bytes.Buffer), SVG, p, verdict.Level{}); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("%v", err)
	}
	const n = 40
	m := recording.Measured{Frequency: make([]float64, n), Harmonics: []recording.Harmonic{{Order: 2, Level: make([]float64, n), Floor: make([]float64, n)}}}
	for i := range n {
		m.Frequency[i] = 100 * math.Exp2(float64(i)/48)
		m.Harmonics[0].Level[i], m.Harmonics[0].Floor[i] = -85, -80
	}
	m.Harmonics[0].Level[7] = -60 // by chance
	if err := Harmonics(new(bytes.Buffer), SVG, p, m); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("noise drawn: %v", err)
	}
	for i := range n {
		m.Harmonics[0].Level[i] = -40
	}
	var b bytes.Buffer
	if err := Harmonics(&b, SVG, p, m); err != nil || !bytes.Contains(b.Bytes(), []byte("2 times the frequency")) {
		t.Errorf("%v", err)
	}
}

// TestWithin: the strip's edges stand twice the standard error off the measured level, straight
// over log frequency between two bands, and end where nothing was measured.
func TestWithin(t *testing.T) {
	v := measuredLevel(97)
	v.Measured[96] = math.NaN()
	if got := within(v); got != nil {
		t.Errorf("without bands: %v", got)
	}
	v.Bands = []verdict.Band{{Centre: 500, Error: 1}, {Centre: 2000, Error: 3}}
	got := within(v)
	if len(got) != 1 || len(got[0]) != 2*96 {
		t.Fatalf("%d pieces: %v", len(got), got)
	}
	for i, want := range map[int]float64{48: 4, 2*96 - 1 - 48: -4} { // 1 kHz, half way
		if at := got[0][i]; math.Abs(at.Y-want) > 0.05 || math.Abs(at.X-1000) > 1 {
			t.Errorf("%.2f dB at %.0f Hz, want %.0f at 1 kHz", at.Y, at.X, want)
		}
	}
}

// measuredLevel returns a level of 0 dB over as much planned, from 500 Hz on, without noise.
func measuredLevel(n int) verdict.Level {
	v := verdict.Level{Low: 500, High: 4000, Planned: make([]float64, n), Measured: make([]float64, n)}
	for i := range n {
		v.Frequency, v.Noise = append(v.Frequency, 500*math.Exp2(float64(i)/48)), append(v.Noise, math.Inf(-1))
	}
	return v
}

// TestMeasuredSaysWhatItIs: the picture has the noise where there is some that is not far below,
// and says so where none is known.
func TestMeasuredSaysWhatItIs(t *testing.T) {
	p := &timing.Plan{Spot: timing.Spot{Array: &layout.Array{Name: "a lantern"}}}
	for name, c := range map[string]struct {
		noise    float64
		has, not string
	}{
		"none":            {math.Inf(-1), "no noise is known", words.NoiseAlone},
		"far below":       {-90, "at least 90 dB above the noise", ">" + words.NoiseAlone},
		"on the picture":  {-60, ">" + words.NoiseAlone, "no noise is known"},
		"near the signal": {-9, ">" + words.NoiseAlone, "no noise is known"},
	} {
		v := measuredLevel(97)
		for f := range v.Noise {
			v.Noise[f] = c.noise
		}
		v.Bands = []verdict.Band{{Centre: 1000, Error: 0.3, Difference: -1}, {Centre: 1259, Error: 0.3}}
		var b bytes.Buffer
		if err := Measured(&b, SVG, p, v); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{c.has, words.BeyondError, words.WithinError, words.Doubtful, words.ErrorBand} {
			if !strings.Contains(b.String(), want) {
				t.Errorf("%s: lacks %q", name, want)
			}
		}
		if strings.Contains(b.String(), c.not) {
			t.Errorf("%s: has %q", name, c.not)
		}
	}
}

// TestDifferenceEnd: an axis holds differences, with the errors of those that can be trusted.
func TestDifferenceEnd(t *testing.T) {
	for name, c := range map[string]struct {
		bands []verdict.Band
		want  float64
	}{
		"none":                {nil, 3},
		"small":               {[]verdict.Band{{Difference: -2, Error: 0.4}}, 3},
		"with its error":      {[]verdict.Band{{Difference: -2, Error: 0.6}}, 6},
		"an error of no word": {[]verdict.Band{{Difference: -2, Error: 4}}, 3},
		"far off":             {[]verdict.Band{{Difference: 6.5, Error: 0.1}}, 12},
		"off the axis":        {[]verdict.Band{{Difference: 30, Error: 0.1}}, 12},
	} {
		if got := differenceEnd(c.bands); got != c.want {
			t.Errorf("%s: %g dB, want %g", name, got, c.want)
		}
	}
}
