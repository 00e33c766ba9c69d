package damping_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/layout/dampinglog"
	"pappus/timing/damping"

	"pgregory.net/rapid"
)

// TestReading: without openings a body is the circuit that is fitted, and Q is that of
// its poles (Small 1972); with them there is a pole more, and it is near.
func TestReading(t *testing.T) {
	b := body{mass: 0.75e-3, cms: 1.5e-3, rms: 0.221, bl: 2.1, re: 7.1, le: 5e-5, area: 8e-4, number: 39, compliance: 0.005 / stiffness, flow: 400, opening: 60}
	cases := []struct {
		name   string
		state  dampinglog.Trial
		within float64
	}{
		{"bare", dampinglog.Trial{}, 5e-3}, {"stuffed", dampinglog.Trial{StuffingG: 40}, 5e-3},
		{"opened", dampinglog.Trial{Vents: 6, VentMM: 12}, 0.1}, {"both", dampinglog.Trial{Vents: 3, VentMM: 12, StuffingG: 20}, 0.1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := b.measure(c.state, 1, 1e-3, rand.New(rand.NewPCG(1, 11)))
			if err != nil {
				t.Fatal(err)
			}
			want := b.q(c.state, 1)
			t.Logf("Q %.4f, of the poles %.4f; misfit %.4f", got.Q.Value, want, got.Fit.Misfit)
			if math.Abs(got.Q.Value/want-1) > c.within || math.Abs(got.PeakOver.Value/(1+got.Fit.Qms.Value/got.Fit.Qes.Value)-1) > 1e-9 {
				t.Errorf("Q %.4f, the poles have %.4f", got.Q.Value, want)
			}
		})
	}
}

// TestUneven: a ripple of 1 dB RMS over the middle band, slow enough for a third of an
// octave, is uneven by 1 dB; a level that tilts outside of the band alone is not.
func TestUneven(t *testing.T) {
	b := body{mass: 0.75e-3, cms: 1.5e-3, rms: 0.221, bl: 2.1, re: 7.1, area: 8e-4, number: 10, compliance: 0.005 / stiffness}
	var frequency, ripple, flat, rise []float64
	for i := range 2000 {
		hz := 100 * math.Pow(100, float64(i)/1999)
		frequency = append(frequency, hz)
		ripple = append(ripple, 80+math.Sqrt2*math.Sin(2*math.Pi*math.Log2(hz/500)/3))
		rise = append(rise, 6*math.Log2(hz/500)/3)
		flat = append(flat, 80-20*max(0, math.Log2(300/hz)))
	}
	random := rand.New(rand.NewPCG(2, 11))
	bare, err := b.measure(dampinglog.Trial{}, 1, 1e-3, random)
	if err != nil || !math.IsNaN(bare.Uneven) {
		t.Fatal(bare.Uneven, err)
	}
	points := impedancePoints(b)
	for name, c := range map[string]struct {
		level        []float64
		want, within float64
	}{"ripple": {ripple, 1, 0.05}, "flat": {flat, 0, 1e-9},
		// Of 37 points of a straight rise by 6 dB, a twelfth of an octave apart.
		"rise": {rise, 6 * math.Sqrt(38.0/36/12), 1e-3}} {
		got, err := damping.Read(dampinglog.Trial{}, points, frequency, c.level)
		if err != nil || math.Abs(got.Uneven-c.want) > c.within {
			t.Errorf("%s: %g, %v", name, got.Uneven, err)
		}
	}
	if _, err := damping.Read(dampinglog.Trial{}, points, frequency[1000:], ripple[1000:]); !errors.Is(err, damping.ErrResponse) {
		t.Error(err)
	}
	if _, err := damping.Read(dampinglog.Trial{}, points[:3], nil, nil); err == nil {
		t.Error("three points will do")
	}
}

func TestChanges(t *testing.T) {
	trials := []damping.Trial{
		with(0, 0, 0, 1.4),     // 0
		with(0, 30, 40, 1.0),   // 1: stuffing
		with(0, 30, 40, 1.02),  // 2: nothing
		with(4, 60, 40, 0.7),   // 3: both at once
		with(4, 30, 40, 0.85),  // 4: stuffing less than 3; openings against 2
		with(4, 30, 20, 0.852), // 5: depth
		with(0, 30, 0, 1.0),    // 6: depth not noted: openings against 5
	}
	want := []damping.Change{
		{From: 0, To: 1, Thing: damping.Stuffing, Clear: true},
		{From: 0, To: 2, Thing: damping.Stuffing, Clear: true},
		{From: 2, To: 3, Thing: damping.Several, Clear: true},
		{From: 3, To: 4, Thing: damping.Stuffing, Clear: true},
		{From: 4, To: 5, Thing: damping.Depth},
		{From: 5, To: 6, Thing: damping.Openings, Clear: true},
	}
	got := damping.Changes(trials)
	if len(got) != len(want) {
		t.Fatalf("%d changes", len(got))
	}
	for i, c := range got {
		w := want[i]
		if c.From != w.From || c.To != w.To || c.Thing != w.Thing || c.Clear != w.Clear {
			t.Errorf("%+v, want %+v", c, w)
		}
		if d := trials[c.To].Q.Value - trials[c.From].Q.Value; c.Q.Value != d || !(c.Q.Error > 0) {
			t.Errorf("%+v", c.Q)
		}
	}
	if got := damping.Changes(trials[:1]); len(got) != 0 {
		t.Error(got)
	}
	// What fills the vents is a thing of its own; without vents there is none.
	filled := []damping.Trial{with(4, 30, 0, 1), with(4, 30, 0, 0.9), with(0, 30, 0, 1.2)}
	filled[0].FillG, filled[1].FillG = 4, 3
	if got := damping.Changes(filled); got[0].Thing != damping.Filling || !got[0].Clear || got[1].Thing != damping.Openings {
		t.Errorf("%+v", got)
	}
	// Against the same state again where nothing else compares.
	if got := damping.Changes([]damping.Trial{with(0, 30, 0, 1), with(0, 30, 0, 1.02)}); got[0].Thing != damping.Nothing || got[0].Clear {
		t.Errorf("%+v", got)
	}
}

var goal = damping.Goal{Q: 0.7, MostG: 90, StartG: 40, MostDepthMM: math.NaN(), MostVents: 6, StartVents: 4, VentMM: 8}

func TestPropose(t *testing.T) {
	cases := []struct {
		name      string
		trials    []damping.Trial
		thing     damping.Thing
		low, high float64 // of the dose
		bracketed bool
	}{
		{"bare: what the design begins with", []damping.Trial{with(0, 0, 0, 1.4)}, damping.Stuffing, 40, 40, false},
		// 1/Q is 0.714 and 1.0; 1.43 is at 40 + 60; no more than 90 fits.
		{"all that fits", []damping.Trial{with(0, 0, 0, 1.4), with(0, 40, 0, 1)}, damping.Stuffing, 90, 90, false},
		// 0.714 and 1.25: 1.43 is at 53.3, a little past it.
		{"past the target", []damping.Trial{with(0, 0, 0, 1.4), with(0, 40, 0, 0.8)}, damping.Stuffing, 54, 58, false},
		// 1.25 and 1.67 at 40 and 60: in between.
		{"between", []damping.Trial{with(0, 0, 0, 1.4), with(0, 40, 0, 0.8), with(0, 60, 0, 0.6)}, damping.Stuffing, 46, 52, true},
		{"too much at once", []damping.Trial{with(0, 40, 0, 0.5)}, damping.Stuffing, 20, 20, false},
		{"openings once it is full", []damping.Trial{with(0, 0, 0, 1.4), with(0, 90, 0, 0.9)}, damping.Openings, 4, 4, false},
		{"fewer openings", []damping.Trial{with(4, 0, 0, 0.6), with(0, 0, 0, 0.9)}, damping.Openings, 2, 3, true},
		{"from the other side", []damping.Trial{with(2, 90, 0, 0.75), with(3, 90, 0, 0.64)}, damping.Stuffing, 45, 89, false},
		{"flat", []damping.Trial{with(0, 0, 0, 1.4), flat(40)}, damping.Stuffing, 20, 20, true},
		{"it does nothing", []damping.Trial{with(0, 0, 0, 1.4), with(0, 40, 0, 1.42)}, damping.Stuffing, 60, 60, false},
		{"more does harm", []damping.Trial{with(0, 0, 0, 1.3), with(0, 30, 0, 0.85), with(0, 60, 0, 0.8), with(0, 80, 0, 0.9)}, damping.Openings, 4, 4, false},
		{"it only does harm", []damping.Trial{with(0, 0, 0, 1), with(0, 20, 0, 1.1), with(0, 40, 0, 1.3), with(0, 60, 0, 1.2)}, damping.Openings, 4, 4, false},
		// 1/Q is 0.77, 1.18 and 1 at 0, 20 and 80: a parabola has its crest, 1.36, at 45.
		{"at the crest", []damping.Trial{with(0, 0, 0, 1.3), with(0, 20, 0, 0.85), with(0, 80, 0, 1)}, damping.Stuffing, 44, 46, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			n, err := damping.Propose(c.trials, goal)
			if err != nil {
				t.Fatal(err)
			}
			dose := n.Trial.StuffingG
			if n.Thing == damping.Openings {
				dose = float64(n.Trial.Vents)
			}
			if n.Reached || n.Thing != c.thing || !(dose >= c.low && dose <= c.high) || n.Bracketed != c.bracketed {
				t.Errorf("%+v", n)
			}
		})
	}
}

// TestProposeExpects: two trials that differ clearly tell what more of the same will do,
// if only roughly.
func TestProposeExpects(t *testing.T) {
	g := goal
	g.MostG = 200
	// 1/Q is 0.714 and 0.926: 1.43 is at 54 + 128 g.
	n, err := damping.Propose([]damping.Trial{with(0, 0, 0, 1.4), with(0, 54, 0, 1.08)}, g)
	if err != nil || !(n.Trial.StuffingG > 180 && n.Trial.StuffingG <= 200) || math.Abs(n.Q.Value-0.7) > 0.05 || !(n.Q.Error > 0.1 && n.Q.Error < 0.5) {
		t.Errorf("%+v, %v", n, err)
	}
}

// TestProposeSpent: what does harm is named, with the trials that show it.
func TestProposeSpent(t *testing.T) {
	trials := []damping.Trial{with(6, 0, 0, 1.3), with(6, 60, 0, 0.8), with(6, 90, 0, 0.95)}
	n, err := damping.Propose(trials, goal)
	if !errors.Is(err, damping.ErrReach) || len(n.Spent) != 1 || n.Spent[0] != (damping.Spent{Thing: damping.Stuffing, Better: 1, Worse: 2}) {
		t.Errorf("%+v, %v", n, err)
	}
}

func TestProposeEnds(t *testing.T) {
	if _, err := damping.Propose(nil, goal); !errors.Is(err, damping.ErrNoTrials) {
		t.Error(err)
	}
	n, err := damping.Propose([]damping.Trial{with(0, 0, 0, 1.4), with(0, 50, 0, 0.72)}, goal)
	if err != nil || !n.Reached || n.Base != 1 {
		t.Errorf("%+v, %v", n, err)
	}
	n, err = damping.Propose([]damping.Trial{with(6, 90, 0, 0.9), with(0, 0, 0, 1.4)}, goal)
	if !errors.Is(err, damping.ErrReach) || n.Base != 0 {
		t.Errorf("%+v, %v", n, err)
	}
	if _, err := damping.Propose([]damping.Trial{flat(40)}, goal); !errors.Is(err, damping.ErrNoTrials) {
		t.Error(err)
	}
	if _, err = damping.Propose([]damping.Trial{with(0, 0, 0, 0.5)}, goal); !errors.Is(err, damping.ErrReach) {
		t.Error(err)
	}
}

// TestProposeFits: whatever the trials, nothing is proposed beyond what fits or has been
// tried, and one thing changes.
func TestProposeFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := goal
		g.MostG = rapid.Float64Range(0, 200).Draw(t, "most")
		g.MostVents = rapid.IntRange(0, 9).Draw(t, "vents")
		g.StartG, g.StartVents = min(g.StartG, g.MostG), min(g.StartVents, g.MostVents)
		var trials []damping.Trial
		for range rapid.IntRange(1, 8).Draw(t, "trials") {
			stuffing := math.Round(rapid.Float64Range(0, g.MostG).Draw(t, "stuffing"))
			trials = append(trials, with(rapid.IntRange(0, g.MostVents).Draw(t, "open"), min(stuffing, g.MostG), 0, rapid.Float64Range(0.3, 3).Draw(t, "q")))
		}
		n, err := damping.Propose(trials, g)
		if err != nil || n.Reached {
			return
		}
		base := trials[n.Base]
		if n.Trial.StuffingG < 0 || n.Trial.StuffingG > g.MostG || n.Trial.Vents < 0 || n.Trial.Vents > g.MostVents {
			t.Fatalf("%+v", n)
		}
		if changed := (n.Trial.StuffingG != base.StuffingG) != (n.Trial.Vents != base.Vents); !changed || n.Trial.Vents > 0 && n.Trial.VentMM == 0 {
			t.Fatalf("%+v from %+v", n, base)
		}
		for _, one := range trials {
			if one.StuffingG == n.Trial.StuffingG && one.Vents == n.Trial.Vents {
				t.Fatalf("%+v has been tried", n)
			}
		}
	})
}

// TestProposeRepeats: of trials alike in all but their Q no line tells what to try, whatever the rounding of
// their mean.
func TestProposeRepeats(t *testing.T) {
	g := goal
	g.MostG, g.MostVents, g.StartVents = 1, 3, 3
	n, err := damping.Propose([]damping.Trial{with(3, 0, 0, 0.8172760009765625), with(0, 1, 0, 1), with(3, 0, 0, 0.6178147792816162), with(3, 0, 0, 1.6274110488593578)}, g)
	if err != nil || n.Trial.Vents < 0 || n.Trial.Vents > 3 || n.Trial.StuffingG < 0 || n.Trial.StuffingG > 1 {
		t.Errorf("%+v, %v", n, err)
	}
}

func ExamplePropose() {
	trials := []damping.Trial{with(0, 0, 0, 1.4), with(0, 40, 0, 0.8)}
	n, err := damping.Propose(trials, damping.Goal{Q: 0.7, MostG: 90, StartG: 40})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("change the %v to %g g and expect a Q of %.2f\n", n.Thing, n.Trial.StuffingG, n.Q.Value)
	// Output:
	// change the stuffing to 56.5 g and expect a Q of 0.68
}
