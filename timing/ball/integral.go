package ball

import "math"

// integral of f from lo to hi by the double exponential rule (Takahasi and Mori,
// Publ. RIMS 9 (1974) 721), which bears singular ends; steps are halved until
// the sum stands still.
func integral(lo, hi float64, f func(float64) float64) float64 {
	if !(hi > lo) {
		return 0
	}
	at := func(t float64) float64 {
		e := math.Exp(-math.Pi * math.Sinh(math.Abs(t)))
		d := e / (1 + e) // of the range, from the nearer end
		x := lo + (hi-lo)*d
		if t > 0 {
			x = hi - (hi-lo)*d
		}
		return f(x) * math.Pi * math.Cosh(t) * d / (1 + e)
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
	return sum * step * (hi - lo)
}
