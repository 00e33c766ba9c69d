package timing

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"
)

// byBody parts mounts by their bodies, in the order of these.
func byBody(a *layout.Array, mounts []int) [][]int {
	var out [][]int
	for body := range a.Bodies() {
		var own []int
		for _, m := range mounts {
			if a.Mounts[m].Body == body {
				own = append(own, m)
			}
		}
		if own != nil {
			out = append(out, own)
		}
	}
	return out
}

// onBodies deals the drivers of a channel out to a number of strings, on each body alone.
func onBodies(a *layout.Array, mounts []int, count int, deal func(a *layout.Array, mounts []int, count int) [][]int) [][]int {
	var out [][]int
	bodies := byBody(a, mounts)
	for _, own := range bodies {
		out = append(out, deal(a, own, max(count/len(bodies), 1))...)
	}
	return out
}

// onOne returns what of groups is on one body each.
func onOne(a *layout.Array, groups [][]int) [][]int {
	if len(a.Bodies()) == 1 {
		return groups
	}
	out := make([][]int, len(groups))
	for i, g := range groups {
		out[i] = byBody(a, g)[0]
	}
	return out
}

// spread returns groups of the first body's drivers as those of all bodies of a set.
func spread(a *layout.Array, set []int, groups [][]int) [][]int {
	n := len(a.Own())
	out := make([][]int, len(groups))
	for i, g := range groups {
		for _, body := range set {
			for _, m := range g {
				out[i] = append(out[i], body*n+m)
			}
		}
	}
	return out
}

// oneEach returns a channel for each driver, and for those in the same places of bodies that
// share their channels.
func oneEach(a *layout.Array) (groups [][]int) {
	for _, set := range a.Sets() {
		one := make([][]int, len(a.Own()))
		for m := range one {
			one[m] = []int{m}
		}
		groups = append(groups, spread(a, set, one)...)
	}
	return groups
}

// sortBodies sorts the drivers of each set of bodies that are driven alike into count
// channels. Drivers in the same place of bodies that share their channels count as one, with
// the sum of their pressures and the mean of their arrivals, weighted by energy: what one
// delay leaves of the arrivals within such a driver no sorting changes, so that the split with
// the least of the rest has the least of all. No body has longer strings than another where it
// can do without: all drivers get what those in the longest string get.
func (p *Planner) sortBodies(a *layout.Array, t times, count int) (groups [][]int) {
	sets := a.Sets()
	sort := func(set []int, most int) [][]int {
		one := *a
		one.Mounts, one.Placings = a.Own(), nil
		if most > 0 {
			one.Wiring.LongestString = most
		}
		h, own := p.pressure.merged(set, len(one.Mounts)), t.merged(set, len(one.Mounts))
		return p.sortOne(&one, &h, own, count)
	}
	found, shortest := make([][][]int, len(sets)), math.MaxInt
	for i, set := range sets {
		found[i] = sort(set, 0)
		shortest = min(shortest, p.sizes.longest(found[i]))
	}
	for i, set := range sets {
		if p.sizes.longest(found[i]) > shortest && a.Wiring.Split != byNeighbours {
			found[i] = sort(set, shortest)
		}
		groups = append(groups, spread(a, set, found[i])...)
	}
	return groups
}

// merged returns the direct sound of bodies of n drivers each as that of one.
func (h *pressures) merged(set []int, n int) pressures {
	out := *h
	rows := n * len(h.frequency)
	out.direct = slices.Clone(h.direct[set[0]*rows : (set[0]+1)*rows])
	for _, body := range set[1:] {
		for i, v := range h.direct[body*rows : (body+1)*rows] {
			out.direct[i] += v
		}
	}
	return out
}

// merged returns the arrivals at bodies of n drivers each as those of one.
func (t times) merged(set []int, n int) times {
	out := times{make([]float64, n), make([]float64, n)}
	for m := range n {
		var mounts []int
		for _, body := range set {
			mounts = append(mounts, body*n+m)
			out.weight[m] += t.weight[body*n+m]
		}
		out.time[m] = t.mean(mounts)
	}
	return out
}

// BodyHeard is how one of several bodies is heard at the spot.
type BodyHeard struct {
	Distance float64 // m, of its centre
	Arrival  float64 // s, of its drivers without delays, as delays are taken, weighted by energy
	Delay    float64 // s, of its drivers, weighted alike: the programme delay between bodies is the difference
	Level    float64 // dB, of its direct sound by energy, each driver alone, over that of all bodies
}

// Bodies returns how each body is heard.
func (s *Spot) Bodies() []BodyHeard {
	t, total := s.times(), 0.0
	for _, w := range t.weight {
		total += w
	}
	out := make([]BodyHeard, len(s.Array.Bodies()))
	for i, own := range byBody(s.Array, all(len(t.time))) {
		weight, late := 0.0, 0.0
		for _, m := range own {
			weight, late = weight+t.weight[m], late+t.weight[m]*s.Arrivals[m].Delay
		}
		out[i] = BodyHeard{r3.Norm(r3.Sub(s.Array.Spot, s.Array.Bodies()[i].At)), t.mean(own), late / weight, 10 * math.Log10(weight/total)}
	}
	return out
}

// loudest returns the body that is the loudest at the spot, the first of several.
func (s *Spot) loudest() int {
	energy := make([]float64, len(s.Array.Bodies()))
	for m, w := range s.times().weight {
		energy[s.Array.Mounts[m].Body] += w
	}
	return floats.MaxIdx(energy)
}

// besideHead is how far beside the spot in m the comb between bodies is told: about half the
// width of a head (ISO 7250-1, head breadth, from memory: 0.15 m).
const besideHead = 0.08

// BodyComb returns the lowest frequency in Hz at which two bodies cancel for an ear besideHead
// from the spot, to whichever side this is lowest: their ways then differ by half a
// wavelength,
//
//	f = c/(2 d |u - v|)
//
// with u and v the directions to them. +Inf for one body.
func (s *Spot) BodyComb() (hz, beside float64) {
	most := 0.0
	for i, p := range s.Array.Bodies() {
		for _, q := range s.Array.Bodies()[:i] {
			u, v := r3.Unit(r3.Sub(p.At, s.Array.Spot)), r3.Unit(r3.Sub(q.At, s.Array.Spot))
			most = max(most, r3.Norm(r3.Sub(u, v)))
		}
	}
	return s.SpeedOfSound / (2 * besideHead * most), besideHead
}

// sharedApart is from how many s on it is worth a word that bodies which share their channels
// are heard one after the other: a millisecond, from which on low tones comb too.
const sharedApart = 1e-3

// sharedLate tells of bodies that share channels and are heard one after the other.
func (s *Spot) sharedLate() (found findings) {
	set := s.Array.Sets()[0]
	if len(set) == 1 {
		return nil
	}
	heard := s.Bodies()
	first, last := set[0], set[0]
	for _, body := range set {
		if heard[body].Arrival < heard[first].Arrival {
			first = body
		}
		if heard[body].Arrival > heard[last].Arrival {
			last = body
		}
	}
	if late := heard[last].Arrival - heard[first].Arrival; late > sharedApart {
		found.warn("bodies_shared_late", advice.Cost, SharedLate{first + 1, last + 1, late})
	}
	return found
}
