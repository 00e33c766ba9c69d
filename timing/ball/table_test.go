package ball

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"sort"
	"testing"
)

func geometric(n int, from, to float64) []float64 {
	k := make([]float64, n)
	for i := range k {
		k[i] = from * math.Pow(to/from, float64(i)/float64(max(n-1, 1)))
	}
	return k
}
func TestTry(t *testing.T) {
	for _, c := range []struct{ ka, alpha, near, far float64 }{{50, 5.4, 1.133, 40}, {60, 5.4, 1.02, 40}, {60, 12, 1.1, 40}, {10, 5.4, 1.133, 40}, {3, 5.4, 1.133, 40}, {60, 60, 1.2, 40}, {60, 1, 1.1, 40}} {
		cap := Cap{0.15, c.alpha * degree}
		k := geometric(16, c.ka/4/0.15, c.ka/0.15)
		tb, err := NewTable(cap, k, c.near*.15, c.far*.15, nil)
		if err != nil {
			t.Fatal(err)
		}
		g := tb.slabs[0].grid
		fmt.Printf("%+v slabs %d across %d along %d bytes %d\n", c, len(tb.slabs), g.across, g.along, tb.Bytes())
		rnd := rand.New(rand.NewPCG(1, 2))
		one := make([]complex128, len(k))
		for i := range one {
			one[i] = 1
		}
		type bad struct{ e, lev, r, gamma, ka float64 }
		var all []bad
		have, want := make([]complex128, len(k)), make([]complex128, len(k))
		ax := make([]complex128, len(k))
		for range 60 {
			r := .15 * math.Min(c.far, math.Max(c.near, 1/(rnd.Float64()*.999+.0001)))
			if rnd.IntN(3) == 0 {
				r = .15 * c.near * (1 + .3*rnd.Float64())
			}
			s, err := NewSeries(cap, k, r)
			if err != nil {
				t.Fatal(err)
			}
			s.At(ax, 0)
			for range 40 {
				gamma := rnd.Float64() * math.Pi
				if rnd.IntN(3) == 0 {
					gamma = math.Pi * (1 - rnd.Float64()*rnd.Float64())
				}
				s.At(want, gamma)
				clear(have)
				at, _ := tb.At(r)
				path := cap.Path(r, gamma)
				tb.Add(have, one, at, gamma, path)
				for f := range k {
					all = append(all, bad{cmplx.Abs(have[f]-want[f]) / cmplx.Abs(want[f]), decibels(cmplx.Abs(want[f]) * path / 2), r / .15, gamma / degree, k[f] * .15})
				}
			}
		}
		sort.Slice(all, func(i, j int) bool { return all[i].e > all[j].e })
		for _, i := range []int{0, 1, 2, 5, 10, 30, 100, 300, 1000} {
			fmt.Printf("   %6d %+.3g\n", i, all[i])
		}
	}
}
