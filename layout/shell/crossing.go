package shell

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// oneLine is the angle in rad within which the lines where cells meet count as one: on any
// body a few hundredths of a millimetre, which no printer keeps apart.
const oneLine = 1e-4

// crossings returns the cells that meet in one line, counter-clockwise about it, wherever
// they are four or more.
func (c *cutter) crossings(cells []share) [][]int {
	type corner struct {
		at   r3.Vec
		cell int
	}
	var all []corner
	for i, s := range cells {
		for _, at := range s.corners(r3.Unit(c.sites[i].Point)) {
			all = append(all, corner{at, i})
		}
	}
	var out [][]int
	done := make([]bool, len(all))
	for k, first := range all {
		if done[k] {
			continue
		}
		var here []int
		for l := k; l < len(all); l++ {
			if r3.Norm(r3.Sub(all[l].at, first.at)) < oneLine {
				done[l] = true
				here = append(here, all[l].cell)
			}
		}
		slices.Sort(here)
		if here = slices.Compact(here); len(here) < 4 {
			continue
		}
		right, up := poly.Across(first.at)
		turn := func(i int) float64 {
			p := c.sites[i].Point
			return math.Atan2(r3.Dot(p, up), r3.Dot(p, right))
		}
		slices.SortFunc(here, func(i, j int) int { return cmp.Compare(turn(i), turn(j)) })
		out = append(out, here)
	}
	return out
}

// corners returns the directions of the lines where two sides of a cell round a site meet.
func (s share) corners(site r3.Vec) (out []r3.Vec) {
	for i, a := range s.Sides {
		for _, b := range s.Sides[:i] {
			line := r3.Cross(a.Normal, b.Normal)
			if r3.Norm(line) < 1e-9 {
				continue
			}
			if line = r3.Unit(line); r3.Dot(line, site) < 0 {
				line = r3.Scale(-1, line)
			}
			if !slices.ContainsFunc(s.Sides, func(o Side) bool { return r3.Dot(o.Normal, line) > oneLine }) {
				out = append(out, line)
			}
		}
	}
	return out
}

// pinched tells whether some cells touch in a line alone, which no print holds together.
func pinched(member map[int]bool, crossings [][]int) bool {
	for _, here := range crossings {
		changes := 0
		for k, i := range here {
			if member[i] != member[here[(k+1)%len(here)]] {
				changes++
			}
		}
		if changes > 2 {
			return true
		}
	}
	return false
}
