package damping

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/dampinglog"
	"pappus/layout/impedance"
	"pappus/timing/band"
	"pappus/timing/impedancefit"
	"pappus/timing/measure"
)

// ErrResponse is a response that does not cover the middle band.
var ErrResponse = errors.New("the response does not cover the middle band")

// The middle band in Hz, and how closely it is looked at.
const (
	middleLow, middleHigh = 500, 4000
	middlePoints          = 37 // a twelfth of an octave apart
)

// Trial is a trial of the log with what its measurements came to.
type Trial struct {
	dampinglog.Trial
	Fit       impedancefit.Fit
	Resonance impedancefit.Estimate // Hz
	PeakOver  impedancefit.Estimate // of the peak's height over Re
	Q         impedancefit.Estimate
	Uneven    float64 // dB; NaN: no response
	// Flat says that no resonance is to be seen any more: there is far too much
	// damping. Fit is empty then, and its values are NaN.
	Flat bool
}

// Read fits a trial's impedance. The response is its frequencies in Hz, rising, and
// levels in dB; none where there are no frequencies. Errors are those of
// [impedancefit.Best], and [ErrResponse].
func Read(t dampinglog.Trial, points []impedance.Point, frequency, level []float64) (Trial, error) {
	f, err := impedancefit.Best(points)
	flat := errors.Is(err, impedancefit.ErrNoPeak)
	if err != nil && !flat {
		return Trial{}, err
	}
	if flat {
		none := impedancefit.Estimate{Value: math.NaN(), Error: math.NaN()}
		f = impedancefit.Fit{Resonance: none, PeakOver: none, Qts: none}
	}
	out := Trial{Trial: t, Fit: f, Resonance: f.Resonance, PeakOver: f.PeakOver, Q: f.Qts, Uneven: math.NaN(), Flat: flat}
	if len(frequency) == 0 {
		return out, nil
	}
	out.Uneven, err = uneven(frequency, level)
	return out, err
}

// uneven returns how uneven a response is in the middle band, in dB.
func uneven(frequency, level []float64) (float64, error) {
	last := len(frequency) - 1
	if frequency[0] > middleLow || frequency[last] < middleHigh {
		return 0, fmt.Errorf("%w, %d to %d Hz", ErrResponse, middleLow, middleHigh)
	}
	smooth := band.Smooth(nil, frequency, level, 3)
	even := make([]float64, middlePoints)
	at := 0
	for i := range even {
		hz := middleLow * math.Pow(float64(middleHigh)/middleLow, float64(i)/(middlePoints-1))
		for at < last-1 && frequency[at+1] < hz {
			at++
		}
		share := math.Log(hz/frequency[at]) / math.Log(frequency[at+1]/frequency[at])
		even[i] = smooth[at] + max(0, min(1, share))*(smooth[at+1]-smooth[at])
	}
	return measure.Deviation(even), nil
}
