package directivity_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"runtime"
	"testing"

	"pappus/layout"
	"pappus/timing/air"
	"pappus/timing/ball"
	"pappus/timing/directivity"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

const degree = math.Pi / 180

// axis is no direction of any rule.
var axis = r3.Unit(r3.Vec{X: 0.31, Y: -0.52, Z: 0.77})

// TestEveryDegree: for each degree N the weights add up to 4 pi, and the mean of
// z^(2N), the hardest power that the rule must serve, is 1/(2N+1).
func TestEveryDegree(t *testing.T) {
	for n := range 121 {
		r := directivity.Exact(n)
		sum, power := 0.0, 0.0
		for i, w := range r.Weight {
			sum += w
			power += w * math.Pow(r.Direction[i].Z, float64(2*n))
			if w <= 0 || math.Abs(r3.Norm(r.Direction[i])-1) > 1e-15 {
				t.Errorf("degree %d: weight %g at %v", n, w, r.Direction[i])
			}
		}
		if len(r.Weight) != len(r.Direction) || math.Abs(sum/(4*math.Pi)-1) > 1e-13 {
			t.Errorf("degree %d: %d weights of %d directions add up to %.15g", n, len(r.Weight), len(r.Direction), sum)
		}
		if mean := power / (4 * math.Pi) * float64(2*n+1); math.Abs(mean-1) > 1e-11 {
			t.Errorf("degree %d: mean of z^%d is %.13g times what it should be", n, 2*n, mean)
		}
	}
}

// TestDegree holds the rule for the degree to its formula, by hand.
func TestDegree(t *testing.T) {
	for _, test := range []struct {
		ka   float64
		want int
	}{{0, 8}, {1, 12}, {8, 22}, {-8, 22}, {27, 44}, {64, 84}} {
		if got := directivity.Degree(test.ka); got != test.want {
			t.Errorf("ka %g: degree %d, want %d", test.ka, got, test.want)
		}
	}
}

// harmonic returns the spherical harmonic of degree l and order m >= 0 with unit
// norm, by the recurrence DLMF 14.10.3 for the associated Legendre functions
// normalised as in DLMF 14.30.1.
func harmonic(l, m int, d r3.Vec) complex128 {
	p := math.Sqrt(1 / (4 * math.Pi))
	flat := math.Hypot(d.X, d.Y)
	for i := 1; i <= m; i++ {
		p *= -flat * math.Sqrt(float64(2*i+1)/float64(2*i))
	}
	before := 0.0
	for n := m + 1; n <= l; n++ {
		a := math.Sqrt(float64(4*n*n-1) / float64(n*n-m*m))
		b := 0.0
		if n > m+1 {
			b = math.Sqrt(float64((n-1)*(n-1)-m*m) / float64(4*(n-1)*(n-1)-1))
		}
		before, p = p, a*(d.Z*p-b*before)
	}
	return cmplx.Rect(p, float64(m)*math.Atan2(d.Y, d.X))
}

// TestHarmonics: spherical harmonics to the rule's degree come out orthonormal;
// one degree more does not.
func TestHarmonics(t *testing.T) {
	const n = 7
	r := directivity.Exact(n)
	product := func(l, m, k, j int) complex128 {
		var sum complex128
		for i, d := range r.Direction {
			sum += complex(r.Weight[i], 0) * harmonic(l, m, d) * cmplx.Conj(harmonic(k, j, d))
		}
		return sum
	}
	for l := range n + 1 {
		for m := range l + 1 {
			for k := range n + 1 {
				for j := range k + 1 {
					want := 0.0
					if l == k && m == j {
						want = 1
					}
					if got := product(l, m, k, j); cmplx.Abs(got-complex(want, 0)) > 1e-13 {
						t.Errorf("Y(%d,%d) times Y(%d,%d): %v, want %g", l, m, k, j, got, want)
					}
				}
			}
		}
	}
	if got := product(n+1, 0, n+1, 0); cmplx.Abs(got-1) < 1e-3 {
		t.Errorf("degree %d still comes out as %v; the rule is larger than it says", n+1, got)
	}
}

// capField returns the field of a cap round the axis from one of ball's series.
func capField(series *ball.Series) directivity.Fill {
	return func(dst []complex128, points []r3.Vec) {
		n := series.Len()
		for i, p := range points {
			series.At(dst[i*n:(i+1)*n], math.Atan2(r3.Norm(r3.Cross(axis, p)), r3.Dot(axis, p)))
		}
	}
}

// TestPowerOfCap: the far field's power is that of the series' coefficients.
func TestPowerOfCap(t *testing.T) {
	for _, alpha := range []float64{1, 6, 30, 90} {
		c := ball.Cap{Radius: 0.15, HalfAngle: alpha * degree}
		for _, ka := range []float64{0, 0.1, 0.5, 1, 3, 10, 30, 60} {
			far, err := ball.NewFarSeries(c, []float64{ka / c.Radius})
			if err != nil {
				t.Fatal(err)
			}
			want, err := c.Power(ka / c.Radius)
			if err != nil {
				t.Fatal(err)
			}
			var got [1]float64
			directivity.Quadrature(ka).Power(got[:], 1, capField(far))
			if e := math.Abs(got[0]/want - 1); e > 1e-9 {
				t.Errorf("alpha %g, ka %g: power %.12g, want %.12g, off by %.2g", alpha, ka, got[0], want, e)
			}
		}
	}
}

// TestConvergence: a rule of double the degree changes nothing, in the far field
// and at two radii.
func TestConvergence(t *testing.T) {
	worst := 0.0
	for _, alpha := range []float64{1, 6, 30, 90} {
		c := ball.Cap{Radius: 0.15, HalfAngle: alpha * degree}
		for _, ka := range []float64{0.1, 1, 3, 10, 30, 60} {
			k := []float64{ka / c.Radius}
			far, err := ball.NewFarSeries(c, k)
			if err != nil {
				t.Fatal(err)
			}
			near, err := ball.NewSeries(c, k, 2*c.Radius)
			if err != nil {
				t.Fatal(err)
			}
			for name, series := range map[string]*ball.Series{"far": far, "two radii": near} {
				var once, twice [1]float64
				directivity.Quadrature(ka).Power(once[:], 1, capField(series))
				directivity.Exact(2*directivity.Degree(ka)).Power(twice[:], 1, capField(series))
				change := math.Abs(once[0]/twice[0] - 1)
				worst = max(worst, change)
				if change > 1e-6 {
					t.Errorf("%s, alpha %g, ka %g: doubling the degree changes power by %.2g", name, alpha, ka, change)
				}
			}
		}
	}
	t.Logf("greatest change %.2g", worst)
}

// TestBaffledPiston: Kinsler et al., 7.6: a piston in an infinite baffle has a
// directivity of (ka)^2/(1 - J1(2ka)/(ka)). The same pressure sent to the other
// side too leaves a smooth field of double the power.
func TestBaffledPiston(t *testing.T) {
	for _, ka := range []float64{0.1, 1, 2, 5, 20, 60} {
		var power [1]float64
		directivity.Quadrature(ka).Power(power[:], 1, func(dst []complex128, points []r3.Vec) {
			for i, p := range points {
				dst[i] = complex(2*radiate.Piston(ka*r3.Norm(r3.Cross(axis, p))), 0)
			}
		})
		got := directivity.Index(2, 1, power[0]/2)
		want := 10 * math.Log10(ka*ka/(1-math.J1(2*ka)/ka))
		if math.Abs(got-want) > 1e-8 {
			t.Errorf("ka %g: %.10f dB, want %.10f", ka, got, want)
		}
	}
}

// TestIndex: patterns in closed form.
func TestIndex(t *testing.T) {
	tests := []struct {
		name    string
		pattern func(cos float64) float64
		want    float64 // directivity towards the axis
	}{
		{"even", func(float64) float64 { return 1 }, 1},
		{"dipole", func(c float64) float64 { return c }, 3},
		{"cardioid", func(c float64) float64 { return (1 + c) / 2 }, 3},
		{"hypercardioid", func(c float64) float64 { return (1 + 3*c) / 4 }, 4},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			const distance = 2.5
			var power [1]float64
			directivity.Quadrature(1).Power(power[:], distance, func(dst []complex128, points []r3.Vec) {
				for i, p := range points {
					dst[i] = cmplx.Rect(test.pattern(r3.Dot(axis, p)/distance)/distance, 7)
				}
			})
			got := directivity.Index(complex(0, 1/distance), distance, power[0])
			if want := 10 * math.Log10(test.want); math.Abs(got-want) > 1e-12 {
				t.Errorf("got %.12f dB, want %.12f", got, want)
			}
		})
	}
}

// twoPoints returns the field of two point sources in phase, at either side of
// the origin along the axis, and their medium.
func twoPoints(half float64, frequency []float64) (directivity.Fill, *radiate.Medium) {
	m := radiate.NewMedium(air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}, frequency).WithoutLoss()
	field := radiate.Point(m)
	mounts := []layout.Mount{{Point: r3.Scale(half, axis), Normal: axis}, {Point: r3.Scale(-half, axis), Normal: axis}}
	weight := make([]complex128, len(frequency))
	for f := range weight {
		weight[f] = 1
	}
	return func(dst []complex128, points []r3.Vec) {
		for _, mount := range mounts {
			field.Add(dst, mount, points, weight)
		}
	}, m
}

// TestTwoPoints: two equal sources a distance b apart radiate 2 (1 + sin(kb)/(kb))
// times the power of one (Beranek and Mellow, chapter 4; Lord Rayleigh, Theory
// of Sound, 280), several frequencies at once.
func TestTwoPoints(t *testing.T) {
	const half = 0.16
	frequency := []float64{20, 125, 1000, 2500, 8000}
	fill, m := twoPoints(half, frequency)
	power := make([]float64, len(frequency))
	directivity.Quadrature(m.Wavenumber[4]*half).Power(power, 1e4, fill)
	for f, k := range m.Wavenumber {
		b := 2 * half
		want := 2 * (1 + math.Sin(k*b)/(k*b))
		if math.Abs(power[f]/want-1) > 1e-7 { // 1/r at 10 km
			t.Errorf("%g Hz: power %.9f, want %.9f", frequency[f], power[f], want)
		}
	}
}

// TestSameBits: the number of cores does not change the result.
func TestSameBits(t *testing.T) {
	fill, m := twoPoints(0.16, []float64{500, 3000})
	rule := directivity.Quadrature(m.Wavenumber[1] * 0.16)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	var one, many [2]float64
	rule.Power(one[:], 2, fill)
	for _, cores := range []int{2, 3, 8} {
		runtime.GOMAXPROCS(cores)
		if rule.Power(many[:], 2, fill); one != many {
			t.Errorf("%v on one core, %v on %d", one, many, cores)
		}
	}
}

func ExampleRule_Power() {
	// A cap of 10 degrees on a ball of 150 mm at 3 kHz.
	c := ball.Cap{Radius: 0.15, HalfAngle: 10 * degree}
	k := 2 * math.Pi * 3000 / 344
	far, err := ball.NewFarSeries(c, []float64{k})
	if err != nil {
		panic(err)
	}
	var power [1]float64
	directivity.Quadrature(k*c.Radius).Power(power[:], 1, capField(far))
	front := make([]complex128, 1)
	far.At(front, 0)
	fmt.Printf("power %.2f, index %.1f dB\n", power[0], directivity.Index(front[0], 1, power[0]))
	// Output: power 1.26, index 4.7 dB
}

func BenchmarkQuadrature(b *testing.B) {
	for _, ka := range []float64{5, 60} {
		b.Run(fmt.Sprint("ka ", ka), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				directivity.Quadrature(ka)
			}
		})
	}
}

func BenchmarkPower(b *testing.B) {
	frequency := make([]float64, 35)
	for f := range frequency {
		frequency[f] = 100 * math.Exp(0.1*float64(f))
	}
	fill, m := twoPoints(0.16, frequency)
	rule := directivity.Quadrature(m.Wavenumber[34] * 0.16)
	power := make([]float64, len(frequency))
	b.ReportAllocs()
	for b.Loop() {
		rule.Power(power, 2, fill)
	}
}
