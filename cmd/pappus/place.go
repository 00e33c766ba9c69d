package main

import (
	"fmt"
	"strings"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// planAt plans the design as a place hears it, which --at names; empty: the spot.
func (j *job) planAt(at string) (*timing.Plan, error) {
	a, err := load(j.design())
	if err != nil {
		return nil, err
	}
	there := layout.Seat{At: a.Spot}
	if at != "" {
		if there, err = place(a, at); err != nil {
			return nil, fmt.Errorf("--at %w", err)
		}
		if err := a.ReachSpot(there.At); err != nil {
			return nil, fmt.Errorf("--at %s: %w", prose.Path(at), err)
		}
	}
	p, err := j.make(j.Context(), j.progress, a)
	if err != nil || there.At == a.Spot {
		return p, err
	}
	return p.At(there.At)
}

// mostNamed is how many seats a message names.
const mostNamed = 8

// place reads a place in the room: a seat's name, else x,y,z in m.
func place(a *layout.Array, text string) (layout.Seat, error) {
	var names []string
	for _, s := range a.Seats {
		if strings.EqualFold(s.Name, text) {
			return s, nil
		}
		names = append(names, s.Name)
	}
	at, err := point(text)
	if err == nil || len(names) == 0 {
		return layout.Seat{At: at}, err
	}
	near := prose.DidYouMean(text, names)
	if len(names) > mostNamed {
		names = append(names[:mostNamed:mostNamed], "...")
	}
	return layout.Seat{}, fmt.Errorf("%w; or a seat: %s%s", err, strings.Join(names, ", "), near)
}

// point reads a place in the room, in m.
func point(text string) (r3.Vec, error) {
	var v r3.Vec
	var rest string
	if n, _ := fmt.Sscanf(text+" ", "%g,%g,%g%s", &v.X, &v.Y, &v.Z, &rest); n != 3 || !(r3.Norm(v) <= 200) {
		return v, fmt.Errorf("%q: must be x,y,z in metres, as 1.2,-0.4,0.6, with points for decimals and within 200 m", text)
	}
	return v, nil
}
