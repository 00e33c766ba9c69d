package timing

import (
	"cmp"
	"math"
	"slices"
)

// Arrivals within sameTime in s, and heights within sameHeight in m, count as
// equal when drivers are sorted: a symmetric body's differ by rounding alone, and
// nothing that can be built is that exact.
const (
	sameTime   = 1e-9
	sameHeight = 1e-9
)

// weightBits is to how many binary digits weights count when drivers are sorted,
// to 1e-9.
const weightBits = 30

// line returns what the drivers are split by, one value and weight each, ties
// levelled: their height from the top down in m, or their arrival in s.
func (plan *Plan) line(by string, time, weight []float64) (value, weigh []float64) {
	if by != byHeight {
		return levelled(time, sameTime), stepped(weight)
	}
	value, weigh = make([]float64, len(time)), make([]float64, len(time))
	for m, mount := range plan.Array.Mounts {
		value[m], weigh[m] = -mount.Point.Z, 1
	}
	return levelled(value, sameHeight), weigh
}

// levelled returns values where each that is within same of a lower one is that
// one. Unlike rounding to a step it never takes neighbours by rounding apart.
func levelled(value []float64, same float64) []float64 {
	order := all(len(value))
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(value[a], value[b]) })
	out := make([]float64, len(value))
	low := math.Inf(-1)
	for _, i := range order {
		if value[i] > low+same {
			low = value[i]
		}
		out[i] = low
	}
	return out
}

// stepped returns weights rounded to weightBits.
func stepped(weight []float64) []float64 {
	out := make([]float64, len(weight))
	for i, w := range weight {
		part, exponent := math.Frexp(w)
		out[i] = math.Ldexp(math.Round(math.Ldexp(part, weightBits)), exponent-weightBits)
	}
	return out
}
