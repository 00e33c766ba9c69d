package figure

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"pappus/layout"
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

// TestErrorEdges: the edges stand twice the standard error off the measured level, straight
// over log frequency between two bands, and end where nothing was measured.
func TestErrorEdges(t *testing.T) {
	var v verdict.Level
	for i := range 97 {
		v.Frequency = append(v.Frequency, 500*math.Exp2(float64(i)/48))
		v.Measured = append(v.Measured, 0)
	}
	v.Measured[96] = math.NaN()
	if got := errorEdges(v); got != nil {
		t.Errorf("without bands: %v", got)
	}
	v.Bands = []verdict.Band{{Centre: 500, Error: 1}, {Centre: 2000, Error: 3}}
	got := errorEdges(v)
	if len(got) != 2 || got[0].name == "" || got[1].name != "" || len(got[0].level) != 96 {
		t.Fatalf("%+v", got)
	}
	for _, edge := range []struct {
		curve int
		sign  float64
	}{{0, 1}, {1, -1}} {
		if v := edge.sign * got[edge.curve].level[48]; math.Abs(v-4) > 0.05 { // 1 kHz, half way
			t.Errorf("edge %d at 1 kHz: %.2f dB, want 4", edge.curve, v)
		}
	}
}
