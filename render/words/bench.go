package words

import "pappus/layout/prose"

// Bench says how to measure what is soldered, and what to mind there, in sentences; tolerance
// is by how much, as a share, a reading may be off.
func Bench(tolerance float64) []string {
	return []string{
		prose.Sprintf("Readings are of direct current at 20 °C, coils and wire together, give or take %.0f %%. Touch the meter's probes together first and take off what it shows.", 100*tolerance),
		"Measure each string alone before you join it to the others, and every load before any power.",
		"A string that reads one driver too little has a short in it; one that reads nothing has an open joint.",
		"The iron is hot and so is a fresh joint: lay it in its stand, let the joint cool, and solder where there is air. Disconnect the amplifier while you solder. Leave mains to licensed people.",
	}
}
