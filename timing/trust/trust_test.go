package trust_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/timing/trust"
)

// TestFacesOfKnownBodies holds the figure for bodies of 150 mm to what the independent
// solutions gave: up to 3 dB from 1 to 2 kHz for 6 faces, 2 dB for 20, 0.3 dB at 2 kHz for
// 80, and for 12 the table, of which TestDodecahedronIsWithinItsError has all rows.
func TestFacesOfKnownBodies(t *testing.T) {
	geodesic := func(n int) *body.Body {
		b, err := body.Geodesic("icosahedron", n, 0.15)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	platonic := func(name string) *body.Body {
		b, err := body.Platonic(name, 0.15)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for _, test := range []struct {
		name        string
		body        *body.Body
		hz          float64
		least, most float64 // dB
	}{
		{"6 faces", platonic("cube"), 2000, 3, 4},
		{"12 faces", platonic("dodecahedron"), 1500, 3.6, 4},
		{"12 faces, low", platonic("dodecahedron"), 500, 0.2, 0.3},
		{"20 faces", platonic("icosahedron"), 2000, 1.9, 2.1},
		{"80 faces", geodesic(2), 2000, 0.25, 0.4},
		{"720 faces", geodesic(6), 4000, 0, 0.05},
		{"a ball", body.Ball(0.15), 4000, 0, 0},
	} {
		ka := 2 * math.Pi * test.hz / 343.2 * test.body.BallRadius
		if got := trust.Faces(test.body.Deviation(), ka); got < test.least || got > test.most {
			t.Errorf("%s at %g Hz: %.3f dB, want %g to %g", test.name, test.hz, got, test.least, test.most)
		}
	}
}

// TestErrorsRise: neither falls with the frequency, nor with the deviation up to the
// dodecahedron's, and there is none where there is nothing to deviate.
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

// TestKnots holds the curves to the solutions that they are read from: the dodecahedron's
// faces, 0.0895 of its radius off its ball, make 0.98 dB at ka 2.397; the half one, whose
// ball is shifted by 0.209 of its radius, 2.8 dB at ka 2.149, and half the shift half of
// that. A cube's faces are the farthest off that any solution is known for.
func TestKnots(t *testing.T) {
	cube, err := body.Platonic("cube", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	for name, test := range map[string]struct{ got, want, within float64 }{
		"dodecahedron":         {trust.Faces(0.0895, 2.397), 0.98, 0.001},
		"half of it":           {trust.Cut(0.209, 2.149), 2.8, 0.001},
		"half its shift":       {trust.Cut(0.1045, 2.149), 1.4, 0.001},
		"more than its shift":  {trust.Cut(0.22, 2.149), 2.8, 0.001},
		"the farthest known":   {trust.Known, cube.Deviation(), 0.01},
		"a body that is known": {trust.Faces(0.0607, 2.397), 0.98 * 2 / 3.7, 0.001},
	} {
		if math.Abs(test.got-test.want) > test.within {
			t.Errorf("%s: %.4f, want %.4f", name, test.got, test.want)
		}
	}
}

// TestCurves holds each knot of the curves, and where they go between, below and beyond them: along
// the deviation straight, over ka straight on double logarithmic paper, below the first knot as ka
// squared. The values between were computed apart from the program.
func TestCurves(t *testing.T) {
	type row struct{ at, want float64 }
	for name, test := range map[string]struct {
		of   func(at float64) float64
		rows []row
	}{
		"faces over their deviation": {
			func(at float64) float64 { return trust.Faces(at, 3.595) },
			[]row{{0, 0}, {0.01, 0.15859}, {0.0227, 0.36}, {0.04, 1.106632}, {0.0607, 2}, {0.075, 2.844097}, {0.0895, 3.7}, {0.15, 3.7}, {0.194, 3.7}},
		},
		"faces over ka": {
			func(at float64) float64 { return trust.Faces(0.0895, at) },
			[]row{{0.2995, 0.015}, {0.599, 0.06}, {0.85, 0.115626}, {1.198, 0.22}, {1.7, 0.467531}, {2.397, 0.98}, {3, 2.044787}, {3.595, 3.7}, {50, 3.7}},
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
