package dampinglog

import (
	"errors"
	"fmt"
	"io/fs"

	"pappus/layout/design"

	"github.com/pelletier/go-toml/v2"
)

const (
	maxSize    = 1 << 20 // bytes
	mostTrials = 1000
	longest    = 200 // letters of a remark or a path
)

// Read reads a log. Where there is no such file the log is empty. Any error is a
// *design.Error.
func Read(path string) (*Log, error) {
	data, err := design.ReadFile(path, maxSize)
	if errors.Is(err, fs.ErrNotExist) {
		return &Log{Path: path, Fits: unsaid()}, nil
	}
	if err != nil {
		return nil, err
	}
	return Parse(path, data)
}

// Parse checks a log that has been read already. Any error is a *design.Error: the first
// fault in the file.
func Parse(name string, data []byte) (*Log, error) {
	l := &Log{Path: name, Fits: unsaid()}
	r := design.Decode(name, data, l.tables)
	if len(r.Faults()) == 0 {
		for i := range l.Trials {
			l.Trials[i].check(r, fmt.Sprintf("trial[%d]", i+1))
		}
	}
	if faults := r.Faults(); len(faults) > 0 {
		return nil, faults[0]
	}
	return l, nil
}

// tables are the keys of a log.
func (l *Log) tables() []design.Table {
	return []design.Table{
		{Name: "fits", Optional: true, Rows: l.Fits.rows},
		design.Many("trial", mostTrials, &l.Trials, (*Trial).rows),
	}
}

func (f *Fits) rows() []design.Row {
	return []design.Row{
		{Name: "stuffing_g", To: &f.StuffingG, Limits: design.From(0, 100000)},
		{Name: "depth_mm", To: &f.DepthMM, Limits: design.From(0, 5000)},
		{Name: "vents", To: &f.Vents, Limits: design.From(0, 1000)},
	}
}

func (t *Trial) rows() []design.Row {
	date := func(v any) error {
		d, ok := v.(toml.LocalDate)
		if !ok {
			return design.ErrType
		}
		t.Date = d.String()
		return nil
	}
	return []design.Row{
		{Name: "date", To: date, Limits: design.Limits{Says: "a date such as 2025-03-01, without quotes"}},
		{Name: "vents", To: &t.Vents, Limits: design.From(0, 1000)},
		{Name: "vent_mm", To: &t.VentMM, Limits: design.From(0, mostVentMM)},
		{Name: "fill_g", To: &t.FillG, Limits: design.From(0, 10000)},
		{Name: "stuffing_g", To: &t.StuffingG, Limits: design.From(0, 100000)},
		{Name: "depth_mm", To: &t.DepthMM, Limits: design.From(0, 5000)},
		{Name: "impedance", To: &t.Impedance, Limits: design.Letters(longest)},
		{Name: "response", To: &t.Response, Limits: design.Letters(longest)},
		{Name: "remark", To: &t.Remark, Limits: design.Letters(longest)},
	}
}

// The size of a vent in mm.
const leastVentMM, mostVentMM = 0.5, 200.0

// check notes what does not go together in a trial, and leaves out what says nothing.
func (t *Trial) check(r *design.Reader, at string) {
	switch {
	case t.Vents > 0 && t.VentMM == 0:
		r.Fault(at, nil, "vent_mm is missing; must be from 0.5 to 200 where there are vents", design.ErrMissing)
	case t.VentMM > 0 && t.VentMM < leastVentMM:
		r.Fault(at+".vent_mm", t.VentMM, "must be 0 without vents, or a number from 0.5 to 200", design.ErrRange)
	}
	if t.Impedance == "" {
		r.Fault(at, nil, "impedance is missing; must be the name of a table", design.ErrMissing)
	}
	if t.Vents == 0 {
		t.VentMM, t.FillG = 0, 0
	}
	if t.StuffingG == 0 {
		t.DepthMM = 0
	}
}
