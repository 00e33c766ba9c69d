package impedancefit

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/impedance"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

// search is one fit under way.
type search struct {
	points   []impedance.Point
	log      []complex128 // of the measured impedance
	circuit  circuit
	off      []complex128 // ln(Z/Zmeasured)
	gradient []float64
	square   *mat.SymDense // J'J
	half     float64       // of the sum of squares, for the circuit's values
	solved   bool
}

// newSearch begins a fit at the values of the definitions.
func newSearch(points []impedance.Point, coil Coil, d definitions) *search {
	k := coil.count()
	s := &search{points: points, log: make([]complex128, len(points)), off: make([]complex128, len(points)),
		gradient: make([]float64, k), square: mat.NewSymDense(k, nil)}
	for i, p := range points {
		s.log[i] = complex(math.Log(p.Ohm), p.Degrees*math.Pi/180)
	}
	end := points[len(points)-1]
	w := 2 * math.Pi * end.Frequency
	rise := max(end.Ohm*math.Sin(end.Degrees*math.Pi/180), 0.05*d.DCOhm) / w // H; free: a beginning
	x := make([]float64, k)
	x[logRe], x[logRes] = math.Log(d.DCOhm), math.Log(d.PeakOhm-d.DCOhm)
	x[logFs], x[logQms] = math.Log(d.Resonance), math.Log(d.Qms)
	x[overLe] = rise * w / end.Ohm
	switch coil {
	case Semi:
		x[overLe] *= 0.3                                 // free: a beginning
		x[overK] = 0.7 * math.Sqrt2 * rise * w / end.Ohm // free: a beginning
	case Shunted:
		x[overLe] *= 0.5 // free: a beginning
		x[logL2], x[logR2] = math.Log(2*rise), math.Log(rise*w)
	case Power:
		x[logPower], x[exponent] = math.Log(rise*w), 0.7 // free: a beginning
	}
	s.circuit = circuit{coil, x, end.Ohm / w, end.Ohm / math.Sqrt(w), w}
	return s
}

// solve fills in the residuals, the gradient of half their sum of squares, and
// J'J, for the circuit's values, and returns half the sum.
func (s *search) solve(x []float64) float64 {
	if s.solved && slices.Equal(x, s.circuit.x) {
		return s.half
	}
	copy(s.circuit.x, x)
	s.solved = true
	k, sum := len(x), 0.0
	clear(s.gradient)
	var square [most][most]float64
	var slope [most]complex128
	for i, p := range s.points {
		z := s.circuit.at(&slope, p.Frequency)
		d := cmplx.Log(z) - s.log[i]
		d = complex(real(d), math.Remainder(imag(d), 2*math.Pi))
		s.off[i] = d
		sum += real(d)*real(d) + imag(d)*imag(d)
		one := 1 / z
		for a := range k {
			slope[a] *= one
			ga := slope[a]
			s.gradient[a] += real(ga)*real(d) + imag(ga)*imag(d)
			for b := range a + 1 {
				gb := slope[b]
				square[a][b] += real(ga)*real(gb) + imag(ga)*imag(gb)
			}
		}
	}
	for a := range k {
		for b := range a + 1 {
			s.square.SetSym(a, b, square[a][b])
		}
	}
	if s.half = sum / 2; math.IsNaN(sum) {
		s.half = math.Inf(1)
	}
	return s.half
}

// run minimises and returns the sum of squares. It leaves s at the optimum.
func (s *search) run() (float64, error) {
	start := slices.Clone(s.circuit.x)
	problem := optimize.Problem{
		Func: s.solve,
		Grad: func(g, x []float64) { s.solve(x); copy(g, s.gradient) },
		Hess: func(h *mat.SymDense, x []float64) { s.solve(x); h.CopySym(s.square) },
	}
	// free: how far to go on; whether that is far enough is settled by still
	settings := &optimize.Settings{GradientThreshold: 1e-12, MajorIterations: 40,
		Converger: &optimize.FunctionConverge{Relative: 1e-10, Iterations: 4}} // free: and how slowly
	r, err := optimize.Minimize(problem, start, settings, &optimize.Newton{})
	if r == nil || len(r.X) == 0 {
		return 0, fmt.Errorf("%w: no circuit follows it: %w", errVague, err)
	}
	// A line search that finds nothing lower any more is what the end looks like.
	half := s.solve(r.X)
	if !s.still(half) {
		return 0, fmt.Errorf("%w: no circuit follows it", errVague)
	}
	return 2 * half, nil
}

// still tells whether another step would hardly lower the sum, set against the
// noise that is left.
func (s *search) still(half float64) bool {
	var chol mat.Cholesky
	if math.IsInf(half, 0) || !chol.Factorize(s.square) {
		return false
	}
	var step mat.VecDense
	g := mat.NewVecDense(len(s.gradient), s.gradient)
	if err := chol.SolveVecTo(&step, g); err != nil {
		return false
	}
	each := 2*half/float64(2*len(s.points)) + 1e-20 // free: no noise at all
	return mat.Dot(&step, g) < 1e-3*each            // free: a step of a thirtieth of the noise and less is the end
}
