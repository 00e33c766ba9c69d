package where_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"pappus/layout/design"
	"pappus/timing/where"

	"gonum.org/v1/gonum/spatial/r3"
)

// roomed is the demo in a room of hard walls, near its back wall.
func roomed() *design.Design {
	d := design.Default()
	d.Surface.Present = false
	d.Room = design.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 2.6}, Body: r3.Vec{X: 0.8, Y: 0.9, Z: 0.7}, Order: 1}
	for i := range d.Room.Absorption {
		for j := range d.Room.Absorption[i] {
			d.Room.Absorption[i][j] = 0.2
		}
	}
	return d
}

// TestChair: the place found is worth no more than that before, and than any of many others that
// the chair could have gone to; it keeps its height, its distance and the walls.
func TestChair(t *testing.T) {
	for name, d := range map[string]*design.Design{"on a table": design.Default(), "in a room": roomed()} {
		t.Run(name, func(t *testing.T) {
			f, err := where.Chair(context.Background(), d)
			if err != nil {
				t.Fatal(err)
			}
			if !(f.Best.Worth() <= f.Before.Worth()) || f.Before.Design.Spot != d.Spot {
				t.Errorf("%.2f dB at %v, before %.2f at %v", f.Best.Worth(), f.Best.Design.Spot, f.Before.Worth(), f.Before.Design.Spot)
			}
			at := f.Best.Design.Spot
			far, was := math.Hypot(at.X, at.Y), math.Hypot(d.Spot.X, d.Spot.Y)
			if at.Z != d.Spot.Z || far < where.Nearest*was-0.01 || far > where.Furthest*was+0.01 {
				t.Errorf("the chair is at %v", at)
			}
			if in := r3.Add(at, d.Room.Body); d.Room.Present && min(in.X, in.Y, d.Room.Size.X-in.X, d.Room.Size.Y-in.Y) < where.ClearOfWalls {
				t.Errorf("the chair is %v from the corner", in)
			}
			t.Logf("loss %.2f, ripple %.2f dB at %v; before %.2f, %.2f", f.Best.Spot.Aligned.Loss, f.Best.Spot.Ripple, at, f.Before.Spot.Aligned.Loss, f.Before.Spot.Ripple)
		})
	}
}

// TestBody: on its table a body is only turned; in a room it is moved too, while the chair stays
// where it is in the room.
func TestBody(t *testing.T) {
	for name, d := range map[string]*design.Design{"on a table": design.Default(), "in a room": roomed()} {
		t.Run(name, func(t *testing.T) {
			f, err := where.Body(context.Background(), d)
			if err != nil {
				t.Fatal(err)
			}
			got := f.Best.Design
			if !(f.Best.Worth() <= f.Before.Worth()) {
				t.Errorf("%.2f dB, before %.2f", f.Best.Worth(), f.Before.Worth())
			}
			if off := r3.Norm(r3.Sub(r3.Add(got.Spot, got.Room.Body), r3.Add(d.Spot, d.Room.Body))); off > 0.01 {
				t.Errorf("the chair went %.3f m", off)
			}
			if !d.Room.Present && got.Room.Body != d.Room.Body {
				t.Error("a body without a room was moved")
			}
			t.Logf("loss %.2f, ripple %.2f dB, yaw %.0f, %v; before %.2f, %.2f", f.Best.Spot.Aligned.Loss, f.Best.Spot.Ripple, got.Placing.YawDeg, got.Room.Body, f.Before.Spot.Aligned.Loss, f.Before.Spot.Ripple)
		})
	}
}

// TestSeats: who has several has no one chair.
func TestSeats(t *testing.T) {
	d := design.Default()
	d.Seats = []design.Seat{{At: r3.Vec{X: 2}, Weight: 1}, {At: r3.Vec{X: 2, Y: 1}, Weight: 1}}
	if _, err := where.Chair(context.Background(), d); !errors.Is(err, where.ErrSeats) {
		t.Errorf("the error is %v", err)
	}
	if _, err := where.Body(context.Background(), d); !errors.Is(err, where.ErrSeats) {
		t.Errorf("of the body it is %v", err)
	}
}

// TestStopped: the search ends with its context.
func TestStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := where.Chair(ctx, design.Default()); !errors.Is(err, context.Canceled) {
		t.Errorf("the error is %v", err)
	}
}
