package timing

import (
	"cmp"
	"context"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/impedance"
	"pappus/timing/split"

	"gonum.org/v1/gonum/spatial/r3"
)

// wire deals each channel's drivers out to its strings: far apart, or with their neighbours
// where the worst dead string then loses less.
func wire(ctx context.Context, s *Spot) ([]Bank, error) {
	var r *ring
	out := make([]Bank, len(s.Channels))
	for i, c := range s.Channels {
		b := &out[i]
		if b.Strings = SpreadStrings(s.Array, c.Mounts, c.Parallel); len(b.Strings) > 1 {
			if r == nil {
				var err error
				if r, err = newRing(s); err != nil {
					return nil, err
				}
			}
			if ctx.Err() != nil {
				return nil, ctx.Err()
			}
			open := s.fail(i, impedance.Open, false, r.frequency)
			near := neighbourStrings(s.Array, c.Mounts, max(c.Parallel, 1))
			if r.worst(c.Mounts, near, open) < r.worst(c.Mounts, b.Strings, open)-worthBetter {
				b.Strings, b.Near = near, true
			}
		}
		for n := range b.Strings {
			b.Strings[n], _ = shortest(s.Array, b.Strings[n])
		}
	}
	return out, nil
}

// worthBetter is by how many dB neighbours must be better than spread strings to be
// strung together: what a table shows.
const worthBetter = 0.05

// mostSwapped is the most drivers of a channel for which swaps between strings are
// tried: the tries grow with the square of their number.
const mostSwapped = 200

// SpreadStrings deals the drivers of a channel, given as indices into the array's
// mounts, out to a number of strings so that the drivers of one string look in
// directions far apart: a string that falls silent then leaves no hole. The
// strings are as equal in length as can be, each sorted by index.
//
// Drivers are dealt round by azimuth, then elevation; then pairs are swapped as
// long as that lowers the sum over all pairs in a string of 1/angle^4, which
// close pairs rule. (Spreading by an inverse power of the distance is that of
// Thomson's problem, with a higher power.) Beyond 200 drivers they are dealt only.
//
// Of a channel that bodies share, each body has as many strings.
func SpreadStrings(a *layout.Array, mounts []int, count int) [][]int {
	return onBodies(a, mounts, count, spreadStrings)
}

// spreadStrings is SpreadStrings on one body.
func spreadStrings(a *layout.Array, mounts []int, count int) [][]int {
	count = max(1, min(count, len(mounts)))
	order := byAzimuth(a, mounts)
	out := make([][]int, count)
	for i, m := range order {
		out[i%count] = append(out[i%count], m)
	}
	if count > 1 && len(mounts) <= mostSwapped {
		swapApart(a, out)
	}
	for _, s := range out {
		slices.Sort(s)
	}
	return out
}

// byAzimuth sorts mounts by azimuth, then from the top down, then by index, with
// azimuths and heights that differ by rounding alone taken for equal.
func byAzimuth(a *layout.Array, mounts []int) []int {
	order := slices.Clone(mounts)
	const fine = 1e-9
	key := func(m int) (azimuth, height float64) {
		p := a.Mounts[m].Point
		azimuth = math.Atan2(p.Y, p.X)
		if math.Hypot(p.X, p.Y) < fine {
			azimuth = 0
		}
		return math.Round(azimuth / fine), math.Round(p.Z / fine)
	}
	slices.SortFunc(order, func(x, y int) int {
		ax, hx := key(x)
		ay, hy := key(y)
		return cmp.Or(cmp.Compare(ax, ay), cmp.Compare(hy, hx), cmp.Compare(x, y))
	})
	return order
}

// swapApart swaps drivers between strings while that spreads them further.
func swapApart(a *layout.Array, strings [][]int) {
	push := pushes(a, strings)
	const rounds = 20 // far more than are ever needed
	for range rounds {
		swapped := false
		for s, first := range strings {
			for _, second := range strings[s+1:] {
				for i := range first {
					for j := range second {
						before := pushed(first, i, push[first[i]]) + pushed(second, j, push[second[j]])
						after := pushed(first, i, push[second[j]]) + pushed(second, j, push[first[i]])
						if after < before*(1-1e-9) {
							first[i], second[j] = second[j], first[i]
							swapped = true
						}
					}
				}
			}
		}
		if !swapped {
			return
		}
	}
}

// pushes returns 1/angle^4 for each two drivers of some strings, by mount; rows of
// other mounts are empty.
func pushes(a *layout.Array, strings [][]int) [][]float64 {
	out := make([][]float64, len(a.Mounts))
	drivers := slices.Concat(strings...)
	for _, x := range drivers {
		out[x] = make([]float64, len(a.Mounts))
		for _, y := range drivers {
			angle := max(angleBetween(a.Mounts[x].Point, a.Mounts[y].Point), 1e-3)
			out[x][y] = 1 / (angle * angle * angle * angle)
		}
	}
	return out
}

// pushed returns how hard a driver in one place of a string is pushed by the
// string's others, from its row of pushes.
func pushed(s []int, place int, push []float64) float64 {
	sum := 0.0
	for i, m := range s {
		if i != place {
			sum += push[m]
		}
	}
	return sum
}

// angleBetween returns the angle in rad between two directions from the centre.
func angleBetween(a, b r3.Vec) float64 {
	return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b))
}

// neighbourStrings strings drivers with their neighbours.
func neighbourStrings(a *layout.Array, mounts []int, count int) [][]int {
	return onBodies(a, mounts, count, nearStrings)
}

// nearStrings is neighbourStrings on one body.
func nearStrings(a *layout.Array, mounts []int, count int) [][]int {
	place := make([]r3.Vec, len(mounts))
	for i, m := range mounts {
		place[i] = a.Mounts[m].Point
	}
	out := split.Neighbours(place, count)
	for _, s := range out {
		for i := range s {
			s[i] = mounts[s[i]]
		}
	}
	return out
}
