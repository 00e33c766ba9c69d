package spread

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Holds tells whether n points as far apart as a zone asks were found in it.
// Where it does, Within finds them too. That it does not proves nothing; it
// searches from a spiral and, for few points, from chance.
func Holds(n int, z Zone) bool {
	if n < 1 || n > Most || z.check(n) != nil {
		return false
	}
	z = z.round()
	poles, err := onAxis(n, z)
	if err != nil {
		return false
	}
	_, found := parted(n, poles, z, nil)
	return found
}

// ceiling returns a count that no zone holds more of at the distance it asks: as
// many discs as the densest packing of a plane puts on its area, and some more
// for small numbers and for what reaches out at the border.
func (z Zone) ceiling() int {
	if !(z.Apart > 0) {
		return Most
	}
	const samples = 4096
	half, in := min(z.Apart, math.Pi)/2, 0
	for i := range samples {
		p, free := spiralPoint(i, samples), true
		for _, c := range z.Clear {
			free = free && (c.HalfAngle <= half || r3.Dot(p, c.Axis) <= math.Cos(c.HalfAngle-half))
		}
		if free {
			in++
		}
	}
	densest := math.Pi / math.Sqrt(12)
	disc := (1 - math.Cos(half)) / 2 // of the whole sphere
	return int(min(Most, 1.05*densest*float64(in)/samples/disc+3))
}

// Capacity returns how many points as far apart as a zone asks were found in it,
// of at most so many and with as many on the axis as that count leaves over the
// symmetry; 0 where not one was. It halves the range of counts, as if fewer
// points always fitted where more do. It is no proven maximum: another
// arrangement may take some percent more.
func Capacity(most int, z Zone) int {
	if Holds(most, z) {
		return most
	}
	fold := max(z.Fold, 1)
	over := most % fold
	low, high := 0, most/fold // rings that fit, that do not
	if high > 0 && over+high*fold > z.round().ceiling() {
		high = max(1, min(high, (z.round().ceiling()-over)/fold+1))
	}
	for high-low > 1 {
		if middle := (low + high) / 2; Holds(over+middle*fold, z) {
			low = middle
		} else {
			high = middle
		}
	}
	if low == 0 && (over == 0 || !Holds(over, z)) {
		return 0
	}
	return over + low*fold
}
