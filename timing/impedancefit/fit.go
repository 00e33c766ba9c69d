package impedancefit

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"strconv"

	"pappus/layout/impedance"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

// Estimate is a value and its standard error, one sigma.
type Estimate struct{ Value, Error float64 }

// Text writes a value and its error in a unit of which there are per in one of SI, both
// with as many decimal places as show two digits of the error.
func (e Estimate) Text(per float64) (value, sigma string) {
	places := 4
	if s := per * e.Error; s > 0 && !math.IsInf(s, 1) {
		places = max(0, min(8, 1-int(math.Floor(math.Log10(s)))))
	}
	return strconv.FormatFloat(per*e.Value, 'f', places, 64), strconv.FormatFloat(per*e.Error, 'f', places, 64)
}

// Fit is a driver's circuit, fitted to its measured impedance. In a body, resonance
// and Q are those in the body.
type Fit struct {
	Coil          Coil
	Resonance     Estimate // Hz
	Qms, Qes, Qts Estimate
	DCOhm         Estimate // Re, wire included
	PeakOhm       Estimate // Re + Res, the coil's inductance left out
	PeakOver      Estimate // PeakOhm over Re
	Inductance    Estimate // H, Le
	SemiOhm       Estimate // ohm s^(1/2), K of [Semi]
	ShuntedHenry  Estimate // H, L2 of [Shunted]
	ShuntOhm      Estimate // ohm, R2 of [Shunted]

	Points  int       // fitted
	LeftOut []float64 // Hz, of points that stand out from their neighbours
	Misfit  float64   // RMS of abs(Z/Zmeasured - 1), near enough
	// Systematic says that neighbours are off alike: the circuit does not quite
	// follow the driver, and errors are larger than stated.
	Systematic bool

	circuit circuit
	spread  *mat.SymDense // covariance of the circuit's values
	score   float64       // the less, the better it tells the points with few values
	seen    [2]float64    // Hz, the first and the last
}

const (
	mostLeftOut = 0.1   // of the points
	standOut    = 6     // times the noise
	leastOut    = 0.002 // of the impedance: what is nearer never stands out
	vague       = 0.3   // the most relative error of Qts
	alike       = 0.5   // correlation of neighbours that is not noise any more
)

// Make fits a driver with a coil to a measured impedance, frequencies in Hz rising,
// magnitudes in ohm, phases in degrees. At least 12 points are needed, 5 of them
// over the peak; some tens to hundreds are better, from an octave or two below the
// resonance up to where the inductance shows. Errors wrap [ErrValue], [ErrFew],
// [ErrNoPeak], [ErrEdge] and [ErrVague].
func Make(points []impedance.Point, coil Coil) (Fit, error) {
	d, err := Define(points, 0)
	if err != nil {
		return Fit{}, err
	}
	kept, out, err := clean(points, d)
	if err != nil {
		return Fit{}, err
	}
	return fitted(kept, out, d, coil)
}

// Best fits each coil and returns the fit that tells the points with the fewest
// values: that of the least Bayesian information criterion (G. Schwarz, Ann.
// Statist. 6 (1978) 461). Errors are those of [Make].
func Best(points []impedance.Point) (Fit, error) {
	d, err := Define(points, 0)
	if err != nil {
		return Fit{}, err
	}
	kept, out, err := clean(points, d)
	if err != nil {
		return Fit{}, err
	}
	best, err := fitted(kept, out, d, Ideal)
	for _, coil := range []Coil{Semi, Shunted} {
		f, wrong := fitted(kept, out, d, coil)
		if wrong == nil && (err != nil || f.score < best.score) {
			best, err = f, nil
		}
	}
	return best, err
}

// fitted fits one coil to points that are clean.
func fitted(points []impedance.Point, out []float64, d Definitions, coil Coil) (Fit, error) {
	s := newSearch(points, coil, d)
	sum, err := s.run()
	if err != nil {
		return Fit{}, err
	}
	n, k := 2*len(points), coil.count()
	if n <= k {
		return Fit{}, fmt.Errorf("impedance: %w: %d for %d values", ErrFew, len(points), k)
	}
	var chol mat.Cholesky
	if !chol.Factorize(s.square) || chol.Cond() > 1e14 {
		return Fit{}, fmt.Errorf("impedance: %w: the points leave some values open", ErrVague)
	}
	spread := mat.NewSymDense(k, nil)
	if err := chol.InverseTo(spread); err != nil {
		return Fit{}, fmt.Errorf("impedance: %w: the points leave some values open", ErrVague)
	}
	spread.ScaleSym(sum/float64(n-k), spread)
	f := Fit{Coil: coil, Points: len(points), LeftOut: out, Misfit: math.Sqrt(sum / float64(len(points))),
		circuit: s.circuit, spread: spread, seen: [2]float64{points[0].Frequency, points[len(points)-1].Frequency}}
	f.score = float64(n)*math.Log(max(sum, 1e-24)/float64(n)) + float64(k)*math.Log(float64(n))
	f.Systematic = f.Misfit > leastOut/10 && correlation(s.off) > alike
	f.values()
	return f, f.judge()
}

// judge refuses values that cannot be relied on.
func (f Fit) judge() error {
	if hz := f.Resonance.Value; !(hz >= f.seen[0] && hz <= f.seen[1]) {
		return fmt.Errorf("impedance: %w: it would be at %.4g Hz", ErrEdge, hz)
	}
	if !(f.Qts.Error < vague*f.Qts.Value) {
		return fmt.Errorf("impedance: %w: Qts would be %.3g, give or take %.2g", ErrVague, f.Qts.Value, f.Qts.Error)
	}
	return nil
}

// values fills in what people ask for.
func (f *Fit) values() {
	x := f.circuit.x
	re, res := math.Exp(x[logRe]), math.Exp(x[logRes])
	part := res / (re + res)
	f.Resonance = f.power(weights{logFs: 1})
	f.DCOhm = f.power(weights{logRe: 1})
	f.Qms = f.power(weights{logQms: 1})
	f.Qes = f.power(weights{logQms: 1, logRe: 1, logRes: -1})
	qts := math.Exp(x[logQms]) * re / (re + res)
	f.Qts = Estimate{qts, qts * f.deviation(weights{logQms: 1, logRe: part, logRes: -part})}
	f.PeakOhm = Estimate{re + res, f.deviation(weights{logRe: re, logRes: res})}
	over := 1 + res/re
	f.PeakOver = Estimate{over, over * part * f.deviation(weights{logRe: -1, logRes: 1})}
	f.Inductance = Estimate{x[overLe] * f.circuit.henry, f.circuit.henry * f.deviation(weights{overLe: 1})}
	switch f.Coil {
	case Semi:
		f.SemiOhm = Estimate{x[overK] * f.circuit.scale, f.circuit.scale * f.deviation(weights{overK: 1})}
	case Shunted:
		f.ShuntedHenry = f.power(weights{logL2: 1})
		f.ShuntOhm = f.power(weights{logR2: 1})
	}
}

// weights are what a circuit's values count for, each at its place.
type weights [most]float64

// power returns the product of powers of values that are logarithms.
func (f *Fit) power(of weights) Estimate {
	sum := 0.0
	for i, x := range f.circuit.x {
		sum += of[i] * x
	}
	v := math.Exp(sum)
	return Estimate{v, v * f.deviation(of)}
}

// deviation returns the standard error of a sum of values with weights.
func (f *Fit) deviation(weight weights) float64 {
	sum := 0.0
	for i := range f.circuit.x {
		for j := range f.circuit.x {
			sum += weight[i] * weight[j] * f.spread.At(i, j)
		}
	}
	return math.Sqrt(max(0, sum))
}

// At returns the fitted impedance in ohm at a frequency in Hz, above 0.
func (f Fit) At(hz float64) complex128 {
	var slope [most]complex128
	return f.circuit.parts().at(&slope, hz)
}

// InductanceAt returns the inductance in H that the coil has at a frequency in Hz:
// its reactance over omega. Data sheets give that at 1 kHz (common practice).
func (f Fit) InductanceAt(hz float64) Estimate {
	w := 2 * math.Pi * hz
	var slope [most]complex128
	p := f.circuit.parts()
	p.at(&slope, hz)
	reactance := w * p.henry * p.le
	weight := weights{overLe: p.henry}
	switch f.Coil {
	case Semi:
		weight[overK] = imag(slope[overK]) / w
		reactance += imag(slope[overK]) * p.k
	case Shunted:
		weight[logL2], weight[logR2] = imag(slope[logL2])/w, imag(slope[logR2])/w
		reactance += imag(slope[logL2] + slope[logR2]) // their sum is what both make together
	}
	return Estimate{reactance / w, f.deviation(weight)}
}

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
func newSearch(points []impedance.Point, coil Coil, d Definitions) *search {
	k := coil.count()
	s := &search{points: points, log: make([]complex128, len(points)), off: make([]complex128, len(points)),
		gradient: make([]float64, k), square: mat.NewSymDense(k, nil)}
	for i, p := range points {
		s.log[i] = complex(math.Log(p.Ohm), p.Degrees*math.Pi/180)
	}
	end := points[len(points)-1]
	w := 2 * math.Pi * end.Frequency
	rise := max(end.Ohm*math.Sin(end.Degrees*math.Pi/180), 0.05*d.DCOhm) / w // H
	x := make([]float64, k)
	x[logRe], x[logRes] = math.Log(d.DCOhm), math.Log(d.PeakOhm-d.DCOhm)
	x[logFs], x[logQms] = math.Log(d.Resonance), math.Log(d.Qms)
	x[overLe] = rise * w / end.Ohm
	switch coil {
	case Semi:
		x[overLe] *= 0.3
		x[overK] = 0.7 * math.Sqrt2 * rise * w / end.Ohm
	case Shunted:
		x[overLe] *= 0.5
		x[logL2], x[logR2] = math.Log(2*rise), math.Log(rise*w)
	}
	s.circuit = circuit{coil, x, end.Ohm / w, end.Ohm / math.Sqrt(w)}
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
	parts := s.circuit.parts()
	for i, p := range s.points {
		z := parts.at(&slope, p.Frequency)
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
	settings := &optimize.Settings{GradientThreshold: 1e-12, MajorIterations: 40,
		Converger: &optimize.FunctionConverge{Relative: 1e-10, Iterations: 4}}
	r, err := optimize.Minimize(problem, start, settings, &optimize.Newton{})
	if r == nil || len(r.X) == 0 {
		return 0, fmt.Errorf("impedance: %w: no circuit follows it: %w", ErrVague, err)
	}
	// A line search that finds nothing lower any more is what the end looks like.
	half := s.solve(r.X)
	if !s.still(half) {
		return 0, fmt.Errorf("impedance: %w: no circuit follows it", ErrVague)
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
	each := 2*half/float64(2*len(s.points)) + 1e-20
	return mat.Dot(&step, g) < 1e-3*each
}

// clean leaves out points that stand out from their neighbours, a tenth of them at
// most, judged by what the nearest of rough fits leaves over.
func clean(points []impedance.Point, d Definitions) (kept []impedance.Point, out []float64, err error) {
	s, least := newSearch(points, Ideal, d), math.Inf(1)
	s.solve(slices.Clone(s.circuit.x))
	for _, coil := range []Coil{Ideal, Semi, Shunted} {
		rough := newSearch(points, coil, d)
		if sum, err := rough.run(); err == nil && sum < least {
			s, least = rough, sum
		}
		if correlation(s.off) < alike {
			break // what is left over is noise
		}
	}
	apart := make([]float64, len(points))
	for i, v := range s.off {
		apart[i] = cmplx.Abs(v - running(s.off, i))
	}
	sorted := slices.Sorted(slices.Values(apart))
	// The median magnitude of two normal deviates is 1.1774 sigma.
	limit := max(leastOut, standOut*sorted[len(sorted)/2]/1.1774)
	limit = max(limit, sorted[len(sorted)-1-int(mostLeftOut*float64(len(sorted)))])
	for i, p := range points {
		if apart[i] > limit {
			out = append(out, p.Frequency)
		} else {
			kept = append(kept, p)
		}
	}
	return kept, out, check(kept)
}

// beside is how many neighbours on each side a running median takes.
const beside = 3

// running returns the medians of real and imaginary parts round a place. At the
// ends it takes as many neighbours on one side as on the other, so that a slope
// does not count.
func running(v []complex128, at int) complex128 {
	reach := min(beside, at, len(v)-1-at)
	if reach == 0 {
		// Half the way to the line through the next two: it is as far off by noise as
		// a median.
		if at == 0 {
			return (v[0] + 2*v[1] - v[2]) / 2
		}
		return (v[at] + 2*v[at-1] - v[at-2]) / 2
	}
	var re, im []float64
	for _, z := range v[at-reach : at+reach+1] {
		re, im = append(re, real(z)), append(im, imag(z))
	}
	slices.Sort(re)
	slices.Sort(im)
	return complex(re[reach], im[reach])
}

// correlation returns how alike neighbours are, from -1 to 1.
func correlation(v []complex128) float64 {
	var both, one float64
	for i, z := range v {
		one += real(z)*real(z) + imag(z)*imag(z)
		if i > 0 {
			both += real(z * cmplx.Conj(v[i-1]))
		}
	}
	if one == 0 {
		return 0
	}
	return both / one
}
