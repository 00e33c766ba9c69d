package omni_test

import (
	"math"
	"testing"

	"pappus/timing/harmonic"
	"pappus/timing/omni"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestSpatialClosedForms: where the level is 20 log of what is even from 0 to 1 over the
// sphere it deviates by 20/ln 10, as a logarithm of that does by one; two levels deviate by
// their difference times sqrt(w (1 - w)).
func TestSpatialClosedForms(t *testing.T) {
	const rings, steps = 1000, 250 // each of one area, about an axis that is none of the levels'
	frame := harmonic.Round(r3.Vec{X: 0.3, Y: -0.5, Z: 0.8})
	var direction []r3.Vec
	var share []float64
	for i := range rings {
		z := (float64(i)+0.5)/rings*2 - 1
		for j := range steps {
			sin, cos := math.Sincos(2 * math.Pi * float64(j) / steps)
			flat := math.Sqrt(1 - z*z)
			direction = append(direction, r3.Add(r3.Scale(z, frame.Z), r3.Add(r3.Scale(flat*cos, frame.X), r3.Scale(flat*sin, frame.Y))))
			share = append(share, 1.0/(rings*steps))
		}
	}
	tests := []struct {
		name  string
		level func(d r3.Vec) float64
		want  float64 // dB
	}{
		{"even", func(r3.Vec) float64 { return 70 }, 0},
		{"dipole", func(d r3.Vec) float64 { return 20 * math.Log10(math.Abs(d.Z)) }, 20 / math.Ln10},
		{"dipole across", func(d r3.Vec) float64 { return 20 * math.Log10(math.Abs(d.X)) }, 20 / math.Ln10},
		{"cardioid", func(d r3.Vec) float64 { return 60 + 20*math.Log10(1+d.Z) }, 20 / math.Ln10},
		{"two halves", func(d r3.Vec) float64 { return 60 + math.Copysign(3, d.Z) }, 3},
		{"a linear level", func(d r3.Vec) float64 { return 5 * d.Y }, 5 / math.Sqrt(3)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			level := make([]float64, len(share))
			for i, d := range direction {
				level[i] = test.level(d)
			}
			if got := omni.Spatial(share, level); math.Abs(got-test.want) > 0.01 {
				t.Errorf("got %.6f dB, want %.6f", got, test.want)
			}
		})
	}
}

// TestSpatialOfTwo: two levels, whichever they are; louder all round is no more uneven.
func TestSpatialOfTwo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, low := rapid.Float64Range(0, 1).Draw(t, "share"), rapid.Float64Range(-100, 100).Draw(t, "low")
		apart := rapid.Float64Range(0, 60).Draw(t, "apart")
		got := omni.Spatial([]float64{w / 2, 1 - w, w / 2}, []float64{low, low + apart, low})
		if want := apart * math.Sqrt(w*(1-w)); math.Abs(got-want) > 1e-6 {
			t.Fatalf("got %.9f dB, want %.9f", got, want)
		}
	})
}

// TestSpatialOfSilence: a silent direction is as uneven as can be; of silence, and of a level
// that is none, nothing is told.
func TestSpatialOfSilence(t *testing.T) {
	silent, share := math.Inf(-1), []float64{0.5, 0.5}
	if got := omni.Spatial(share, []float64{silent, 60}); !math.IsInf(got, 1) {
		t.Errorf("silent on one side: %g dB", got)
	}
	for _, level := range [][]float64{{silent, silent}, {math.NaN(), 60}} {
		if got := omni.Spatial(share, level); !math.IsNaN(got) {
			t.Errorf("%v: %g dB", level, got)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("lengths differ without a panic")
		}
	}()
	omni.Spatial(share, []float64{1})
}
