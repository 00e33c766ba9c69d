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

// byTurns puts directions into groups by turns.
func byTurns(directions, groups int) []int {
	group := make([]int, directions)
	for i := range group {
		group[i] = i % groups
	}
	return group
}

// TestAdditionTheorem: the sum over harmonics is the sum over directions, for complex weights
// and for real ones.
func TestAdditionTheorem(t *testing.T) {
	for _, degree := range []int{0, 1, 2, 7, 40, 150} {
		dice := rand.New(rand.NewPCG(1, uint64(degree)))
		const groups = 7
		var directions []r3.Vec
		for range 23 {
			directions = append(directions, random(dice))
		}
		directions[3], directions[4] = tilted.Z, r3.Scale(-1, tilted.Z) // the poles
		group := byTurns(len(directions), groups)
		weight := [2][]complex128{make([]complex128, groups), make([]complex128, groups)}
		for g := range groups {
			weight[0][g], weight[1][g] = complex(dice.NormFloat64(), dice.NormFloat64()), complex(dice.NormFloat64(), 0)
		}
		var re, im [2][]float64
		for i := range re {
			for range degree + 1 {
				re[i], im[i] = append(re[i], dice.NormFloat64()), append(im[i], dice.NormFloat64())
			}
		}
		re[1], im[1] = re[1][:degree/2+1], im[1][:degree/2+1] // one series may be shorter
		rings := [2]*harmonic.Ring{                           // real weights are a case of their own, and so is one set for all
			harmonic.NewRing(harmonic.NewSum(tilted, directions, group, weight[:], []int{degree + 1, degree + 2}), 2),
			harmonic.NewRing(harmonic.NewSum(tilted, directions, group, weight[1:], []int{degree + 1}), 2),
		}
		for n := range 20 {
			at, ring := random(dice), rings[n%2]
			cos, sin, azimuth := tilted.Angles(at)
			got := make([]complex128, 2)
			ring.Set(cos, sin, func(i int) ([]float64, []float64) { return re[i], im[i] })
			ring.At(got, azimuth)
			for p := range got {
				want, size := complex128(0), 0.0
				for i, d := range directions {
					w := weight[max(p, n%2)][group[i]]
					for j, v := range legendre(max(degree, 1), r3.Dot(d, at))[:len(re[p])] {
						z := complex(re[p][j], im[p][j])
						want += w * z * complex(v, 0)
						size += cmplx.Abs(w * z)
					}
				}
				if e := cmplx.Abs(got[p]-want) / size; e > 1e-13 {
					t.Errorf("degree %d, mix %d: got %v, want %v, off by %.2g", degree, p, got[p], want, e)
				}
			}
		}
	}
}

// TestPower: the mean square of one cap is that of its coefficients, and of two opposite
// caps in and out of step what the even and the odd ones give.
func TestPower(t *testing.T) {
	for _, k := range []float64{0.01, 3, 40, 200} {
		s, err := ball.NewSeries(ball.Cap{Radius: 0.15, HalfAngle: 0.1}, []float64{k}, 1e-15)
		if err != nil {
			t.Fatal(err)
		}
		s.Move(math.Inf(1))
		re, im := s.Terms(0)
		want := 0.0
		for n := range re {
			want += (re[n]*re[n] + im[n]*im[n]) / float64(2*n+1)
		}
		power := func(front, behind complex128) float64 {
			return harmonic.NewSum(tilted, []r3.Vec{{X: 1}, {X: -1}}, []int{0, 1}, [][]complex128{{front, behind}}, []int{len(re)}).Power(0, re, im)
		}
		if got := power(0.6+0.8i, 0); math.Abs(got/want-1) > 1e-12 {
			t.Errorf("k %g: power %.15g, want %.15g", k, got, want)
		}
		sum := power(1, 1) + power(1, -1)
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
					values[c*len(tr.Nodes())+j] += series[c*(degree+1)+n] * v
				}
			}
		}
		tr.Series(back, values)
		for i := range back {
			if math.Abs(back[i]-series[i]) > 1e-11 {
				t.Errorf("degree %d: coefficient %d is %g, want %g", degree, i%(degree+1), back[i], series[i])
			}
		}
	}
}

// TestSphere: for each degree N the weights add up to 1, and the mean of z^(2N), the hardest
// power that the rule must serve, is 1/(2N+1); one degree more comes out wrong.
func TestSphere(t *testing.T) {
	for n := range 121 {
		direction, weight := harmonic.Sphere(n)
		sum, power, beyond := 0.0, 0.0, 0.0
		for i, w := range weight {
			sum += w
			power += w * math.Pow(direction[i].Z, float64(2*n)) * float64(2*n+1)
			beyond += w * math.Pow(direction[i].Z, float64(2*n+2)) * float64(2*n+3)
			if w <= 0 || math.Abs(r3.Norm(direction[i])-1) > 1e-15 {
				t.Errorf("degree %d: weight %g at %v", n, w, direction[i])
			}
		}
		if math.Abs(sum-1) > 1e-12 || math.Abs(power-1) > 1e-11 {
			t.Errorf("degree %d: weights add up to %.15g, the mean of z^%d is %.13g times what it should be", n, sum, 2*n, power)
		}
		if n < 10 && math.Abs(beyond-1) < 1e-9 {
			t.Errorf("degree %d: the rule is larger than it says", n)
		}
	}
}

// TestSphereRound: Legendre polynomials round an axis that is none of the rule's are
// orthogonal up to its degree (DLMF 18.3.1).
func TestSphereRound(t *testing.T) {
	const n = 7
	direction, weight := harmonic.Sphere(n)
	axis := r3.Unit(r3.Vec{X: 0.31, Y: -0.52, Z: 0.77})
	for l := range n + 1 {
		for k := range n + 1 {
			sum, want := 0.0, 0.0
			if l == k {
				want = 1 / float64(2*l+1)
			}
			for i, d := range direction {
				p := legendre(n, r3.Dot(axis, d))
				sum += weight[i] * p[l] * p[k]
			}
			if math.Abs(sum-want) > 1e-13 {
				t.Errorf("P_%d times P_%d: %g, want %g", l, k, sum, want)
			}
		}
	}
}

// TestSameOnAnyNumberOfCores compares moments bit by bit, by the sums that they give.
func TestSameOnAnyNumberOfCores(t *testing.T) {
	const degree = 31
	dice := rand.New(rand.NewPCG(4, 1))
	var directions []r3.Vec
	for range 300 {
		directions = append(directions, random(dice))
	}
	re, im := make([]float64, degree+1), make([]float64, degree+1)
	for n := range re {
		re[n], im[n] = dice.NormFloat64(), dice.NormFloat64()
	}
	cos, sin, azimuth := tilted.Angles(random(dice))
	var sums []complex128
	for _, cores := range []int{1, 2, 5} {
		before := runtime.GOMAXPROCS(cores)
		s := harmonic.NewSum(tilted, directions, byTurns(300, 3), [][]complex128{{1, 2i, -1}}, []int{degree + 1})
		runtime.GOMAXPROCS(before)
		ring, dst := harmonic.NewRing(s, 1), make([]complex128, 1)
		ring.Set(cos, sin, func(int) ([]float64, []float64) { return re, im })
		ring.At(dst, azimuth)
		sums = append(sums, dst[0], complex(s.Power(0, re, im), 0))
	}
	if sums[2] != sums[0] || sums[4] != sums[0] || sums[3] != sums[1] || sums[5] != sums[1] {
		t.Errorf("on 1, 2 and 5 cores: sums and powers %v", sums)
	}
}

// TestRingsAllocateNothing once they are made, whatever they are set to.
func TestRingsAllocateNothing(t *testing.T) {
	const degree, columns = 20, 3
	w := []complex128{1, 0.5i}
	sums := harmonic.NewSum(tilted, []r3.Vec{{X: 1}, {Y: 1}, {X: 0.6, Z: 0.8}}, []int{0, 0, 1}, [][]complex128{w, w, w}, []int{degree + 1, degree, degree + 1})
	ring, sum, z := harmonic.NewRing(sums, columns), make([]complex128, columns), make([]float64, degree+3)
	series := func(i int) ([]float64, []float64) { return z[i:], z[i:] } // one too long, one that fits, one too short
	if n := testing.AllocsPerRun(10, func() { ring.Set(0.6, 0.8, series); ring.At(sum, 0.3) }); n > 0 {
		t.Errorf("%g allocations", n)
	}
}

// TestRound: the frame round an axis is one.
func TestRound(t *testing.T) {
	for _, axis := range []r3.Vec{{X: 2}, {X: -0.95, Y: 0.1}, {Z: 1}, {X: 1, Y: 2, Z: -3}} {
		f := harmonic.Round(axis)
		if r3.Norm(r3.Sub(f.Z, r3.Unit(axis))) > 1e-15 || r3.Norm(r3.Sub(r3.Cross(f.X, f.Y), f.Z)) > 1e-15 || math.Abs(r3.Dot(f.X, f.Y)) > 1e-15 {
			t.Errorf("%v: %+v", axis, f)
		}
	}
}

// TestWithoutDirections: nothing sums to nothing, and lengths that differ panic.
func TestWithoutDirections(t *testing.T) {
	nothing := harmonic.NewSum(tilted, nil, nil, [][]complex128{{1}}, []int{5})
	ring, sum := harmonic.NewRing(nothing, 1), []complex128{2}
	ring.Set(1, 0, func(int) ([]float64, []float64) { return []float64{1, 1}, []float64{1, 1} })
	if ring.At(sum, 1); sum[0] != 0 {
		t.Errorf("the sum is %v", sum[0])
	}
	for name, wrong := range map[string]func(){
		"a group without a driver": func() { harmonic.NewSum(tilted, nil, []int{0}, [][]complex128{{1}}, []int{1}) },
		"a set without terms":      func() { harmonic.NewSum(tilted, nil, nil, [][]complex128{{1}, {1}}, []int{1}) },
		"sets of different groups": func() { harmonic.NewSum(tilted, nil, nil, [][]complex128{{1}, {1, 2}}, []int{1, 1}) },
		"a series too many":        func() { harmonic.NewRing(harmonic.NewSum(tilted, nil, nil, [][]complex128{{1}, {1}}, []int{1, 1}), 3) },
		"a place too many":         func() { ring.At(make([]complex128, 2), 0) },
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
