package folder

import (
	"errors"
	"io"
	"slices"

	"pappus/layout"
	"pappus/layout/shell"
	"pappus/render/document"
	"pappus/render/sheets"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/bill"
)

// Sheets is what the workshop needs of a plan: its files, and what was computed for them.
type Sheets struct {
	Files []file
	plan  *timing.Plan

	fits     layout.Fits
	hollow   layout.Hollow
	segments shell.Plan
	noShell  string // why there is no shell to print; empty where there is
	noCut    string // why it is not cut to the bed; empty where it is, or fits
	bill     bill.Bill
	balance  bill.Balance
	balanced bool // it is known
}

// Document is what other programs read of it.
func (s Sheets) Document(files document.Written) document.Workshop {
	out := document.OfWorkshop(files, s.plan.Array, s.fits, s.hollow, s.segments, s.noShell, s.noCut)
	out.Takes = document.OfTakes(s.bill)
	if s.balanced {
		out.Hangs = document.OfHanging(s.balance)
	}
	return out
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
	if errors.Is(err, shell.ErrNoCleanCut) || errors.Is(err, shell.ErrTooMany) {
		s.noCut, err = err.Error(), nil
	}
	if err != nil {
		return s, err
	}
	o := sheets.Options{Print: s.segments, Stuffing: s.hollow.Stuffing}
	if o.Shell, err = shell.Make(a.Body, a.Wall, a.Holes()); errors.Is(err, shell.ErrCutout) {
		s.noShell = err.Error()
		o.NoShell, o.Print, err = true, shell.Plan{}, nil
	}
	if err != nil {
		return s, err
	}
	err = s.draw(o)
	if errors.Is(err, shell.ErrSegment) {
		s.noCut, s.segments = err.Error(), shell.Plan{}
		o.Print = s.segments
		err = s.draw(o)
	}
	s.Files = append(s.Files, wiringBook(p),
		file{Name: "fit.csv", Write: func(w io.Writer) error { return table.Fit(w, a, s.fits) }},
		file{Name: "box.csv", Write: func(w io.Writer) error { return table.Box(w, s.hollow, p.DriverVolt()) }},
		file{Name: "segments.csv", Write: func(w io.Writer) error { return table.Segments(w, a, s.segments) }})
	return s, err
}

// draw makes the sheets, with what they begin with.
func (s *Sheets) draw(o sheets.Options) (err error) {
	a := s.plan.Array
	s.bill, s.balanced = bill.Of(s.plan, o.Print, o.Stuffing), false
	if !o.NoShell && (a.On == layout.OnCeiling || a.On == layout.OnWall) { // where the mass of a body is that does not stand
		s.balance, s.balanced = bill.BalanceOf(a, o.Shell)
	}
	o.Notes = slices.Concat([]string{words.Fit(a, s.fits)}, words.Box(s.hollow), s.said())
	s.Files, err = sheets.Files(s.plan, o)
	return err
}

// said is how the shell is printed, and what building takes.
func (s Sheets) said() []string {
	return append(words.Shell(s.plan.Array, s.segments, s.noShell, s.noCut), s.takes()...)
}

// Screen writes what people read of it.
func (s Sheets) Screen(w io.Writer) error {
	a := s.plan.Array
	return table.SheetsScreen(w, a, s.fits, s.hollow, s.said())
}

// takes says what building takes, and how a body that does not stand is held.
func (s Sheets) takes() []string {
	return append([]string{words.Takes(s.bill)}, words.Hanging(s.plan.Array, s.balance, s.balanced)...)
}
