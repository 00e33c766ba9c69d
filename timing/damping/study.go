package damping

import (
	"errors"
	"fmt"
	"math"
	"pappus/layout"
	"pappus/layout/dampinglog"
	"pappus/layout/impedance"
	"pappus/timing/band"
	"pappus/timing/impedancefit"
	"pappus/timing/measure"

	"gonum.org/v1/gonum/interp"
)

// Study is a damping log made sense of.
type Study struct {
	Name   string // of the design
	Design string // its path; empty: the built-in demo
	Log    string // the file
	Trials []Trial
	Goal   Goal
	Next   Next
	Why    error // why there is no next trial; nil where there is one, or none is needed
	// Fibre is what trials tell of the filling of vents; nil: nothing.
	Fibre *Fibre
	// Sounds is what is heard of the trial that has reached the goal; nil: as it is read, or none has.
	Sounds *Sounding
}

// NewStudy reads the log of a design, with what was measured in its trials.
func NewStudy(a *layout.Array, design, log string) (Study, error) {
	h, err := a.Hollow()
	if err != nil {
		return Study{}, err
	}
	l, err := dampinglog.Read(log)
	if err != nil {
		return Study{}, err
	}
	s := Study{Name: a.Name, Design: design, Log: l.Path, Goal: NewGoal(a, h, l)}
	for i, one := range l.Trials {
		t, err := ReadFiles(l, one)
		if err != nil {
			return s, fmt.Errorf("%s: trial %d: %w", l.Path, i+1, err)
		}
		s.Trials = append(s.Trials, t)
	}
	s.Next, s.Why = Propose(s.Trials, s.Goal)
	if len(s.Trials) > 0 {
		s.Fibre = fibreOf(s.Trials, h, s.Goal, s.Next.Base)
	}
	if s.Next.Reached {
		s.Sounds = soundingOf(s.Trials[s.Next.Base], h, s.Goal)
	}
	return s, nil
}

// ReadFiles reads what was measured in a trial of a log.
func ReadFiles(l *dampinglog.Log, t dampinglog.Trial) (Trial, error) {
	points, err := layout.ReadImpedance(l.File(t.Impedance))
	if err != nil {
		return Trial{}, err
	}
	var frequency, level []float64
	if t.Response != "" {
		response, err := layout.ReadResponse(l.File(t.Response))
		if err != nil {
			return Trial{}, err
		}
		for _, p := range response {
			frequency, level = append(frequency, p.Frequency), append(level, p.Level)
		}
	}
	return Read(t, points, frequency, level)
}

// errHumps is what vents do that are masses and no resistances: the body is then a bass reflex.
var errHumps = errors.New("the air in the vents is a mass and resists little, and the curve has two humps: put more fibre into each, or tape them over")

// errResponse is a response that does not cover the middle band.
var errResponse = errors.New("the response does not cover the middle band")

// middlePoints are how many points of the middle band are looked at, a twelfth of an octave
// apart.
const middlePoints = 37

// Trial is a trial of the log with what its measurements came to.
type Trial struct {
	dampinglog.Trial
	Fit       impedancefit.Fit
	Resonance impedancefit.Estimate // Hz
	PeakOver  impedancefit.Estimate // of the peak's height over Re
	Q         impedancefit.Estimate
	Uneven    float64 // dB; NaN: no response
	// Flat says that no resonance is to be seen any more: there is far too much
	// damping. Fit is empty then; Resonance, PeakOver and Q are NaN.
	Flat bool

	points []impedance.Point // as they were measured
}

// Read fits a trial's impedance. The response is its frequencies in Hz, rising, and
// levels in dB; none where there are no frequencies. Errors are those of
// [impedancefit.Best], with what to do about vents that make two humps; or tell of a response that does not cover the middle band.
func Read(t dampinglog.Trial, points []impedance.Point, frequency, level []float64) (Trial, error) {
	f, err := impedancefit.Best(points)
	flat := errors.Is(err, impedancefit.ErrNoPeak)
	if errors.Is(err, impedancefit.ErrShape) && t.Vents > 0 {
		return Trial{}, fmt.Errorf("%w; or %w", err, errHumps)
	}
	if err != nil && !flat {
		return Trial{}, err
	}
	out := Trial{Trial: t, Fit: f, Uneven: math.NaN(), Flat: flat, points: points}
	if flat {
		none := impedancefit.Estimate{Value: math.NaN(), Error: math.NaN()}
		out.Resonance, out.PeakOver, out.Q = none, none, none
	} else {
		// What meter and suspension leave open is the same in all trials.
		noise := f.Noise()
		out.Resonance, out.PeakOver, out.Q = noise.Resonance, noise.PeakOver, noise.Qts
	}
	if len(frequency) == 0 {
		return out, nil
	}
	out.Uneven, err = uneven(frequency, level)
	return out, err
}

// uneven returns how uneven a response is in the middle band, that of the weights, in dB.
func uneven(frequency, level []float64) (float64, error) {
	if frequency[0] > layout.WeightLowHz || frequency[len(frequency)-1] < layout.WeightHighHz {
		return 0, fmt.Errorf("%w, %d to %d Hz", errResponse, layout.WeightLowHz, layout.WeightHighHz)
	}
	logs, even := make([]float64, len(frequency)), make([]float64, middlePoints)
	for i, hz := range frequency {
		logs[i] = math.Log(hz)
	}
	var line interp.PiecewiseLinear
	if err := line.Fit(logs, band.Smooth(nil, frequency, level, 3)); err != nil {
		return 0, err
	}
	band.Log(even, layout.WeightLowHz, layout.WeightHighHz)
	for i, hz := range even {
		even[i] = line.Predict(math.Log(hz))
	}
	return measure.Deviation(even), nil
}
