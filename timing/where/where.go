package where

import (
	"context"
	"errors"
	"math"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/cores"

	"gonum.org/v1/gonum/spatial/r3"
)

// How far the chair may go, over its distance as it is: a third is about what people move a chair
// by without another arrangement of the room (a choice; the page lets go further by hand).
const Nearest, Furthest = 0.75, 1.33

// ClearOfWalls is how far in m chairs and bodies keep off walls: room to walk past (common practice).
const ClearOfWalls = 0.5

// ErrSeats is that there is no one chair, or no one body, to be put anywhere.
var ErrSeats = errors.New("seats have places of their own")

// Place is a design's chair at one place, and its body at another.
type Place struct {
	Design *design.Design
	Spot   *timing.Spot
}

// Worth returns what a place is worth in dB, less being better.
func (p Place) Worth() float64 { return p.Spot.Aligned.Loss + p.Spot.Ripple }

// Found is a better place, and what there was; they are one where none was found.
type Found struct{ Before, Best Place }

// Better tells whether the best is another place, by more than anybody hears.
func (f Found) Better() bool { return f.Before.Worth()-f.Best.Worth() > hardly }

// hardly is a difference in dB that no ear tells: a tenth of that of a level that is just heard
// (1 dB; Zwicker and Fastl, Psychoacoustics, 7.1, for noise).
const hardly = 0.1

// Chair looks for the best place of the chair at its height: on a fan before the body from the
// chair's own distance and direction, and round the best of that ever more finely. Errors are
// those of layout.Build and timing, ErrSeats, and that of ctx.
func Chair(ctx context.Context, d *design.Design) (Found, error) {
	if len(d.AllSeats()) > 0 {
		return Found{}, ErrSeats
	}
	flat, height := r3.Vec{X: d.Spot.X, Y: d.Spot.Y}, d.Spot.Z
	far, towards := r3.Norm(flat), math.Atan2(d.Spot.Y, d.Spot.X)
	put := func(at [2]float64) *design.Design {
		sin, cos := math.Sincos(towards + at[1])
		out := *d
		out.Spot = r3.Vec{X: tidy(at[0] * cos), Y: tidy(at[0] * sin), Z: height}
		return &out
	}
	s := search{ctx: ctx, put: put, low: [2]float64{Nearest * far, -math.Pi / 3}, high: [2]float64{Furthest * far, math.Pi / 3}, steps: [2]int{6, 24}}
	return s.from([2]float64{far, 0}, d)
}

// Body looks for the best place of the body: how it is turned, and in a room first where it
// stands at its height, while the chair stays. Errors are as of Chair.
func Body(ctx context.Context, d *design.Design) (Found, error) {
	if len(d.AllSeats()) > 0 || len(d.Copies) > 0 {
		return Found{}, ErrSeats
	}
	stood := Found{Best: Place{Design: d}}
	if d.Room.Present {
		var err error
		if stood, err = stand(ctx, d); err != nil {
			return stood, err
		}
	}
	now := stood.Best.Design
	put := func(at [2]float64) *design.Design {
		out := *now
		out.Placing.YawDeg = math.Round(at[0])
		return &out
	}
	s := search{ctx: ctx, put: put, low: [2]float64{-180, 0}, high: [2]float64{180, 0}, steps: [2]int{72, 0}}
	turned, err := s.from([2]float64{now.Placing.YawDeg, 0}, now)
	if d.Room.Present {
		turned.Before = stood.Before
	}
	return turned, err
}

// stand looks for the best place of the body in its room.
func stand(ctx context.Context, d *design.Design) (Found, error) {
	least := r3.Norm(r3.Vec{X: d.Spot.X, Y: d.Spot.Y})
	put := func(at [2]float64) *design.Design {
		out := *d
		out.Room.Body.X, out.Room.Body.Y = tidy(at[0]), tidy(at[1])
		by := r3.Sub(d.Room.Body, out.Room.Body)
		out.Spot = r3.Add(d.Spot, by)
		out.Spot = r3.Vec{X: tidy(out.Spot.X), Y: tidy(out.Spot.Y), Z: out.Spot.Z}
		if out.Woofer.Present {
			out.Woofer.At = r3.Add(d.Woofer.At, by)
		}
		if far := math.Hypot(out.Spot.X, out.Spot.Y); far < Nearest*least || far > Furthest*least {
			return nil
		}
		return &out
	}
	off := d.Body.Radius + ClearOfWalls
	s := search{ctx: ctx, put: put, low: [2]float64{off, off}, high: [2]float64{d.Room.Size.X - off, d.Room.Size.Y - off}, steps: [2]int{12, 12}}
	return s.from([2]float64{d.Room.Body.X, d.Room.Body.Y}, d)
}

// tidy is a length in m as it is written, to a centimetre: nobody sets a chair finer.
func tidy(m float64) float64 { return math.Round(100*m) / 100 }

// search looks for the least worth over two numbers: on a grid, and then round its best with steps
// that become finer.
type search struct {
	ctx       context.Context
	put       func(at [2]float64) *design.Design // nil: it cannot be there
	low, high [2]float64
	steps     [2]int // of the grid
}

// rounds is how often the steps of a search are halved: from a grid of 20 cm to 3 cm.
const rounds = 3

// from searches, beginning with the place that there is.
func (s search) from(at [2]float64, d *design.Design) (Found, error) {
	before, err := hear(d)
	if err != nil {
		return Found{}, err
	}
	found, best := Found{Before: before, Best: before}, at
	step := [2]float64{}
	var grid [][2]float64
	for i := range s.steps {
		step[i] = (s.high[i] - s.low[i]) / float64(max(s.steps[i], 1))
	}
	for i := range s.steps[0] + 1 {
		for j := range s.steps[1] + 1 {
			grid = append(grid, [2]float64{s.low[0] + float64(i)*step[0], s.low[1] + float64(j)*step[1]})
		}
	}
	s.best(grid, &best, &found.Best)
	for range rounds {
		step[0], step[1] = step[0]/2, step[1]/2
		var near [][2]float64
		for _, by := range [][2]float64{{-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {-1, 1}, {1, -1}, {1, 1}} {
			near = append(near, [2]float64{best[0] + by[0]*step[0], best[1] + by[1]*step[1]})
		}
		s.best(near, &best, &found.Best)
	}
	return found, s.ctx.Err()
}

// best takes the best of some places, if it is better; of equal ones the first.
func (s search) best(places [][2]float64, at *[2]float64, best *Place) {
	heard := make([]Place, len(places))
	cores.Each(len(places), func(_, i int) {
		for k, v := range places[i] {
			if v < s.low[k] || v > s.high[k] || s.ctx.Err() != nil {
				return
			}
		}
		if d := s.put(places[i]); d != nil {
			if p, err := hear(d); err == nil && clear(p) {
				heard[i] = p
			}
		}
	})
	for i, p := range heard {
		if p.Spot != nil && p.Worth() < best.Worth() {
			*at, *best = places[i], p
		}
	}
}

// clear tells whether the chair keeps off the walls of a room.
func clear(p Place) bool {
	a := p.Spot.Array
	if !a.Room.Present {
		return true
	}
	at, size := r3.Add(a.Spot, a.Room.Body), a.Room.Size
	return min(at.X, at.Y, size.X-at.X, size.Y-at.Y) >= ClearOfWalls
}

// hear plans a design for its chair.
func hear(d *design.Design) (Place, error) {
	a, err := layout.Build(d)
	if err != nil {
		return Place{}, err
	}
	planner, err := timing.NewPlanner(a)
	if err != nil {
		return Place{}, err
	}
	spot, err := planner.Spot(a.Spot)
	return Place{d, spot}, err
}
