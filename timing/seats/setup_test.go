package seats_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/spread"
	"pappus/timing/air"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// lantern lays the built-in design out, without what is round it.
func lantern(t testing.TB) *layout.Array {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// evenBall lays drivers like the lantern's out evenly on a ball of a radius in m.
func evenBall(t testing.TB, drivers int, radius float64) *layout.Array {
	t.Helper()
	settled, err := spread.Settle(drivers, 1, spread.Zone{})
	if err != nil {
		t.Fatal(err)
	}
	directions, _ := settled.Apart(0)
	a := lantern(t)
	a.Body, a.Mounts, a.Surface = body.Ball(radius), nil, layout.Surface{}
	for i, d := range directions {
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Scale(radius, d), Normal: d, Face: -1})
	}
	return a
}

// circle returns places 2 m from the axis at azimuths in degrees, at a height in m.
func circle(height float64, azimuth ...float64) []r3.Vec {
	var out []r3.Vec
	for _, a := range azimuth {
		sin, cos := math.Sincos(a * math.Pi / 180)
		out = append(out, r3.Vec{X: 2 * cos, Y: 2 * sin, Z: height})
	}
	return out
}

func five(height float64) []r3.Vec { return circle(height, -60, -30, 0, 30, 60) }

func allRound(height float64) []r3.Vec {
	return circle(height, 0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330)
}

// hear returns what places hear of an array's drivers, with what its surface sends back.
func hear(t testing.TB, a *layout.Array, frequency []float64, place []r3.Vec) (pressure [][]complex128) {
	t.Helper()
	sky := air.Air{Temperature: a.Air.Temperature, Humidity: a.Air.Humidity, Pressure: a.Air.Pressure}
	scene, err := radiate.NewScene(a, radiate.NewMedium(sky, frequency))
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range place {
		p := make([]complex128, len(a.Mounts)*len(frequency))
		scene.Hear(p, scene.Ways, at)
		pressure = append(pressure, p)
	}
	return pressure
}

// around returns places off others, one after the other.
func around(place, off []r3.Vec) (out []r3.Vec) {
	for _, p := range place {
		for _, o := range off {
			out = append(out, r3.Add(p, o))
		}
	}
	return out
}

// diagonals are places at a distance in m where no head is planned on.
func diagonals(distance float64) (out []r3.Vec) {
	for _, x := range []float64{-1, 1} {
		for _, y := range []float64{-1, 1} {
			for _, z := range []float64{-1, 0, 1} {
				out = append(out, r3.Scale(distance, r3.Unit(r3.Vec{X: x, Y: y, Z: z})))
			}
		}
	}
	return out
}
