package reverb_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/timing/air"
	"pappus/timing/reverb"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func even(a float64) [6]float64 { return [6]float64{a, a, a, a, a, a} }

// TestHandbook works the two reverberation examples of Everest and Pohlmann,
// Master Handbook of Acoustics, 5th ed., chapter 11: a room of 23.3 by 16 by 10
// feet with a concrete floor and gypsum board on walls and ceiling, first bare,
// then with 340 square feet of acoustical tile. The handbook computes 0.049 V/A
// in feet, which is a speed of sound of 343.75 m/s. It prints the second room's
// times; the first's are the handbook's 182.7 over its sabins.
func TestHandbook(t *testing.T) {
	const foot = 0.3048
	size := r3.Scale(foot, r3.Vec{X: 23.3, Y: 16, Z: 10})
	speed := 24 * math.Ln10 * foot / 0.049
	tests := []struct {
		band                      string
		concrete, gypsum, tile    float64
		bareSabins, treatedSabins float64 // square feet
		treated                   float64 // s
	}{
		{"125 Hz", 0.01, 0.29, 0.09, 339.8, 370.4, 0.49},
		{"250 Hz", 0.01, 0.10, 0.28, 119.6, 214.8, 0.85},
		{"500 Hz", 0.015, 0.05, 0.78, 63.6, 328.8, 0.56},
		{"1 kHz", 0.02, 0.04, 0.84, 53.9, 339.5, 0.54},
		{"2 kHz", 0.02, 0.07, 0.73, 88.6, 336.8, 0.54},
		{"4 kHz", 0.02, 0.09, 0.64, 111.8, 329.4, 0.55},
	}
	for _, test := range tests {
		t.Run(test.band, func(t *testing.T) {
			g := test.gypsum
			room := reverb.Room{Size: size, Absorption: [6]float64{g, g, g, g, test.concrete, g}}
			if got := room.Sabins() / (foot * foot); math.Abs(got-test.bareSabins) > 0.15 {
				t.Errorf("bare: %.2f sabins, want %.1f", got, test.bareSabins)
			}
			if got, want := room.Time(speed, 0).Sabine, 182.7/test.bareSabins; math.Abs(got/want-1) > 2e-3 {
				t.Errorf("bare: %.4f s, want %.4f", got, want)
			}
			room.Absorption[5] += test.tile * 340 / (23.3 * 16) // the tile hangs before the board
			if got := room.Sabins() / (foot * foot); math.Abs(got-test.treatedSabins) > 0.25 {
				t.Errorf("treated: %.2f sabins, want %.1f", got, test.treatedSabins)
			}
			// The handbook cuts 0.5547 s at 4 kHz and 0.5425 s at 2 kHz to two
			// digits by rounding: half of the last, and the sabins' own rounding.
			if got := room.Time(speed, 0).Sabine; math.Abs(got-test.treated) > 0.0055 {
				t.Errorf("treated: %.4f s, want %.2f", got, test.treated)
			}
		})
	}
}

// TestClosedForms checks what can be had by hand.
func TestClosedForms(t *testing.T) {
	const c = 343.2
	cube := r3.Vec{X: 3, Y: 3, Z: 3}
	// A ray meets a wall S c/(4 V) times a second (mean free path 4 V/S, Kuttruff,
	// chapter 5), and each time keeps 1 - a of its energy.
	rays := func(a float64) float64 { return 6 * math.Ln10 / -math.Log(1-a) * 4 * 27 / (54 * c) }
	tests := []struct {
		name           string
		room           reverb.Room
		loss           float64
		sabine, eyring float64
	}{
		// 0.161 s/m is the usual constant at 343.2 m/s.
		{"the usual constant", reverb.Room{Size: cube, Absorption: even(0.1)}, 0, 24 * math.Ln10 / c * 27 / 5.4, rays(0.1)},
		{"half", reverb.Room{Size: cube, Absorption: even(0.5)}, 0, 24 * math.Ln10 / c * 27 / 27, rays(0.5)},
		{"one open side", reverb.Room{Size: cube, Absorption: [6]float64{1}}, 0, 24 * math.Ln10 / c * 27 / 9, rays(1.0 / 6)},
		{"open air", reverb.Room{Size: cube, Absorption: even(1)}, 0, 24 * math.Ln10 / c * 27 / 54, 0},
		// Energy exp(-2 loss c t) falls by 60 dB in 3 ln 10/(loss c), whatever the room.
		{"air alone", reverb.Room{Size: cube}, 1e-3, 3 * math.Ln10 / (1e-3 * c), 3 * math.Ln10 / (1e-3 * c)},
		{"nothing lost", reverb.Room{Size: cube}, 0, math.Inf(1), math.Inf(1)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := test.room.Time(c, test.loss)
			for _, v := range []struct {
				name      string
				got, want float64
			}{{"Sabine", got.Sabine, test.sabine}, {"Eyring", got.Eyring, test.eyring}} {
				if v.got != v.want && !(math.Abs(v.got-v.want) <= 1e-12*v.want) {
					t.Errorf("%s: %.9g s, want %.9g", v.name, v.got, v.want)
				}
			}
		})
	}
	if k := 24 * math.Ln10 / c; math.Abs(k-0.161) > 5e-4 {
		t.Errorf("constant %.5f s/m, want 0.161", k)
	}
}

// TestAirInHall: in a large hall of hard walls the air takes most at 8 kHz, where
// 20 degrees and 50 percent keep any room below about 2 s (common practice: m of
// about 0.03/m, hence 0.161/(4 m)).
func TestAirInHall(t *testing.T) {
	a := air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}
	hall := reverb.Room{Size: r3.Vec{X: 40, Y: 25, Z: 15}}
	got := hall.Time(a.SpeedOfSound(), a.Loss(8000)).Sabine
	if got < 1.2 || got > 2 {
		t.Errorf("air alone gives %.2f s at 8 kHz", got)
	}
}

// TestEyringIsShorter: -ln(1-a) > a, and both meet as a falls.
func TestEyringIsShorter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Float64Range(1, 30)
		room := reverb.Room{Size: r3.Vec{X: side.Draw(t, "x"), Y: side.Draw(t, "y"), Z: side.Draw(t, "z")}}
		for wall := range room.Absorption {
			room.Absorption[wall] = rapid.Float64Range(0.001, 1).Draw(t, "absorption")
		}
		loss := rapid.Float64Range(0, 0.02).Draw(t, "loss")
		got := room.Time(343, loss)
		if !(got.Eyring < got.Sabine) {
			t.Errorf("Eyring %g s, Sabine %g s", got.Eyring, got.Sabine)
		}
		for wall := range room.Absorption {
			room.Absorption[wall] *= 1e-4
		}
		if got := room.Time(343, loss); got.Eyring/got.Sabine < 1-1e-4 {
			t.Errorf("hard walls: Eyring %g s, Sabine %g s", got.Eyring, got.Sabine)
		}
	})
}

func ExampleRoom_Time() {
	// A story corner with a carpet and books on one wall.
	size := r3.Vec{X: 5, Y: 4, Z: 2.8}
	for _, band := range []struct {
		absorption [6]float64
		loss       float64 // Np/m
	}{
		{[6]float64{0.1, 0.2, 0.1, 0.1, 0.05, 0.1}, 0.0003},  // 500 Hz
		{[6]float64{0.1, 0.4, 0.1, 0.1, 0.35, 0.15}, 0.0011}, // 2 kHz
	} {
		t := reverb.Room{Size: size, Absorption: band.absorption}.Time(344, band.loss)
		fmt.Printf("Sabine %.2f s, Eyring %.2f s\n", t.Sabine, t.Eyring)
	}
	// Output:
	// Sabine 0.97 s, Eyring 0.92 s
	// Sabine 0.48 s, Eyring 0.43 s
}
