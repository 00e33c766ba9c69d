package seats

import (
	"math"
	"math/rand/v2"
	"slices"

	"pappus/timing/split"
)

// start is groups to begin with, and their delays in s.
type start struct {
	group []int // [driver]
	delay []float64
}

// lines returns the exact splits of the arrivals at each seat, the best for that seat alone,
// and of their weighted mean over all.
func (p *problem) lines(allowed func(int) bool) (out []*split.Splits) {
	along := func(at func(d int) float64, weigh func(d int) float64) {
		value, weight := make([]float64, len(p.driver)), make([]float64, len(p.driver))
		for d := range value {
			value[d], weight[d] = at(d), weigh(d)
		}
		out = append(out, split.NewSplits(value, weight, allowed))
	}
	all := func(d int) float64 { return max(dot(p.energy[d], p.weight), least) }
	along(func(d int) float64 { return dot(p.arrival[d], p.weight) }, all)
	for s := range p.seats {
		along(func(d int) float64 { return p.arrival[d][s] }, func(d int) float64 { return max(p.energy[d][s], least) })
	}
	return out
}

// widest returns groups' indices by how far their drivers' arrivals are spread, the widest
// first.
func (p *problem) widest(groups [][]int) []int {
	order, spread := make([]int, len(groups)), make([]float64, len(groups))
	middle := make([]float64, p.seats)
	for g, drivers := range groups {
		order[g] = g
		clear(middle)
		for _, d := range drivers {
			for s, t := range p.arrival[d] {
				middle[s] += t / float64(len(drivers))
			}
		}
		for _, d := range drivers {
			spread[g] += p.apart(d, middle)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return before(spread[b:b+1], spread[a:a+1])
	})
	return order
}

// startOf gives groups the delays that bring their mean arrivals over all seats together.
func (p *problem) startOf(groups [][]int) start {
	s := start{make([]int, len(p.driver)), make([]float64, len(groups))}
	for g, drivers := range groups {
		for _, d := range drivers {
			s.group[d] = g
		}
		s.delay[g] = -p.meanArrival(drivers, -1)
	}
	return s
}

// meanArrival is that of some drivers at a seat, or over all seats (below 0), weighted by
// energy.
func (p *problem) meanArrival(drivers []int, seat int) float64 {
	sum, total := 0.0, 0.0
	for _, d := range drivers {
		for s, e := range p.energy[d] {
			if seat < 0 || s == seat {
				sum, total = sum+p.weight[s]*e*p.arrival[d][s], total+p.weight[s]*e
			}
		}
	}
	return sum / max(total, math.SmallestNonzeroFloat64)
}

// clusters sorts drivers by their arrivals at all seats: k-means (S. P. Lloyd, IEEE Trans.
// Inf. Theory 28 (1982) 129) from centres drawn far apart (D. Arthur and S. Vassilvitskii,
// SODA 2007), then sizes that may be.
func (p *problem) clusters(count int, sizes []bool, random *rand.Rand) (start, bool) {
	centre := p.farApart(count, random)
	group := make([]int, len(p.driver))
	for range 8 { // far apart they are at first; what follows does the rest
		changed := false
		for d := range group {
			best, least := 0, math.Inf(1)
			for k := range centre {
				if v := p.apart(d, centre[k]); v < least {
					best, least = k, v
				}
			}
			changed = changed || group[d] != best
			group[d] = best
		}
		if !changed {
			break
		}
		for k := range centre {
			p.centre(centre[k], group, k)
		}
	}
	if !p.resize(group, centre, sizes) {
		return start{}, false
	}
	return p.startOf(members(group, count)), true
}

// apart is the squared distance of a driver's arrivals from a centre.
func (p *problem) apart(d int, centre []float64) (sum float64) {
	for s, w := range p.weight {
		v := p.arrival[d][s] - centre[s]
		sum += w * v * v
	}
	return sum
}

// centre sets dst to the mean arrivals of a group, which may be empty.
func (p *problem) centre(dst []float64, group []int, k int) {
	n := 0.0
	for d, g := range group {
		if g != k {
			continue
		}
		if n == 0 {
			clear(dst)
		}
		n++
		for s, v := range p.arrival[d] {
			dst[s] += v
		}
	}
	for s := range dst {
		if n > 0 {
			dst[s] /= n
		}
	}
}

// farApart draws the arrivals of some drivers, each by its squared distance from those before.
func (p *problem) farApart(count int, random *rand.Rand) [][]float64 {
	far := make([]float64, len(p.driver))
	for d := range far {
		far[d] = 1
	}
	var out [][]float64
	for range count {
		total := 0.0
		for _, v := range far {
			total += v
		}
		at, next := random.Float64()*total, 0
		for d, v := range far {
			if next = d; at < v {
				break
			}
			at -= v
		}
		c := slices.Clone(p.arrival[next])
		for d := range far {
			if v := p.apart(d, c); len(out) == 0 || v < far[d] {
				far[d] = v
			}
		}
		out = append(out, c)
	}
	return out
}

// members returns the drivers of each group.
func members(group []int, count int) [][]int {
	out := make([][]int, count)
	for d, g := range group {
		out[g] = append(out[g], d)
	}
	return out
}

// resize moves drivers until all groups have sizes that may be, as few as can be: to the
// nearest sizes with the same sum, each driver to the nearest centre that lacks one. It tells whether there are such sizes.
func (p *problem) resize(group []int, centre [][]float64, sizes []bool) bool {
	now := make([]int, len(centre))
	for _, g := range group {
		now[g]++
	}
	if !slices.ContainsFunc(now, func(n int) bool { return !sizes[n] }) {
		return true
	}
	want := nearestSizes(now, sizes)
	if want == nil {
		return false
	}
	for k := range now {
		for now[k] < want[k] {
			best, least := -1, math.Inf(1)
			for d, g := range group {
				if now[g] > want[g] {
					if v := p.apart(d, centre[k]); v < least {
						best, least = d, v
					}
				}
			}
			now[group[best]]--
			group[best] = k
			now[k]++
		}
	}
	return true
}

// nearestSizes returns sizes that may be, with the same sum as now, that differ from now by
// the least sum; nil where there are none.
func nearestSizes(now []int, sizes []bool) []int {
	drivers := 0
	for _, n := range now {
		drivers += n
	}
	// least[k][n] is the least change of the first k groups that hold n drivers, with last[k][n] in group k-1.
	least := make([][]int, len(now)+1)
	last := make([][]int, len(now)+1)
	const never = math.MaxInt / 2
	for k := range least {
		least[k], last[k] = make([]int, drivers+1), make([]int, drivers+1)
		for n := range least[k] {
			least[k][n] = never
		}
	}
	least[0][0] = 0
	for k, have := range now {
		for n := range drivers + 1 {
			if least[k][n] == never {
				continue
			}
			for size := 1; size+n <= drivers; size++ {
				if v := least[k][n] + abs(size-have); sizes[size] && v < least[k+1][n+size] {
					least[k+1][n+size], last[k+1][n+size] = v, size
				}
			}
		}
	}
	if least[len(now)][drivers] == never {
		return nil
	}
	out := make([]int, len(now))
	for k, n := len(now), drivers; k > 0; k-- {
		out[k-1] = last[k][n]
		n -= last[k][n]
	}
	return out
}

func abs(n int) int { return max(n, -n) }

// along returns some drivers' places along the line that their arrivals are spread most
// along, and their weights: the first axis of their covariance, by power iteration from the
// seat with the widest spread.
func (p *problem) along(drivers []int) (value, weight []float64) {
	middle := make([]float64, p.seats)
	for _, d := range drivers {
		for s, t := range p.arrival[d] {
			middle[s] += t / float64(len(drivers))
		}
	}
	axis, spread := make([]float64, p.seats), make([]float64, p.seats)
	for _, d := range drivers {
		for s, t := range p.arrival[d] {
			spread[s] += (t - middle[s]) * (t - middle[s])
		}
	}
	widest := 0
	for s, v := range spread {
		if v > spread[widest]*(1+alike) {
			widest = s
		}
	}
	axis[widest] = 1
	value, weight = make([]float64, len(drivers)), make([]float64, len(drivers))
	for range 20 {
		for i, d := range drivers {
			value[i] = 0
			for s, t := range p.arrival[d] {
				value[i] += axis[s] * (t - middle[s])
			}
		}
		clear(axis)
		for i, d := range drivers {
			for s, t := range p.arrival[d] {
				axis[s] += value[i] * (t - middle[s])
			}
		}
		length := math.Sqrt(dot(axis, axis))
		for s := range axis {
			axis[s] /= max(length, math.SmallestNonzeroFloat64)
		}
	}
	for i, d := range drivers {
		weight[i] = max(dot(p.energy[d], p.weight), least)
	}
	return value, weight
}

// splitTwo returns the second of two groups that a line of values splits into best; nil
// where it cannot be split.
func splitTwo(value, weight []float64, allowed func(int) bool) []int {
	two := split.NewSplits(value, weight, allowed).Groups(2)
	if two == nil {
		return nil
	}
	return two[1]
}
