package folder

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"pappus/layout"
	"pappus/layout/printing"
	"pappus/layout/shell"
	"pappus/render/document"
	"pappus/render/sheets"
	"pappus/render/table"
	"pappus/timing"
)

// Sheets is what the workshop needs of a plan: its files, and what was computed for them.
type Sheets struct {
	Files []file
	plan  *timing.Plan

	fits     layout.Fits
	hollow   layout.Hollow
	segments printing.Plan
	noShell  string // why there is no shell to print; empty where there is
	noCut    string // why it is not cut to the bed; empty where it is, or fits
}

// Document is what other programs read of it.
func (s Sheets) Document(files document.Written) document.Workshop {
	return document.OfWorkshop(files, s.plan.Array, s.fits, s.hollow, s.segments, s.noShell, s.noCut)
}

// NewSheets computes what the workshop needs. Where no shell can be made, or it cannot be
// cut to the printer's bed, all else is there, and the reason.
func NewSheets(p *timing.Plan) (Sheets, error) {
	s := Sheets{plan: p}
	a := p.Array
	s.fits = a.Fit()
	var err error
	if s.hollow, err = a.Hollow(); err != nil {
		return s, err
	}
	s.segments, err = a.Segments()
	if errors.Is(err, printing.ErrNoCleanCut) || errors.Is(err, printing.ErrTooMany) {
		s.noCut, err = strings.TrimPrefix(err.Error(), "printing: "), nil
	}
	if err != nil {
		return s, err
	}
	o := sheets.Options{Segments: sheets.Cuts(s.segments), Print: s.segments, Stuffing: s.hollow.Stuffing}
	s.Files, err = sheets.Files(p, o)
	if errors.Is(err, sheets.ErrSegment) {
		s.noCut, s.segments = err.Error(), printing.Plan{}
		o.Segments, o.Print = nil, s.segments
		s.Files, err = sheets.Files(p, o)
	}
	if errors.Is(err, shell.ErrCutout) {
		s.noShell = err.Error()
		o.NoShell, o.Print = true, printing.Plan{}
		s.Files, err = sheets.Files(p, o)
	}
	s.Files = append(s.Files,
		file{Name: "fit.csv", Write: func(w io.Writer) error { return table.Fit(w, a, s.fits) }},
		file{Name: "box.csv", Write: func(w io.Writer) error { return table.Box(w, s.hollow, p.DriverVolt()) }},
		file{Name: "segments.csv", Write: func(w io.Writer) error { return table.Segments(w, a, s.segments) }})
	return s, err
}

// Screen writes what people read of it.
func (s Sheets) Screen(w io.Writer) error {
	_, err := fmt.Fprintf(w, "%s\n\n%s\n\n%s", table.FitWords(s.plan.Array, s.fits), table.BoxWords(s.hollow), s.shell())
	return err
}

// shell says how the shell is printed, or why it is not.
func (s Sheets) shell() string {
	base := table.BaseWords(s.plan.Array)
	switch {
	case s.noShell != "":
		return "No shell to print: " + s.noShell + "."
	case s.noCut != "":
		return table.Wrap("The shell is written whole, larger than the bed, since "+s.noCut+".") + base
	}
	return table.SegmentWords(s.segments) + base
}
