package document

import (
	"pappus/layout"
	"pappus/layout/shell"
	"pappus/timing/sweep"
)

// Written is the files that a command left in a folder.
type Written struct {
	Folder   string    `json:"folder"`
	Files    []string  `json:"files"`
	Findings []Finding `json:"findings"` // in the plan, worst first
}

// Sweep is what a measuring signal is like.
type Sweep struct {
	Written
	Start    Number   `json:"start_hz"`
	Stop     Number   `json:"stop_hz"`
	Length   Number   `json:"length_s"`
	Rate     int      `json:"rate_hz"`
	Level    Number   `json:"level_db"` // of the peaks, full scale 0
	Cautions []string `json:"cautions"`
}

// OfSweep returns the document of a measuring signal.
func OfSweep(files Written, s sweep.Sweep, rate int, level float64, cautions []string) Sweep {
	return Sweep{files, To(3, s.Start), To(3, s.Stop), To(6, s.Length), rate, db(level), append([]string{}, cautions...)}
}

// Sounds is which sounds were written.
type Sounds struct {
	Written
	Programme string `json:"programme"`
	Cases     []Case `json:"cases"`
}

// Case is a way of playing an array.
type Case struct {
	Name  string `json:"name"`
	Words string `json:"words"`
}

// Workshop is what the workshop has to know.
type Workshop struct {
	Written
	Drivers DriverFits `json:"drivers"`
	Box     Box        `json:"box"`
	Shell   Shell      `json:"shell"`
}

// OfWorkshop returns the document of what was computed for the sheets. noShell says why
// there is no shell, noCut why it is not cut; both are empty where it is.
func OfWorkshop(files Written, a *layout.Array, f layout.Fits, h layout.Hollow, p shell.Plan, noShell, noCut string) Workshop {
	out := Workshop{Written: files, Box: boxOf(h), Shell: Shell{len(p.Segments), 0, noShell, noCut}}
	for i, r := range f.Reports {
		out.Drivers.At = append(out.Drivers.At, DriverFit{a.Mounts[i].ID, r.Fits(a.Limits)})
	}
	out.Drivers.Largest, out.Drivers.Smallest = some(mm(2*f.Largest.FlangeRadius)), some(mm(f.Smallest))
	mass := 0.0
	for _, s := range p.Segments {
		mass += s.Mass
	}
	out.Shell.Mass = To(2, 1000*mass)
	return out
}

// DriverFits is whether the drivers fit behind the shell.
type DriverFits struct {
	At       []DriverFit `json:"at"`
	Largest  *Number     `json:"largest_flange_mm"`  // null: none fits
	Smallest *Number     `json:"smallest_radius_mm"` // null: none fits
}

// DriverFit is whether one driver fits.
type DriverFit struct {
	ID   int  `json:"id"`
	Fits bool `json:"fits"`
}

// Box is the air behind the drivers.
type Box struct {
	Inside    Number  `json:"inside_l"`
	Share     Number  `json:"share_l"`      // of one driver
	Resonance *Number `json:"resonance_hz"` // null: not known
	Q         *Number `json:"q"`            // null: not known
	Stuffing  Number  `json:"stuffing_g"`
	Holes     *int    `json:"vent_holes"` // null: no vent
	VentedQ   *Number `json:"vented_q"`   // null: no vent
	Why       string  `json:"why"`        // why it is not known
}

func boxOf(h layout.Hollow) Box {
	out := Box{Inside: To(4, 1000*h.Room.Net), Share: To(5, 1000*h.Room.Share), Stuffing: To(2, 1000*h.Stuffing), Why: h.Why}
	if h.Closed != nil {
		out.Resonance, out.Q = some(To(2, h.Closed.Resonance)), some(To(4, h.Closed.Q))
	}
	if h.Vented != nil {
		out.Holes, out.VentedQ = &h.Vent.Number, some(To(4, h.Vented.Q))
	}
	return out
}

// Shell is the printed shell.
type Shell struct {
	Segments int    `json:"segments"`
	Mass     Number `json:"mass_g"`
	NoShell  string `json:"no_shell"`
	NoCut    string `json:"no_cut"`
}
