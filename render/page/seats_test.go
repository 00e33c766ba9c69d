package page

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pappus/layout/design"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
)

// twoSeats is small with two seats in the place of its spot, and a row of two.
var twoSeats = func() string {
	text, rest, _ := strings.Cut(small, "[spot]")
	_, after, _ := strings.Cut(rest, "[")
	return text + `[[seat]]
name = "near"
x_m = 2
y_m = 0
z_m = 1
weight = 2
[[seat]]
x_m = 2
y_m = 1
z_m = 1
[[area]]
name = "sofa"
shape = "line"
count = 2
weight = 1
from_m = [3, -1, 1]
to_m = [3, 1, 1]
[` + after
}()

func TestSeatsOfPlan(t *testing.T) {
	p, _ := newPage(t, twoSeats)
	out := ask[planAnswer](t, p, "/api/plan", asked{twoSeats})
	want := []listener{
		{"seat[1]", "near", triple{2, 0, 1}, 2}, {"seat[2]", "seat 2", triple{2, 1, 1}, 1},
		{"area[1]", "sofa 1", triple{3, -1, 1}, 0.5}, {"area[1]", "sofa 2", triple{3, 1, 1}, 0.5},
	}
	if d := cmp.Diff(want, out.Seats); d != "" || out.OwnSpot || out.Spot != (triple{2, 0, 1}) {
		t.Errorf("own spot %v, spot %v: %s", out.OwnSpot, out.Spot, d)
	}
	if alone := ask[planAnswer](t, p, "/api/plan", asked{small}); !alone.OwnSpot || len(alone.Seats) != 0 {
		t.Errorf("without seats: own spot %v, %v", alone.OwnSpot, alone.Seats)
	}
	if said := strings.Join(out.Sentences, " "); !strings.Contains(said, "One set of delays serves 4 seats") || strings.Contains(said, "No number of channels") {
		t.Errorf("it says %s", said)
	}
	both := twoSeats + "[spot]\nx_m = 1\ny_m = 1\nz_m = 1\n"
	if out := ask[planAnswer](t, p, "/api/plan", asked{both}); !out.OwnSpot || len(out.Seats) != 4 || out.Spot != (triple{1, 1, 1}) {
		t.Errorf("with a spot of its own: %v, %d seats, spot %v", out.OwnSpot, len(out.Seats), out.Spot)
	}
	ring := small + "[seats]\naim = \"round\"\n"
	if out := ask[planAnswer](t, p, "/api/plan", asked{ring}); !out.OwnSpot || len(out.Seats) != 12 || out.Seats[3].Key != "seats" {
		t.Errorf("all round: %v, %d seats", out.OwnSpot, len(out.Seats))
	}
}

// seatsAnswer is of an answer what it says of seats.
type seatsAnswer struct {
	Error, Fault string
	Spot         triple `json:"spot_m"`
	Place        struct{ Tape string }
	Seats        *seating
	Map          *strip `json:"-"`
}

// TestLiveSeats: a move has the places of all seats, and what each then loses; those of the
// design have what its plan has.
func TestLiveSeats(t *testing.T) {
	p, _ := newPage(t, twoSeats)
	plan := ask[planAnswer](t, p, "/api/plan", asked{twoSeats})
	conn := dial(t, serve(t, p))
	there := []triple{{2, 0, 1}, {2, 1, 1}, {3, -1, 1}, {3, 1, 1}}
	moved := func(seat int, to triple) []triple {
		out := slices.Clone(there)
		out[seat] = to
		return out
	}
	for i, c := range []struct {
		name string
		move move
		want func(a seatsAnswer) bool
	}{
		{"where they are", move{Seats: there}, func(a seatsAnswer) bool {
			return a.Spot == there[0] && cmp.Equal(a.Seats, seatingOf(plan.Plan.Seats, false))
		}},
		{"not said", move{}, func(a seatsAnswer) bool { return cmp.Equal(a.Seats, seatingOf(plan.Plan.Seats, false)) }},
		{"one moved", move{Seats: moved(1, triple{1, 2, 1})}, func(a seatsAnswer) bool {
			return a.Seats.Each[1].Planned != plan.Plan.Seats.Each[1].Planned && a.Seats.Each[1].Bound <= a.Seats.Each[1].Planned
		}},
		{"another becomes the middle", move{Seats: moved(0, triple{-3, 0, 1})}, func(a seatsAnswer) bool {
			return a.Spot == there[1] && a.Seats.Middle == "seat 2" && strings.Contains(a.Place.Tape, "1.00 m to the loudspeaker's left")
		}},
		{"with a map of the loss", move{Seats: there, View: "above", Quantity: "loss", Cells: 8}, func(a seatsAnswer) bool {
			loss := (*heat)(nil).put(*a.Map).values
			return len(loss) == 64 && slices.Max(loss) > 1 && slices.Min(loss) >= 0
		}},
		{"in the body", move{Seats: moved(1, triple{0, 0, 0.05})}, func(a seatsAnswer) bool { return a.Fault == `seat "seat 2" is inside the body` && a.Seats == nil }},
		{"too far", move{Seats: moved(1, triple{101, 0, 0})}, func(a seatsAnswer) bool { return strings.Contains(a.Error, "seats_m") }},
		{"too few", move{Seats: there[1:]}, func(a seatsAnswer) bool { return strings.Contains(a.Error, "as many") }},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.move.ID, c.move.Seq = plan.ID, int64(i+1)
			say(t, conn, c.move)
			ctx, stop := context.WithTimeout(t.Context(), 20*time.Second)
			defer stop()
			_, body, err := conn.Read(ctx)
			var got seatsAnswer
			if err = errors.Join(err, json.Unmarshal(body, &got)); err == nil && c.move.Cells > 0 {
				got.Map = hear(t, conn).Strip
			}
			if err != nil || !c.want(got) {
				t.Errorf("%v: %.1000s", err, body)
			}
		})
	}
}

// TestMostSeatsFit: the places of as many seats as there may be, to a micrometre, are one message.
func TestMostSeatsFit(t *testing.T) {
	far := triple{-99.123456, -99.123456, -99.123456}
	m, err := json.Marshal(move{Seq: 1 << 40, ID: strings.Repeat("0", 64), Spot: far, Seats: slices.Repeat([]triple{far}, design.MaxSeats), View: "above", Quantity: "summing_loss", Band: 12000, Cells: mostCells})
	if err != nil || len(m) > mostMessage*4/5 {
		t.Errorf("%d bytes, %v", len(m), err)
	}
}

// TestLiveSeatsAndASpot: where the spot is no seat it moves by itself, and the seats' plan stays.
func TestLiveSeatsAndASpot(t *testing.T) {
	text := twoSeats + "[spot]\nx_m = 1\ny_m = 1\nz_m = 1\n"
	p, _ := newPage(t, text)
	plan := ask[planAnswer](t, p, "/api/plan", asked{text})
	s := &session{plans: p.plans}
	a, at := s.answer(move{ID: plan.ID, Spot: triple{1.5, 0, 1}})
	if at == nil || a.At != (triple{1.5, 0, 1}) || !cmp.Equal(a.Seats, seatingOf(plan.Plan.Seats, false)) {
		t.Errorf("%+v", a)
	}
}

// TestManySeatsAreShort: the figures of as many seats as there may be are under 20 KB while one is dragged.
func TestManySeatsAreShort(t *testing.T) {
	text, _, _ := strings.Cut(small, "[spot]")
	for i := range design.MaxSeats {
		text += fmt.Sprintf("[[seat]]\nname = \"the seat no. %d of all\"\nx_m = %g\ny_m = %g\nz_m = 1\n", i+1, 1.5+0.5*float64(i/8), 0.5*float64(i%8)-1.75)
	}
	made, _ := newPage(t, small)
	d, err := made.plans.make(t.Context(), "x", small)
	if err != nil {
		t.Fatal(err)
	}
	many, err := design.Parse("x", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	array := *d.array
	planner, err := timing.NewPlanner(&array)
	if err != nil {
		t.Fatal(err)
	}
	spot, err := planner.Seats(many.AllSeats()[0].At, many.AllSeats())
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := encode(&b, moved{figures: figuresOf(spot, move{Cells: dragCells, Phase: true})}); err != nil || b.Len() > 20<<10 {
		t.Errorf("%d bytes, %v", b.Len(), err)
	}
}

// TestRoughPlan: with seats there is at once a plan that serves them about as well, which can be
// moved about in; once there is a whole one, that is given. Of a chair a plan is never rough.
func TestRoughPlan(t *testing.T) {
	text := twoSeats + "[spot]\nx_m = 1\ny_m = 1\nz_m = 1\n"
	p, _ := newPage(t, text)
	rough := ask[planAnswer](t, p, "/api/plan", planAsked{text, true})
	if !rough.Rough || len(rough.Plan.Seats.Each) != 4 {
		t.Fatalf("rough: %v, %+v", rough.Rough, rough.Plan.Seats)
	}
	s := &session{plans: p.plans}
	a, spot := s.answer(move{ID: rough.ID, Spot: triple{1.5, 0, 1}})
	if spot == nil || !cmp.Equal(a.Seats, seatingOf(rough.Plan.Seats, false)) {
		t.Errorf("another chair, and the seats are served otherwise: %+v", a)
	}
	whole := ask[planAnswer](t, p, "/api/plan", planAsked{text, false})
	if whole.Rough || whole.ID == rough.ID {
		t.Errorf("whole: %v, %s", whole.Rough, whole.ID)
	}
	if again := ask[planAnswer](t, p, "/api/plan", planAsked{text, true}); again.ID != whole.ID {
		t.Error("a rough plan is given where there is a whole one")
	}
	p, _ = newPage(t, small)
	if one := ask[planAnswer](t, p, "/api/plan", planAsked{small, true}); one.Rough || one.ID != hashOf([]byte(small)) {
		t.Errorf("of a chair it is rough: %v", one.Rough)
	}
}
