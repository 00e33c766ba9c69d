package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/layout"
	"pappus/layout/printing"
	"pappus/layout/prose"
	"pappus/render/words"
)

// heavy is the most that the air in a vent's holes may weigh against its
// resistance (common practice).
const heavy = 0.3

// Box writes what the drivers share inside the body, one figure a row, with the
// given RMS voltage over each driver.
func Box(w io.Writer, h layout.Hollow, volt float64) error {
	rows := [][]string{{"figure", "value", "unit"}}
	add := func(name string, value float64, places int, unit string) {
		if !math.IsNaN(value) && !math.IsInf(value, 0) {
			rows = append(rows, []string{name, fixed(value, places), unit})
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
		add("speed in the vent at full level", fullSpeed(h, volt), 2, "m/s peak")
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// fullSpeed returns the peak speed of the air in the vent at the resonance, in
// m/s, for an RMS voltage over each driver; NaN where the values do not tell.
func fullSpeed(h layout.Hollow, volt float64) float64 {
	_, flow, err := h.Vented.Flow(volt, h.Vented.Resonance)
	if err != nil {
		return math.NaN()
	}
	return math.Sqrt2 * h.Vent.Velocity(flow)
}

// BoxWords says in plain words what the box does and what to do about it.
func BoxWords(h layout.Hollow) string {
	lines := []string{fmt.Sprintf("%.2f l inside, %.3f l for each driver.", 1000*h.Room.Net, 1000*h.Room.Share)}
	if c := h.Closed; c != nil {
		lines[0] += fmt.Sprintf(" Closed, they resonate at %.0f Hz with a Q of %.2f.", c.Resonance, c.Q)
	}
	if h.Why != "" {
		lines = append(lines, fmt.Sprintf("No vent: %s.", h.Why))
	}
	if h.Vented != nil {
		lines = append(lines, ventWords(h))
	}
	lines = append(lines, fmt.Sprintf("Begin with %.0f g of stuffing. %s", 1000*h.Stuffing, words.Stuffing))
	for i, text := range lines {
		lines[i] = wrap(text)
	}
	return strings.Join(lines, "\n")
}

// ventWords says which vent brings the box to its Q. The cloth's resistance is per area, so
// that more holes need a denser one.
func ventWords(h layout.Hollow) string {
	cloth := h.Vent.Specific(h.Vented.Resistance)
	text := fmt.Sprintf("A vent of %s of %.0f mm under cloth of %.0f Pa s/m would bring the Q to %.2f",
		prose.Count(h.Vent.Number, "hole", "holes"), 2000*h.Vent.Radius, cloth, h.Vented.Q)
	if h.Mass > heavy {
		n := enough(h)
		text += fmt.Sprintf(", but the air in so few is too heavy for a resistance: take %d holes or more; with %d the cloth is to have %.0f Pa s/m",
			n, n, cloth*float64(n)/float64(h.Vent.Number))
	}
	return text + "."
}

// enough returns how many holes make the air in them light enough: its mass goes
// as one over their area.
func enough(h layout.Hollow) int {
	return int(math.Ceil(float64(h.Vent.Number) * h.Mass / heavy))
}

// Segments writes one row for each piece that the shell is printed in; levels, sectors and
// azimuths for flat seams alone.
func Segments(w io.Writer, a *layout.Array, p printing.Plan) error {
	rows := [][]string{{"segment", "seam", "level", "sector", "low_mm", "high_mm", "from_deg", "to_deg",
		"size_x_mm", "size_y_mm", "size_z_mm", "area_cm2", "volume_cm3", "mass_g", "driver_ids"}}
	for i, s := range p.Segments {
		var ids []string
		for _, m := range s.Mounts {
			ids = append(ids, strconv.Itoa(a.Mounts[m].ID))
		}
		seam, level, sector := "flat", strconv.Itoa(s.Level+1), strconv.Itoa(s.Sector+1)
		from, to := fixed(s.From*180/math.Pi, 2), fixed(s.To*180/math.Pi, 2)
		if len(s.Cells) > 0 {
			seam, level, sector, from, to = "stepped", "", "", "", ""
		}
		rows = append(rows, []string{
			strconv.Itoa(i + 1), seam, level, sector, fixed(1000*s.Low, 2), fixed(1000*s.High, 2), from, to,
			fixed(1000*s.Size.X, 1), fixed(1000*s.Size.Y, 1), fixed(1000*s.Size.Z, 1),
			fixed(1e4*s.Area, 1), fixed(1e6*s.Volume, 1), fixed(1000*s.Mass, 1), strings.Join(ids, " "),
		})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// BaseWords says that the shell of a cut body is to be closed, on a line of its own; nothing
// for a whole body. The box's figures are of a closed one, and an open one cancels its own
// low tones.
func BaseWords(a *layout.Array) string {
	if !a.Body.IsCut {
		return ""
	}
	return "\n" + wrap("The shell is open below: close it airtight with a plate of the opening's outline, screwed on over a gasket. What is said of the box holds for the closed one.")
}

// SegmentWords says in plain words how the shell is printed.
func SegmentWords(p printing.Plan) string {
	mass := 0.0
	for _, s := range p.Segments {
		mass += s.Mass
	}
	if len(p.Segments) == 1 {
		return fmt.Sprintf("The shell fits the printer's bed whole; it weighs %.0f g.", 1000*mass)
	}
	s := fmt.Sprintf("The shell is printed in %d segments, %.0f g together; see segments.csv.", len(p.Segments), 1000*mass)
	if len(p.Cells) > 0 {
		s += "\n" + wrap("No flat seam keeps off the cut-outs: the seams go in steps midway between drivers, so print with supports.")
	}
	return s
}
