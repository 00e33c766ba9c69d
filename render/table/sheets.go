package table

import (
	"fmt"
	"io"

	"pappus/layout"
	"pappus/layout/shell"
	"pappus/render/words"
)

// Fit writes one row for each mount: every clearance in mm, negative where
// something is in the way, empty where the driver's outline does not tell.
func Fit(w io.Writer, a *layout.Array, f layout.Fits) error {
	t := newSheet("driver", "fits", "flange_to_edge_mm:2", "cutout_to_inner_edge_mm:2", "flange_gap_mm:2", "gap_to",
		"basket_gap_mm:2", "basket_gap_to", "basket_to_wall_mm:2", "terminal_gap_mm:2", "least_screw_radius_mm:2", "screw_to_rim_mm:2", "screw_to_edge_mm:2")
	neighbour := func(index int) any {
		if index < 0 {
			return nil
		}
		return a.Mounts[index].ID
	}
	for i, r := range f.Reports {
		t.add(a.Mounts[i].ID, r.Fits(a.Limits), 1000*r.Flange, 1000*r.Cutout, 1000*r.Gap, neighbour(r.GapTo),
			1000*r.Inside, neighbour(r.InsideTo), 1000*r.Wall, 1000*r.Terminal, 1000*r.ScrewRing, 1000*r.ScrewFlange, 1000*r.ScrewEdge)
	}
	return t.write(w)
}

// Box writes what the drivers share inside the body, one figure a row, with the
// given RMS voltage over each driver.
func Box(w io.Writer, h layout.Hollow, volt float64) error {
	t := newSheet("figure", "value", "unit")
	add := func(name string, value float64, places int, unit string) {
		if text := finite(value, places); text != "" {
			t.add(name, text, unit)
		}
	}
	add("gross volume", 1000*h.Room.Gross, 3, "l")
	add("walls", 1000*h.Room.Walls, 3, "l")
	add("drivers", 1000*h.Room.Drivers, 3, "l")
	add("braces", 1000*h.Room.Braces, 3, "l")
	add("net volume", 1000*h.Room.Net, 3, "l")
	add("share of each driver", 1000*h.Room.Share, 4, "l")
	add("stuffing to begin with", 1000*h.Stuffing, 1, "g")
	if c := h.Closed; c != nil {
		add("driver Qts", h.Driver.Qts, 3, "")
		add("driver Vas", 1000*h.Driver.Vas, 4, "l")
		add("closed resonance", c.Resonance, 1, "Hz")
		add("closed Q", c.Q, 3, "")
		add("closed -3 dB", c.F3, 1, "Hz")
		add("closed peak", c.Peak, 2, "dB")
	}
	if v := h.Vented; v != nil {
		add("vent resistance for the target Q", v.Resistance, 0, "Pa s/m3")
		add("vented Q", v.Q, 3, "")
		add("vented resonance", v.Resonance, 1, "Hz")
		add("vent area", 1e4*h.Vent.Area(), 3, "cm2")
		add("resistance of the sheet over it", h.Vent.Specific(v.Resistance), 1, "Pa s/m")
		add("air in the vent over its resistance", h.Mass, 2, "")
		add("stand gap over vent area", h.Gap, 2, "")
		add("speed in the vent at full level", h.VentSpeed(volt), 2, "m/s peak")
	}
	return t.write(w)
}

// Segments writes one row for each piece that the shell is printed in; levels, sectors and
// azimuths for flat seams alone.
func Segments(w io.Writer, a *layout.Array, p shell.Plan) error {
	t := newSheet("segment", "seam", "level", "sector", "low_mm:2", "high_mm:2", "from_deg:2", "to_deg:2",
		"size_x_mm:1", "size_y_mm:1", "size_z_mm:1", "area_cm2:1", "volume_cm3:1", "mass_g:1", "driver_ids")
	for i, s := range p.Segments {
		row := []any{i + 1, "flat", s.Level + 1, s.Sector + 1, 1000 * s.Low, 1000 * s.High, degrees(s.From), degrees(s.To),
			1000 * s.Size.X, 1000 * s.Size.Y, 1000 * s.Size.Z, 1e4 * s.Area, 1e6 * s.Volume, 1000 * s.Mass, a.IDs(s.Mounts)}
		if len(s.Cells) > 0 {
			row[1], row[2], row[3], row[6], row[7] = "stepped", nil, nil, nil, nil
		}
		t.add(row...)
	}
	return t.write(w)
}

// SheetsScreen writes for people whether the drivers fit, what the box does and how the shell
// is printed, of which shell says.
func SheetsScreen(w io.Writer, a *layout.Array, f layout.Fits, h layout.Hollow, shell []string) error {
	s := &screen{}
	s.say(words.Fit(a, f))
	fmt.Fprintln(s)
	s.sayAll(words.Box(h))
	fmt.Fprintln(s)
	s.sayAll(shell)
	return s.to(w)
}
