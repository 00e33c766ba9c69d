package impedancefit

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/impedance"
	"pappus/layout/prose"
)

// Reader reads measured impedances: tables, and recordings through a resistor.
type Reader struct {
	Series    float64 // ohm, the resistor of a recording
	Low, High float64 // Hz, of its sweep; Low 0: it is the sweep for impedances, or one from 20 Hz on
	Bridged   string  // path of a recording with the resistor bridged; empty: the gains are taken for equal
	// Decode returns the rate in Hz and the channels of a recording.
	Decode func(path string) (rate int, channels [][]float64, err error)
}

// IsRecording tells whether a path is that of a recording, and not of a table.
func IsRecording(path string) bool { return strings.EqualFold(filepath.Ext(path), ".wav") }

// Read reads a table, or a recording.
func (r Reader) Read(path string) ([]impedance.Point, error) {
	if !IsRecording(path) {
		return layout.ReadImpedance(path)
	}
	if r.Series == 0 {
		return nil, fmt.Errorf("%s: a recording needs --series-ohm, the resistor between left and right", path)
	}
	of, err := r.recording(path)
	if err != nil {
		return nil, err
	}
	if r.Bridged != "" {
		bridged, err := r.recording(r.Bridged)
		if err != nil {
			return nil, err
		}
		of.Bridged = &bridged
	}
	out, err := of.impedance()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return out, nil
}

// recording reads the two sides of a recording.
func (r Reader) recording(path string) (Recording, error) {
	rate, samples, err := r.Decode(path)
	if err != nil {
		return Recording{}, err
	}
	if len(samples) != 2 {
		return Recording{}, fmt.Errorf("%s: %s, must be 2: left before the resistor, right over the driver", path, prose.Count(len(samples), "channel", "channels"))
	}
	return Recording{Whole: samples[0], Driver: samples[1], Rate: float64(rate), SeriesOhm: r.Series, Low: r.Low, High: r.High}, nil
}

// Study is what was measured of one driver, with what was found in it.
type Study struct {
	Name       string // of the file
	Recorded   bool   // and not read from a table
	Points     []impedance.Point
	Fit        Fit
	Mechanical *Mechanical                 // from a second measurement; nil: none
	Planned    func(hz float64) complex128 // ohm in free air, by a design; nil: not known
	PlannedOhm float64                     // the design's direct current resistance; 0: not known
}

// NewStudy reads and fits what was measured of one driver.
func NewStudy(r Reader, path string) (Study, error) {
	points, fit, err := r.fit(path)
	return Study{Name: filepath.Base(path), Recorded: IsRecording(path), Points: points, Fit: fit}, err
}

func (r Reader) fit(path string) ([]impedance.Point, Fit, error) {
	points, err := r.Read(path)
	if err != nil {
		return nil, Fit{}, err
	}
	series := 0.0
	if IsRecording(path) && r.Bridged == "" {
		series = r.Series
	}
	fit, err := best(points, series)
	if err != nil {
		return nil, Fit{}, fmt.Errorf("%s: %w", path, err)
	}
	return points, fit, nil
}

// Again takes up a second measurement of the driver.
func (s *Study) Again(r Reader, path string, as Second) error {
	_, fit, err := r.fit(path)
	if err != nil {
		return err
	}
	m, err := s.Fit.Mechanical(fit, as)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	s.Mechanical = &m
	return nil
}

// Against takes up what a design has of its driver.
func (s *Study) Against(d design.Driver) {
	s.PlannedOhm = d.DCOhm
	curve, err := impedance.New(impedance.Driver{Resonance: d.Small.Fs, QMS: d.Small.Qms, QES: d.Small.Qes, DCOhm: d.DCOhm, Inductance: d.Small.Inductance})
	if err == nil { // else not all of it is known
		s.Planned = curve.At
	}
}

// offOhm is by how much, as a factor less 1, Re may be off the design's.
const offOhm = 0.05

// OffPlan tells whether Re is far from what the design has.
func (s Study) OffPlan() bool {
	return s.PlannedOhm > 0 && math.Abs(s.Fit.DCOhm.Value/s.PlannedOhm-1) > offOhm
}

// Doubt returns why the values had better not go into a design without a second look; nil
// where they may.
func (s Study) Doubt() error {
	switch {
	case s.Fit.Rough():
		return prose.Errorf("the circuit follows %s only within %.2g percent, and not for noise", s.Name, 100*s.Fit.Misfit)
	case s.OffPlan():
		return prose.Errorf("in %s Re is %.4g ohm, dc_ohm in the design %.4g", s.Name, s.Fit.DCOhm.Value, s.PlannedOhm)
	}
	return nil
}
