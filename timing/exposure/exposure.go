package exposure

import "math"

// The limit: Hours at Limit dBA, half of that for each Exchange dB more, and
// never above Ceiling dBA.
const (
	Limit    = 85.0
	Hours    = 8.0
	Exchange = 3.0
	Ceiling  = 140.0
)

// Allowed returns for how many hours in a day a level in dBA may last, if there
// is no other sound: 8 h / 2^((level-85)/3), 0 above 140 dBA. Below 85 dBA it
// grows past 24. It is NaN for a level that is no number.
func Allowed(level float64) (hours float64) {
	if level > Ceiling {
		return 0
	}
	return Hours * math.Pow(2, (Limit-level)/Exchange)
}

// Dose returns the share of a day's allowance that levels in dBA use up, each
// lasting its number of hours, 0 or above; 1 is all of it. It panics where the
// lengths differ.
func Dose(level, hours []float64) float64 {
	if len(level) != len(hours) {
		panic("exposure: lengths differ")
	}
	dose := 0.0
	for i, l := range level {
		if hours[i] > 0 {
			dose += hours[i] / Allowed(l)
		}
	}
	return dose
}
