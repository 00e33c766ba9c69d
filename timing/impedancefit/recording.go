package impedancefit

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/impedance"
	"pappus/layout/prose"
	"pappus/timing/recording"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// Recording is a sweep recorded on two channels at once, of one voltage before a
// known resistor in series with the driver and one after it:
//
//	amplifier --+-- resistor --+-- driver -- ground
//	          Whole          Driver
//
// Whole is the left channel of a stereo recording, Driver the right one. Both must
// be recorded with the same gain; the scale itself does not matter. A second recording
// with the resistor bridged by a wire, so that both inputs hear the same, tells how
// much their gains differ.
type Recording struct {
	Whole, Driver []float64
	Rate          float64 // samples per second
	SeriesOhm     float64
	Low, High     float64 // Hz, of the sweep: what is outside is left out

	Bridged *Recording // with the resistor bridged; nil: the gains are taken for equal
}

const (
	perOctave  = 24   // points
	leastBins  = 7    // of the transform that make one point
	quietLevel = 1e-4 // RMS of full scale
	// leastPeriods of the lowest frequency put the 7 bins of a point there into a tenth of an octave.
	leastPeriods = 100
	mostSamples  = 1 << 23 // about 3 minutes at 48 kHz
	// Points whose relative standard error is above this are left out: of so few decibels a fit makes nothing.
	poor = 0.1
	// A part of the band where the sweep has less than this share of the energy that it
	// has in the middle one of all parts is not swept. A sweep that is cut off leaves
	// 43 dB less in the octave beyond.
	swept = 1e-3
	bands = 3 // to the octave
	// The gains of two inputs differ by no more than this factor: more is another setting of one.
	mostGain = 2.0
)

// Impedance returns the impedance over frequency,
//
//	Z = R H/(1 - H),  H = Driver/Whole
//
// H is the ratio of the cross spectrum to the spectrum of Whole, the estimate that
// noise in Driver does not bias (J. S. Bendat and A. G. Piersol, Random Data, chapter
// 6, from memory), less what noise in Whole adds to its spectrum. The whole recording is transformed at once, so the sweep and its
// decay must be in it; at each of 24 points to the octave, fewer where the transform
// is too coarse for that, a parabola through the ratios of its neighbours within half a
// step, weighted by the spectrum of Whole, smooths without flattening the peak. No two
// points share a neighbour, so that noise in one tells nothing of the next. Points
// that noise leaves uncertain by more than a tenth are left out.
func (r Recording) Impedance() ([]impedance.Point, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	whole, driver, bin := r.spectra()
	gain, err := r.gains()
	if err != nil {
		return nil, err
	}
	low, high := max(r.Low, 2*float64(leastBins)*bin), min(r.High, 0.47*r.Rate)
	if err := reaches(whole, bin, low, high); err != nil {
		return nil, err
	}
	var out []impedance.Point
	over, all := 0, 0
	for hz := low; hz <= high; hz = max(hz*math.Exp2(1.0/perOctave), hz+leastBins*bin) {
		h, sigma, ok := ratio(whole, driver, hz/bin)
		g, unsure, heard := gain(hz)
		h, sigma, ok = h/g, math.Hypot(sigma, cmplx.Abs(h)*unsure), ok && heard
		if all++; cmplx.Abs(h) > 1 {
			over++
		}
		z := complex(r.SeriesOhm, 0) * h / (1 - h)
		if !ok || !certain(h, sigma) || !(cmplx.Abs(z) > 0) || cmplx.IsInf(z) {
			continue
		}
		out = append(out, impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi})
	}
	switch {
	case 2*over > all:
		return nil, fmt.Errorf("%w: the voltage over the driver is the higher one; left must be before the resistor, right after it; or no current flows, since nothing is connected or all strings are open", errSwapped)
	case len(out) < all/2 || len(out) < leastPoints:
		return nil, fmt.Errorf("%w: noise leaves %d of %d points. See first that nothing is shorted; then play louder, or take a resistor nearer to the driver's impedance", errVague, len(out), all)
	}
	return out, nil
}

// certain tells whether an impedance is known well enough by its ratio: dZ/Z = dH/(H (1-H)).
func certain(h complex128, sigma float64) bool { return sigma/(cmplx.Abs(h)*cmplx.Abs(1-h)) < poor }

// spectra returns those of both sides and the spacing of their bins in Hz.
func (r Recording) spectra() (whole, driver []complex128, bin float64) {
	n := recording.Length(len(r.Whole))
	return recording.Spectrum(level(r.Whole), n), recording.Spectrum(level(r.Driver), n), r.Rate / float64(n)
}

// gains returns the right side's gain over the left one's and its relative standard
// error, at a frequency in Hz, by the recording with the resistor bridged: 1 where there
// is none.
func (r Recording) gains() (func(hz float64) (gain complex128, sigma float64, ok bool), error) {
	if r.Bridged == nil {
		return func(float64) (complex128, float64, bool) { return 1, 0, true }, nil
	}
	b := *r.Bridged
	b.SeriesOhm, b.Low, b.High = r.SeriesOhm, r.Low, r.High
	if err := b.check(); err != nil {
		return nil, fmt.Errorf("with the resistor bridged: %w", err)
	}
	whole, driver, bin := b.spectra()
	middle, _, ok := ratio(whole, driver, math.Sqrt(r.Low*r.High)/bin)
	if size := cmplx.Abs(middle); !ok || size < 1/mostGain || size > mostGain {
		return nil, prose.Errorf("%w: with the resistor bridged the right side is %.3g times the left one, must be from %.3g to %.3g: is the wire across the resistor?",
			errGain, size, 1/mostGain, mostGain)
	}
	return func(hz float64) (complex128, float64, bool) {
		g, sigma, ok := ratio(whole, driver, hz/bin)
		return g, sigma / cmplx.Abs(g), ok && g != 0
	}, nil
}

func (r Recording) check() error {
	if err := positive([]named{{"rate", r.Rate}, {"series resistor in ohm", r.SeriesOhm}, {"lowest frequency in Hz", r.Low}, {"highest frequency in Hz", r.High}}); err != nil {
		return err
	}
	switch {
	case len(r.Whole) != len(r.Driver):
		return fmt.Errorf("%w: %d samples on the left, %d on the right", errValue, len(r.Whole), len(r.Driver))
	case r.High <= 2*r.Low:
		return prose.Errorf("%w: from %g to %g Hz is less than an octave", errValue, r.Low, r.High)
	case float64(len(r.Whole)) < leastPeriods*r.Rate/r.Low:
		return prose.Errorf("%w: %.3g s, %.3g s are needed for %g Hz", errFew, float64(len(r.Whole))/r.Rate, leastPeriods/r.Low, r.Low)
	case len(r.Whole) > mostSamples:
		return fmt.Errorf("%w: %d samples, %d are possible", errValue, len(r.Whole), mostSamples)
	}
	for _, side := range []struct {
		name    string
		samples []float64
	}{{"left", r.Whole}, {"right", r.Driver}} {
		rms := floats.Norm(side.samples, 2) / math.Sqrt(float64(len(side.samples)))
		switch {
		case math.IsNaN(rms) || math.IsInf(rms, 0):
			return fmt.Errorf("%w: the %s channel has samples that are no numbers", errValue, side.name)
		case rms < quietLevel:
			return fmt.Errorf("the %s channel is %w: its mean is %.0f dB below full scale", side.name, errQuiet, -20*math.Log10(max(rms, 1e-10))) // free: keeps the logarithm finite
		}
		if n := recording.Clipped(side.samples); n > 0 {
			return fmt.Errorf("the %s channel is %w: %s at its limit; record with less gain", side.name, errClipped, prose.Count(n, "sample", "samples"))
		}
	}
	return nil
}

// reaches refuses a sweep that does not fill the band from low to high, in Hz. Its
// energy in each third of an octave is set against that in the middle one.
func reaches(whole []complex128, bin, low, high float64) error {
	count := max(1, int(bands*math.Log2(high/low)))
	step := math.Pow(high/low, 1/float64(count))
	energy := make([]float64, count)
	for i := range energy {
		from, to := int(math.Ceil(low*math.Pow(step, float64(i))/bin)), int(low*math.Pow(step, float64(i+1))/bin)
		for b := from; b <= to && b < len(whole); b++ {
			energy[i] += real(whole[b])*real(whole[b]) + imag(whole[b])*imag(whole[b])
		}
	}
	sorted := slices.Sorted(slices.Values(energy))
	least := swept * sorted[count/2]
	first := slices.IndexFunc(energy, func(e float64) bool { return e >= least })
	last := count - 1
	for last > first && energy[last] < least {
		last--
	}
	if first == 0 && last == count-1 {
		return nil
	}
	return fmt.Errorf("%w: it goes from about %.0f to %.0f Hz, not from %.0f to %.0f Hz; record it from before its beginning until after its end, or say where it begins and ends",
		errSwept, low*math.Pow(step, float64(first)), low*math.Pow(step, float64(last+1)), low, high)
}

// level returns x less its mean, which a recorder may add.
func level(x []float64) []float64 {
	out := slices.Clone(x)
	floats.AddConst(-floats.Sum(x)/float64(len(x)), out)
	return out
}

// ratio returns driver over whole at a place between bins, and its standard error: the
// parabola H for which Driver - H Whole is least. Noise in Whole would draw it towards
// 0; so once the noise is known from what is left over, its share of the spectrum of
// Whole is taken off. Both channels are taken for equally noisy.
func ratio(whole, driver []complex128, at float64) (h complex128, sigma float64, ok bool) {
	half := max(at*math.Ln2/(2*perOctave), leastBins/2.0)
	from, to := int(math.Ceil(at-half)), int(math.Floor(at+half))
	if from < 1 || to >= len(whole) {
		return 0, 0, false
	}
	// Sums of weight t^k, of t^k alone, and of the cross spectrum times t^k.
	var moment, plain [5]float64
	var cross [3]complex128
	for b := from; b <= to; b++ {
		t := (float64(b) - at) / half
		w := real(whole[b])*real(whole[b]) + imag(whole[b])*imag(whole[b])
		c := driver[b] * cmplx.Conj(whole[b])
		for k, p := 0, 1.0; k < 5; k, p = k+1, p*t {
			moment[k] += w * p
			plain[k] += p
			if k < 3 {
				cross[k] += c * complex(p, 0)
			}
		}
	}
	const rounds = 2 // free: the second changes little
	taken := moment
	for range rounds + 1 {
		curve, lever, good := parabola(taken, cross)
		if !good {
			return 0, 0, false
		}
		left := 0.0
		for b := from; b <= to; b++ {
			t := complex((float64(b)-at)/half, 0)
			d := driver[b] - (curve[0]+t*(curve[1]+t*curve[2]))*whole[b]
			left += real(d)*real(d) + imag(d)*imag(d)
		}
		left /= float64(to - from + 1 - 3)
		h, sigma = curve[0], math.Sqrt(left*lever)
		size := real(h)*real(h) + imag(h)*imag(h)
		noise := left / (1 + size)
		for k := range taken {
			taken[k] = moment[k] - noise*plain[k]
		}
	}
	return h, sigma, true
}

// parabola solves for the coefficients of 1, t and t2 by their sums of weight t^k and of
// the cross spectrum times t^k. lever times the noise is the variance of the first.
func parabola(moment [5]float64, cross [3]complex128) (curve [3]complex128, lever float64, ok bool) {
	var chol mat.Cholesky
	if !chol.Factorize(mat.NewSymDense(3, []float64{moment[0], moment[1], moment[2], moment[1], moment[2], moment[3], moment[2], moment[3], moment[4]})) {
		return curve, 0, false
	}
	var out mat.Dense
	if chol.SolveTo(&out, mat.NewDense(3, 3, []float64{
		real(cross[0]), imag(cross[0]), 1, real(cross[1]), imag(cross[1]), 0, real(cross[2]), imag(cross[2]), 0})) != nil {
		return curve, 0, false
	}
	for k := range curve {
		curve[k] = complex(out.At(k, 0), out.At(k, 1))
	}
	return curve, out.At(0, 2), true
}
