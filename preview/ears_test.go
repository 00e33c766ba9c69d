package preview

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/preview/programme"
	"pappus/timing"
	"pappus/timing/head"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

// lantern plans the built-in design, changed by a test.
func lantern(t testing.TB, change func(*layout.Array)) *timing.Spot {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	change(a)
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	return &p.Spot
}

func same(*layout.Array) {}

func response(t testing.TB, p *timing.Spot, who Listener, c timing.Case) Response {
	t.Helper()
	r, err := who.Responses(p, []timing.Case{c}, rate)
	if err != nil {
		t.Fatal(err)
	}
	return r[0]
}

// Between the frequencies of the transform the responses of both ears must be
// those of the model, to -80 dB of their greatest, up to 18 kHz.
func TestEarsBetweenFrequencies(t *testing.T) {
	p := lantern(t, same)
	for _, who := range []Listener{{TwoEars: true}, {TwoEars: true, TurnDeg: 70, Dry: true}, {Dry: true, At: &r3.Vec{X: 1, Y: -1, Z: 0.4}}} {
		r := response(t, p, who, timing.Aligned)
		if !who.TwoEars {
			r.Right = r.Left
		}
		var frequency []float64
		for f := 63.3; f < 18000; f *= 1.031 {
			frequency = append(frequency, f)
		}
		place := who.place(p)
		h, err := newHearer(p, who, timing.Listening{Cases: []timing.Case{timing.Aligned}, Dry: who.Dry}, []r3.Vec{place}, frequency)
		if err != nil {
			t.Fatal(err)
		}
		h.hear(place)
		left, right := h.left[0], h.right[0]
		first, _ := p.Span(timing.Aligned, who.Dry, place)
		most, worst := 0.0, 0.0
		for i, f := range frequency {
			move := turn(f, first-who.lead(p))
			most = max(most, cmplx.Abs(left[i]), cmplx.Abs(right[i]))
			worst = max(worst, cmplx.Abs(at(r.Left, rate, f)-left[i]*move), cmplx.Abs(at(r.Right, rate, f)-right[i]*move))
		}
		if db := 20 * math.Log10(worst/most); db > -80 {
			t.Errorf("%+v: %.1f dB off", who, db)
		}
	}
}

// The ear that is turned to a point hears it sooner, by Woodworth's path round the
// head: (a/c) times the cosine for the ear that the sound reaches straight, and the
// arc beyond 90 degrees for the other (R. S. Woodworth and G. Schlosberg, Experimental
// Psychology, 1954). Both onsets are taken where a tenth of the peak is reached, at
// a sample each, 21 us: the wave that creeps rises slowly and so seems up to 70 us
// later, never sooner.
func TestTurnedHead(t *testing.T) {
	p := lantern(t, same)
	for _, turn := range []float64{-80, -30, 0, 30, 60, 90} {
		r := response(t, p, Listener{TwoEars: true, TurnDeg: turn, Dry: true, At: &r3.Vec{X: 3}}, timing.IdealPoint)
		onset := func(h []float64) float64 {
			peak := 0.0
			for _, v := range h {
				peak = max(peak, math.Abs(v))
			}
			for i, v := range h {
				if math.Abs(v) > peak/10 {
					return float64(i) / rate
				}
			}
			return math.NaN()
		}
		way := func(angle float64) float64 { // in head radii, against that to the centre
			if angle = math.Acos(math.Cos(angle)); angle <= math.Pi/2 {
				return -math.Cos(angle)
			}
			return angle - math.Pi/2
		}
		// To the left of a head turned to the left the body lies to the right.
		turned := turn * math.Pi / 180
		want := head.Radius / p.SpeedOfSound * (way(head.EarAngle+turned) - way(head.EarAngle-turned))
		have := onset(r.Left) - onset(r.Right)
		if more := (have - want) * math.Copysign(1, want); more < -25e-6 || more > 70e-6 {
			t.Errorf("%g degrees: left later by %.0f us, want %.0f", turn, 1e6*have, 1e6*want)
		}
	}
}

// TestFacingSeveralBodies: who sits between two bodies, left and right, faces neither but the
// middle of both.
func TestFacingSeveralBodies(t *testing.T) {
	a := &layout.Array{}
	place := r3.Vec{X: 2, Y: 1}
	for _, test := range []struct {
		name string
		at   []layout.Placing
		want float64 // degrees from straight back to the front
	}{
		{"as designed", nil, math.Atan2(1, 2) * 180 / math.Pi},
		{"one", []layout.Placing{{}}, math.Atan2(1, 2) * 180 / math.Pi},
		{"left and right", []layout.Placing{{}, {At: r3.Vec{Y: 2}}}, 0},
		{"behind each other", []layout.Placing{{}, {At: r3.Vec{X: -2}}}, math.Atan2(1, 3) * 180 / math.Pi},
	} {
		a.Placings = test.at
		nose := Listener{}.nose(r3.Sub(place, middle(a)))
		if got := math.Atan2(-nose.Y, -nose.X) * 180 / math.Pi; math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%s: %.3f degrees, want %.3f", test.name, got, test.want)
		}
	}
}

func TestListenerInsideTheBody(t *testing.T) {
	p := lantern(t, same)
	who := Listener{At: &r3.Vec{X: 0.01}}
	for _, two := range []bool{false, true} {
		who.TwoEars = two
		if _, err := who.Responses(p, []timing.Case{timing.AsBuilt}, rate); !errors.Is(err, layout.ErrInside) {
			t.Errorf("error %v", err)
		}
	}
	loop := programme.Pink(rate)
	if _, err := NewSet(t.Context(), p, who, Cases, func() beep.Streamer { return beep.Take(rate, loop.Streamer()) }, rate); !errors.Is(err, layout.ErrInside) {
		t.Errorf("set: error %v", err)
	}
}

// sixty is a dome of 60 drivers on a table.
func sixty(b testing.TB) *timing.Spot {
	d := design.Default()
	d.Body.Shape, d.Mounts.On, d.Mounts.Count, d.Mounts.Over, d.Mounts.Skip = "ball", "even", 60, "dome", nil
	d.Body.Radius, d.Body.Base, d.Body.Subdivision = 0.22, "", 0
	a, err := layout.Build(d)
	if err != nil {
		b.Fatal(err)
	}
	if len(a.Mounts) != 60 {
		b.Fatalf("%d drivers", len(a.Mounts))
	}
	p, err := timing.Make(context.Background(), a)
	if err != nil {
		b.Fatal(err)
	}
	return &p.Spot
}

// A dome of 60 drivers heard with two ears, a second at a time; run it with
// GOMAXPROCS=1 for one core.
func BenchmarkTwoEars(b *testing.B) {
	p := sixty(b)
	r := response(b, p, Listener{TwoEars: true}, timing.Aligned)
	s := r.Through(programme.Pink(rate).Streamer())
	buffer := make([][2]float64, 512)
	b.ReportAllocs()
	for b.Loop() {
		for left := rate; left > 0; left -= len(buffer) {
			s.Stream(buffer)
		}
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "x_real_time")
}

// What both ears hear of such a dome, computed once.
func BenchmarkResponse(b *testing.B) {
	p := sixty(b)
	b.ReportAllocs()
	for b.Loop() {
		response(b, p, Listener{TwoEars: true}, timing.Aligned)
	}
}

func ExampleListener_Responses() {
	a, err := layout.Build(design.Default())
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := timing.Make(context.Background(), a)
	if err != nil {
		fmt.Println(err)
		return
	}
	// A head that looks past the lantern, which stands to the right of its nose.
	all, err := Listener{TwoEars: true, TurnDeg: 60}.Responses(&p.Spot, []timing.Case{timing.Aligned}, 48000)
	if err != nil {
		fmt.Println(err)
		return
	}
	r := all[0]
	var left, right float64
	for i := range r.Left {
		left += r.Left[i] * r.Left[i]
		right += r.Right[i] * r.Right[i]
	}
	fmt.Println(len(r.Left), "samples, the right ear louder:", right > left)
	// Output: 4096 samples, the right ear louder: true
}
