package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/impedance"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
	"pappus/timing/trial"
)

// InHundred says in how many of a hundred made-up cases something happened, with the 95 percent
// interval: "3 in 100 (1 to 8)".
func InHundred(c trial.Count) string {
	low, high := c.Interval()
	return fmt.Sprintf("%.0f in 100 (%.0f to %.0f)", 100*c.Share(), math.Floor(100*low+0.5), math.Ceil(100*high-0.5))
}

// ImpedanceErrors says what the errors of a fit are, and how far they can be relied on.
func ImpedanceErrors(recorded bool) string {
	in := " in a table"
	if recorded {
		in = " in a recording"
	}
	t := impedancefit.Trials()
	var parts []string
	for _, name := range []string{"fs", "Qts", "Re"} {
		parts = append(parts, name+" "+InHundred(t.Of(name+in, trial.Covered)))
	}
	return fmt.Sprintf("+- is one standard error: of noise, of a resistor or meter that is off, of a coil that warms and a suspension that creeps. Of %d made-up drivers that have what the circuit does not know of, the truth was within twice that: %s.",
		t.Of("Qts"+in, trial.Covered).Cases, strings.Join(parts, ", "))
}

// LoadTrials says how far a verdict on a channel can be relied on.
func LoadTrials(l impedancefit.Load) string {
	t := impedancefit.Trials()
	switch {
	case l.AsPlanned():
		var parts []string
		for _, fault := range impedancefit.Faults {
			parts = append(parts, fault+" in "+InHundred(t.Of(fault, trial.Missed)))
		}
		return "Of made-up channels with a fault, some look as planned: " + strings.Join(parts, ", ") + "."
	case l.Sure && l.Cause.State != impedance.Alive || l.Flat || l.Loose:
		return fmt.Sprintf("Of made-up channels without a fault, %s look faulty.", InHundred(t.Of("a sound channel", trial.FalseAlarm)))
	}
	return ""
}

// ChangeTrials says how far what is said of changes can be relied on.
func ChangeTrials() string {
	t := damping.Trials()
	return fmt.Sprintf("Of made-up changes that did nothing, %s are taken for one; of those by more than a fifth, %s for scatter; %s are said the wrong way.",
		InHundred(t.Of(damping.AnyChange, trial.FalseAlarm)), InHundred(t.Of(damping.LargeChange, trial.Missed)), InHundred(t.Of(damping.AnyChange, damping.WrongWay)))
}

// NextTrials says how far what is proposed can be relied on.
func NextTrials() string {
	t := damping.Trials()
	return fmt.Sprintf("Of %d made-up boxes, %s were not there after six trials.", t.Of(damping.InSix, trial.Missed).Cases, InHundred(t.Of(damping.InSix, trial.Missed)))
}
