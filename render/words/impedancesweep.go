package words

import (
	"fmt"

	"pappus/layout/prose"
)

// ImpedanceSweep says how a driver's impedance is measured: with a sweep and a tone in some
// folder, so many V and a resistor of some ohm, for the design at a path, which may be empty.
func ImpedanceSweep(folder string, volt, ohm float64, design string) string {
	then := prose.Command("pappus impedance FILE.wav", design)
	return prose.Sprintf("In %s are a sweep and a tone. With nothing connected, turn the amplifier up until the tone gives %.2g V (RMS, a multimeter on AC) at its output: more can move a small cone too far. ", prose.Path(folder), volt) +
		prose.Sprintf("Then connect a resistor of about %g ohm, measured with a meter, in series with the driver in free air, and record the sweep: left the voltage before the resistor, right the one over the driver, with the same gain against the same ground. Then: ", ohm) +
		fmt.Sprintf("%s --series-ohm %s", then, prose.Number(ohm, 3))
}
