package page

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// TestTurned: what is tried is in the figures, with what the plan's own delays give beside it, and
// in the map; a figure that cannot be is said.
func TestTurned(t *testing.T) {
	p, _ := newPage(t, small)
	server := serve(t, p)
	plan := ask[planAnswer](t, p, "/api/plan", asked{small})
	conn := dial(t, server)
	m := move{Seq: 1, ID: plan.ID, Spot: plan.Spot, View: "above", Quantity: "comb_onset", Cells: 12}
	as := answered(t, conn, m)
	if as.AsPlanned != nil {
		t.Error("nothing is tried, and yet there is something beside it")
	}
	channel := plan.Plan.Channels[0].ID
	m.Seq, m.Turned = 2, []turned{{Channel: channel, Late: 700}}
	late := answered(t, conn, m)
	if late.AsPlanned == nil || !cmp.Equal(late.AsPlanned.Measures, as.Measures) || !cmp.Equal(late.AsPlanned.Aligned, as.Levels["aligned_db"]) {
		t.Fatalf("beside it stands %+v, not what is planned", late.AsPlanned)
	}
	if was, is := *as.Measures["aligned"]["smear_us"], *late.Measures["aligned"]["smear_us"]; is < was+50 {
		t.Errorf("a delay off by 0.7 ms makes a smear of %v us of %v us", is, was)
	}
	if d := late.Channels[0].Delay - as.Channels[0].Delay - 700; math.Abs(d) > 0.01 {
		t.Errorf("the delay is off by %g us more than was asked for", d)
	}
	if slices.EqualFunc(as.Map.values, late.Map.values, func(a, b float64) bool { return a == b || a != a && b != b }) {
		t.Error("the map is as planned")
	}
	m.Seq, m.Turned[0].Late = 3, 2e4
	if bad := answered(t, conn, m); !strings.Contains(bad.Error, "late_us must be from -10000 to 10000") {
		t.Errorf("it says %q", bad.Error)
	}
}

// TestDelaysOfMap: a map in which each place has its own delays is as good as the chair's at the
// chair, and better elsewhere; the next one, of another chair, is the same. With seats, the
// chair's own delays are others than those of the seats.
func TestDelaysOfMap(t *testing.T) {
	for name, text := range map[string]string{"chair": small, "seats": twoSeats} {
		p, _ := newPage(t, text)
		server := serve(t, p)
		plan := ask[planAnswer](t, p, "/api/plan", asked{text})
		conn := dial(t, server)
		m := move{Seq: 1, ID: plan.ID, Spot: plan.Spot, View: "above", Quantity: "smear", Cells: 40}
		shared := answered(t, conn, m)
		m.Seq, m.Delays = 2, "own"
		own := answered(t, conn, m)
		if got, want := mean(own.Map.values), mean(shared.Map.values); !(got < want/1.2) {
			t.Errorf("%s: each place with its own delays has a smear of %g us, with shared ones %g us", name, got, want)
		}
		if !cmp.Equal(own.Measures, shared.Measures) {
			t.Errorf("%s: the figures are of others than the plan's delays", name)
		}
		m.Seq, m.Delays = 3, "chair"
		alone := answered(t, conn, m)
		same := slices.EqualFunc(alone.Map.values, shared.Map.values, func(a, b float64) bool { return a == b || a != a && b != b })
		if want := name == "chair"; same != want {
			t.Errorf("%s: the chair's own delays give the same map: %v", name, same)
		}
		m.Seq, m.Delays = 4, "mine"
		if bad := answered(t, conn, m); !strings.Contains(bad.Error, "delays: must be chair, own or nothing") {
			t.Errorf("it says %q", bad.Error)
		}
	}
}

func mean(values []float64) float64 {
	sum, n := 0.0, 0.0
	for _, v := range values {
		if v == v {
			sum, n = sum+v, n+1
		}
	}
	return sum / n
}

// TestPaceWithin: a map with own delays has as many cells as its time allows, those of the
// coarsest at the least.
func TestPaceWithin(t *testing.T) {
	for _, test := range []struct {
		name string
		cell float64 // ms
		want int
	}{{"quick", 0.1, 96}, {"demo", 1, 63}, {"a thousand drivers", 5.4, 27}, {"slow", 100, 12}} {
		p := pace{cell: time.Duration(test.cell * 1e6)}
		if got := p.within(ownTime, 96, 96); got != test.want {
			t.Errorf("%s: %d cells, want %d", test.name, got, test.want)
		}
	}
}
