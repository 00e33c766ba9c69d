package document

import (
	"math"
	"pappus/layout"
	"pappus/layout/shell"
	"pappus/timing/bill"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/spatial/r3"
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

// ImpedanceSweep is what the signal for impedances is like, and what to play it with.
type ImpedanceSweep struct {
	Sweep
	Volt Number `json:"most_volt"`  // RMS, of the tone, at the amplifier
	Ohm  Number `json:"series_ohm"` // in series with the driver, about
}

// OfImpedanceSweep returns the document of a signal for impedances.
func OfImpedanceSweep(files Written, s sweep.Sweep, rate int, level, volt, ohm float64) ImpedanceSweep {
	return ImpedanceSweep{OfSweep(files, s, rate, level, nil), To(3, volt), To(3, ohm)}
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
	Takes   Takes      `json:"takes"`
	Hangs   *Hangs     `json:"hangs,omitempty"` // only where a body that does not stand has a weight that is known
}

// Takes is what building takes, as far as it is known.
type Takes struct {
	Mass   Number `json:"mass_kg"`
	Price  Number `json:"price"`
	Print  Number `json:"print_hours"` // solid plastic at the printer's flow
	Work   Number `json:"work_hours"`  // to solder and to put drivers in
	Joints int    `json:"joints"`
}

// OfTakes returns the document of a bill's sums.
func OfTakes(b bill.Bill) Takes {
	return Takes{To(4, b.Mass), To(2, b.Price), To(2, b.Print/3600), To(2, b.Work/3600), b.Joints}
}

// Hangs is how one body hangs, in its own frame: forward, left, up.
type Hangs struct {
	Mass    Number  `json:"mass_kg"` // shell and drivers
	Centre  Numbers `json:"centre_of_mass_mm"`
	Hook    Numbers `json:"hook_mm"`
	Lean    Number  `json:"lean_deg"` // by one hook; null: it would turn over
	Counter Number  `json:"counterweight_g"`
}

// OfHanging returns the document of a balance that is known.
func OfHanging(b bill.Balance) *Hangs {
	at := func(v r3.Vec) Numbers { return All(1, []float64{1000 * v.X, 1000 * v.Y, 1000 * v.Z}) }
	return &Hangs{To(4, b.Mass), at(b.Centre), at(b.Hook), To(2, b.Lean*180/math.Pi), To(1, 1000*b.Counter)}
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
