package damping

import (
	"fmt"

	"pappus/layout"
	"pappus/layout/dampinglog"
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
