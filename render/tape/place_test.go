package tape_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/tape"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestPlace: what is said is what a tape finds, never the slant.
func TestPlace(t *testing.T) {
	hung := &layout.Array{}
	table := &layout.Array{Surface: layout.Surface{Present: true, Height: -0.025}}
	ceiling := &layout.Array{Surface: layout.Surface{Present: true, On: layout.OnCeiling, Height: 0.025}}
	wall := &layout.Array{Surface: layout.Surface{Present: true, On: layout.OnWall, Height: -0.025}}
	room := &layout.Array{Room: layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 4.5, Z: 2.7}, Body: r3.Vec{X: 2, Y: 2, Z: 0.8}}}
	for _, test := range []struct {
		name        string
		a           *layout.Array
		at          r3.Vec
		tape, short string
	}{
		{"the demo's chair, 1.94 m through the air", table, r3.Vec{X: 1.8, Y: 0.4, Z: 0.6},
			"1.80 m in front along the floor, 0.40 m to the loudspeaker's left, ears 0.63 m above the table or floor",
			"1.84 m away along the floor, 13° to the loudspeaker's left"},
		{"high up, 2.79 m through the air", hung, r3.Vec{X: 1.56, Z: 2.32},
			"1.56 m in front along the floor, ears 2.32 m above its middle", "1.56 m away along the floor, straight in front"},
		{"under a ceiling", ceiling, r3.Vec{X: 1, Z: -1.2}, "1.00 m in front along the floor, ears 1.22 m below the ceiling", "1.00 m away along the floor, straight in front"},
		{"before a wall", wall, r3.Vec{X: 1, Z: -1.2}, "1.00 m in front along the floor, ears 1.20 m below its middle", "1.00 m away along the floor, straight in front"},
		{"in a room", room, r3.Vec{X: 1, Y: -1, Z: 0.3},
			"1.00 m in front along the floor, 1.00 m to the loudspeaker's right, ears 1.10 m above the floor", "1.41 m away along the floor, 45° to the loudspeaker's right"},
		{"behind", hung, r3.Vec{X: -1, Y: 1}, "1.00 m behind along the floor, 1.00 m to the loudspeaker's left, ears level with its middle",
			"1.41 m away along the floor, 135° round to the loudspeaker's left"},
		{"right behind", hung, r3.Vec{X: -1, Y: -0.001, Z: -0.5}, "1.00 m behind along the floor, ears 0.50 m below its middle", "1.00 m away along the floor, straight behind"},
		{"beside", hung, r3.Vec{Y: -2}, "2.00 m to the loudspeaker's right along the floor, ears level with its middle", "2.00 m away along the floor, 90° to the loudspeaker's right"},
		{"overhead", hung, r3.Vec{Z: 2}, "straight over or under the loudspeaker, ears 2.00 m above its middle", "straight over or under the loudspeaker"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := tape.Of(test.a, test.at)
			if got := p.Full(); got != test.tape {
				t.Errorf("tape: %q, want %q", got, test.tape)
			}
			if got := p.Short(); got != test.short {
				t.Errorf("short: %q, want %q", got, test.short)
			}
		})
	}
}

// TestHeld: where the front mark and the top point, in the room's words.
func TestHeld(t *testing.T) {
	for _, test := range []struct {
		name string
		held design.Placing
		want string
	}{
		{"as designed", design.Placing{On: "surface"}, ""},
		{"hung", design.Placing{On: "ceiling"}, "hung from the ceiling: its top points straight down, its front mark forward"},
		{"on a wall", design.Placing{On: "wall"}, "fixed to the wall behind it: its top points forward, its front mark straight down"},
		{"to the right", design.Placing{On: "surface", Angles: design.Angles{YawDeg: -90}}, "turned: its top points straight up, its front mark to the right"},
		{"round", design.Placing{On: "surface", Angles: design.Angles{YawDeg: 180}}, "turned: its top points straight up, its front mark backward"},
		{"a little", design.Placing{On: "surface", Angles: design.Angles{YawDeg: 30, PitchDeg: 20}}, "turned: its top points 30° left of forward and 70° up, its front mark 30° left of forward and 20° down"},
		{"nearly round", design.Placing{On: "surface", Angles: design.Angles{YawDeg: -150}}, "turned: its top points straight up, its front mark 30° right of backward"},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := &layout.Array{On: test.held.On, Placings: []layout.Placing{{Turn: test.held.Turn(test.held.Angles)}}}
			if got := tape.Held(a, 0); got != test.want {
				t.Errorf("%q", got)
			}
		})
	}
}

// TestEdges: half a centimetre and two degrees are what a tape does not find.
func TestEdges(t *testing.T) {
	at := func(degrees float64) r3.Vec {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		return r3.Vec{X: 2 * cos, Y: 2 * sin}
	}
	for _, test := range []struct {
		name string
		at   r3.Vec
		want string // side
		ears string
	}{
		{"ahead", at(1.95), "straight in front", "ears level with its middle"},
		{"not ahead", at(2.05), "2° to the loudspeaker's left", "ears level with its middle"},
		{"behind", at(178.1), "straight behind", "ears level with its middle"},
		{"level", r3.Vec{X: 1, Z: 0.0049}, "straight in front", "ears level with its middle"},
		{"above", r3.Vec{X: 1, Z: 0.0051}, "straight in front", "ears 0.01 m above its middle"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := tape.Of(&layout.Array{}, test.at)
			if p.Side() != test.want || p.Ears() != test.ears {
				t.Errorf("%q, %q", p.Side(), p.Ears())
			}
		})
	}
}

// TestToLeft: a listener in front who steps to the left hand goes to the loudspeaker's
// right.
func TestToLeft(t *testing.T) {
	for _, test := range []struct {
		name     string
		at, want r3.Vec
	}{
		{"in front", r3.Vec{X: 2, Z: 1}, r3.Vec{X: 2, Y: -0.5, Z: 1}},
		{"behind", r3.Vec{X: -2}, r3.Vec{X: -2, Y: 0.5}},
		{"at the loudspeaker's left", r3.Vec{Y: 3}, r3.Vec{X: 0.5, Y: 3}},
		{"overhead", r3.Vec{Z: 1}, r3.Vec{Y: 0.5, Z: 1}},
	} {
		t.Run(test.name, func(t *testing.T) {
			got := tape.ToLeft(test.at, 0.5)
			if r3.Norm(r3.Sub(got, test.want)) > 1e-12 {
				t.Errorf("%v, want %v", got, test.want)
			}
			if back := tape.ToLeft(test.at, -0.5); math.Abs(r3.Norm(r3.Sub(back, test.at))-0.5) > 1e-12 || r3.Dot(r3.Sub(back, test.at), r3.Sub(got, test.at)) > 0 {
				t.Errorf("to the right: %v", back)
			}
		})
	}
}

// The spot goes by the name of the seat that it is.
func TestSpot(t *testing.T) {
	at := layout.Seat{Name: "mat", At: r3.Vec{X: 2}}
	for _, test := range []struct {
		name  string
		seats []layout.Seat
		want  string
	}{
		{"no seats", nil, "listening spot"},
		{"one seat is a spot", []layout.Seat{at}, "listening spot"},
		{"elsewhere", []layout.Seat{{At: r3.Vec{X: 1}}, {At: r3.Vec{X: 3}}}, "listening spot"},
		{"a seat", []layout.Seat{{At: r3.Vec{X: 1}}, at}, `seat "mat"`},
	} {
		if got := tape.Spot(&layout.Array{Spot: r3.Vec{X: 2}, Seats: test.seats}); got != test.want {
			t.Errorf("%s: %s", test.name, got)
		}
	}
}
