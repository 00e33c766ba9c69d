package spread_test

import (
	"errors"

	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// What messages must say.
var (
	errCount    = errors.New("points must be from 1 to 2000")
	errCap      = errors.New("a cap needs a direction and a half-angle from 0 to pi")
	errApart    = errors.New("points must be apart by an angle from 0 to pi")
	errSymmetry = errors.New("the count must be a multiple of the symmetry")
)

// even spreads points over the whole sphere.
func even(n int, seed uint64) ([]r3.Vec, float64, error) {
	return within(n, seed, spread.Zone{})
}

// within spreads points over a zone, as far apart as it asks.
func within(n int, seed uint64, z spread.Zone) ([]r3.Vec, float64, error) {
	s, err := spread.Settle(n, seed, z)
	if err != nil {
		return nil, 0, err
	}
	points, energy := s.Apart(z.Apart)
	return points, energy, nil
}

// spiralIn returns n points of a spiral in a zone, evenly chosen.
func spiralIn(n int, z spread.Zone) []r3.Vec {
	for whole := n; ; whole += 1 + whole/64 {
		var in, out []r3.Vec
		for _, p := range spread.Spiral(whole) {
			if z.Contains(p) {
				in = append(in, p)
			}
		}
		for i := 0; i < n && len(in) >= n; i++ {
			out = append(out, in[(2*i+1)*len(in)/(2*n)])
		}
		if out != nil {
			return out
		}
	}
}
