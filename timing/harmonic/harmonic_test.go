package harmonic_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"runtime"
	"testing"

	"pappus/timing/ball"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// tilted is a frame that is no coordinate axes.
var tilted = func() harmonic.Frame {
	z := r3.Unit(r3.Vec{X: 0.3, Y: -0.5, Z: 0.8})
	x := r3.Unit(r3.Cross(r3.Vec{Y: 1}, z))
	return harmonic.Frame{X: x, Y: r3.Cross(z, x), Z: z}
}()

func random(dice *rand.Rand) r3.Vec {
	return r3.Unit(r3.Vec{X: dice.NormFloat64(), Y: dice.NormFloat64(), Z: dice.NormFloat64()})
}

// legendre returns P_0 to P_degree by Bonnet's recurrence (DLMF 18.9.1).
func legendre(degree int, x float64) []float64 {
	p := []float64{1, x}
	for n := 1; n < degree; n++ {
		p = append(p, (float64(2*n+1)*x*p[n]-float64(n)*p[n-1])/float64(n+1))
	}
	return p[:degree+1]
}

// TestAdditionTheorem: the sum over harmonics is the sum over directions.
func TestAdditionTheorem(t *testing.T) {
	for _, degree := range []int{0, 1, 2, 7, 40, 150} {
		dice := rand.New(rand.NewPCG(1, uint64(degree)))
		var directions []r3.Vec
		weight := make([][]float64, 4)
		for range 23 {
			directions = append(directions, random(dice))
			for s := range weight {
				weight[s] = append(weight[s], dice.NormFloat64())
			}
		}
		directions[3], directions[4] = tilted.Z, r3.Scale(-1, tilted.Z) // the poles
		z := make([][]complex128, 2)
		for p := range z {
			for range degree + 1 {
				z[p] = append(z[p], complex(dice.NormFloat64(), dice.NormFloat64()))
			}
		}
		z[1] = z[1][:degree/2+1] // one series may be shorter
		ring := harmonic.NewRing(harmonic.NewMoments(tilted, directions, weight, degree))
		for range 20 {
			at := random(dice)
			cos, sin, azimuth := tilted.Angles(at)
			got := make([]complex128, 2)
			ring.Set(cos, sin, z)
			ring.At(got, azimuth)
			for p := range got {
				want, size := complex128(0), 0.0
				for i, d := range directions {
					w := complex(weight[2*p][i], weight[2*p+1][i])
					for n, v := range legendre(degree, r3.Dot(d, at))[:len(z[p])] {
						want += w * z[p][n] * complex(v, 0)
						size += cmplx.Abs(w * z[p][n])
					}
				}
				if e := cmplx.Abs(got[p]-want) / size; e > 1e-13 {
					t.Errorf("degree %d, pair %d: got %v, want %v, off by %.2g", degree, p, got[p], want, e)
				}
			}
		}
	}
}

// TestPower: the mean square of one cap is that of package ball, and of two opposite
// caps in and out of step what the sum of their coefficients gives.
func TestPower(t *testing.T) {
	c := ball.Cap{Radius: 0.15, HalfAngle: 0.1}
	for _, k := range []float64{0.01, 3, 40, 200} {
		z, err := c.Coefficients(nil, k, math.Inf(1), 1e-15)
		if err != nil {
			t.Fatal(err)
		}
		want, err := c.Power(k)
		if err != nil {
			t.Fatal(err)
		}
		one := harmonic.NewMoments(tilted, []r3.Vec{{X: 1}}, [][]float64{{0.6}, {0.8}}, len(z)-1)
		if got := one.Power(z, 0, 1); math.Abs(got/want-1) > 1e-12 {
			t.Errorf("k %g: power %.15g, want %.15g", k, got, want)
		}
		two := harmonic.NewMoments(tilted, []r3.Vec{{X: 1}, {X: -1}}, [][]float64{{1, 1}, {0, 0}, {1, -1}, {0, 0}}, len(z)-1)
		sum := two.Power(z, 0, 1) + two.Power(z, 2, 3) // even and odd n, each four times
		if math.Abs(sum/(4*want)-1) > 1e-12 {
			t.Errorf("k %g: even and odd together %.15g, want %.15g", k, sum, 4*want)
		}
	}
}

// TestTransform: the values of a series, summed by Bonnet's recurrence, come back as it.
func TestTransform(t *testing.T) {
	for _, degree := range []int{0, 3, 25, 60} { // 25 asks for the rule of 26 nodes
		dice := rand.New(rand.NewPCG(2, uint64(degree)))
		const columns = 3
		series := make([]float64, (degree+1)*columns)
		for i := range series {
			series[i] = dice.NormFloat64()
		}
		tr := harmonic.NewTransform(degree, degree+1)
		values, back := make([]float64, len(tr.Nodes())*columns), make([]float64, len(series))
		for j, x := range tr.Nodes() {
			for n, v := range legendre(max(degree, 1), x)[:degree+1] {
				for c := range columns {
					values[j*columns+c] += series[n*columns+c] * v
				}
			}
		}
		tr.Series(back, values, columns)
		for i := range back {
			if math.Abs(back[i]-series[i]) > 1e-11 {
				t.Errorf("degree %d: coefficient %d is %g, want %g", degree, i/columns, back[i], series[i])
			}
		}
	}
}

// TestShared: several series for one set of weights are the sums over directions.
func TestShared(t *testing.T) {
	const degree, series = 21, 4
	dice := rand.New(rand.NewPCG(3, 1))
	var directions []r3.Vec
	weight := [][]float64{nil, nil}
	for range 9 {
		directions = append(directions, random(dice))
		weight[0], weight[1] = append(weight[0], dice.Float64()), append(weight[1], dice.Float64())
	}
	z := make([]float64, (degree+1)*series)
	for i := range z {
		z[i] = dice.NormFloat64()
	}
	ring := harmonic.NewShared(harmonic.NewMoments(tilted, directions, weight, degree), 1, series)
	for range 10 {
		at := random(dice)
		cos, sin, azimuth := tilted.Angles(at)
		got := make([]float64, series)
		ring.Set(cos, sin, z)
		ring.At(got, azimuth)
		for f := range got {
			want := 0.0
			for i, d := range directions {
				for n, v := range legendre(degree, r3.Dot(d, at)) {
					want += weight[1][i] * z[n*series+f] * v
				}
			}
			if math.Abs(got[f]-want) > 1e-11 {
				t.Errorf("series %d: %g, want %g", f, got[f], want)
			}
		}
	}
}

// TestSameOnAnyNumberOfCores compares moments bit by bit, by the sums that they give.
func TestSameOnAnyNumberOfCores(t *testing.T) {
	const degree = 31
	dice := rand.New(rand.NewPCG(4, 1))
	var directions []r3.Vec
	weight, z := make([][]float64, 2), make([]complex128, degree+1)
	for range 300 {
		directions = append(directions, random(dice))
		weight[0], weight[1] = append(weight[0], dice.NormFloat64()), append(weight[1], dice.NormFloat64())
	}
	for n := range z {
		z[n] = complex(dice.NormFloat64(), dice.NormFloat64())
	}
	at := random(dice)
	cos, sin, azimuth := tilted.Angles(at)
	var sum, power []uint64
	for _, cores := range []int{1, 2, 5} {
		before := runtime.GOMAXPROCS(cores)
		m := harmonic.NewMoments(tilted, directions, weight, degree)
		runtime.GOMAXPROCS(before)
		ring, dst := harmonic.NewRing(m), make([]complex128, 1)
		ring.Set(cos, sin, [][]complex128{z})
		ring.At(dst, azimuth)
		sum = append(sum, math.Float64bits(real(dst[0])), math.Float64bits(imag(dst[0])))
		power = append(power, math.Float64bits(m.Power(z, 0, 1)))
	}
	for i := range 2 {
		if sum[2+i] != sum[i] || sum[4+i] != sum[i] || power[1+i] != power[0] {
			t.Errorf("on 1, 2 and 5 cores the sums are %x, the powers %x", sum, power)
		}
	}
}

// TestRingsAllocateNothing once they are made, whatever they are set to.
func TestRingsAllocateNothing(t *testing.T) {
	const degree, columns = 20, 3
	directions := []r3.Vec{{X: 1}, {Y: 1}, {X: 0.6, Z: 0.8}}
	weight := make([][]float64, 2*columns)
	for s := range weight {
		weight[s] = []float64{1, 0.5, -1}
	}
	m := harmonic.NewMoments(tilted, directions, weight, degree)
	ring, shared := harmonic.NewRing(m), harmonic.NewShared(m, 0, columns)
	z, sum := make([][]complex128, columns), make([]complex128, columns)
	for p := range z {
		z[p] = make([]complex128, degree+3-p) // one too long, one that fits, one too short
	}
	series, size := make([]float64, (degree+1)*columns), make([]float64, columns)
	for _, test := range []struct {
		name string
		run  func()
	}{
		{"Ring.Set", func() { ring.Set(0.6, 0.8, z) }},
		{"Ring.At", func() { ring.At(sum, 0.3) }},
		{"Shared.Set", func() { shared.Set(0.6, 0.8, series) }},
		{"Shared.At", func() { shared.At(size, 0.3) }},
	} {
		if n := testing.AllocsPerRun(10, test.run); n > 0 {
			t.Errorf("%s allocates %g times", test.name, n)
		}
	}
}

// TestWithoutDirections: nothing sums to nothing, and lengths that differ panic.
func TestWithoutDirections(t *testing.T) {
	ring := harmonic.NewRing(harmonic.NewMoments(tilted, nil, [][]float64{nil, nil}, 4))
	sum := []complex128{2}
	ring.Set(1, 0, [][]complex128{{1, 1, 1}})
	ring.At(sum, 1)
	if sum[0] != 2 {
		t.Errorf("%v is added", sum[0]-2)
	}
	for name, wrong := range map[string]func(){
		"a negative degree":         func() { harmonic.NewMoments(tilted, nil, nil, -1) },
		"a weight without a driver": func() { harmonic.NewMoments(tilted, nil, [][]float64{{1}}, 1) },
		"a series too few":          func() { ring.Set(1, 0, nil) },
		"a place too many":          func() { ring.At(make([]complex128, 2), 0) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s does not panic", name)
				}
			}()
			wrong()
		}()
	}
}
