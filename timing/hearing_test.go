package timing_test

import (
	"errors"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/head"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// few frequencies in Hz.
var few = []float64{100, 700, 2500, 9000, 17000}

func ears(t testing.TB, p *timing.Plan, l timing.Listening, place, nose r3.Vec) (left, right []complex128) {
	t.Helper()
	e, err := timing.NewEars(&p.Spot, l, []r3.Vec{place}, few)
	if err != nil {
		t.Fatal(err)
	}
	left, right = make([]complex128, len(few)), make([]complex128, len(few))
	e.At([][]complex128{left}, [][]complex128{right}, place, nose)
	return left, right
}

func hear(t testing.TB, p *timing.Plan, l timing.Listening, place r3.Vec) []complex128 {
	t.Helper()
	h, err := timing.NewHearing(&p.Spot, l, []r3.Vec{place}, few)
	if err != nil {
		t.Fatal(err)
	}
	dst := make([]complex128, len(few))
	h.At([][]complex128{dst}, place)
	return dst
}

func off(a, b complex128) float64 { return cmplx.Abs(a-b) / cmplx.Abs(b) }

// TestPerDriverIsInStep: sound from points in open air, each with its own delay,
// adds up to the sum of the magnitudes, which is the most there can be.
func TestPerDriverIsInStep(t *testing.T) {
	a := demo(t)
	a.Surface.Present = false
	a.Timing.Model, a.Timing.DelaysBy = "point", "straight"
	p := plan(t, a)
	h, err := timing.NewHearing(&p.Spot, timing.Listening{Cases: []timing.Case{timing.PerDriver}}, []r3.Vec{a.Spot}, p.Response.Frequency)
	if err != nil {
		t.Fatal(err)
	}
	got := make([]complex128, len(p.Response.Frequency))
	h.At([][]complex128{got}, a.Spot)
	for f, v := range got {
		if db := 20*math.Log10(cmplx.Abs(v)) - p.Response.InStep[f]; math.Abs(db) > 1e-9 {
			t.Fatalf("%g Hz: %g dB over all in step", p.Response.Frequency[f], db)
		}
	}
}

// TestCasesMeet where they must: one channel for each driver is a delay for each,
// and delays by the straight line are delays by the straight line.
func TestCasesMeet(t *testing.T) {
	each := demo(t)
	each.Wiring.Channels, each.Processor.Step = 0, 0 // any delay can be set
	straight := demo(t)
	straight.Timing.DelaysBy = "straight"
	for _, c := range []struct {
		name  string
		array *layout.Array
		timing.Case
	}{{"a channel each", each, timing.PerDriver}, {"by the straight line", straight, timing.StraightLine}} {
		p := plan(t, c.array)
		want := hear(t, p, timing.Listening{Cases: []timing.Case{timing.Aligned}}, c.array.Spot)
		for f, v := range hear(t, p, timing.Listening{Cases: []timing.Case{c.Case}}, c.array.Spot) {
			if off(v, want[f]) > 1e-9 {
				t.Errorf("%s, %g Hz: %v, want %v", c.name, few[f], v, want[f])
			}
		}
	}
}

// TestMiddleSeat: delays that are planned for another seat are heard there as that seat's own
// plan is; with fewer than two seats they are the plan's.
func TestMiddleSeat(t *testing.T) {
	a := demo(t)
	a.Wiring.Channels = 0 // a channel each, so that both plans feed drivers alike
	p, other := plan(t, a), *a
	other.Spot = r3.Vec{X: 1, Y: -1.7, Z: 0.6}
	middle := plan(t, &other)
	at := func(p *timing.Plan, c timing.Case) []complex128 {
		h, err := timing.NewHearing(&p.Spot, timing.Listening{Cases: []timing.Case{c}}, []r3.Vec{other.Spot}, few)
		if err != nil {
			t.Fatal(err)
		}
		dst := make([]complex128, len(few))
		h.At([][]complex128{dst}, other.Spot)
		return dst
	}
	seated := *p
	seated.Seating = &timing.Seating{}
	for _, r := range middle.Arrivals {
		seated.Seating.MiddleDelay = append(seated.Seating.MiddleDelay, r.Delay)
	}
	for _, c := range []struct {
		name      string
		got, want []complex128
	}{
		{"another seat", at(&seated, timing.MiddleSeat), at(middle, timing.Aligned)},
		{"no seats", at(p, timing.MiddleSeat), at(p, timing.Aligned)},
	} {
		for f, want := range c.want {
			if off(c.got[f], want) > 1e-9 {
				t.Errorf("%s, %g Hz: %v, want %v", c.name, few[f], c.got[f], want)
			}
		}
	}
}

// TestStraightLineFallsShort: the rearmost drivers of the demo are later by the path
// than by the straight line, so the delays of both ways differ, and what is left
// with the tape measure falls short of what is left with the path.
func TestStraightLineFallsShort(t *testing.T) {
	p := plan(t, demo(t))
	var path, straight float64
	for _, f := range []float64{3000, 3200, 3400, 3600, 3800, 4000} {
		for c, sum := range map[timing.Case]*float64{timing.Aligned: &path, timing.StraightLine: &straight} {
			h, err := timing.NewHearing(&p.Spot, timing.Listening{Cases: []timing.Case{c}, Dry: true}, []r3.Vec{p.Array.Spot}, []float64{f})
			if err != nil {
				t.Fatal(err)
			}
			dst := make([]complex128, 1)
			h.At([][]complex128{dst}, p.Array.Spot)
			*sum += real(dst[0])*real(dst[0]) + imag(dst[0])*imag(dst[0])
		}
	}
	if db := 10 * math.Log10(path/straight); db < 0.05 {
		t.Errorf("the path gains %.2f dB", db)
	}
}

// TestIdealPointOverATable: a point and its mirror image, exp(-ikd)/d each (image
// sources: Allen and Berkley, J. Acoust. Soc. Am. 65 (1979) 943), and the point
// alone where it is dry.
func TestIdealPointOverATable(t *testing.T) {
	a := demo(t)
	a.Surface.Absorption = layout.Absorption{}
	a.Air.Humidity = 0.5
	p := plan(t, a)
	direct := r3.Norm(a.Spot)
	echo := r3.Norm(r3.Sub(a.Spot, r3.Vec{Z: 2 * a.Surface.Height}))
	wet := hear(t, p, timing.Listening{Cases: []timing.Case{timing.IdealPoint}}, a.Spot)
	dry := hear(t, p, timing.Listening{Cases: []timing.Case{timing.IdealPoint}, Dry: true}, a.Spot)
	for f, hz := range few[:3] { // the air takes little there
		k := 2 * math.Pi * hz / p.SpeedOfSound
		want := 1 + cmplx.Rect(direct/echo, -k*(echo-direct))
		if off(wet[f]/dry[f], want) > 2e-3 {
			t.Errorf("%g Hz: %v, want %v", hz, wet[f]/dry[f], want)
		}
	}
}

// TestDryIsWithoutSurroundings.
func TestDryIsWithoutSurroundings(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	bare := *a
	bare.Surface.Present = false
	alone := *p
	alone.Array = &bare
	want := hear(t, &alone, timing.Listening{Cases: []timing.Case{timing.Aligned}}, a.Spot)
	table := hear(t, p, timing.Listening{Cases: []timing.Case{timing.Aligned}}, a.Spot)
	for f, v := range hear(t, p, timing.Listening{Cases: []timing.Case{timing.Aligned}, Dry: true}, a.Spot) {
		if v != want[f] {
			t.Errorf("%g Hz: %v, want %v", few[f], v, want[f])
		}
		if v == table[f] {
			t.Errorf("%g Hz: the surface changes nothing", few[f])
		}
	}
}

// TestFlatTimesDriver is the whole.
func TestFlatTimesDriver(t *testing.T) {
	a := demo(t)
	a.Driver.Resonance, a.Driver.ResonanceQ = 200, 0.8
	p := plan(t, a)
	driver := p.DriverResponse(nil, few)
	whole := hear(t, p, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, a.Spot)
	for f, v := range hear(t, p, timing.Listening{Cases: []timing.Case{timing.AsBuilt}, Flat: true}, a.Spot) {
		if off(v*driver[f], whole[f]) > 1e-12 {
			t.Errorf("%g Hz: %v, want %v", few[f], v*driver[f], whole[f])
		}
	}
}

// TestEarsOfAPoint: both ears hear an ideal point as package head has it, the head
// turned any way.
func TestEarsOfAPoint(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	l := timing.Listening{Cases: []timing.Case{timing.IdealPoint}, Dry: true}
	k := make([]float64, len(few))
	for f, hz := range few {
		k[f] = 2 * math.Pi * hz / p.SpeedOfSound
	}
	h, err := head.New(k, false)
	if err != nil {
		t.Fatal(err)
	}
	place := r3.Vec{X: 1, Y: 2}
	middle := hear(t, p, l, place)
	rapid.Check(t, func(rt *rapid.T) {
		turn := rapid.Float64Range(0, math.Pi/2).Draw(rt, "turn to the left, rad")
		sin, cos := math.Sincos(math.Atan2(-place.Y, -place.X) + turn)
		left, right := ears(t, p, l, place, r3.Vec{X: cos, Y: sin})
		wantLeft, wantRight := make([]complex128, len(few)), make([]complex128, len(few))
		// The body then lies to the right of the nose.
		h.Add(wantLeft, wantRight, middle, head.Source{Distance: r3.Norm(place),
			Left: math.Min(head.EarAngle+turn, 2*math.Pi-head.EarAngle-turn), Right: math.Abs(head.EarAngle - turn)})
		for f := range few {
			if off(left[f], wantLeft[f]) > 1e-9 || off(right[f], wantRight[f]) > 1e-9 {
				rt.Fatalf("%g Hz: %v %v, want %v %v", few[f], left[f], right[f], wantLeft[f], wantRight[f])
			}
		}
	})
}

// TestEarsChangeOver in a mirror: the array, the place and the head mirrored left
// to right, over a surface.
func TestEarsChangeOver(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	other := *a
	other.Mounts = append([]layout.Mount(nil), a.Mounts...)
	for m := range other.Mounts {
		other.Mounts[m].Point.Y *= -1
		other.Mounts[m].Normal.Y *= -1
	}
	q := *p
	q.Array = &other
	left, right := ears(t, p, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, r3.Vec{X: 1, Y: 0.5, Z: 0.3}, r3.Vec{X: -1, Y: 0.2})
	l, r := ears(t, &q, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, r3.Vec{X: 1, Y: -0.5, Z: 0.3}, r3.Vec{X: -1, Y: -0.2})
	for f := range few {
		if off(left[f], r[f]) > 1e-9 || off(right[f], l[f]) > 1e-9 {
			t.Errorf("%g Hz: %v %v mirrored %v %v", few[f], left[f], right[f], l[f], r[f])
		}
	}
}

// TestEarsInARoom: at low frequencies the head is nothing, and both ears hear what
// is heard without it. At ka 0.005 a ball adds 1.5 ka of phase at most.
func TestEarsInARoom(t *testing.T) {
	a := demo(t)
	a.Surface.Present = false
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 2.6}, Body: r3.Vec{X: 2, Y: 1.5, Z: 0.8}, Order: 2}
	p := plan(t, a)
	frequency := []float64{3}
	e, err := timing.NewEars(&p.Spot, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, []r3.Vec{a.Spot}, frequency)
	if err != nil {
		t.Fatal(err)
	}
	left, right, want := make([]complex128, 1), make([]complex128, 1), make([]complex128, 1)
	e.At([][]complex128{left}, [][]complex128{right}, a.Spot, r3.Vec{X: -1})
	e.Hearing.At([][]complex128{want}, a.Spot)
	if off(left[0], want[0]) > 0.02 || off(right[0], want[0]) > 0.02 {
		t.Errorf("%v %v, want %v", left[0], right[0], want[0])
	}
}

// TestTableOfPlaces: what is looked up for many places is what is computed for
// one. The parts agree within 0.05 dB and 1 degree at worst; their sum over many
// drivers to 0.2 percent of the louder ear.
func TestTableOfPlaces(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	places := []r3.Vec{{X: 0.8, Y: 0.4, Z: 0.5}, {X: 3, Y: -1, Z: 0.7}, a.Spot}
	e, err := timing.NewEars(&p.Spot, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, places, few)
	if err != nil {
		t.Fatal(err)
	}
	left, right := make([]complex128, len(few)), make([]complex128, len(few))
	lefts, rights := [][]complex128{left}, [][]complex128{right}
	for _, at := range places {
		nose := r3.Vec{X: -1, Y: 0.3}
		e.At(lefts, rights, at, nose)
		wantLeft, wantRight := ears(t, p, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, at, nose)
		for f := range few {
			within := 0.002 * max(cmplx.Abs(wantLeft[f]), cmplx.Abs(wantRight[f]))
			if cmplx.Abs(left[f]-wantLeft[f]) > within || cmplx.Abs(right[f]-wantRight[f]) > within {
				t.Errorf("%v, %g Hz: %v %v, want %v %v", at, few[f], left[f], right[f], wantLeft[f], wantRight[f])
			}
		}
	}
}

// TestSpan: the first sound of the demo comes from the nearest driver, the last
// from the surface; in a dry case from the farthest driver round the body.
func TestSpan(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	first, last := math.Inf(1), 0.0
	for _, r := range p.Arrivals {
		first, last = min(first, r.Time), max(last, r.Time)
	}
	from, to := p.Span(timing.AsBuilt, true, a.Spot)
	if math.Abs(to-last) > 1e-12 || from > first+1e-12 || from < first-1e-4 {
		t.Errorf("dry from %g to %g s, arrivals from %g to %g", from, to, first, last)
	}
	if _, wet := p.Span(timing.AsBuilt, false, a.Spot); wet <= to {
		t.Errorf("last echo at %g s, dry at %g", wet, to)
	}
	from, to = p.Span(timing.IdealPoint, true, r3.Vec{X: 3})
	if want := 3 / p.SpeedOfSound; from != to || math.Abs(from-want) > 1e-15 {
		t.Errorf("ideal point from %g to %g s, want %g", from, to, want)
	}
}

// TestDrift: drivers in open air drift by no more than the turn times the body's
// width, and one that faces the listener not at all; its mirror image in a table
// does, by Pythagoras.
func TestDrift(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	if d := p.Drift(true, r3.Vec{X: 1}, r3.Vec{X: 1, Y: 0.1}); d < 1e-5 || d > 0.1*0.3/p.SpeedOfSound {
		t.Errorf("the drivers drift by %g s", d)
	}
	one := *a
	one.Mounts = []layout.Mount{{ID: 1, Point: r3.Vec{X: 0.15}, Normal: r3.Vec{X: 1}, Face: -1}}
	q := *p
	q.Array, q.Arrivals = &one, p.Arrivals[:1]
	from, to, under := r3.Vec{X: 1}, r3.Vec{X: 2}, r3.Vec{X: a.Body.BallRadius, Z: 2 * a.Surface.Height}
	if d := q.Drift(true, from, to); d > 1e-17 {
		t.Errorf("one driver drifts by %g s", d)
	}
	want := (1 - r3.Norm(r3.Sub(to, under)) + r3.Norm(r3.Sub(from, under))) / p.SpeedOfSound
	if d := q.Drift(false, from, to); math.Abs(d-want) > 1e-15 {
		t.Errorf("the echo drifts by %g s, want %g", d, want)
	}
}

// TestCasesTogether are what each is alone.
func TestCasesTogether(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	cases := []timing.Case{timing.AsBuilt, timing.Aligned, timing.IdealPoint, timing.PerDriver, timing.StraightLine, timing.MiddleSeat}
	h, err := timing.NewHearing(&p.Spot, timing.Listening{Cases: cases}, []r3.Vec{a.Spot}, few)
	if err != nil {
		t.Fatal(err)
	}
	all := make([][]complex128, len(cases))
	for i := range all {
		all[i] = make([]complex128, len(few))
	}
	h.At(all, a.Spot)
	for i, c := range cases {
		for f, want := range p.Transfer(nil, c, few) {
			if off(all[i][f], want) > 1e-12 {
				t.Errorf("case %d, %g Hz: %v, alone %v", c, few[f], all[i][f], want)
			}
		}
	}
}

func TestNoEarsInsideTheBody(t *testing.T) {
	p := plan(t, demo(t))
	if _, err := timing.NewEars(&p.Spot, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, []r3.Vec{{X: 2}, {X: 0.01, Z: 0.05}}, few); !errors.Is(err, layout.ErrInside) {
		t.Errorf("error %v", err)
	}
}

// Two ears of a 39-driver dome on a table at 513 frequencies, as many as a walk
// takes for one step; and one ear.
func BenchmarkEars(b *testing.B) {
	p := plan(b, demo(b))
	frequency := make([]float64, 513)
	for f := range frequency {
		frequency[f] = 46.875 * float64(f)
	}
	places := []r3.Vec{{X: 0.8, Z: 0.6}, {X: 3, Y: 1, Z: 0.6}}
	e, err := timing.NewEars(&p.Spot, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, places, frequency)
	if err != nil {
		b.Fatal(err)
	}
	lefts, rights := [][]complex128{make([]complex128, len(frequency))}, [][]complex128{make([]complex128, len(frequency))}
	b.ReportAllocs()
	for b.Loop() {
		e.At(lefts, rights, places[0], r3.Vec{X: -1})
	}
}
