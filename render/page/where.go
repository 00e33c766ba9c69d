package page

import (
	"errors"
	"math"
	"net/http"

	"pappus/layout/design"
	"pappus/render/words"
	"pappus/timing/where"

	"gonum.org/v1/gonum/spatial/r3"
)

// whereAsked asks for a better place.
type whereAsked struct {
	Text string `json:"text"`
	What string `json:"what"` // chair or body
}

// whereFound is a better place: what the design is to have for it, and what that brings.
type whereFound struct {
	Set   []change `json:"set"` // empty: there is none
	Words string   `json:"words"`
}

// where looks for the best place of the chair, or of the body.
func (p *Page) where(_ http.ResponseWriter, r *http.Request, in whereAsked) (any, error) {
	look := where.Chair
	if in.What == "body" {
		look = where.Body
	} else if in.What != "chair" {
		return nil, &failure{http.StatusBadRequest, "what: must be chair or body"}
	}
	made, done, err := p.workOn(r.Context(), in.Text)
	if err != nil {
		return nil, err
	}
	defer done()
	d := *made.design
	d.Timing.Model = made.array.Timing.Model // while the ball stands for the body, here too
	f, err := look(r.Context(), &d)
	switch {
	case errors.Is(err, where.ErrSeats):
		return nil, &failure{http.StatusBadRequest, err.Error()}
	case err != nil:
		return nil, err
	}
	out := whereFound{Set: []change{}, Words: words.BetterPlace(f, in.What)}
	if f.Better() {
		out.Set = moves(f.Before.Design, f.Best.Design)
	}
	return out, nil
}

// moves lists the keys in which two designs have chair or body at other places, as a file has them.
func moves(from, to *design.Design) []change {
	set := []change{}
	number := func(key string, was, now float64) {
		if math.Abs(now-was) > 1e-9 {
			set = append(set, change{key, math.Round(1000*now) / 1000})
		}
	}
	at := func(table string, was, now r3.Vec) {
		number(table+".x_m", was.X, now.X)
		number(table+".y_m", was.Y, now.Y)
	}
	if was, now := from.Room.Body, to.Room.Body; was != now {
		set = append(set, change{"room.body_at_m", []any{now.X, now.Y, now.Z}})
	}
	at("spot", from.Spot, to.Spot)
	if from.Woofer.Present {
		at("woofer", from.Woofer.At, to.Woofer.At)
	}
	number("placing.yaw_deg", from.Placing.YawDeg, to.Placing.YawDeg)
	return set
}
