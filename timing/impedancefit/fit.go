package impedancefit

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"pappus/layout/impedance"
	"pappus/layout/prose"
	"strconv"

	"gonum.org/v1/gonum/mat"
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
	Exponent      Estimate // n of [Power], which has no Le

	Points  int       // fitted
	LeftOut []float64 // Hz, of points that stand out from their neighbours
	Misfit  float64   // RMS of abs(Z/Zmeasured - 1), near enough
	// Systematic says that neighbours are off alike: the circuit does not quite
	// follow the driver. Errors are widened for it, but it is the circuit that errs.
	Systematic bool

	circuit circuit
	spread  *mat.SymDense   // covariance of the circuit's values by noise
	leak    weights         // by how much leaks move them where the driver is in a box that is all of its spring
	doubts  [doubts]weights // by how much each of what is not noise moves them, one sigma
	score   float64         // the less, the better it tells the points with few values
	seen    [2]float64      // Hz, the first and the last
}

const (
	mostLeftOut = 0.1   // of the points: five harmonics of the mains in a table are fewer
	standOut    = 6     // times the noise, which one point of 5e8 does by itself
	leastOut    = 0.002 // of the impedance: what is nearer never stands out; meters show no less
	vague       = 0.3   // the most relative error of Qts: with more a box may be twice as large as it should
	alike       = 0.5   // correlation of neighbours that is not noise any more, which has 0 give or take 1/sqrt(2n)
	telling     = 3     // times the scatter of that of noise: one of 400 lags by itself
	rough       = 0.01  // of the impedance: a misfit that is not noise and worth a warning; meters promise half of it
	hopeless    = 0.08  // and one that no values are given for; resistive openings come to half of it
)

// ready reads the definitions off points and leaves out those that stand out.
func ready(points []impedance.Point) (d definitions, kept []impedance.Point, out []float64, err error) {
	if d, err = define(points); err != nil {
		return d, nil, nil, err
	}
	if err := d.phases(points); err != nil {
		return d, nil, nil, err
	}
	kept, out, err = clean(points, d)
	return d, kept, out, err
}

// Best fits a driver to a measured impedance, frequencies in Hz rising, magnitudes in ohm,
// phases in degrees. At least 12 points are needed, 5 of them over the peak; some tens to
// hundreds are better, from an octave or two below the resonance up to where the inductance
// shows. Each coil is tried; the fit that tells the points with the fewest values counts:
// that of the least Bayesian information criterion (G. Schwarz, Ann. Statist. 6 (1978) 461),
// among those that a coil can be. An error says what the points lack; where no resonance is to
// be seen it is [ErrNoPeak].
//
// Errors are those by noise, by a resistor or a meter that is half a percent off, by a coil that
// warms, and by the suspension's creep.
func Best(points []impedance.Point) (Fit, error) { return best(points, 0) }

// best is Best where points come from a recording through a resistor in ohm whose inputs nothing
// evens out, so that they are as unsure as the inputs' gains, too; 0: they do not.
func best(points []impedance.Point, series float64) (Fit, error) {
	d, kept, out, err := ready(points)
	if err != nil {
		return Fit{}, err
	}
	best, err := fitted(kept, out, d, Ideal, series)
	for _, coil := range coils[1:] {
		f, wrong := fitted(kept, out, d, coil, series)
		if wrong == nil && f.passive() && (err != nil || f.score < best.score) {
			best, err = f, nil
		}
	}
	if err != nil {
		return Fit{}, err
	}
	return best, best.judge()
}

// passive tells whether a coil can have these values: none that makes power of nothing,
// or falls with frequency.
func (f Fit) passive() bool {
	return f.SemiOhm.Value >= 0 && f.Inductance.Value >= -2*f.Inductance.Error &&
		(f.Coil != Power || f.Exponent.Value > 0 && f.Exponent.Value <= 1)
}

// Rough tells whether the circuit follows the driver only roughly, by more than a
// hundredth and not for noise: the values want a second look before they are used.
func (f Fit) Rough() bool { return f.Systematic && f.Misfit > rough }

// fitted fits one coil to points that are clean.
func fitted(points []impedance.Point, out []float64, d definitions, coil Coil, series float64) (Fit, error) {
	s := newSearch(points, coil, d)
	sum, err := s.run()
	if err != nil {
		return Fit{}, err
	}
	n, k := 2*len(points), coil.count()
	if n <= k {
		return Fit{}, fmt.Errorf("%w: %d for %d values", errFew, len(points), k)
	}
	var chol mat.Cholesky
	if !chol.Factorize(s.square) || chol.Cond() > 1e14 { // free: what of 16 digits is left then is no value
		return Fit{}, fmt.Errorf("%w: the points leave some values open", errVague)
	}
	spread := mat.NewSymDense(k, nil)
	if err := chol.InverseTo(spread); err != nil {
		return Fit{}, fmt.Errorf("%w: the points leave some values open", errVague)
	}
	doubts := s.doubted(&chol, series)
	left, noise := s.lessCreep(doubts[byCreep]), 0.0
	for _, v := range left {
		noise += real(v * cmplx.Conj(v))
	}
	spread.ScaleSym(noise/float64(n-k)*together(left), spread)
	f := Fit{Coil: coil, Points: len(points), LeftOut: out, Misfit: math.Sqrt(sum / float64(len(points))),
		circuit: s.circuit, spread: spread, doubts: doubts, leak: s.moved(&chol, s.circuit.leaking), seen: [2]float64{points[0].Frequency, points[len(points)-1].Frequency}}
	f.score = float64(n)*math.Log(max(sum, 1e-24)/float64(n)) + float64(k)*math.Log(float64(n)) // free: keeps the logarithm finite
	f.Systematic = f.Misfit > leastOut/10 && correlation(s.off, 1) > alike
	f.values()
	return f, nil
}

// judge refuses values that cannot be relied on.
func (f Fit) judge() error {
	if hz := f.Resonance.Value; !(hz >= f.seen[0] && hz <= f.seen[1]) {
		return prose.Errorf("%w: it would be at %.4g Hz", errEdge, hz)
	}
	if f.Systematic && f.Misfit > hopeless {
		return fmt.Errorf("%w: what fits best is off by %.0f percent, and not for noise; measure one driver, in free air or a closed body, without a filter, and nothing may rattle or clip",
			ErrShape, 100*f.Misfit)
	}
	if !(f.Qts.Error < vague*f.Qts.Value) {
		return prose.Errorf("%w: Qts would be %.3g, give or take %.2g", errVague, f.Qts.Value, f.Qts.Error)
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
	if f.Coil == Power {
		f.Exponent = Estimate{x[exponent], f.deviation(weights{exponent: 1})}
		return
	}
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

// Noise returns the fit with the errors that noise alone leaves: by those measurements differ that are
// made alike.
func (f Fit) Noise() Fit {
	f.doubts = [doubts]weights{}
	f.values()
	return f
}

// deviation returns the standard error of a sum of values with weights.
func (f *Fit) deviation(weight weights) float64 {
	out := f.noise(weight)
	for _, by := range f.doubts {
		out = math.Hypot(out, by.dot(weight))
	}
	return out
}

// dot returns the sum of products.
func (w weights) dot(v weights) float64 {
	sum := 0.0
	for i := range w {
		sum += w[i] * v[i]
	}
	return sum
}

// noise is deviation by noise alone.
func (f *Fit) noise(weight weights) float64 {
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
	return f.circuit.at(&slope, hz)
}

// InductanceAt returns the inductance in H that the coil has at a frequency in Hz:
// its reactance over omega. Data sheets give that at 1 kHz (common practice).
func (f Fit) InductanceAt(hz float64) Estimate {
	w := 2 * math.Pi * hz
	var slope [most]complex128
	z := f.circuit.inductive(&slope, w)
	var weight weights
	for i := range weight {
		weight[i] = imag(slope[i]) / w
	}
	return Estimate{imag(z) / w, f.deviation(weight)}
}

// What can be wrong with a measurement.
var (
	errValue   = errors.New("no number that can be")
	errFew     = errors.New("too few points")
	ErrNoPeak  = errors.New("no resonance to be seen")
	errEdge    = errors.New("the resonance is at the edge of the measurement")
	errVague   = errors.New("the measurement does not tell")
	errShift   = errors.New("the second measurement does not fit the first")
	errClipped = errors.New("clipped")
	errQuiet   = errors.New("too quiet")
	errGain    = errors.New("the two inputs are not alike")
	errSwept   = errors.New("the sweep is not all there")
	errPhase   = errors.New("magnitudes and phases do not belong together")
	ErrShape   = errors.New("no driver with one resonance looks like this")
	errSwapped = errors.New("the two sides of the recording look swapped")
)
