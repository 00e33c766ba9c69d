package ball

import "math"

// circle holds the cosine and sine in the middle of each of circlePoints arcs of
// a turn.
var circle = func() (c [circlePoints]struct{ cos, sin float64 }) {
	for i := range c {
		c[i].sin, c[i].cos = math.Sincos((float64(i) + 0.5) * arc)
	}
	return c
}()

const (
	circlePoints = 4096
	arc          = 2 * math.Pi / circlePoints
)

// turn returns exp(-i x) for x >= 0 in arcs. Within half an arc of the middle, at
// the distance e, exp(-ie) is 1 - ie to within e^2/2, which is 3.0e-7 at most: far
// below what the nodes of a table miss, and a third less work than one more
// order.
func turn(x float64) (re, im float64) {
	n := int64(x)
	e := (x - float64(n) - 0.5) * arc
	m := &circle[uint64(n)%circlePoints]
	return m.cos - m.sin*e, -m.sin - m.cos*e
}
