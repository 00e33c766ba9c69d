package figure_test

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/render/figure"
	"pappus/timing"
	"pappus/timing/seats"
	"pappus/timing/verdict"

	"gonum.org/v1/gonum/spatial/r3"
)

// seated is the demo's plan with so many seats on an arc or a ring, and made-up losses.
func seated(t testing.TB, n int, span float64) *timing.Plan {
	t.Helper()
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	p, a := *d.plan, *d.plan.Array
	p.Array, a.Seats = &a, nil
	of := func(worst, mean, between float64, lost func(i int) float64) seats.Figures {
		f := seats.Figures{Worst: worst, Mean: mean, Between: between}
		for i := range n {
			f.Seat = append(f.Seat, lost(i))
			var bands []float64
			for b := range 13 {
				bands = append(bands, lost(i)*(0.4+0.09*float64(b)))
			}
			f.Band = append(f.Band, bands)
		}
		return f
	}
	for i := range n {
		angle := span * (float64(i)/float64(max(n-1, 1)) - 0.5) * math.Pi / 180
		a.Seats = append(a.Seats, layout.Seat{Name: fmt.Sprint("cushion ", i+1), At: r3.Vec{X: 2 * math.Cos(angle), Y: 2 * math.Sin(angle), Z: 0.6}, Weight: 1})
	}
	off := func(i int) float64 { return math.Abs(float64(i) - float64(n-1)/2) }
	p.Seating = &timing.Seating{Aim: "even", MiddleSeat: n / 2,
		Planned: of(7.1, 7.5, 0.87, func(i int) float64 { return 6.6 + 0.2*off(i) }),
		Middle:  of(11.6, 10.4, 5.6, func(i int) float64 { return 1.5 + 10*math.Sqrt(off(i)/float64(n)*2) }),
		Without: of(10.0, 12, 2, func(i int) float64 { return 10 - 0.5*off(i)/float64(n) }),
		Bound:   of(4.5, 4.7, 0.5, func(i int) float64 { return 4.5 - 0.2*off(i)/float64(n) }),
	}
	for b := range 13 {
		p.Seating.Thirds = append(p.Seating.Thirds, 500*math.Pow(2, float64(b)/3))
	}
	for _, k := range []int{1, 2, 4, 8, 16} {
		at := 4 + 8/math.Sqrt(float64(k))
		p.Seating.Counts = append(p.Seating.Counts, timing.SeatCount{Channels: k, Figures: seats.Figures{Worst: at, Mean: at + 0.5, Between: 3 / math.Sqrt(float64(k))}})
	}
	return &p
}

// TestSeats: every seat has its row, its name and its number, few or many; and a plan for
// one spot draws none.
func TestSeats(t *testing.T) {
	for _, test := range []struct {
		name  string
		seats int
		span  float64
		names int
	}{{"two", 2, 60, 2}, {"five", 5, 120, 5}, {"twelve all round", 12, 330, 12},
		{"as many as have names", 44, 350, 44}, {"one more", 45, 350, 23}, {"sixty-four", 64, 354, 32}} {
		t.Run(test.name, func(t *testing.T) {
			p := seated(t, test.seats, test.span)
			var svg, png bytes.Buffer
			if err := figure.Seats(&png, figure.PNG, p); err != nil {
				t.Fatal(err)
			}
			leave(t, "seats "+test.name+".png", png.Bytes())
			if err := figure.Seats(&svg, figure.SVG, p); err != nil {
				t.Fatal(err)
			}
			if got := strings.Count(svg.String(), "cushion "); got != test.names {
				t.Errorf("%d names, want %d", got, test.names)
			}
			for _, want := range []string{"as planned: worst 7.1 dB", "without delays: worst 10.0 dB", "for the middle seat: worst 11.6 dB", "the least with these channels: worst 4.5 dB"} {
				if !strings.Contains(svg.String(), want) {
					t.Errorf("no %q", want)
				}
			}
		})
	}
	p := seated(t, 5, 120)
	for name, draw := range map[string]func(io.Writer, figure.Format, *timing.Plan) error{"thirds": figure.SeatThirds, "counts": figure.SeatCounts} {
		var svg, png bytes.Buffer
		if err := draw(&png, figure.PNG, p); err != nil {
			t.Fatal(err)
		}
		leave(t, "seats "+name+".png", png.Bytes())
		if err := draw(&svg, figure.SVG, p); err != nil {
			t.Fatal(err)
		}
		for _, want := range map[string][]string{"thirds": {"as planned: 0.9 dB between seats", "for the middle seat: 5.6 dB", "without delays: 2.0 dB"}, "counts": {"the worst seat", "as planned, 8"}}[name] {
			if !strings.Contains(svg.String(), want) {
				t.Errorf("%s: no %q", name, want)
			}
		}
	}
	two := seated(t, 5, 120)
	two.Array.Placings = []layout.Placing{{At: r3.Vec{Y: 0.6}}, {At: r3.Vec{Y: -0.6}}}
	var png bytes.Buffer
	if err := figure.Seats(&png, figure.PNG, two); err != nil {
		t.Fatal(err)
	}
	leave(t, "seats two bodies.png", png.Bytes())
	d, _ := lantern()
	for _, draw := range []func(io.Writer, figure.Format, *timing.Plan) error{figure.SeatThirds, figure.SeatCounts} {
		if err := draw(&bytes.Buffer{}, figure.SVG, d.plan); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
			t.Errorf("one spot: %v", err)
		}
	}
	if err := figure.Seats(&bytes.Buffer{}, figure.SVG, d.plan); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("one spot: %v", err)
	}
}

// TestSeatsOnMaps: the map from above and the circle show every seat, the slice from the side
// those that it goes through.
func TestSeatsOnMaps(t *testing.T) {
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	p := seated(t, 5, 120)
	for _, test := range []struct {
		name    string
		numbers []string
		draw    func(w io.Writer, f figure.Format) error
	}{
		{"above", []string{"1", "2", "3", "4", "5"}, func(w io.Writer, f figure.Format) error {
			return figure.Coverage(w, f, p, d.above, figure.Level(d.above, 4))
		}},
		{"loss", []string{"1", "2", "3", "4", "5"}, func(w io.Writer, f figure.Format) error {
			return figure.Coverage(w, f, p, d.above, figure.Loss(d.above))
		}},
		{"side", nil, func(w io.Writer, f figure.Format) error {
			return figure.Coverage(w, f, p, d.sideways, figure.Level(d.sideways, 4))
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			var svg, png bytes.Buffer
			if err := test.draw(&png, figure.PNG); err != nil {
				t.Fatal(err)
			}
			leave(t, "seats on map "+test.name+".png", png.Bytes())
			if err := test.draw(&svg, figure.SVG); err != nil {
				t.Fatal(err)
			}
			var numbers []string
			for _, m := range regexp.MustCompile(`fill:#FFFFFF[^>]*>([0-9]+)</text>`).FindAllStringSubmatch(svg.String(), -1) {
				numbers = append(numbers, m[1])
			}
			if !slices.Equal(numbers, test.numbers) {
				t.Errorf("seats %q, want %q", numbers, test.numbers)
			}
		})
	}
	var polar bytes.Buffer
	if err := figure.Polar(&polar, figure.PNG, p, p.Horizontal, false); err != nil {
		t.Fatal(err)
	}
	leave(t, "seats on polar.png", polar.Bytes())
}

// TestSeatsMarked: designs at the seats of the first with seats, those with other seats left
// out, and what was measured at some seats; all names are there.
func TestSeatsMarked(t *testing.T) {
	p, other := seated(t, 5, 120), seated(t, 3, 90)
	single := *p
	single.Seating = nil
	designs := []timing.Candidate{
		{Plan: &single, Seats: &timing.AtSeats{Seats: p.Array.Seats, Figures: p.Seating.Middle}},
		{Plan: p, Seats: &timing.AtSeats{Seats: p.Array.Seats, Own: true, Figures: p.Seating.Planned}},
		{Plan: other, Seats: &timing.AtSeats{Seats: other.Array.Seats, Own: true, Figures: other.Seating.Planned}},
		{Plan: &single},
	}
	v := verdict.Seats{Planned: seats.Figures{Seat: []float64{7, 6.5}}, Measured: seats.Figures{Seat: []float64{7.6, 6}},
		Heard: []verdict.Seat{{Index: 1, Error: 0.5}, {Index: 4, Error: math.Inf(1)}}}
	for _, test := range []struct {
		name string
		draw func(w io.Writer, f figure.Format) error
		rows int
		want []string
	}{
		{"compared", func(w io.Writer, f figure.Format) error { return figure.CompareSeats(w, f, designs) }, 5, []string{"at the 5 seats of", "without 2 designs of other seats"}},
		{"measured", func(w io.Writer, f figure.Format) error { return figure.MeasuredSeats(w, f, p, v) }, 2, []string{">planned<", ">measured<", ">cushion 2<", ">cushion 5<"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			var svg, png bytes.Buffer
			if err := test.draw(&png, figure.PNG); err != nil {
				t.Fatal(err)
			}
			leave(t, "seats "+test.name+".png", png.Bytes())
			if err := test.draw(&svg, figure.SVG); err != nil {
				t.Fatal(err)
			}
			if got := strings.Count(svg.String(), "cushion "); got != test.rows {
				t.Errorf("%d names, want %d", got, test.rows)
			}
			for _, want := range test.want {
				if !strings.Contains(svg.String(), want) {
					t.Errorf("no %q", want)
				}
			}
		})
	}
	if err := figure.CompareSeats(io.Discard, figure.PNG, designs[:1]); err == nil {
		t.Error("no seats, and it draws")
	}
}

// TestRound: a plan all round is drawn with its circles, what is between even and loud, and its
// own; another plan is not.
func TestRound(t *testing.T) {
	p := seated(t, 12, 330)
	if err := figure.Round(&bytes.Buffer{}, figure.SVG, p); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("another aim: %v", err)
	}
	circles := func(gain, off float64) timing.Circles {
		var c timing.Circles
		for h := range 3 {
			c.Gain = append(c.Gain, []float64{gain, gain + 0.3*float64(h), gain - 0.2, 2 * gain})
			c.Deviation = append(c.Deviation, []float64{off, off * 1.3, off * (1 + 0.2*float64(h)), off * 2})
		}
		return c
	}
	p.Seating.Round = &timing.Round{Octaves: []float64{1000, 1995.26, 3981.07, 7943.28}, Height: []float64{0.3, 0.6, 0.9}, Radius: 2, Loud: 0.5, Planned: circles(1.1, 0.7), Without: circles(0, 0.5)}
	for i := range 5 {
		x := float64(i) / 4
		p.Seating.Round.Front = append(p.Seating.Round.Front, timing.RoundPoint{Loud: x, Gain: 2.5 * math.Sqrt(x), Deviation: 1 + 2*x*x})
	}
	var svg, png bytes.Buffer
	if err := figure.Round(&png, figure.PNG, p); err != nil {
		t.Fatal(err)
	}
	leave(t, "round.png", png.Bytes())
	if err := figure.Round(&svg, figure.SVG, p); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"0.33 m", "0.63 m", "0.93 m", "all drivers in parallel", ">0.25<", "numbers: loud", "as planned", "in parallel", ">8k<"} {
		if !strings.Contains(svg.String(), want) {
			t.Errorf("no %q", want)
		}
	}
	var built bytes.Buffer
	if err := figure.PolarAsBuilt(&built, figure.SVG, p, p.Horizontal, false); err != nil || !strings.Contains(built.String(), "without the delays") {
		t.Errorf("as built: %v", err)
	}
}
