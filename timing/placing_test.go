package timing_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// built lays the built-in design out with a change.
func built(t testing.TB, change func(d *design.Design)) *layout.Array {
	t.Helper()
	d := design.Default()
	change(d)
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	a.Coverage.Cells = 12
	return a
}

// spotted is what of a spot does not name a place in the room.
type spotted struct {
	Arrivals           []timing.Arrival
	Channels           []timing.Channel
	Response           timing.Response
	Aligned, Unaligned timing.Measures
	Depth, Late        []float64 // of the echoes
}

func spottedOf(s *timing.Spot) spotted {
	out := spotted{Arrivals: s.Arrivals, Channels: s.Channels, Response: s.Response, Aligned: s.Aligned, Unaligned: s.Unaligned}
	for _, e := range s.Echoes {
		out.Depth, out.Late = append(out.Depth, e.Depth), append(out.Late, e.Late)
	}
	return out
}

// sameFigures compares figures but for rounding: within 1e-9 of each, and times, some of which
// are 0, within 1e-13 s.
var sameFigures = cmp.Options{cmpopts.EquateApprox(1e-9, 1e-13), cmpopts.EquateNaNs()}

// TestHeldAsTurned: a body and all that is round it can be turned together, and no figure
// changes. The design of each case is the built-in one held in another way, its spot and what
// is round it turned with it.
func TestHeldAsTurned(t *testing.T) {
	const size, cornerX, cornerY, cornerZ = 4.0, 1.5, 1.7, 0.3
	walls := func(back, front, right, left, floor, ceiling float64) (out [6]layout.Absorption) {
		for i, v := range []float64{back, front, right, left, floor, ceiling} {
			for band := range out[i] {
				out[i][band] = v
			}
		}
		return out
	}
	room := func(d *design.Design, at r3.Vec, absorption [6]layout.Absorption) {
		d.Surface.Present = false
		d.Room = layout.Room{Present: true, Size: r3.Vec{X: size, Y: size, Z: size}, Body: at, Order: 2, Absorption: absorption}
	}
	open := func(d *design.Design) { d.Surface.Present = false }
	for _, test := range []struct {
		name           string
		stands, as     func(d *design.Design)
		spot, turnedTo r3.Vec
		level          bool // the level circle through the spot is still one
	}{
		{"hung from a ceiling", func(*design.Design) {}, func(d *design.Design) { d.Placing.On = design.OnCeiling },
			r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, r3.Vec{X: 1.8, Y: -0.4, Z: -0.6}, true},
		{"hung in a room", func(d *design.Design) {
			room(d, r3.Vec{X: cornerX, Y: cornerY, Z: cornerZ}, walls(0.1, 0.2, 0.3, 0.4, 0.5, 0.6))
		},
			func(d *design.Design) {
				d.Placing.On = design.OnCeiling
				room(d, r3.Vec{X: cornerX, Y: size - cornerY, Z: size - cornerZ}, walls(0.1, 0.2, 0.4, 0.3, 0.6, 0.5))
			},
			r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, r3.Vec{X: 1.8, Y: -0.4, Z: -0.6}, true},
		{"on a wall", func(*design.Design) {}, func(d *design.Design) { d.Placing.On = design.OnWall },
			r3.Vec{X: 1.2, Y: 0.4, Z: 1.6}, r3.Vec{X: 1.6, Y: 0.4, Z: -1.2}, false},
		{"turned a quarter to the left on the table", func(*design.Design) {}, func(d *design.Design) { d.Placing.YawDeg = 90 },
			r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, r3.Vec{X: -0.4, Y: 1.8, Z: 0.6}, true},
		{"turned by 37 degrees on the table", func(*design.Design) {}, func(d *design.Design) { d.Placing.YawDeg = 37 },
			r3.Vec{X: 2, Z: 0.6}, r3.Vec{X: 2 * math.Cos(37*math.Pi/180), Y: 2 * math.Sin(37*math.Pi/180), Z: 0.6}, true},
		{"tipped in open air", open, func(d *design.Design) { open(d); d.Placing.PitchDeg = 90 },
			r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, r3.Vec{X: 0.6, Y: 0.4, Z: -1.8}, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			stands := plan(t, built(t, func(d *design.Design) { test.stands(d); d.Spot = test.spot }))
			held := plan(t, built(t, func(d *design.Design) { test.as(d); d.Spot = test.turnedTo }))
			if d := cmp.Diff(spottedOf(&stands.Spot), spottedOf(&held.Spot), sameFigures); d != "" {
				t.Errorf("at the spot: %s", d)
			}
			if d := cmp.Diff(stands.Peaks, held.Peaks, sameFigures); d != "" {
				t.Errorf("peaks: %s", d)
			}
			if !test.level {
				return
			}
			a, err := timing.Look(stands)
			if err != nil {
				t.Fatal(err)
			}
			b, err := timing.Look(held)
			if err != nil {
				t.Fatal(err)
			}
			for i := range a.Octaves {
				a.Octaves[i].Reach, b.Octaves[i].Reach = 0, 0 // of cells, which do not turn
			}
			if d := cmp.Diff(a.Octaves, b.Octaves, cmpopts.EquateApprox(0, 2e-3)); d != "" {
				t.Errorf("round the room: %s", d)
			}
		})
	}
}

// TestMapsOfAHungBody: seen from above and from the side, the maps of a body that hangs are
// those of one that stands, turned over.
func TestMapsOfAHungBody(t *testing.T) {
	stands := plan(t, built(t, func(d *design.Design) {}))
	held := plan(t, built(t, func(d *design.Design) {
		d.Placing.On, d.Spot = design.OnCeiling, r3.Vec{X: d.Spot.X, Y: -d.Spot.Y, Z: -d.Spot.Z}
	}))
	for _, slice := range []func(*timing.Spot) timing.Slice{timing.HorizontalSlice, timing.VerticalSlice} {
		a, err := timing.Cover(&stands.Spot, slice(&stands.Spot))
		if err != nil {
			t.Fatal(err)
		}
		b, err := timing.Cover(&held.Spot, slice(&held.Spot))
		if err != nil {
			t.Fatal(err)
		}
		for cell := range a.Smear {
			over := (a.Rows-1-cell/a.Columns)*a.Columns + cell%a.Columns
			got := []float64{b.Level[3][over], b.Level[6][over], 1e6 * b.Smear[over], b.CombOnset[over]}
			want := []float64{a.Level[3][cell], a.Level[6][cell], 1e6 * a.Smear[cell], a.CombOnset[cell]}
			if d := cmp.Diff(want, got, cmpopts.EquateApprox(1e-6, 1e-4), cmpopts.EquateNaNs()); d != "" {
				t.Fatalf("%s, cell %d: %s", a.Name, cell, d)
			}
		}
	}
}

// TestTurnedTogether: in open air the body and the spot may be turned in any way, and two ears
// with them.
func TestTurnedTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawn(t)
		a.Timing.Model = rapid.SampledFrom([]string{"sphere", "point", "baffle"}).Draw(t, "model")
		angle := rapid.Float64Range(-180, 180)
		angles := design.Angles{YawDeg: angle.Draw(t, "yaw"), PitchDeg: angle.Draw(t, "pitch"), RollDeg: angle.Draw(t, "roll")}
		turn := design.Placing{On: rapid.SampledFrom([]string{"surface", "ceiling", "wall"}).Draw(t, "on")}.Turn(angles)
		b := *a
		b.Placings, b.Spot = []layout.Placing{{Turn: turn}}, turn.Out(a.Spot)
		p, q := move(t, a), move(t, &b)
		if d := cmp.Diff(spottedOf(p), spottedOf(q), cmpopts.EquateApprox(1e-7, 1e-11), cmpopts.EquateNaNs()); d != "" {
			t.Fatal(d)
		}
	})
}

// TestEarsOfATurnedBody: who sits before a body that is turned to the left hears what who sits
// further to the right of it hears, by both ears.
func TestEarsOfATurnedBody(t *testing.T) {
	frequency := []float64{200, 500, 1000, 3000}
	hear := func(yaw float64, at r3.Vec) []complex128 {
		a := built(t, func(d *design.Design) { d.Placing.YawDeg, d.Spot = yaw, at })
		p := plan(t, a)
		e, err := timing.NewEars(&p.Spot, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, []r3.Vec{at}, frequency)
		if err != nil {
			t.Fatal(err)
		}
		left, right := make([]complex128, len(frequency)), make([]complex128, len(frequency))
		e.At([][]complex128{left}, [][]complex128{right}, at, r3.Vec{X: -at.X, Y: -at.Y})
		return append(left, right...)
	}
	turned, straight := hear(90, r3.Vec{X: 2, Z: 0.5}), hear(0, r3.Vec{Y: -2, Z: 0.5})
	for i, v := range turned {
		if cmplx.Abs(v-straight[i]) > 1e-9*cmplx.Abs(v) {
			t.Errorf("%v, want %v", v, straight[i])
		}
	}
}

// TestSilentDrivers: a plan comes to its end where drivers in a baffle look away from the spot
// and are not heard there at all.
func TestSilentDrivers(t *testing.T) {
	p := plan(t, built(t, func(d *design.Design) {
		d.Timing.Model, d.Placing.Angles = "baffle", design.Angles{PitchDeg: 45, RollDeg: 20}
	}))
	silent := 0
	for _, r := range p.Arrivals {
		if math.IsInf(r.Level, -1) {
			silent++
		}
	}
	if silent < 2 {
		t.Errorf("%d drivers are silent", silent)
	}
}
