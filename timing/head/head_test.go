package head_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/reference"
	"pappus/timing/head"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

const (
	degree = math.Pi / 180
	speed  = 343.2 // m/s
)

// one returns what one ear at an angle hears of a sound of pressure 1.
func one(t testing.TB, h *head.Head, r, angle float64) complex128 {
	t.Helper()
	left, right := make([]complex128, 1), make([]complex128, 1)
	h.Add(left, right, []complex128{1}, head.Source{Distance: r, Left: angle, Right: angle})
	if left[0] != right[0] {
		t.Fatalf("both ears at one angle: %v and %v", left[0], right[0])
	}
	return left[0]
}

func at(t testing.TB, k float64) *head.Head {
	t.Helper()
	h, err := head.New([]float64{k}, false)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestReference checks every row of rigid_head.csv: the series of Duda and
// Martens (1998), summed with mpmath.
func TestReference(t *testing.T) {
	rows, err := reference.Table("rigid_head.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		got := one(t, at(t, row.Float("ka")/head.Radius), row.Float("r_over_a")*head.Radius, row.Float("theta_deg")*degree)
		want := complex(row.Float("re"), row.Float("im"))
		if e := cmplx.Abs(got-want) / cmplx.Abs(want); e > 1e-9 {
			t.Errorf("%v: got %v, off by %.2g", row, got, e)
		}
	}
}

// TestMoving: a head that moves is within 0.01 dB and 0.1 degrees of one that does not, but
// where two ways round the head nearly cancel, more than 12 dB below the free field.
func TestMoving(t *testing.T) {
	k := []float64{0, 1, 20, 60, 150, 300, 440}
	moving, err := head.New(k, true)
	if err != nil {
		t.Fatal(err)
	}
	exact, err := head.New(k, false)
	if err != nil {
		t.Fatal(err)
	}
	ones := []complex128{1, 1, 1, 1, 1, 1, 1}
	rapid.Check(t, func(t *rapid.T) {
		from := head.Source{
			Distance: rapid.Float64Range(0.3, 6).Draw(t, "distance, m"),
			Left:     rapid.Float64Range(0, math.Pi).Draw(t, "left, rad"),
			Right:    rapid.Float64Range(0, math.Pi).Draw(t, "right, rad"),
		}
		var have, want [2][]complex128
		for i := range have {
			have[i], want[i] = make([]complex128, len(k)), make([]complex128, len(k))
		}
		moving.Add(have[0], have[1], ones, from)
		exact.Add(want[0], want[1], ones, from)
		for i := range have {
			for f := range k {
				if e := cmplx.Abs(have[i][f] - want[i][f]); e > 0.00115*max(cmplx.Abs(want[i][f]), 0.25) {
					t.Fatalf("ear %d, k %g: %v, want %v", i, k[f], have[i][f], want[i][f])
				}
			}
		}
	})
}

// lag returns by how much the phase at an ear away from the sound falls behind
// that at the near one, in rad, for a distant source at an azimuth in rad and ears
// at the ends of a diameter, as the published delays have them. It is followed up
// from low frequencies, so that no turn is lost.
func lag(t *testing.T, ka, azimuth float64) float64 {
	phase, before := 0.0, complex128(1)
	steps := max(1, int(math.Ceil(ka/0.5)))
	for i := 1; i <= steps; i++ {
		h := at(t, ka*float64(i)/float64(steps)/head.Radius)
		now := one(t, h, 100, math.Pi/2-azimuth) / one(t, h, 100, math.Pi/2+azimuth)
		phase += cmplx.Phase(now / before)
		before = now
	}
	return phase
}

// TestDelayAtLowFrequencies: 3 (a/c) sin(azimuth), G. F. Kuhn, J. Acoust. Soc. Am.
// 62 (1977) 157, within 1 percent at ka 0.1, which is 62 Hz.
func TestDelayAtLowFrequencies(t *testing.T) {
	for _, azimuth := range []float64{5, 20, 45, 70, 90} {
		got := lag(t, 0.1, azimuth*degree) / 0.1
		if want := 3 * math.Sin(azimuth*degree); math.Abs(got/want-1) > 0.01 {
			t.Errorf("%g degrees: %.4f a/c, want %.4f", azimuth, got, want)
		}
	}
}

// TestDelayAtHighFrequencies: (a/c)(azimuth + sin(azimuth)), the delay of the
// path (R. S. Woodworth and G. Schlosberg, Experimental Psychology, 1954), within
// 1 percent for the group delay at ka 400; the wave that creeps is a little slower
// than sound in air.
func TestDelayAtHighFrequencies(t *testing.T) {
	const ka, step = 400.0, 0.2
	for _, azimuth := range []float64{5, 20, 45, 60} {
		var ratio [2]complex128
		for i := range ratio {
			h := at(t, (ka+step*float64(i))/head.Radius)
			ratio[i] = one(t, h, 100, (90-azimuth)*degree) / one(t, h, 100, (90+azimuth)*degree)
		}
		got := cmplx.Phase(ratio[1]/ratio[0]) / step
		if want := azimuth*degree + math.Sin(azimuth*degree); math.Abs(got/want-1) > 0.01 {
			t.Errorf("%g degrees: %.4f a/c, want %.4f", azimuth, got, want)
		}
	}
}

// TestFacing: straight on, the pressure rises by 6 dB at high frequencies, and not
// at all at low ones (Duda and Martens 1998, for a distant source).
func TestFacing(t *testing.T) {
	for _, c := range []struct{ ka, db, within float64 }{{0.01, 0, 0.02}, {400, 6.02, 0.05}} {
		got := 20 * math.Log10(cmplx.Abs(one(t, at(t, c.ka/head.Radius), 100, 0)))
		if math.Abs(got-c.db) > c.within {
			t.Errorf("ka %g: %.3f dB, want %.2f", c.ka, got, c.db)
		}
	}
}

func TestEars(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		azimuth := rapid.Float64Range(-4, 4).Draw(t, "azimuth")
		nose := r3.Vec{X: 3 * math.Cos(azimuth), Y: 3 * math.Sin(azimuth), Z: rapid.Float64Range(-5, 5).Draw(t, "z")}
		left, right := head.Ears(nose)
		nose.Z = 0
		for name, ear := range map[string]r3.Vec{"left": left, "right": right} {
			if math.Abs(r3.Norm(ear)-1) > 1e-12 || ear.Z != 0 {
				t.Errorf("%s ear %v", name, ear)
			}
			if cos := r3.Cos(nose, ear); math.Abs(cos-math.Cos(100*degree)) > 1e-12 {
				t.Errorf("%s ear at cosine %g", name, cos)
			}
		}
		if r3.Cross(nose, left).Z < 0 || r3.Cross(nose, right).Z > 0 {
			t.Error("left and right are changed over")
		}
	})
}

func TestErrors(t *testing.T) {
	for _, k := range []float64{-1, math.NaN(), math.Inf(1)} {
		if _, err := head.New([]float64{k}, false); err == nil {
			t.Errorf("no error for k = %g", k)
		}
	}
}

// A source too near is taken from Nearest, 1.05 radii.
func TestNear(t *testing.T) {
	h := at(t, 50)
	if got, want := one(t, h, 0, 1), one(t, h, 1.05*head.Radius, 1); got != want {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestMovingAllocatesNothing(t *testing.T) {
	k := []float64{1, 20, 60}
	h, err := head.New(k, true)
	if err != nil {
		t.Fatal(err)
	}
	left, right, p := make([]complex128, 3), make([]complex128, 3), []complex128{1, 1, 1}
	from := head.Source{Distance: 1, Left: 1, Right: 2}
	if n := testing.AllocsPerRun(50, func() { h.Add(left, right, p, from) }); n > 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkAdd(b *testing.B) {
	k := make([]float64, 513)
	for i := range k {
		k[i] = float64(i) * 0.86
	}
	left, right, p := make([]complex128, len(k)), make([]complex128, len(k)), make([]complex128, len(k))
	moving, err := head.New(k, true)
	if err != nil {
		b.Fatal(err)
	}
	still, err := head.New(k, false)
	if err != nil {
		b.Fatal(err)
	}
	for name, h := range map[string]*head.Head{"moving": moving, "still": still} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				h.Add(left, right, p, head.Source{Distance: 1.8, Left: 1.7, Right: 1.8})
			}
		})
	}
}

// The ear that is turned to the sound hears more of a high tone.
func ExampleHead_Add() {
	h, err := head.New([]float64{2 * math.Pi * 4000 / speed}, false)
	if err != nil {
		fmt.Println(err)
		return
	}
	left, right := make([]complex128, 1), make([]complex128, 1)
	h.Add(left, right, []complex128{1}, head.Source{Distance: 2, Left: 10 * degree, Right: 140 * degree})
	fmt.Printf("%.1f dB and %.1f dB\n", 20*math.Log10(cmplx.Abs(left[0])), 20*math.Log10(cmplx.Abs(right[0])))
	// Output: 6.0 dB and -5.5 dB
}
