package page

import (
	"net/http"

	"pappus/layout"
	"pappus/render/document"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// asked is a request that has a design alone.
type asked struct {
	Text string `json:"text"`
}

// planAsked is a design that is to be planned.
type planAsked struct {
	Text  string `json:"text"`
	Rough bool   `json:"rough"` // what is found at once for seats will do
}

// planAnswer is a design and everything that was worked out for it.
type planAnswer struct {
	ID     string         `json:"id"`
	Rough  bool           `json:"rough"` // its channels for seats were found at once: ask again for the best
	Name   string         `json:"name"`
	Text   string         `json:"text"`
	Values map[string]any `json:"values" ts:"Record<string, Value>"` // of every key
	Given  []string       `json:"given"`                             // keys that the text has

	Plan       document.Plan       `json:"plan"` // without a survey
	Processor  []document.Setting  `json:"processor"`
	Counts     []document.Count    `json:"counts"`
	Protection document.Protection `json:"protection"`
	Signs      string              `json:"signs"`
	Rounding   document.Rounding   `json:"rounding"`
	Wiring     []document.Bank     `json:"wiring"`

	Findings []shownFinding  `json:"findings"`      // what to know first, worst first, at most seven
	More     int             `json:"more_findings"` // how many more there are
	Place    place           `json:"place"`
	Upright  *document.Polar `json:"upright,omitempty"` // over the top, where the aim is all round
	Seats    []listener      `json:"seats"`             // where people sit, those of areas last; none: the spot alone
	OwnSpot  bool            `json:"own_spot"`          // the spot is a place of its own; else it is the middle seat
	Rule     string          `json:"front_rule"`        // by which rule strings are chosen, in words; empty where there is no choice

	Model     model     `json:"model"`
	Kit       string    `json:"kit"` // names the printed parts: the same for designs whose parts are the same
	Solid     solid     `json:"solid"`
	Others    []solid   `json:"others,omitempty"` // the other bodies, where there are several
	Drivers   []mounted `json:"drivers"`
	Empty     []mounted `json:"empty"`     // places of the first body that are left empty
	Sentences []string  `json:"sentences"` // what was found, in words
	Spot      triple    `json:"spot_m"`
	Floor     *number   `json:"floor_m"`   // null: nothing below
	Ceiling   *number   `json:"ceiling_m"` // null: nothing above
	Wall      *number   `json:"wall_m"`    // how far forward the wall behind is; null: none
	Room      *roomBox  `json:"room"`
	Slice     sliceSize `json:"slice"`
}

// listener is a seat in the room.
type listener struct {
	Key    string `json:"key"` // its table: seat[2], or area[1] of which it is one; seats: all round at the spot's distance
	Name   string `json:"name"`
	At     triple `json:"at_m"`
	Weight number `json:"weight"`
}

// model is how the body is heard, and how else it may be.
type model struct {
	Waits bool   `json:"waits"` // the ball stands for the body until its field is solved for, by /api/solve
	Words string `json:"words"` // how it is heard, in a sentence; empty: there is nothing to say
	Other string `json:"other"` // the model that one press takes in its place; empty: there is none
	Press string `json:"press"` // what is on the button for that
}

// modelOf returns that of a plan: of a body that a ball stands for, and of one that is heard as it is.
func modelOf(made *planned) model {
	body, plan := made.array.Body, made.plan
	if body.IsBall() && !body.IsCut {
		return model{}
	}
	switch made.design.Timing.Model {
	case radiate.SphereModel:
		return model{Words: words.HeardAs(plan, false), Other: radiate.BodyModel, Press: words.HearBody}
	case radiate.BodyModel:
		out := model{Waits: made.body != nil, Words: words.HeardAs(plan, made.body != nil), Other: radiate.SphereModel, Press: words.HearBall}
		if out.Waits {
			out.Press = words.StayBall
		}
		return out
	}
	return model{}
}

// mounted is where a driver is in the room.
type mounted struct {
	ID     int    `json:"id"`
	At     triple `json:"at_mm"`
	Normal triple `json:"normal"`
	Cone   number `json:"cone_mm"`   // across
	Flange number `json:"flange_mm"` // across
	Body   int    `json:"body"`      // which of the bodies it is on, from 0
}

// roomBox is a room by its corners.
type roomBox struct {
	Low  triple `json:"low_m"`
	High triple `json:"high_m"`
}

// sliceSize is half as wide as the map is, and how high its view from the side begins.
type sliceSize struct {
	HalfWidth number `json:"half_width_m"`
	Bottom    number `json:"bottom_m"`
}

func sliceOf(p *timing.Plan) sliceSize {
	s := timing.VerticalSlice(&p.Spot)
	return sliceSize{document.To(6, p.Array.Coverage.HalfWidth), document.To(6, s.Origin.Z-s.Step/2)}
}

type (
	number = document.Number
	triple = document.Triple
)

func (p *Page) plan(_ http.ResponseWriter, r *http.Request, in planAsked) (any, error) {
	made, err := p.plans.either(r.Context(), in.Text, in.Rough, p.work)
	if err != nil {
		return nil, p.cured(err, in.Text)
	}
	return answerOf(made)
}

// answerOf puts a plan together for the page.
func answerOf(made *planned) (*planAnswer, error) {
	a, plan := made.array, made.plan
	rows, err := timing.Processor(plan, nil)
	if err != nil {
		return nil, err
	}
	channels, err := document.OfChannels(plan, rows)
	if err != nil {
		return nil, err
	}
	out := &planAnswer{
		ID: made.id, Rough: made.rough, Name: a.Name, Text: made.text, Values: made.design.Values(), Given: made.given,
		Plan: document.OfPlan(plan, nil), Processor: channels.Processor, Counts: channels.Counts, Protection: channels.Protection,
		Signs: channels.Signs, Rounding: channels.Rounding, Wiring: document.OfWiring(plan, nil).Channels,
		Place: placeOf(a, a.Spot), Rule: words.Front(plan), Sentences: words.Sentences(plan),
		Spot: document.TripleOf(6, 1, a.Spot), Slice: sliceOf(plan),
	}
	out.Findings, out.More = findings(plan.Warnings)
	out.Drivers, out.Empty = mountedOf(a, a.Mounts), mountedOf(a, a.Empty)
	solids := solidsOf(a)
	out.Solid, out.Others = solids[0], solids[1:]
	if plan.Seating != nil && plan.Seating.Round != nil {
		upright := document.OfPolar(plan.Vertical)
		out.Upright = &upright
	}
	out.surround(a)
	out.Seats, out.OwnSpot = seated(made), made.ownSpot
	out.Model, out.Kit = modelOf(made), kitName(made)
	return out, nil
}

// mountedOf returns where some mounts are in the room.
func mountedOf(a *layout.Array, mounts []layout.Mount) []mounted {
	out := make([]mounted, len(mounts))
	for i, m := range mounts {
		out[i] = mounted{m.ID, document.TripleOf(3, 1000, a.PlaceOf(m)), document.TripleOf(6, 1, a.PlacingOf(m).Out(m.Normal)),
			document.To(3, 2000*a.Driver.ConeRadius), document.To(3, 2000*a.Driver.FlangeRadius), m.Body}
	}
	return out
}

// surround fills in what is below and above the body and behind it.
func (out *planAnswer) surround(a *layout.Array) {
	if a.Room.Present {
		low := r3.Scale(-1, a.Room.Body)
		box := roomBox{document.TripleOf(6, 1, low), document.TripleOf(6, 1, r3.Add(low, a.Room.Size))}
		floor, ceiling, wall := number(box.Low[2]), number(box.High[2]), number(box.Low[0])
		out.Room, out.Floor, out.Ceiling, out.Wall = &box, &floor, &ceiling, &wall
		return
	}
	if !a.Surface.Present {
		return
	}
	at := document.To(6, a.Surface.Height)
	switch a.Surface.On {
	case layout.OnCeiling:
		out.Ceiling = &at
	case layout.OnWall:
		out.Wall = &at
	default:
		out.Floor = &at
	}
}

// seated returns a design's seats.
func seated(made *planned) []listener {
	seats, all := []listener{}, made.design.Listeners()
	for i, l := range all[len(all)-len(made.array.Seats):] {
		s := made.array.Seats[i]
		seats = append(seats, listener{l.Key, s.Name, document.TripleOf(6, 1, s.At), document.To(3, s.Weight)})
	}
	return seats
}

// survey looks round the whole room.
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
	return document.OfSurvey(survey), nil
}
