package seats

import "math"

// logBits is how many leading bits of a mantissa the table of logarithms goes by.
const logBits = 7

// logTable holds for each of these the reciprocal of the middle and its log2.
var logTable = func() (t [1 << logBits]struct{ over, log float64 }) {
	for i := range t {
		middle := 1 + (float64(i)+0.5)/float64(len(t))
		t[i].over, t[i].log = 1/middle, math.Log2(middle)
	}
	return t
}()

// fastLog2 is log2 of a normal number above 0 to 1e-12: table and Taylor's series of
// ln(1+r) for |r| < 1/256, a third of the time of math.Log2.
func fastLog2(x float64) float64 {
	bits := math.Float64bits(x)
	t := &logTable[bits>>(52-logBits)&(1<<logBits-1)]
	r := math.Float64frombits(bits&(1<<52-1)|1023<<52)*t.over - 1
	return float64(int(bits>>52)-1023) + t.log + math.Log2E*r*(1-r*(1./2-r*(1./3-r*(1./4-r/5))))
}
