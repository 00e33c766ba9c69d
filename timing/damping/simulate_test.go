package damping_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"

	"pappus/layout/dampinglog"
	"pappus/layout/impedance"
	"pappus/timing/impedancefit"

	"pappus/timing/damping"

	"gonum.org/v1/gonum/mat"
)

// body is drivers on one box with resistive openings and stuffing, as a circuit
// (Beranek and Mellow, Acoustics, chapter 7): volume velocity of all cones goes into a
// compliance behind the stuffing's resistance, beside the openings' resistance.
type body struct {
	mass, cms, rms, bl, re, le, area float64
	number                           float64
	compliance                       float64 // of the air, m3/Pa
	flow                             float64 // Pa s/m3 for each gram of stuffing
	opening                          float64 // Pa s/m of the cloth over openings
}

const stiffness = 1.2 * 343.2 * 343.2

// box returns the compliance and the resistances of a state; the openings' is +Inf
// where there are none. Stuffing makes the box seem up to a fifth larger.
func (b body) box(t dampinglog.Trial, packed float64) (compliance, stuffed, open float64) {
	open = math.Inf(1)
	if t.Vents > 0 {
		open = b.opening / (float64(t.Vents) * math.Pi * t.VentMM * t.VentMM / 4e6)
	}
	g := t.StuffingG * packed
	return b.compliance * (1 + 0.2*(1-math.Exp(-g/60))), b.flow * g, open
}

// at returns the impedance of one driver in hertz.
func (b body) at(hz float64, t dampinglog.Trial, packed float64) complex128 {
	s := complex(0, 2*math.Pi*hz)
	c, stuffed, open := b.box(t, packed)
	load := complex(stuffed, 0) + 1/(s*complex(c, 0))
	if !math.IsInf(open, 1) {
		load = load * complex(open, 0) / (load + complex(open, 0))
	}
	moving := complex(b.rms, 0) + s*complex(b.mass, 0) + 1/(s*complex(b.cms, 0)) + complex(b.number*b.area*b.area, 0)*load
	return complex(b.re, 0) + s*complex(b.le, 0) + complex(b.bl*b.bl, 0)/moving
}

// q returns the Q of the pair of poles, by eigenvalues of the state equations in
// displacement, velocity and pressure behind the stuffing, the coil's inductance left
// out.
func (b body) q(t dampinglog.Trial, packed float64) float64 {
	c, stuffed, open := b.box(t, packed)
	loss := b.rms + b.bl*b.bl/b.re
	// The flow into the box is share (N Sd v) less p over the resistances in a row.
	share, leak, pass := 1.0, 0.0, stuffed
	if !math.IsInf(open, 1) {
		share, leak, pass = open/(open+stuffed), 1/(open+stuffed), stuffed*open/(open+stuffed)
	}
	n := b.number * b.area
	// Scaled by a velocity and a time, so that the eigenvalues come out well.
	w := 1 / math.Sqrt(b.mass*b.cms)
	p := 1 / (b.cms * b.area * w)
	state := mat.NewDense(3, 3, []float64{
		0, 1, 0,
		-1, -(loss + b.area*n*pass) / (b.mass * w), -share * b.area * p / (b.mass * w),
		0, share * n / (c * p * w), -leak / (c * w),
	})
	var eig mat.Eigen
	if !eig.Factorize(state, mat.EigenNone) {
		return math.NaN()
	}
	for _, v := range eig.Values(nil) {
		if imag(v) > 1e-9 {
			return cmplx.Abs(v) / (-2 * real(v))
		}
	}
	return 0.5
}

// measure takes the impedance of a state, with noise in it, and reads it.
func (b body) measure(t dampinglog.Trial, packed, noise float64, random *rand.Rand) (damping.Trial, error) {
	points := make([]impedance.Point, 400)
	for i := range points {
		hz := 20 * math.Pow(1000, float64(i)/float64(len(points)-1))
		z := b.at(hz, t, packed) * complex(1+noise*random.NormFloat64(), noise*random.NormFloat64())
		points[i] = impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi}
	}
	return damping.Read(t, points, nil, nil)
}

// with returns a trial of settings and a Q.
func with(vents int, stuffing, depth, q float64) damping.Trial {
	t := dampinglog.Trial{Vents: vents, StuffingG: stuffing, DepthMM: depth}
	if vents > 0 {
		t.VentMM = 8
	}
	return damping.Trial{Trial: t, Q: impedancefit.Estimate{Value: q, Error: 0.002}, PeakOver: impedancefit.Estimate{Value: 1 + q, Error: 0.01}, Resonance: impedancefit.Estimate{Value: 200 + q, Error: 0.1}, Uneven: math.NaN()}
}

// impedancePoints is a bare body's impedance without noise.
func impedancePoints(b body) []impedance.Point {
	points := make([]impedance.Point, 400)
	for i := range points {
		hz := 20 * math.Pow(1000, float64(i)/399)
		z := b.at(hz, dampinglog.Trial{}, 1)
		points[i] = impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi}
	}
	return points
}

// flat is a trial in which no resonance is to be seen.
func flat(stuffing float64) damping.Trial {
	t := with(0, stuffing, 0, math.NaN())
	t.Flat = true
	return t
}
