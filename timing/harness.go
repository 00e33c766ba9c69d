package timing

import (
	"slices"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Run is the wire of one string inside the body: from the entry, the point on the
// upright axis at the body's lowest height, from joint to joint and back.
type Run struct {
	Channel, String int     // indices into Plan.Channels and Bank.Strings
	Order           []int   // the string's mounts in the order of their joints
	Length          float64 // m of single wire, in straight lines: leave slack at every joint
}

// Harness returns the wire of every string, in the order of channels and strings.
// The orders are short, not proven the shortest: the nearest joint next, then
// improved by turning parts round while that shortens the run (2-opt, G. A. Croes,
// Oper. Res. 6 (1958) 791).
func Harness(p *Plan) []Run {
	var out []Run
	for c, bank := range p.Banks {
		for s, mounts := range bank.Strings {
			order, length := shortest(p.Array, mounts)
			out = append(out, Run{Channel: c, String: s, Order: order, Length: length})
		}
	}
	return out
}

// HarnessLength returns the whole length in m of some runs.
func HarnessLength(runs []Run) float64 {
	sum := 0.0
	for _, r := range runs {
		sum += r.Length
	}
	return sum
}

// shorter is by how much in m a run must get shorter to be worth a change, far
// over rounding.
const shorter = 1e-9

// shortest returns some mounts in the order of a short run, and its length in m.
func shortest(a *layout.Array, mounts []int) ([]int, float64) {
	order := nearestNext(a, mounts)
	at := func(i int) r3.Vec {
		if i < 0 || i >= len(order) {
			return r3.Vec{Z: a.Body.Lowest()}
		}
		return a.Mounts[order[i]].Point
	}
	gap := func(i, j int) float64 { return r3.Norm(r3.Sub(at(i), at(j))) }
	for better := true; better; {
		better = false
		for i := range order {
			for j := i + 1; j < len(order); j++ {
				if gap(i-1, j)+gap(i, j+1) < gap(i-1, i)+gap(j, j+1)-shorter {
					slices.Reverse(order[i : j+1])
					better = true
				}
			}
		}
	}
	length := 0.0
	for i := -1; i < len(order); i++ {
		length += gap(i, i+1)
	}
	return order, length
}

// nearestNext orders mounts by going to the nearest one each time, the lower index
// where two are as near.
func nearestNext(a *layout.Array, mounts []int) []int {
	left := append([]int(nil), mounts...)
	order := make([]int, 0, len(left))
	here := r3.Vec{Z: a.Body.Lowest()}
	for len(left) > 0 {
		best := 0
		for i, m := range left {
			d, least := r3.Norm(r3.Sub(a.Mounts[m].Point, here)), r3.Norm(r3.Sub(a.Mounts[left[best]].Point, here))
			if d < least-shorter || d < least+shorter && m < left[best] {
				best = i
			}
		}
		here = a.Mounts[left[best]].Point
		order = append(order, left[best])
		left = append(left[:best], left[best+1:]...)
	}
	return order
}
