package planjson

import (
	"io"

	"pappus/layout"
	"pappus/layout/printing"
	"pappus/timing/sweep"
)

// Written is the files that a command left in a folder.
type Written struct {
	Folder string   `json:"folder"`
	Files  []string `json:"files"`
	// Findings are what to look out for in the plan, worst first.
	Findings []Finding `json:"findings"`
}

// WriteSweep writes what a measuring signal is like: folder, files[], start_hz, stop_hz,
// length_s, rate_hz, level_db (of the peaks, full scale 0), cautions[].
func WriteSweep(w io.Writer, files Written, s sweep.Sweep, rate int, level float64, cautions []string) error {
	return encode(w, struct {
		Written
		Start    number   `json:"start_hz"`
		Stop     number   `json:"stop_hz"`
		Length   number   `json:"length_s"`
		Rate     int      `json:"rate_hz"`
		Level    number   `json:"level_db"`
		Cautions []string `json:"cautions"`
	}{files, to(3, s.Start), to(3, s.Stop), to(6, s.Length), rate, db(level), append([]string{}, cautions...)})
}

// WriteHeard writes which sounds were written: folder, files[], programme, cases[] of name
// and words.
func WriteHeard(w io.Writer, files Written, programme string, cases []Case) error {
	return encode(w, struct {
		Written
		Programme string `json:"programme"`
		Cases     []Case `json:"cases"`
	}{files, programme, cases})
}

// Case is a way of playing an array.
type Case struct {
	Name  string `json:"name"`
	Words string `json:"words"`
}

// Workshop is what was computed for the sheets.
type Workshop struct {
	Written
	Fits     layout.Fits
	Hollow   layout.Hollow
	Segments printing.Plan
	NoShell  string // why there is no shell; empty: there is
	NoCut    string // why it is not cut; empty: it is, or need not be
}

// WriteWorkshop writes what the workshop has to know:
//
//	folder, files[]
//	drivers        at[] of id and fits, largest_flange_mm, smallest_radius_mm (null: none fits)
//	box            inside_l, share_l, resonance_hz, q, stuffing_g, vent_holes, vented_q (null: not
//	               known, or no vent), why
//	shell          segments, mass_g, no_shell, no_cut
func WriteWorkshop(w io.Writer, a *layout.Array, s Workshop) error {
	out := workshop{Written: s.Written}
	for i, r := range s.Fits.Reports {
		out.Drivers.At = append(out.Drivers.At, driverFit{a.Mounts[i].ID, r.Fits(a.Limits)})
	}
	out.Drivers.Largest, out.Drivers.Smallest = some(mm(2*s.Fits.Largest.FlangeRadius)), some(mm(s.Fits.Smallest))
	h := s.Hollow
	out.Box = hollow{Inside: to(4, 1000*h.Room.Net), Share: to(5, 1000*h.Room.Share), Stuffing: to(2, 1000*h.Stuffed.Mass), Why: h.Why}
	if h.Closed != nil {
		out.Box.Resonance, out.Box.Q = some(to(2, h.Closed.Resonance)), some(to(4, h.Closed.Q))
	}
	if h.Vented != nil {
		out.Box.Holes, out.Box.VentedQ = &h.Vent.Number, some(to(4, h.Vented.Q))
	}
	out.Shell = shell{Segments: len(s.Segments.Segments), NoShell: s.NoShell, NoCut: s.NoCut}
	for _, one := range s.Segments.Segments {
		out.Shell.Mass += number(1000 * one.Mass)
	}
	out.Shell.Mass = to(2, float64(out.Shell.Mass))
	return encode(w, out)
}

// some returns a number, nothing for 0.
func some(n number) *number {
	if n == 0 {
		return nil
	}
	return &n
}

type workshop struct {
	Written
	Drivers struct {
		At       []driverFit `json:"at"`
		Largest  *number     `json:"largest_flange_mm"`
		Smallest *number     `json:"smallest_radius_mm"`
	} `json:"drivers"`
	Box   hollow `json:"box"`
	Shell shell  `json:"shell"`
}

type driverFit struct {
	ID   int  `json:"id"`
	Fits bool `json:"fits"`
}

type hollow struct {
	Inside    number  `json:"inside_l"`
	Share     number  `json:"share_l"`
	Resonance *number `json:"resonance_hz"`
	Q         *number `json:"q"`
	Stuffing  number  `json:"stuffing_g"`
	Holes     *int    `json:"vent_holes"`
	VentedQ   *number `json:"vented_q"`
	Why       string  `json:"why"`
}

type shell struct {
	Segments int    `json:"segments"`
	Mass     number `json:"mass_g"`
	NoShell  string `json:"no_shell"`
	NoCut    string `json:"no_cut"`
}
