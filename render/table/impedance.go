package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/layout/impedance"
	"pappus/layout/prose"
	"pappus/timing/impedancefit"
)

// MeasuredImpedance writes the points as a design's driver and a damping log take
// them.
func MeasuredImpedance(w io.Writer, points []impedance.Point) error {
	rows := [][]string{{"frequency_hz", "ohm", "degrees"}}
	for _, p := range points {
		// What noise turned past a quarter of a circle no passive part can have.
		rows = append(rows, []string{fixed(p.Frequency, 4), fixed(p.Ohm, 5), fixed(max(-90, min(90, p.Degrees)), 4)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// ImpedanceFit writes one row for each value that was found, with its standard error.
func ImpedanceFit(w io.Writer, m impedancefit.Study) error {
	rows := [][]string{{"value", "found", "standard_error", "unit"}}
	for _, v := range values(m) {
		rows = append(rows, []string{v.name, exact6(v.per * v.Value), exact6(v.per * v.Error), v.unit})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

func exact6(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// found is one value with its name and unit, of which there are per in one of SI.
type found struct {
	name string
	impedancefit.Estimate
	per  float64
	unit string
}

func values(m impedancefit.Study) []found {
	f := m.Fit
	out := []found{
		{"resonance", f.Resonance, 1, "Hz"}, {"Qms", f.Qms, 1, ""}, {"Qes", f.Qes, 1, ""}, {"Qts", f.Qts, 1, ""},
		{"Re", f.DCOhm, 1, "ohm"}, {"peak over Re", f.PeakOver, 1, ""},
	}
	if f.Coil != impedancefit.Power {
		out = append(out, found{"Le", f.Inductance, 1000, "mH"})
	}
	switch f.Coil {
	case impedancefit.Power:
		out = append(out, found{"exponent", f.Exponent, 1, ""})
	case impedancefit.Semi:
		out = append(out, found{"K", f.SemiOhm, 1000, "mohm s^1/2"})
	case impedancefit.Shunted:
		out = append(out, found{"L2", f.ShuntedHenry, 1000, "mH"}, found{"R2", f.ShuntOhm, 1, "ohm"})
	}
	if f.Coil != impedancefit.Ideal {
		out = append(out, found{"inductance at 1 kHz", f.InductanceAt(1000), 1000, "mH"})
	}
	if s := m.Mechanical; s != nil {
		out = append(out, found{"Vas", s.Vas, 1000, "l"}, found{"Mms", s.Mass, 1000, "g"}, found{"BL", s.BL, 1, "T m"}, found{"Cms", s.Cms, 1000, "mm/N"})
	}
	return out
}

// ImpedanceScreen writes for people what was found in an impedance, and the lines to
// put in a design.
func ImpedanceScreen(w io.Writer, m impedancefit.Study, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	f := m.Fit
	fmt.Fprintln(b, s.strong("Impedance in "+m.Name))
	fmt.Fprintf(b, "%s\n\n", wrap(impedanceWords(m)))
	for _, v := range values(m) {
		value, sigma := v.Text(v.per)
		fmt.Fprintln(b, strings.TrimRight(fmt.Sprintf("%-20s %10s +- %-8s %s", v.name, value, sigma, v.unit), " "))
	}
	fmt.Fprintln(b, s.faint("  +- one standard error: what noise leaves open"))
	if words := planWords(m); words != "" {
		fmt.Fprintln(b, "\n"+wrap(words))
	}
	fmt.Fprintln(b, "\n"+s.faint("if it was measured in free air, for the design"))
	fmt.Fprintln(b, "[driver]")
	for _, k := range f.Keys(m.Mechanical) {
		fmt.Fprintf(b, "%s = %s\n", strings.TrimPrefix(k.Name, "driver."), strconv.FormatFloat(k.Value, 'f', -1, 64))
	}
	fmt.Fprintln(b)
	if m.Recorded && m.PlannedOhm == 0 {
		fmt.Fprintln(b, wrap("Measure Re with a meter too: a wrong --series-ohm or inputs of different gain shift all ohms, and nothing else shows it."))
		fmt.Fprintln(b)
	}
	for _, text := range impedanceCautions {
		fmt.Fprintln(b, wrap(s.alert("Look out:")+" "+text))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// impedanceWords says what was fitted, and how well it follows.
func impedanceWords(m impedancefit.Study) string {
	f := m.Fit
	text := prose.Sprintf("%d points from %s to %s. A driver with %s follows them within %.2g percent.",
		len(m.Points), hertzText(m.Points[0].Frequency), hertzText(m.Points[len(m.Points)-1].Frequency), articled(f.Coil), 100*f.Misfit)
	switch {
	case f.Rough():
		text += " What is left over is not noise: the driver is only roughly such a circuit, and the true errors may be larger than those stated."
	case f.Systematic:
		text += " What is left over is not noise; the errors stated are wider for it."
	}
	if n := len(f.LeftOut); n > 0 {
		var at []string
		for _, hz := range f.LeftOut[:min(n, 6)] {
			at = append(at, hertzText(hz))
		}
		if n > 6 {
			at = append(at, "and so on")
		}
		text += fmt.Sprintf(" %d stand out and were left out (hum, perhaps): %s.", n, strings.Join(at, ", "))
	}
	return text
}

// planWords sets Re against the design's; nothing where they agree, or none is known.
func planWords(m impedancefit.Study) string {
	if !m.OffPlan() {
		return ""
	}
	text := prose.Sprintf("Re is %.4g ohm, the design's dc_ohm %.4g. Measure it with a meter across the driver.", m.Fit.DCOhm.Value, m.PlannedOhm)
	if m.Recorded {
		text += " If the meter sides with the design, --series-ohm is wrong or the two inputs have different gains: see --bridged."
	}
	return text
}

func hertzText(hz float64) string {
	if hz >= 1000 {
		return prose.Sprintf("%.4g kHz", hz/1000)
	}
	return prose.Sprintf("%.4g Hz", hz)
}

func articled(c impedancefit.Coil) string {
	if name := c.String(); strings.HasPrefix(name, "i") {
		return "an " + name
	}
	return "a " + c.String()
}

// impedanceCautions are what to mind when an impedance is measured.
var impedanceCautions = []string{
	"measure with a low voltage, a tenth of a volt or so at the driver: these values are those of small signals, and at its resonance a cone moves far.",
	"turn the amplifier down before you clip on. Both inputs share its ground: never measure like this on an amplifier whose outputs are bridged, and leave mains-powered insides alone.",
}

// LoadScreen writes for people what a channel's impedance says about its strings.
// known is false where the design tells no more of its drivers than a resistance.
func LoadScreen(w io.Writer, channel int, l impedancefit.Load, known, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	fmt.Fprintln(b, s.strong(fmt.Sprintf("Channel %d: %s times the planned load", channel, ratioText(l.Ratio))))
	fmt.Fprintln(b, wrap(LoadWords(l)))
	if !known {
		fmt.Fprintln(b, s.faint(wrap("The design has no impedance of its driver: measure one alone and write it in.")))
	}
	fmt.Fprintln(b)
	fmt.Fprintln(b, wrap(s.alert("Look out:")+" do not connect a channel that is shorted, or below the amplifier's minimum: it can overheat and burn. Switch off before you touch the wiring."))
	_, err := io.WriteString(w, b.String())
	return err
}

func ratioText(v float64) string {
	switch {
	case v > 20:
		return "over 20"
	case v < 0.05:
		return "under 0.05"
	}
	return fixed(v, 2)
}

// LoadWords says in plain words what a load means.
func LoadWords(l impedancefit.Load) string {
	which := ""
	if l.Cause.State != impedance.Alive && !math.IsInf(l.Cause.Ratio, 1) {
		which = " Which one cannot be told from here: listen close to each driver, or lift the strings one by one."
	}
	if len(l.Alike) > 0 {
		var also []string
		for _, m := range l.Alike {
			also = append(also, m.String())
		}
		which += fmt.Sprintf(" But %s would measure the same: see what is connected.", strings.Join(also, ", or "))
	}
	if l.Flat {
		return "No resonance is to be seen in it, as drivers have one: this looks like a resistor, or drivers that cannot move. See what is connected."
	}
	switch {
	case l.Sure:
		return fmt.Sprintf("So %v.%s", l.Cause, which)
	case len(l.Others) > 0:
		var also []string
		for _, c := range l.Others[:min(3, len(l.Others))] {
			also = append(also, c.String())
		}
		return fmt.Sprintf("Not sure: perhaps %v, perhaps %s; drivers differ by as much.%s", l.Cause, strings.Join(also, " or "), which)
	}
	return "Nothing that is thought of here explains it: neither the planned wiring nor one or two dead drivers or strings. Check the file, the resistor and the design."
}
