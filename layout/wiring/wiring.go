package wiring

// rounding is how far under the minimum a load may be by rounding alone.
const rounding = 1e-12

// Load gives the load in ohm of a bank of equal drivers of ohm each: series
// drivers in a string, parallel strings.
func Load(series, parallel int, ohm float64) float64 {
	return float64(series) * ohm / float64(parallel)
}

// Best gives the wiring of n equal drivers, all strings alike, whose load is the
// lowest that is not under minLoadOhm at any frequency: the one that draws the
// most power that the amplifier may give. leastOhm is the lowest load that one
// driver makes of itself, its direct current resistance or a dip below it. load
// is the nominal load in ohm.
//
// Where no wiring reaches the minimum, ok is false and the one with the highest
// load is given, all in one string. Without drivers all is zero and ok false.
func Best(n int, nominalOhm, leastOhm, minLoadOhm float64) (series, parallel int, load float64, ok bool) {
	if n < 1 {
		return 0, 0, 0, false
	}
	// The load rises with the number in a string, so the first that will do is best.
	for s := 1; s <= n; s++ {
		if n%s == 0 && Load(s, n/s, leastOhm) >= minLoadOhm*(1-rounding) {
			return s, n / s, Load(s, n/s, nominalOhm), true
		}
	}
	return n, 1, Load(n, 1, nominalOhm), false
}
