package trust_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/timing/trust"
)

// TestErrorsRise: neither falls with the frequency, nor with the deviation, and there is none where
// there is nothing to deviate.
func TestErrorsRise(t *testing.T) {
	var faces, cut float64
	for ka := 0.01; ka < 60; ka *= 1.1 {
		f, c := trust.Faces(0.05, ka), trust.Cut(0.1, ka)
		if f < faces || c < cut || trust.Faces(0.08, ka) < f || trust.Cut(0.2, ka) < c || trust.Faces(0, ka) != 0 || trust.Cut(0, ka) != 0 {
			t.Fatalf("ka %g: %g dB of the faces after %g, %g of the cut after %g", ka, f, faces, c, cut)
		}
		faces, cut = f, c
	}
	if trust.Cut(5, 1) != trust.Cut(0.3, 1) {
		t.Error("a cut's error has no end")
	}
}

// TestKnots holds the curve of a cut to the solution that it is read from: the half dodecahedron, whose
// ball is shifted by 0.209 of its radius, 2.8 dB at ka 2.149, and half the shift half of
// that. A tetrahedron's faces are the farthest off that any solution is known for.
func TestKnots(t *testing.T) {
	four, err := body.Platonic("tetrahedron", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	for name, test := range map[string]struct{ got, want, within float64 }{
		"half of a dodecahedron": {trust.Cut(0.209, 2.149), 2.8, 0.001},
		"half its shift":         {trust.Cut(0.1045, 2.149), 1.4, 0.001},
		"more than its shift":    {trust.Cut(0.22, 2.149), 2.8, 0.001},
		"the farthest known":     {trust.Known, four.Deviation(), 0.01},
	} {
		if math.Abs(test.got-test.want) > test.within {
			t.Errorf("%s: %.4f, want %.4f", name, test.got, test.want)
		}
	}
}

// TestCurves holds each knot of the curves, and where they go between, below and beyond them: straight on
// double logarithmic paper, below the first knot as ka squared. The values between were computed apart from the program.
func TestCurves(t *testing.T) {
	type row struct{ at, want float64 }
	for name, test := range map[string]struct {
		of   func(at float64) float64
		rows []row
	}{
		"faces over ka": {
			func(at float64) float64 { return trust.Faces(1, at) },
			[]row{{0.1, 0.065}, {0.2, 0.26}, {0.27, 0.58}, {0.36, 1.15}, {0.43, 1.65}, {0.5, 2}, {0.523, 2.2}, {0.546, 3.68}, {0.85, 3.9}, {50, 3.9}},
		},
		"faces over their deviation": { // 0.27 / 2 and so on
			func(at float64) float64 { return trust.Faces(at, 2) },
			[]row{{0, 0}, {0.0767437988, 0.58}, {0.1393644072, 1.65}, {0.2367060930, 3.765140}, {1, 3.9}},
		},
		"faces of bodies that are all but round": {
			func(at float64) float64 { return trust.Faces(at, 50) },
			[]row{{0, 0}, {0.01, 0.616740}, {0.0227, 1.4}, {0.03, 2.876404}, {0.0405, 3.9}, {0.06, 3.9}},
		},
		"a cut over ka": {
			func(at float64) float64 { return trust.Cut(0.209, at) },
			[]row{{0.2685, 0.11}, {0.537, 0.44}, {0.8, 0.906837}, {1.075, 1.55}, {1.5, 2.059928}, {2.149, 2.8}, {2.7, 3.349525}, {3.224, 3.85}, {3.8, 3.906856}, {4.298, 3.95}, {50, 3.95}},
		},
	} {
		for _, r := range test.rows {
			if got := test.of(r.at); math.Abs(got-r.want) > 2e-6 {
				t.Errorf("%s: %.6f dB at %.4f, want %.6f", name, got, r.at, r.want)
			}
		}
	}
}
