package main

import (
	"fmt"
	"strings"
	"testing"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestPlace: a seat by its name in any letters, else three numbers; of many seats a message
// names the first eight.
func TestPlace(t *testing.T) {
	a := &layout.Array{}
	for i := range 9 {
		a.Seats = append(a.Seats, layout.Seat{Name: fmt.Sprintf("Chair %d", i+1), At: r3.Vec{X: float64(i + 1)}})
	}
	for _, test := range []struct {
		text string
		want layout.Seat
	}{{"chair 3", a.Seats[2]}, {"1,-2,0.5", layout.Seat{At: r3.Vec{X: 1, Y: -2, Z: 0.5}}}} {
		if got, err := place(a, test.text); err != nil || got != test.want {
			t.Errorf("%s: %v, %v", test.text, got, err)
		}
	}
	_, err := place(a, "chair")
	if err == nil || !strings.Contains(err.Error(), "; or a seat: Chair 1, Chair 2, Chair 3, Chair 4, Chair 5, Chair 6, Chair 7, Chair 8, ...") {
		t.Error(err)
	}
	a.Seats = a.Seats[:8]
	if _, err = place(a, "x"); err == nil || !strings.HasSuffix(err.Error(), "Chair 7, Chair 8") {
		t.Error(err)
	}
	if _, err = place(&layout.Array{}, "x"); err == nil || strings.Contains(err.Error(), "seat") {
		t.Error(err)
	}
}

// TestPlaces: where one listens and walks to.
func TestPlaces(t *testing.T) {
	a := &layout.Array{Spot: r3.Vec{X: 9}, Seats: []layout.Seat{{Name: "a", At: r3.Vec{X: 1}}, {Name: "b", At: r3.Vec{X: 2}}}}
	for _, test := range []struct {
		name string
		h    hearing
		want string
	}{
		{"at the spot", hearing{}, " 9"},
		{"at a seat", hearing{at: "b"}, "b 2"},
		{"to a seat", hearing{walk: []string{"a"}}, " 9, a 1"},
		{"from seat to seat", hearing{walk: []string{"seats"}}, "a 1, b 2"},
		{"on from a seat", hearing{at: "b", walk: []string{"seats"}}, "b 2, a 1, b 2"},
		{"and on", hearing{walk: []string{"seats", "3,0,0"}}, "a 1, b 2,  3"},
		{"by way of a place", hearing{walk: []string{"3,0,0", "seats"}}, " 9,  3, a 1, b 2"},
	} {
		t.Run(test.name, func(t *testing.T) {
			places, err := test.h.places(a)
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, p := range places {
				got = append(got, fmt.Sprintf("%s %g", p.Name, p.At.X))
			}
			if text := strings.Join(got, ", "); text != test.want {
				t.Errorf("%q, want %q", text, test.want)
			}
		})
	}
}
