package page

import (
	"bytes"
	"encoding/json"
	"math"
	"net/http"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/planjson"
	"pappus/render/words"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// asked is a request that has a design alone.
type asked struct {
	Text string `json:"text"`
}

// planAnswer is what the page shows of a design.
type planAnswer struct {
	ID     string         `json:"id"`
	Name   string         `json:"name"`
	Text   string         `json:"text"`
	Values map[string]any `json:"values"`
	Given  []string       `json:"given"`

	Plan       map[string]json.RawMessage `json:"plan"`
	Processor  json.RawMessage            `json:"processor"`
	Counts     json.RawMessage            `json:"counts"`
	Protection json.RawMessage            `json:"protection"`
	Signs      json.RawMessage            `json:"signs"`
	Rounding   rounding                   `json:"rounding"`

	Wiring   json.RawMessage `json:"wiring"`
	Findings []finding       `json:"findings"`
	More     int             `json:"more_findings"`
	Place    place           `json:"place"`
	Rule     string          `json:"front_rule"`

	Solid     solid       `json:"solid"`
	Drivers   []driverRow `json:"drivers"`
	Sentences []string    `json:"sentences"`
	Spot      triple      `json:"spot_m"`
	Floor     *float64    `json:"floor_m"`
	Room      *roomBox    `json:"room"`
	Slice     sliceSize   `json:"slice"`
}

// rounding is what the processor's step makes of the delays at the spot.
type rounding struct {
	Step float64    `json:"step_us"`
	Band []float64  `json:"octave_hz"`
	Loss []*float64 `json:"loss_db"` // null from half the processor's rate on
}

// roundingOf returns what the step makes of a plan's delays.
func roundingOf(p *timing.Plan) rounding {
	cost := p.Rounding
	out := rounding{Step: rounded(1e6*p.Array.Processor.Step, 9), Loss: make([]*float64, len(cost.Loss))}
	for i, centre := range cost.Band {
		out.Band = append(out.Band, rounded(centre, 1))
		if loss := rounded(cost.Loss[i], 3); !math.IsNaN(loss) {
			out.Loss[i] = &loss
		}
	}
	return out
}

type driverRow struct {
	ID     int     `json:"id"`
	At     triple  `json:"at_mm"`
	Normal triple  `json:"normal"`
	Cone   float64 `json:"cone_mm"`
	Flange float64 `json:"flange_mm"`
}

type roomBox struct {
	Low  triple `json:"low_m"`
	High triple `json:"high_m"`
}

type sliceSize struct {
	HalfWidth float64 `json:"half_width_m"`
}

// triple is a vector in JSON.
type triple [3]float64

// tripled writes a vector, scaled, to a thousandth of the unit at least.
func tripled(v r3.Vec, scale float64, places int) triple {
	return triple{rounded(scale*v.X, places), rounded(scale*v.Y, places), rounded(scale*v.Z, places)}
}

func rounded(v float64, places int) float64 {
	unit := math.Pow(10, float64(places))
	return math.Round(v*unit)/unit + 0 // no zero is negative
}

func (p *Page) plan(_ http.ResponseWriter, r *http.Request, in asked) (any, error) {
	made, err := p.plans.of(r.Context(), in.Text, p.work)
	if err != nil {
		return nil, p.cured(err, in.Text)
	}
	return answerOf(made)
}

// answerOf puts a plan together for the page.
func answerOf(made *planned) (*planAnswer, error) {
	a, plan := made.array, made.plan
	out := &planAnswer{
		ID: made.id, Name: a.Name, Text: made.text, Values: made.design.Values(), Given: design.Given([]byte(strings.TrimPrefix(made.text, "\ufeff"))),
		Solid: solidOf(a.Body), Sentences: words.Sentences(plan), Spot: tripled(a.Spot, 1, 6),
		Slice: sliceSize{rounded(a.Coverage.HalfWidth, 6)},
	}
	var err error
	if out.Plan, err = documentOf(func(w *bytes.Buffer) error { return planjson.Write(w, plan, &timing.Survey{}) }); err != nil {
		return nil, err
	}
	for _, key := range surveyKeys {
		delete(out.Plan, key)
	}
	rows, err := timing.Processor(plan, nil)
	if err != nil {
		return nil, err
	}
	channels, err := documentOf(func(w *bytes.Buffer) error { return planjson.WriteChannels(w, plan, rows) })
	if err != nil {
		return nil, err
	}
	wiring, err := documentOf(func(w *bytes.Buffer) error { return planjson.WriteWiring(w, plan, nil) })
	if err != nil {
		return nil, err
	}
	out.Wiring, out.Place = wiring["channels"], placeOf(a, a.Spot)
	out.Findings, out.More = findings(plan.Warnings)
	out.Rule = words.Front(plan)
	out.Processor, out.Counts, out.Protection, out.Signs = channels["processor"], channels["counts"], channels["protection"], channels["signs"]
	out.Rounding = roundingOf(plan)
	for _, m := range a.Mounts {
		out.Drivers = append(out.Drivers, driverRow{m.ID, tripled(m.Point, 1000, 3), tripled(m.Normal, 1, 6),
			rounded(2000*a.Driver.ConeRadius, 3), rounded(2000*a.Driver.FlangeRadius, 3)})
	}
	out.Floor, out.Room = surroundings(a)
	return out, nil
}

// documentOf takes a document apart that a package writes.
func documentOf(write func(*bytes.Buffer) error) (map[string]json.RawMessage, error) {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return nil, err
	}
	var out map[string]json.RawMessage
	return out, json.Unmarshal(b.Bytes(), &out)
}

// surroundings returns the height in m of what is below the body, and the room.
func surroundings(a *layout.Array) (floor *float64, room *roomBox) {
	switch {
	case a.Room.Present:
		low := r3.Scale(-1, a.Room.Body)
		room = &roomBox{tripled(low, 1, 6), tripled(r3.Add(low, a.Room.Size), 1, 6)}
		z := room.Low[2]
		return &z, room
	case a.Surface.Present:
		z := rounded(a.Surface.Height, 6)
		return &z, nil
	}
	return nil, nil
}

// surveyKeys are those of plan.json that come from a survey of the room.
var surveyKeys = []string{"octaves", "in_step_area_m2"}

func (p *Page) survey(_ http.ResponseWriter, r *http.Request, in asked) (any, error) {
	made, done, err := p.workOn(r.Context(), in.Text)
	if err != nil {
		return nil, err
	}
	defer done()
	survey, err := timing.Look(made.plan)
	if err != nil {
		return nil, err
	}
	whole, err := documentOf(func(w *bytes.Buffer) error { return planjson.Write(w, made.plan, survey) })
	if err != nil {
		return nil, err
	}
	out := map[string]json.RawMessage{}
	for _, key := range surveyKeys {
		out[key] = whole[key]
	}
	return out, nil
}
