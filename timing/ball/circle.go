package ball

import "math"

// circle holds exp(-i x) in the middle of each of circlePoints arcs of a turn.
var circle = func() (c [circlePoints]complex128) {
	for i := range c {
		s, co := math.Sincos((float64(i) + 0.5) * arc)
		c[i] = complex(co, -s)
	}
	return c
}()

const (
	circlePoints = 2048
	arc          = 2 * math.Pi / circlePoints
)

// turn returns exp(-i x) for x in arcs, x >= 0. Within half an arc, e, of the
// middle exp(-ie) is 1 - ie - e^2/2 to within e^3/6, which is 6.1e-10 here.
func turn(x float64) (re, im float64) {
	n := int(x)
	e := (x - float64(n) - 0.5) * arc
	m := circle[uint(n)%circlePoints]
	c, s := real(m), imag(m)
	q := 1 - e*e/2
	return c*q + s*e, s*q - c*e
}
