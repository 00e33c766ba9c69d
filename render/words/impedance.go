package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/impedance"
	"pappus/layout/prose"
	"pappus/timing/impedancefit"
)

// Impedance says what was fitted, and how well it follows.
func Impedance(m impedancefit.Study) string {
	f := m.Fit
	text := prose.Sprintf("%d points from %s to %s. A driver with %s follows them within %.2g percent.",
		len(m.Points), prose.Hertz(m.Points[0].Frequency, 4), prose.Hertz(m.Points[len(m.Points)-1].Frequency, 4), articled(f.Coil), 100*f.Misfit)
	switch {
	case f.Rough():
		text += " What is left over is not noise: the driver is only roughly such a circuit, and the true errors may be larger than those stated."
	case f.Systematic:
		text += " What is left over is not noise; the errors stated are wider for it."
	}
	if n := len(f.LeftOut); n > 0 {
		var at []string
		for _, hz := range f.LeftOut[:min(n, 6)] {
			at = append(at, prose.Hertz(hz, 4))
		}
		if n > 6 {
			at = append(at, "and so on")
		}
		text += fmt.Sprintf(" %d stand out and were left out (hum, perhaps): %s.", n, strings.Join(at, ", "))
	}
	return text
}

// AgainstDesign sets Re against the design's; nothing where they agree, or none is known.
func AgainstDesign(m impedancefit.Study) string {
	if !m.OffPlan() {
		return ""
	}
	text := prose.Sprintf("Re is %.4g ohm, the design's dc_ohm %.4g. Measure it with a meter across the driver.", m.Fit.DCOhm.Value, m.PlannedOhm)
	if m.Recorded {
		text += " If the meter sides with the design, --series-ohm is wrong or the two inputs have different gains: see --bridged."
	}
	return text
}

// articled names a model of the coil with its article.
func articled(c impedancefit.Coil) string {
	if name := c.String(); strings.HasPrefix(name, "i") {
		return "an " + name
	}
	return "a " + c.String()
}

// ImpedanceCautions are what to mind when an impedance is measured.
var ImpedanceCautions = []string{
	"measure with a low voltage, a tenth of a volt or so at the driver: these values are those of small signals, and at its resonance a cone moves far.",
	"turn the amplifier down before you clip on. Both inputs share its ground: never measure like this on an amplifier whose outputs are bridged, and leave mains-powered insides alone.",
}

// LoadTitle heads what is said of a channel's load.
func LoadTitle(channel int, l impedancefit.Load) string {
	ratio := fmt.Sprintf("%.2f", l.Ratio)
	switch {
	case l.Ratio > 20:
		ratio = "over 20"
	case l.Ratio < 0.05:
		ratio = "under 0.05"
	}
	return fmt.Sprintf("Channel %d: %s times the planned load", channel, ratio)
}

// Load says what a load means.
func Load(l impedancefit.Load) string {
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
	if l.Loose {
		which += " Its resonance is not quite that of equal drivers in a closed box: there is an opening, or a leak."
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

// Cautions about loads.
const (
	NoImpedance = "The design has no impedance of its driver: measure one alone and write it in."
	LoadCaution = "do not connect a channel that is shorted, or below the amplifier's minimum: it can overheat and burn. Switch off before you touch the wiring."
	MeterToo    = "Measure Re with a meter too: a wrong --series-ohm or inputs of different gain shift all ohms, and nothing else shows it."
)
