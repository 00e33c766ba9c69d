package timing_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// ball96 is a ball of 96 drivers on 12 channels, its lowest point 300 mm above a rigid
// floor if there is one.
func ball96(t testing.TB, floor bool) *layout.Array {
	t.Helper()
	d := design.Default()
	d.Body = design.Body{Shape: "ball", Radius: 0.15, Stand: 0.3, Wall: 0.003}
	d.Mounts = design.Mounts{On: "even", Count: 96}
	d.Driver.ConeRadius, d.Driver.CutoutRadius, d.Driver.FlangeRadius = 0.009, 0.0095, 0.012
	d.Wiring.Channels = 12
	d.Surface = design.Surface{Present: floor}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// TestFloorIsNotTheDriversFault: with a floor below it or without, the same ball has the
// same channels, delays, measures, counts and knees; the floor's comb is a figure of its
// own.
func TestFloorIsNotTheDriversFault(t *testing.T) {
	open, floor := plan(t, ball96(t, false)), plan(t, ball96(t, true))
	if open.Aligned != floor.Aligned || open.Unaligned != floor.Unaligned {
		t.Errorf("in the open %+v and %+v, over a floor %+v and %+v", open.Unaligned, open.Aligned, floor.Unaligned, floor.Aligned)
	}
	if !slices.Equal(open.Counts, floor.Counts) {
		t.Errorf("in the open: %+v\nover a floor: %+v", open.Counts, floor.Counts)
	}
	for c := range open.Channels {
		if a, b := open.Channels[c], floor.Channels[c]; a.Delay != b.Delay || !slices.Equal(a.Mounts, b.Mounts) {
			t.Errorf("channel %d: %g s and drivers %v, over a floor %g s and %v", a.ID, a.Delay, a.Mounts, b.Delay, b.Mounts)
		}
	}
	if floor.Aligned.CombOnset < 3500 {
		t.Errorf("the drivers comb from %g Hz", floor.Aligned.CombOnset)
	}
	if len(open.Echoes) != 0 || len(floor.Echoes) != 1 {
		t.Fatalf("%d echoes in the open, %d over a floor", len(open.Echoes), len(floor.Echoes))
	}
	// The level at the spot dips where it is told, and by as much.
	e := floor.Echoes[0]
	least, at := math.Inf(1), 0.0
	for i, f := range floor.Response.Frequency {
		if by := floor.Response.Aligned[i] - open.Response.Aligned[i]; f > 0.5*e.Dip && f < 1.5*e.Dip && by < least {
			least, at = by, f
		}
	}
	if math.Abs(math.Log2(at/e.Dip)) > 1.0/15 || math.Abs(least+e.Depth) > 1.5 || e.Depth < 3 {
		t.Errorf("%+v; the level dips by %.1f dB at %.0f Hz", e, -least, at)
	}
	if e.Wall != "surface below" {
		t.Errorf("echo of the %s", e.Wall)
	}
}

// TestMapsOfTheDirectSound: smear and comb onset all over the room are the same with a
// floor as without, and the level is not.
func TestMapsOfTheDirectSound(t *testing.T) {
	with, without := demo(t), demo(t)
	without.Surface.Present = false
	for _, a := range []*layout.Array{with, without} {
		a.Coverage.Cells, a.Timing.Model = 12, "point"
	}
	p, q := plan(t, with), plan(t, without)
	s := timing.HorizontalSlice(&p.Spot)
	a, err := timing.Cover(&p.Spot, s)
	if err != nil {
		t.Fatal(err)
	}
	b, err := timing.Cover(&q.Spot, s)
	if err != nil {
		t.Fatal(err)
	}
	same := func(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
	if !slices.EqualFunc(a.Smear, b.Smear, same) || !slices.EqualFunc(a.CombOnset, b.CombOnset, same) {
		t.Error("a floor changes what the drivers do")
	}
	if slices.EqualFunc(a.Level[3], b.Level[3], same) {
		t.Error("a floor does not change the level")
	}
}

// TestEchoOfOnePoint: over a rigid plane a point h above it, heard H above it and R away,
// is heard twice, 1/r loud each, so that the comb's first dip is at c/(2 (r2-r1)) but for
// the loss in air, by 20 lg (1 - r1/r2), and the plane throws back at R h/(h+H). Moved up
// by 100 mm the same holds for h + 0.1.
func TestEchoOfOnePoint(t *testing.T) {
	const h, spotHigh, away = 0.5, 1.2, 2.0
	a := plain(t)
	a.Surface = layout.Surface{Present: true, Height: -h}
	a.Spot = r3.Vec{X: away, Z: spotHigh - h}
	a.Mounts = []layout.Mount{{ID: 1, Normal: r3.Vec{X: 1}, Face: -1}}
	a.Channels = []layout.Channel{single(1, math.NaN(), 0)}
	p := plan(t, a)
	if len(p.Echoes) != 1 {
		t.Fatalf("%d echoes", len(p.Echoes))
	}
	ways := func(h float64) (direct, echo float64) {
		return math.Hypot(away, spotHigh-h), math.Hypot(away, spotHigh+h)
	}
	direct, echo := ways(h)
	first := func(h float64) float64 { d, e := ways(h); return p.SpeedOfSound / (2 * (e - d)) }
	e := p.Echoes[0]
	for name, v := range map[string][3]float64{ // got, want, apart
		"extra":    {e.Extra, echo - direct, 1e-12},
		"late":     {e.Late, (echo - direct) / p.SpeedOfSound, 1e-12},
		"dip":      {e.Dip, first(h), 0.002 * first(h)},
		"depth":    {e.Depth, -20 * math.Log10(1-direct/echo), 0.05},
		"x":        {e.At.X, away * h / (h + spotHigh), 1e-12},
		"z":        {e.At.Z, -h, 1e-12},
		"higher":   {e.Further, first(h + 0.1), 0.002 * first(h+0.1)},
		"lower":    {e.Nearer, first(h - 0.1), 0.002 * first(h-0.1)},
		"sideways": {e.At.Y, 0, 1e-12},
	} {
		if !(math.Abs(v[0]-v[1]) <= v[2]) {
			t.Errorf("%s: %g, want %g", name, v[0], v[1])
		}
	}
	a.Surface.Absorption = layout.Absorption{1, 1, 1, 1, 1, 1, 1}
	if p := plan(t, a); len(p.Echoes) != 0 {
		t.Errorf("nothing comes back, yet %+v", p.Echoes)
	}
}

// TestEchoesOfARoom: every wall that sends something back is named, the deepest first;
// the measures are those of the same array in the open.
func TestEchoesOfARoom(t *testing.T) {
	a := inRoom(t)
	p := plan(t, a)
	var names []string
	for i, e := range p.Echoes {
		names = append(names, e.Wall)
		if i > 0 && e.Depth > p.Echoes[i-1].Depth {
			t.Errorf("%+v comes after %+v", e, p.Echoes[i-1])
		}
		// It is thrown back in the room's box, on a wall.
		on, at := 0, r3.Add(e.At, a.Room.Body)
		for _, v := range [][2]float64{{at.X, a.Room.Size.X}, {at.Y, a.Room.Size.Y}, {at.Z, a.Room.Size.Z}} {
			if v[0] < -1e-9 || v[0] > v[1]+1e-9 {
				t.Errorf("%s: thrown back at %v, out of the room", e.Wall, at)
			}
			if math.Abs(v[0]) < 1e-9 || math.Abs(v[0]-v[1]) < 1e-9 {
				on++
			}
		}
		if on != 1 {
			t.Errorf("%s: thrown back at %v, on %d walls", e.Wall, at, on)
		}
	}
	for _, want := range []string{"floor", "ceiling", "left wall"} {
		if !slices.Contains(names, want) {
			t.Errorf("no %s among %v", want, names)
		}
	}
	open := *a
	open.Room.Present = false
	if q := plan(t, &open); q.Aligned != p.Aligned || q.Unaligned != p.Unaligned {
		t.Errorf("in the open %+v, in a room %+v", q.Aligned, p.Aligned)
	}
}

// TestDirectAndEchoMakeTheWhole: what is heard at the spot is the direct sound and what
// the surface sends back, which is the direct sound at the mirrored spot: for a ball
// above it, the demo's dome on its table and half a ball on a plane, whose other half is
// the image. None of them combs in its direct sound from where the surface makes it.
func TestDirectAndEchoMakeTheWhole(t *testing.T) {
	half := design.Default()
	half.Body = design.Body{Shape: "ball", Radius: 0.15, HasCut: true, Wall: 0.003}
	half.Mounts = design.Mounts{On: "even", Count: 40, Over: "dome"}
	halfBall, err := layout.Build(half)
	if err != nil {
		t.Fatal(err)
	}
	for name, a := range map[string]*layout.Array{"ball": ball96(t, true), "demo": demo(t), "half ball": halfBall} {
		t.Run(name, func(t *testing.T) {
			p := plan(t, a)
			free := *a
			free.Surface.Present = false
			open := plan(t, &free)
			f := []float64{100, 500, 1000, 3000, 8000}
			at := func(p *timing.Plan, place r3.Vec) []complex128 {
				return hearAt(t, p, place, f)
			}
			mirrored := r3.Vec{X: a.Spot.X, Y: a.Spot.Y, Z: 2*a.Surface.Height - a.Spot.Z}
			whole, direct, echo := at(p, a.Spot), at(open, a.Spot), at(open, mirrored)
			for i := range f {
				left := math.Sqrt(1 - a.Surface.Absorption.At(f[i]))
				if want := direct[i] + complex(left, 0)*echo[i]; off(whole[i], want) > 1e-9 {
					t.Errorf("%g Hz: %v, want %v", f[i], whole[i], want)
				}
			}
			if p.Aligned != open.Aligned || !(p.Aligned.CombOnset > 2000) || !(p.Aligned.Smear < 40e-6) {
				t.Errorf("direct %+v, in the open %+v", p.Aligned, open.Aligned)
			}
			// The other half of a ball comes hardly later than the half itself: no comb.
			if combs := name != "half ball"; combs != (len(p.Echoes) == 1) || combs && p.Echoes[0].Dip > p.Aligned.CombOnset/2 {
				t.Errorf("combs from %g Hz, echoes %+v", p.Aligned.CombOnset, p.Echoes)
			}
		})
	}
}

// hearAt returns what is heard of a plan with its delays at a place.
func hearAt(t testing.TB, p *timing.Plan, place r3.Vec, frequency []float64) []complex128 {
	t.Helper()
	h, err := timing.NewHearing(&p.Spot, timing.Listening{Cases: []timing.Case{timing.Aligned}}, []r3.Vec{place}, frequency)
	if err != nil {
		t.Fatal(err)
	}
	dst := make([]complex128, len(frequency))
	h.At([][]complex128{dst}, place)
	return dst
}

// TestAbsorber: 39 mm are a quarter of the wavelength at 2,185 Hz and 344 m/s, a tenth is
// 16 mm.
func TestAbsorber(t *testing.T) {
	weakens, takes := timing.Echo{Dip: 2185}.Absorber(344)
	if math.Abs(weakens-0.01574) > 1e-5 || math.Abs(takes-0.03936) > 1e-5 {
		t.Errorf("%g m weaken it, %g m take it", weakens, takes)
	}
}

// TestLevelDoesNotBoostDeepEchoes: over a floor 300 mm below the ball its echo takes 6 dB
// and more at its first dip; a boost would go into the echo as well (common practice: what
// a reflection cancels is not filled), so none stands within half an octave of it. In the
// open the same ball has no such place.
func TestLevelDoesNotBoostDeepEchoes(t *testing.T) {
	p := plan(t, ball96(t, true))
	if len(p.Echoes) == 0 || p.Echoes[0].Depth < 6 {
		t.Fatalf("no deep echo: %+v", p.Echoes)
	}
	l, err := timing.Level(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	if len(l.Echoes) == 0 {
		t.Fatal("no echo is told")
	}
	for _, e := range l.Echoes {
		for f, hz := range l.Frequency {
			if boost := l.After[f] - l.Before[f]; math.Abs(math.Log2(hz/e.Dip)) < 0.5 && boost > 0.5 {
				t.Errorf("%.1f dB of boost at %.0f Hz, beside the dip at %.0f", boost, hz, e.Dip)
			}
		}
	}
	open, err := timing.Level(&plan(t, ball96(t, false)).Spot)
	if err != nil || len(open.Echoes) > 0 {
		t.Errorf("in the open: %+v, %v", open.Echoes, err)
	}
}
