package pareto

import (
	"cmp"
	"slices"
)

// Hypervolume returns the volume of what points dominate up to a reference: all places that
// are nowhere less than some point, and nowhere greater than the reference. A point that is
// not less than the reference in every aim adds nothing. Points and reference of unequal
// lengths are a programmer's error.
//
// It adds point by point what each dominates alone (While, Bradstreet and Barone 2012, A fast
// way of calculating exact hypervolumes). Points come by their last value, greatest first, so
// that all that stand against one are at its height there: one aim less each time, down to
// two, which are a staircase.
func Hypervolume(points [][]float64, reference []float64) float64 {
	var within [][]float64
	for _, i := range byValues(points) {
		if inside(points[i], reference) {
			within = append(within, points[i])
		}
	}
	return volume(within, reference, len(reference))
}

// inside tells whether a point is less than the reference in every aim.
func inside(p, reference []float64) bool {
	if len(p) != len(reference) {
		panic("pareto: a point and a reference of unequal lengths")
	}
	for a, v := range p {
		if !(v < reference[a]) {
			return false
		}
	}
	return true
}

// volume returns the hypervolume in the first aims of points, which it sorts.
func volume(points [][]float64, reference []float64, aims int) float64 {
	switch {
	case len(points) == 0:
		return 0
	case len(points) == 1:
		return box(points[0], reference, aims)
	case aims == 1:
		return reference[0] - slices.MinFunc(points, compare)[0]
	case aims == 2:
		return staircase(points, reference)
	}
	last := aims - 1
	slices.SortStableFunc(points, func(p, q []float64) int { return cmp.Compare(q[last], p[last]) })
	sum := 0.0
	for i, p := range points {
		alone := box(p, reference, last) - volume(worse(p, points[i+1:], last), reference, last)
		sum += (reference[last] - p[last]) * alone
	}
	return sum
}

// box returns the volume between a point and the reference.
func box(p, reference []float64, aims int) float64 {
	v := 1.0
	for a := range aims {
		v *= reference[a] - p[a]
	}
	return v
}

// staircase returns the area that points dominate, which it sorts.
func staircase(points [][]float64, reference []float64) float64 {
	slices.SortStableFunc(points, func(p, q []float64) int {
		return cmp.Or(cmp.Compare(p[0], q[0]), cmp.Compare(p[1], q[1]))
	})
	area, top := 0.0, reference[1]
	for _, p := range points {
		if p[1] < top {
			area += (reference[0] - p[0]) * (top - p[1])
			top = p[1]
		}
	}
	return area
}

// worse returns what others dominate of what p does, in the first aims: each no better than p
// anywhere, without those that another of them dominates.
func worse(p []float64, others [][]float64, aims int) [][]float64 {
	values := make([]float64, aims*len(others))
	kept := make([][]float64, 0, len(others))
next:
	for i, o := range others {
		w := values[i*aims : (i+1)*aims : (i+1)*aims]
		for a := range w {
			w[a] = max(p[a], o[a])
		}
		for _, k := range kept {
			if nowhereGreater(k, w) {
				continue next
			}
		}
		kept = slices.DeleteFunc(kept, func(k []float64) bool { return nowhereGreater(w, k) })
		kept = append(kept, w)
	}
	return kept
}

// nowhereGreater tells whether p dominates or equals q.
func nowhereGreater(p, q []float64) bool {
	for a := range p {
		if p[a] > q[a] {
			return false
		}
	}
	return true
}
