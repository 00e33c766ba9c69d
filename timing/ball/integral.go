package ball

import "math"

// integral of f over the width from lo, by the double exponential rule (Takahasi
// and Mori, Publ. RIMS 9 (1974) 721), which bears singular ends; steps are
// halved until the sum stands still. f gets the place and its distances from
// both ends, the nearer one exact.
func integral(lo, width float64, f func(x, below, above float64) float64) float64 {
	if !(width > 0) {
		return 0
	}
	at := func(t float64) float64 {
		e := math.Exp(-math.Pi * math.Sinh(math.Abs(t)))
		near := width * e / (1 + e)
		weight := math.Pi * math.Cosh(t) * e / ((1 + e) * (1 + e))
		if t < 0 {
			return weight * f(lo+near, near, width-near)
		}
		return weight * f(lo+width-near, width-near, near)
	}
	const reach = 3.4 // the weight is below 1e-40 beyond
	step := 0.5
	sum := at(0)
	for t := step; t < reach; t += step {
		sum += at(t) + at(-t)
	}
	for range 7 {
		before := sum * step
		step /= 2
		for t := step; t < reach; t += 2 * step {
			sum += at(t) + at(-t)
		}
		if math.Abs(sum*step-before) <= 1e-15*math.Abs(before) {
			break
		}
	}
	return sum * step * width
}
