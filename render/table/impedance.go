package table

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"pappus/layout/impedance"
	"pappus/render/words"
	"pappus/timing/impedancefit"
)

// MeasuredImpedance writes the points as a design's driver and a damping log take
// them.
func MeasuredImpedance(w io.Writer, points []impedance.Point) error {
	t := newSheet("frequency_hz:4", "ohm:5", "degrees:4")
	for _, p := range points {
		// What noise turned past a quarter of a circle no passive part can have.
		t.add(p.Frequency, p.Ohm, max(-90, min(90, p.Degrees)))
	}
	return t.write(w)
}

// ImpedanceFit writes one row for each value that was found, with its standard error.
func ImpedanceFit(w io.Writer, m impedancefit.Study) error {
	six := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
	t := newSheet("value", "found", "standard_error", "unit")
	for _, v := range values(m) {
		t.add(v.name, six(v.per*v.Value), six(v.per*v.Error), v.unit)
	}
	return t.write(w)
}

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
	s := &screen{style: style(colour)}
	fmt.Fprintln(s, s.strong("Impedance in "+m.Name))
	s.say(words.Impedance(m))
	fmt.Fprintln(s)
	for _, v := range values(m) {
		value, sigma := v.Text(v.per)
		s.row("%-20s %10s +- %-8s %s", v.name, value, sigma, v.unit)
	}
	s.note(Wrap(words.ImpedanceErrors(m.Recorded)))
	if text := words.AgainstDesign(m); text != "" {
		fmt.Fprintln(s)
		s.say(text)
	}
	s.section("if it was measured in free air, for the design")
	fmt.Fprintln(s, "[driver]")
	for _, k := range m.Fit.Keys(m.Mechanical) {
		fmt.Fprintf(s, "%s = %s\n", strings.TrimPrefix(k.Name, "driver."), strconv.FormatFloat(k.Value, 'f', -1, 64))
	}
	fmt.Fprintln(s)
	if m.Recorded && m.PlannedOhm == 0 {
		s.say(words.MeterToo)
		fmt.Fprintln(s)
	}
	for _, text := range words.ImpedanceCautions {
		s.lookOut(text)
	}
	return s.to(w)
}

// LoadScreen writes for people what a channel's impedance says about its strings.
// known is false where the design tells no more of its drivers than a resistance.
func LoadScreen(w io.Writer, channel int, l impedancefit.Load, known, colour bool) error {
	s := &screen{style: style(colour)}
	fmt.Fprintln(s, s.strong(words.LoadTitle(channel, l)))
	s.say(words.Load(l))
	if text := words.LoadTrials(l); text != "" {
		s.note(Wrap(text))
	}
	if !known {
		s.note(Wrap(words.NoImpedance))
	}
	fmt.Fprintln(s)
	s.lookOut(words.LoadCaution)
	return s.to(w)
}
