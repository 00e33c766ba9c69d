package timing_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/air"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// demo lays the built-in design out, its high-pass left to be worked out.
func demo(t testing.TB) *layout.Array {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	a.Protection.Corner = 0 // the least that is needed
	return a
}

// plain lays the built-in design out in open air: points, straight lines, no
// table, relative levels, drivers without a resonance or a high-pass, and delays that
// can be set exactly, for closed forms.
func plain(t testing.TB) *layout.Array {
	a := demo(t)
	a.Timing.Model, a.Timing.DelaysBy = "point", "straight"
	a.Surface, a.Room = layout.Surface{}, layout.Room{}
	a.Protection, a.Processor.Step = layout.Protection{}, 0
	a.Driver.Sensitivity, a.Driver.Resonance, a.Driver.Response = math.NaN(), 0, nil
	return a
}

func plan(t testing.TB, a *layout.Array) *timing.Plan {
	t.Helper()
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func move(t *rapid.T, a *layout.Array) *timing.Spot {
	planner, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Spot(a.Spot)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// even lays drivers out evenly on a ball of 150 mm radius on a hard or no surface.
func even(t testing.TB, drivers int, surface bool) *layout.Array {
	t.Helper()
	a := timing.EvenBall(t, drivers)
	a.Coverage.Cells, a.Surface = 32, layout.Surface{Present: surface, Height: -0.175}
	return a
}

// onOne lays so many drivers evenly on a ball, on so many channels, as the demo's:
// 7.1 ohm, 4 ohm allowed, 2.83 V.
func onOne(t *testing.T, drivers, channels int) *layout.Array {
	a := even(t, drivers, false)
	a.Driver.DCOhm, a.Wiring.Voltage, a.Wiring.Channels = 7.1, 2.83, channels
	a.Wiring.Split = "arrival"
	return a
}

// twelve lays a driver on each face of the dodecahedron, in air that carries sound as fast
// as the table's.
func twelve(t *testing.T, spot r3.Vec) *layout.Array {
	t.Helper()
	b, err := body.Platonic("dodecahedron", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	a := plain(t)
	a.Body, a.Spot, a.Surface, a.Channels = b, spot, layout.Surface{}, nil
	a.Timing = layout.Timing{Model: "sphere", DelaysBy: "field", FieldLow: 500, FieldHigh: 8000}
	a.Air = layout.Air{Temperature: 293.15, Pressure: 101325}
	for range 20 { // speed goes as the root of the temperature, but for a few parts in a thousand
		a.Air.Temperature *= math.Pow(tableSpeed/air.Air(a.Air).SpeedOfSound(), 2)
	}
	a.Driver.ConeRadius = 0.025
	a.Mounts, a.Empty = nil, nil
	for f := range b.Faces {
		n := b.Normal(f)
		a.Mounts = append(a.Mounts, layout.Mount{ID: f + 1, Point: b.Centroid(f), Normal: n, Face: f})
	}
	return a
}

// dodecahedron has a driver on each of its twelve faces, in open air or over a floor.
func dodecahedron(t testing.TB, floor bool) *layout.Array {
	t.Helper()
	d := design.Default()
	d.Body = design.Body{Shape: "dodecahedron", Radius: 0.15, Stand: 0.9, Wall: 0.003}
	d.Mounts = design.Mounts{On: "faces"}
	d.Driver.ConeRadius, d.Driver.CutoutRadius, d.Driver.FlangeRadius = 0.05, 0.052, 0.06
	d.Wiring.Channels = 0
	d.Surface = design.Surface{Present: floor}
	d.Spot = r3.Vec{X: 1.5}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// inRoom puts the built-in design into a room.
func inRoom(t testing.TB) *layout.Array {
	a := demo(t)
	a.Surface = layout.Surface{}
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 4.5, Z: 2.7}, Body: r3.Vec{X: 1.5, Y: 2.2, Z: 0.6}, Order: 3}
	for wall := range a.Room.Absorption {
		for b := range a.Room.Absorption[wall] {
			a.Room.Absorption[wall][b] = 0.2
		}
	}
	return a
}

// loudDemo is the demo at a voltage that needs a high-pass.
func loudDemo(t testing.TB) *layout.Array {
	a := demo(t)
	a.Wiring.Voltage = 40
	return a
}

// inStep is the plain array, each driver with its own delay, and a woofer beside it.
func inStep(t testing.TB, order int) *layout.Array {
	a := plain(t)
	a.Wiring.Channels = 0
	a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -0.4, Y: 0.7, Z: -0.5}, Crossover: 300, Order: order, Sensitivity: math.NaN()}
	return a
}

// bankOf makes one channel of 4 drivers of 8 ohm, 2 strings of 2, at 10 V.
func bankOf(t testing.TB) *layout.Array {
	a := plain(t)
	a.Mounts = a.Mounts[:4]
	a.Driver.NominalOhm, a.Driver.DCOhm, a.Driver.Small = 8, 8, layout.Small{}
	a.Driver.PowerHandling = 100
	a.Driver.Impedance = []layout.ImpedancePoint{{Frequency: 20, Ohm: 8}, {Frequency: 20000, Ohm: 8}}
	a.Wiring = layout.Wiring{Channels: 1, MinimumLoad: 8, Voltage: 10}
	return a
}

// single is a channel without strings, with a delay in s; NaN leaves it to be worked out.
func single(id int, delay float64, mounts ...int) layout.Channel {
	return layout.Channel{ID: id, Mounts: mounts, Series: 1, Parallel: 1, NominalOhm: 8, DCOhm: 7.1, Delay: delay}
}

// handMade lays out channels of one driver each, metres along x before a spot,
// sound at the speed that the plan says.
func handMade(t testing.TB, metre []float64, delay []float64) *layout.Array {
	a := plain(t)
	a.Mounts = a.Mounts[:len(metre)]
	a.Spot = r3.Vec{X: 10}
	a.Processor.Step = 1e-6
	for i, x := range metre {
		a.Mounts[i].Point = r3.Vec{X: 10 - x}
		a.Channels = append(a.Channels, single(i+1, delay[i], i))
	}
	return a
}

// byHand gives the demo a channel for each delay in us.
func byHand(t testing.TB, step float64, delays ...float64) *layout.Array {
	a := demo(t)
	a.Wiring.Channels, a.Channels, a.Processor.Step = 0, nil, step
	for i, d := range delays {
		a.Channels = append(a.Channels, single(i+1, d*1e-6))
	}
	for m := range a.Mounts {
		c := &a.Channels[m%len(delays)]
		c.Mounts = append(c.Mounts, m)
	}
	return a
}

// apart puts one point for each delay in us, and a channel for each, so far before the
// hindmost that it needs this delay; the steps of the processor are in s.
func apart(t testing.TB, step float64, delays ...float64) *layout.Array {
	a := plain(t)
	a.Processor.Step, a.Spot, a.Mounts, a.Channels = step, r3.Vec{X: 3}, nil, nil
	speed := air.Air(a.Air).SpeedOfSound()
	for i, d := range delays {
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Vec{X: speed * d * 1e-6}, Normal: r3.Vec{X: 1}, Face: -1})
		a.Channels = append(a.Channels, single(i+1, math.NaN(), i))
	}
	return a
}

// drawn makes an array of a few drivers anywhere on a ball, one delay each.
func drawn(t *rapid.T) *layout.Array {
	const radius = 0.15
	coordinate := rapid.Float64Range(-1, 1)
	vector := func(name string) r3.Vec {
		return r3.Vec{X: coordinate.Draw(t, name), Y: coordinate.Draw(t, name), Z: coordinate.Draw(t, name)}
	}
	a := &layout.Array{
		Air:      layout.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325},
		Body:     body.Ball(radius),
		Driver:   layout.Driver{ConeRadius: 0.016, NominalOhm: 8, DCOhm: 7, Sensitivity: math.NaN()},
		Timing:   layout.Timing{Model: "point", DelaysBy: "straight", FieldLow: 500, FieldHigh: 8000},
		Wiring:   layout.Wiring{MinimumLoad: 4},
		Coverage: layout.Coverage{HalfWidth: 2, Cells: 8},
		Spot:     r3.Add(vector("spot"), r3.Vec{X: 2.5}),
	}
	for i := range rapid.IntRange(1, 12).Draw(t, "drivers") {
		u := r3.Add(vector("mount"), r3.Vec{Z: 1e-3})
		if r3.Norm(u) < 1e-2 {
			u = r3.Vec{Z: 1}
		}
		u = r3.Unit(u)
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Scale(radius, u), Normal: u, Face: -1})
	}
	return a
}
