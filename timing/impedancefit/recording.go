package impedancefit

import (
	"fmt"
	"math"
	"math/cmplx"

	"pappus/layout/impedance"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/mat"
)

// Recording is a sweep recorded on two channels at once, of one voltage before a
// known resistor in series with the driver and one after it:
//
//	amplifier --+-- resistor --+-- driver -- ground
//	          Whole          Driver
//
// Whole is the left channel of a stereo recording, Driver the right one. Both must
// be recorded with the same gain; the scale itself does not matter.
type Recording struct {
	Whole, Driver []float64
	Rate          float64 // samples per second
	SeriesOhm     float64
	Low, High     float64 // Hz, of the sweep: what is outside is left out
}

const (
	perOctave   = 48      // points
	leastBins   = 7       // of the transform that make one point
	fullScale   = 0.9999  // of a sample that is taken for clipped
	clippedRow  = 3       // so many in a row
	quietLevel  = 1e-4    // RMS of full scale
	mostSamples = 1 << 23 // about 3 minutes at 48 kHz
	// Points whose relative standard error is above this are left out.
	poor = 0.1
)

// Impedance returns the impedance over frequency,
//
//	Z = R H/(1 - H),  H = Driver/Whole
//
// H is the ratio of the cross spectrum to the spectrum of Whole, the estimate that
// noise in Driver does not bias (J. S. Bendat and A. G. Piersol, Random Data, chapter
// 6, from memory). The whole recording is transformed at once, so the sweep and its
// decay must be in it; at each of 48 points to the octave a parabola through the
// ratios of its neighbours within half a step, weighted by the spectrum of Whole,
// smooths without flattening the peak. Points that noise leaves uncertain by more
// than a tenth are left out.
//
// Errors wrap [ErrValue], [ErrClipped], [ErrQuiet], [ErrSwapped] and [ErrVague].
func (r Recording) Impedance() ([]impedance.Point, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	n := smoothLength(len(r.Whole))
	fft := fourier.NewFFT(n)
	whole := fft.Coefficients(nil, padded(r.Whole, n))
	driver := fft.Coefficients(nil, padded(r.Driver, n))
	bin := r.Rate / float64(n)
	low, high := max(r.Low, 2*float64(leastBins)*bin), min(r.High, 0.47*r.Rate)
	var out []impedance.Point
	over, all := 0, 0
	for i := 0; ; i++ {
		hz := low * math.Exp2(float64(i)/perOctave)
		if hz > high {
			break
		}
		h, sigma, ok := ratio(whole, driver, hz/bin)
		if all++; cmplx.Abs(h) > 1 {
			over++
		}
		z := complex(r.SeriesOhm, 0) * h / (1 - h)
		// dZ/Z = dH/(H (1-H))
		if !ok || !(sigma/(cmplx.Abs(h)*cmplx.Abs(1-h)) < poor) || !(cmplx.Abs(z) > 0) || cmplx.IsInf(z) {
			continue
		}
		out = append(out, impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi})
	}
	switch {
	case 2*over > all:
		return nil, fmt.Errorf("impedance: %w: the voltage over the driver is the higher one; left must be before the resistor, right after it", ErrSwapped)
	case len(out) < all/2 || len(out) < leastPoints:
		return nil, fmt.Errorf("impedance: %w: noise leaves %d of %d points; play louder, or take a resistor nearer to the driver's impedance", ErrVague, len(out), all)
	}
	return out, nil
}

func (r Recording) check() error {
	if err := positive([]named{{"rate", r.Rate}, {"series resistor in ohm", r.SeriesOhm}, {"lowest frequency in Hz", r.Low}, {"highest frequency in Hz", r.High}}); err != nil {
		return err
	}
	switch {
	case len(r.Whole) != len(r.Driver):
		return fmt.Errorf("impedance: %w: %d samples on the left, %d on the right", ErrValue, len(r.Whole), len(r.Driver))
	case r.High <= 2*r.Low:
		return fmt.Errorf("impedance: %w: from %g to %g Hz is less than an octave", ErrValue, r.Low, r.High)
	case float64(len(r.Whole)) < 100*r.Rate/r.Low:
		return fmt.Errorf("impedance: %w: %.3g s, %.3g s are needed for %g Hz", ErrFew, float64(len(r.Whole))/r.Rate, 100/r.Low, r.Low)
	case len(r.Whole) > mostSamples:
		return fmt.Errorf("impedance: %w: %d samples, %d are possible", ErrValue, len(r.Whole), mostSamples)
	}
	for _, side := range []struct {
		name    string
		samples []float64
	}{{"left", r.Whole}, {"right", r.Driver}} {
		sum, row := 0.0, 0
		for _, v := range side.samples {
			if sum += v * v; math.Abs(v) < fullScale {
				row = 0
			} else if row++; row == clippedRow {
				return fmt.Errorf("impedance: the %s channel is %w: record with less gain", side.name, ErrClipped)
			}
		}
		rms := math.Sqrt(sum / float64(len(side.samples)))
		switch {
		case math.IsNaN(rms) || math.IsInf(rms, 0):
			return fmt.Errorf("impedance: %w: the %s channel has samples that are no numbers", ErrValue, side.name)
		case rms < quietLevel:
			return fmt.Errorf("impedance: the %s channel is %w: its mean is %.0f dB below full scale", side.name, ErrQuiet, -20*math.Log10(max(rms, 1e-10)))
		}
	}
	return nil
}

// smoothLength returns the least length that is not below n and has no factors but
// 2, 3 and 5, which transforms go fast through.
func smoothLength(n int) int {
	for ; ; n++ {
		m := n
		for _, p := range []int{2, 3, 5} {
			for m%p == 0 {
				m /= p
			}
		}
		if m == 1 {
			return n
		}
	}
}

func padded(x []float64, n int) []float64 {
	out := make([]float64, n)
	copy(out, x)
	return out
}

// ratio returns driver over whole at a place between bins, and its standard error.
func ratio(whole, driver []complex128, at float64) (h complex128, sigma float64, ok bool) {
	half := max(at*math.Ln2/perOctave, leastBins/2.0)
	from, to := int(math.Ceil(at-half)), int(math.Floor(at+half))
	if from < 1 || to >= len(whole) {
		return 0, 0, false
	}
	// Sums of weight t^k, and of the cross spectrum times t^k.
	var moment [5]float64
	var cross [3]complex128
	for b := from; b <= to; b++ {
		t := (float64(b) - at) / half
		w := real(whole[b])*real(whole[b]) + imag(whole[b])*imag(whole[b])
		c := driver[b] * cmplx.Conj(whole[b])
		for k, p := 0, 1.0; k < 5; k, p = k+1, p*t {
			moment[k] += w * p
			if k < 3 {
				cross[k] += c * complex(p, 0)
			}
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(mat.NewSymDense(3, []float64{moment[0], moment[1], moment[2], moment[1], moment[2], moment[3], moment[2], moment[3], moment[4]})) {
		return 0, 0, false
	}
	var re, im, lever mat.VecDense
	if chol.SolveVecTo(&re, mat.NewVecDense(3, []float64{real(cross[0]), real(cross[1]), real(cross[2])})) != nil ||
		chol.SolveVecTo(&im, mat.NewVecDense(3, []float64{imag(cross[0]), imag(cross[1]), imag(cross[2])})) != nil ||
		chol.SolveVecTo(&lever, mat.NewVecDense(3, []float64{1, 0, 0})) != nil {
		return 0, 0, false
	}
	left := 0.0
	for b := from; b <= to; b++ {
		t := (float64(b) - at) / half
		fit := complex(re.AtVec(0)+t*(re.AtVec(1)+t*re.AtVec(2)), im.AtVec(0)+t*(im.AtVec(1)+t*im.AtVec(2)))
		d := driver[b] - fit*whole[b]
		left += real(d)*real(d) + imag(d)*imag(d)
	}
	free := float64(to - from + 1 - 3)
	return complex(re.AtVec(0), im.AtVec(0)), math.Sqrt(left / free * lever.AtVec(0)), true
}
