package design_test

import (
	"math"
	"testing"

	"pappus/layout/design"
	"pappus/layout/impedance"

	"pgregory.net/rapid"
)

func TestLeastOhm(t *testing.T) {
	type points = []impedance.Point
	tests := []struct {
		name  string
		table points
		want  float64
	}{
		{"none", nil, 6},
		{"never below the resistance", points{{Frequency: 20, Ohm: 7, Degrees: 0}, {Frequency: 1000, Ohm: 6.5, Degrees: 0}}, 6},
		{"a dip", points{{Frequency: 20, Ohm: 7, Degrees: 0}, {Frequency: 1000, Ohm: 3, Degrees: 0}, {Frequency: 5000, Ohm: 8, Degrees: 40}}, 3},
		{"beyond hearing", points{{Frequency: 20, Ohm: 7, Degrees: 0}, {Frequency: 20000, Ohm: 8, Degrees: 40}, {Frequency: 40000, Ohm: 1, Degrees: 0}}, 6},
		{"begins above", points{{Frequency: 25000, Ohm: 2, Degrees: 0}, {Frequency: 40000, Ohm: 1, Degrees: 0}}, 2},
		{"ends below", points{{Frequency: 5, Ohm: 1, Degrees: 0}, {Frequency: 10, Ohm: 2, Degrees: 0}}, 2},
		{"the end of the band", points{{Frequency: 10, Ohm: 1, Degrees: 0}, {Frequency: 40, Ohm: 4, Degrees: 0}}, 2},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := design.Driver{DCOhm: 6, Impedance: test.table}.LeastOhm()
			if math.Abs(got-test.want) > 1e-12 {
				t.Errorf("%g ohm, want %g", got, test.want)
			}
		})
	}
}

// TestLeastOhmAgainstNetwork: what is judged by is what the solved network has.
func TestLeastOhmAgainstNetwork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := design.Driver{DCOhm: 1e6}
		var table []impedance.Point
		hz := rapid.Float64Range(2, 100).Draw(t, "first in Hz")
		for range rapid.IntRange(2, 8).Draw(t, "points") {
			p := impedance.Point{Frequency: hz, Ohm: rapid.Float64Range(1, 50).Draw(t, "ohm"), Degrees: rapid.Float64Range(-60, 60).Draw(t, "degrees")}
			d.Impedance, table = append(d.Impedance, p), append(table, p)
			hz *= rapid.Float64Range(1.5, 30).Draw(t, "step")
		}
		curve, err := impedance.Measured(table)
		if err != nil {
			t.Fatal(err)
		}
		one, err := impedance.NewBank([]int{1}, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		at, want := one.Lowest(curve, 20, 20000)
		if got := d.LeastOhm(); math.Abs(got-want) > 1e-9*want {
			t.Fatalf("%g ohm, the network has %g at %g Hz", got, want, at)
		}
	})
}
