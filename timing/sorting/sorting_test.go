package sorting

import (
	"context"
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// lot draws drivers whose resonance, Q and resistance differ, near enough: curves of z and t.
func lot(random *rand.Rand, count, frequencies int) (ohm, velocity [][]complex128) {
	for range count {
		fs, q, re := 0.05*random.NormFloat64(), 0.08*random.NormFloat64(), 0.03*random.NormFloat64()
		z, t := make([]complex128, frequencies), make([]complex128, frequencies)
		for f := range frequencies {
			u := math.Exp2(3 * (float64(f)/float64(frequencies) - 0.4))
			peak := 1 / complex(1, 3*(u-1/u))
			z[f] = complex(re, 0)*(1-peak) + peak*complex(q, 0) + peak*peak*complex(0, 6*fs)
			t[f] = complex(q, 0)*peak + peak*complex(0, 6*fs)
		}
		ohm, velocity = append(ohm, z), append(velocity, t)
	}
	return ohm, velocity
}

// strung numbers places string by string.
func strung(lengths ...int) (out [][]int, places int) {
	for _, n := range lengths {
		var s []int
		for range n {
			s = append(s, places)
			places++
		}
		out = append(out, s)
	}
	return out, places
}

func problem(random *rand.Rand, count int, lengths ...int) Problem {
	strings, places := strung(lengths...)
	p := Problem{Strings: strings}
	p.Ohm, p.Velocity = lot(random, count, 9)
	sum := 0.0
	for range places {
		p.Weight = append(p.Weight, random.Float64())
		sum += p.Weight[len(p.Weight)-1]
	}
	for i := range p.Weight {
		p.Weight[i] /= sum
	}
	return p
}

// plainly is the cost as its definition has it.
func plainly(p Problem, driver []int) float64 {
	n, places := len(p.Ohm[0]), len(p.Weight)
	cost := 0.0
	for f := range n {
		e, mean := make([]complex128, places), complex128(0)
		for _, s := range p.Strings {
			var z complex128
			for _, place := range s {
				z += p.Ohm[driver[place]][f] / complex(float64(len(s)), 0)
			}
			for _, place := range s {
				e[place] = p.Velocity[driver[place]][f] - z
			}
		}
		a := func(place int) float64 { return (1/float64(places) + p.Weight[place]) / 2 }
		for place, v := range e {
			mean += complex(a(place), 0) * v
		}
		for place, v := range e {
			cost += a(place) * math.Pow(cmplx.Abs(v-mean), 2) / float64(n)
		}
	}
	return cost
}

// best tries all orders.
func best(p Problem) float64 {
	least := math.Inf(1)
	order := make([]int, len(p.Ohm))
	for i := range order {
		order[i] = i
	}
	var try func(from int)
	try = func(from int) {
		if from == len(p.Weight) {
			least = min(least, plainly(p, order))
			return
		}
		for i := from; i < len(order); i++ {
			order[from], order[i] = order[i], order[from]
			try(from + 1)
			order[from], order[i] = order[i], order[from]
		}
	}
	try(0)
	return least
}

// TestAgainstAllOrders: on small sets swaps find the best order, or one that hardly costs more.
func TestAgainstAllOrders(t *testing.T) {
	found, worst, cases := 0, 1.0, 0
	for _, c := range []struct {
		drivers int
		lengths []int
	}{{6, []int{3, 3}}, {6, []int{2, 2, 2}}, {7, []int{2, 2}}, {6, []int{3, 2}}, {3, []int{1, 1, 1}}, {7, []int{3, 3}}} {
		for seed := range uint64(12) {
			p := problem(rand.New(rand.NewPCG(seed, 1)), c.drivers, c.lengths...)
			driver, spare := p.Sort(t.Context())
			cost, least := p.Cost(driver), best(p)
			if math.Abs(cost-plainly(p, driver)) > 1e-12*cost {
				t.Fatalf("%v: cost %g, by its definition %g", c, cost, plainly(p, driver))
			}
			if all := slices.Sorted(slices.Values(append(slices.Clone(driver), spare...))); len(all) != c.drivers || all[0] != 0 || all[c.drivers-1] != c.drivers-1 {
				t.Fatalf("%v: drivers %v, spares %v", c, driver, spare)
			}
			cases++
			if cost <= least*(1+1e-9) {
				found++
			}
			worst = max(worst, cost/least)
		}
	}
	t.Logf("the best of %d is found in %d; the worst is %.3f times as costly", cases, found, worst)
	if found < cases*9/10 || worst > 1.1 {
		t.Errorf("the best of %d is found in %d; the worst is %.3f times as costly", cases, found, worst)
	}
}

// TestRules: what the cost is to bring about.
func TestRules(t *testing.T) {
	strings, places := strung(2, 2)
	flat := slices.Repeat([]float64{0.25}, places)
	one := func(v ...complex128) (out [][]complex128) {
		for _, z := range v {
			out = append(out, []complex128{z})
		}
		return out
	}
	// Resonances: impedance and velocity rise together, so those alike belong together.
	p := Problem{Ohm: one(0.1, -0.1, 0.1, -0.1), Velocity: one(0.1, -0.1, 0.1, -0.1), Strings: strings, Weight: flat}
	if driver, _ := p.Sort(t.Context()); driver[0]%2 != driver[1]%2 {
		t.Errorf("resonances: %v", driver)
	}
	// Resistances alone: mixed, so that no string is loud.
	p.Velocity = one(0, 0, 0, 0)
	if driver, _ := p.Sort(t.Context()); driver[0]%2 == driver[1]%2 || p.Cost(driver) > 1e-20 {
		t.Errorf("resistances: %v costs %g", driver, p.Cost(driver))
	}
	// Of more drivers than places the odd one is spare.
	p.Ohm, p.Velocity = one(0, 0.01, 0, 0.01, 0), one(0, 0.01, 0.5, 0, 0)
	if _, spare := p.Sort(t.Context()); !slices.Equal(spare, []int{2}) {
		t.Errorf("spare: %v", spare)
	}
	// All alike in what they give: nothing is lost by any common error.
	p.Ohm, p.Velocity = one(0, 0, 0, 0), one(0.3, 0.3, 0.3, 0.3)
	if cost := p.Cost([]int{0, 1, 2, 3}); cost > 1e-15 {
		t.Errorf("a common error costs %g", cost)
	}
}

// TestSizes: one driver, and many; never worse than as they come, and the same on any cores.
func TestSizes(t *testing.T) {
	for _, c := range []struct{ drivers, strings, length int }{{1, 1, 1}, {2, 1, 2}, {13, 3, 4}, {320, 75, 4}} {
		t.Run(fmt.Sprint(c.drivers), func(t *testing.T) {
			p := problem(rand.New(rand.NewPCG(5, 5)), c.drivers, slices.Repeat([]int{c.length}, c.strings)...)
			sort := func(cores int) []int {
				defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
				driver, _ := p.Sort(t.Context())
				return driver
			}
			driver := sort(1)
			if diff := cmp.Diff(driver, sort(3)); diff != "" {
				t.Error(diff)
			}
			asTheyCome := make([]int, len(p.Weight))
			for i := range asTheyCome {
				asTheyCome[i] = i
			}
			if was, is := p.Cost(asTheyCome), p.Cost(driver); is > was {
				t.Errorf("cost %g, %g as they come", is, was)
			} else if math.Abs(is-plainly(p, driver)) > 1e-9*is {
				t.Errorf("cost %g, by its definition %g", is, plainly(p, driver))
			} else {
				t.Logf("%.3f of the cost as they come is left", is/was)
			}
		})
	}
}

// TestStops: once there is no time it gives what it has, a driver for each place.
func TestStops(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	p := problem(rand.New(rand.NewPCG(5, 5)), 320, slices.Repeat([]int{4}, 75)...)
	if driver, spare := p.Sort(ctx); len(driver) != 300 || len(spare) != 20 {
		t.Errorf("%d drivers, %d spares", len(driver), len(spare))
	}
}

func BenchmarkSort(b *testing.B) {
	for _, n := range []int{48, 300} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			p := problem(rand.New(rand.NewPCG(5, 5)), n+n/10, slices.Repeat([]int{4}, n/4)...)
			for b.Loop() {
				p.Sort(b.Context())
			}
		})
	}
}
