package where_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/unlike"
	"pappus/timing/where"
)

// TestChairOfUnlikeDrivers: what a better chair gains with twins it gains with drivers that are off as usual
// ones are (10 percent of each value, 1 dB), so that it need not be looked for with them.
func TestChairOfUnlikeDrivers(t *testing.T) {
	f, err := where.Chair(context.Background(), design.Default())
	if err != nil {
		t.Fatal(err)
	}
	ears := [2]*timing.UnlikeEar{}
	nominal := unlike.Driver{}
	mounts := 0
	for i, d := range []*design.Design{f.Before.Design, f.Best.Design} {
		a, err := layout.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		p, err := timing.Make(t.Context(), a)
		if err != nil {
			t.Fatal(err)
		}
		nominal, mounts = timing.NominalDriver(a.Driver), len(a.Mounts)
		u, err := timing.NewUnlike(p, nominal)
		if err != nil {
			t.Fatal(err)
		}
		if ears[i], err = u.Ear(); err != nil {
			t.Fatal(err)
		}
	}
	loss := func(e *timing.UnlikeEar, drivers []unlike.Driver) float64 {
		h, err := e.Hear(drivers)
		if err != nil {
			t.Fatal(err)
		}
		return h.Loss
	}
	twins := make([]unlike.Driver, mounts)
	for m := range twins {
		twins[m] = nominal
	}
	asTold := loss(ears[0], twins) - loss(ears[1], twins)
	const lots = 40
	furthest := 0.0
	for lot := range lots {
		random := rand.New(rand.NewPCG(uint64(lot), 31))
		off := func(by float64) float64 { return by * (2*random.Float64() - 1) }
		drivers := make([]unlike.Driver, mounts)
		for m := range drivers {
			d := nominal
			d.Resonance, d.Qms, d.Qes, d.DCOhm = d.Resonance*(1+off(0.1)), d.Qms*(1+off(0.1)), d.Qes*(1+off(0.1)), d.DCOhm*(1+off(0.1))
			d.Level = math.Pow(10, off(1)/20)
			drivers[m] = d
		}
		gained := loss(ears[0], drivers) - loss(ears[1], drivers)
		furthest = max(furthest, math.Abs(gained-asTold))
	}
	t.Logf("the chair at %v, was %v: loss gains %.3f dB with twins, off by %.3f dB at most of %d lots; worth %.3f, %.3f", f.Best.Design.Spot, f.Before.Design.Spot, asTold, furthest, lots, f.Before.Worth(), f.Best.Worth())
	if furthest > 0.1 {
		t.Errorf("what a better chair gains is off by %.3f dB", furthest)
	}
}
