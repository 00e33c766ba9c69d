package damping

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/dampinglog"
)

// TestNewGoal: what a design asks for, in grams and millimetres, and what its log says fits.
func TestNewGoal(t *testing.T) {
	var a layout.Array
	a.Box.TargetQ, a.Box.VentRadius, a.Box.VentHoles = 0.7, 0.006, 4
	log := &dampinglog.Log{Fits: dampinglog.Fits{StuffingG: math.NaN(), DepthMM: 50, Vents: -1}, Trials: []dampinglog.Trial{{StuffingG: 60, Vents: 2}}}
	g := NewGoal(&a, layout.Hollow{Stuffing: 0.0351}, log)
	want := Goal{Q: 0.7, MostG: 60, StartG: 35, MostDepthMM: 50, MostVents: 4, StartVents: 4, VentMM: 12}
	if g != want {
		t.Errorf("%+v, want %+v", g, want)
	}
}

// TestThirdOctaves: a ripple whose period is a third of an octave is smoothed away; one of half an
// octave keeps 0.41 of its height, sin(2 pi/3)/(2 pi/3).
func TestThirdOctaves(t *testing.T) {
	for period, want := range map[float64]float64{1.0 / 3: 0, 0.5: 0.4135} {
		var frequency, level []float64
		for i := range 6000 {
			hz := 100 * math.Pow(100, float64(i)/5999)
			frequency, level = append(frequency, hz), append(level, math.Sqrt2*math.Sin(2*math.Pi*math.Log2(hz/500)/period))
		}
		if got, err := uneven(frequency, level); err != nil || math.Abs(got-want) > 0.03 {
			t.Errorf("of %.2f octaves: %.3f dB, want %.3f; %v", period, got, want, err)
		}
	}
}
