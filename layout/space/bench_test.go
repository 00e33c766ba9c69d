package space_test

import (
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/space"
)

// What a candidate costs before any sound is heard of it, by step.
func BenchmarkScreen(b *testing.B) {
	d := starter(func(s *design.Search) { s.Drivers = 120 })
	s := of(b, d)
	for name, run := range map[string]func(i int) error{
		"settings": func(i int) error { s.Variant(i); return nil },
		"with":     func(i int) error { _, err := d.With(s.Variant(i).Settings...); return err },
		"all": func(i int) error {
			_, _, err := screened(s.Variant(i), d)
			return err
		},
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			i := 0
			for b.Loop() {
				if err := run(i % s.Len()); err != nil {
					b.Fatal(err)
				}
				i++
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "designs/s")
		})
	}
}

// screened is a candidate laid out, and what it breaks.
func screened(v space.Variant, d *design.Design) (*layout.Array, []space.Limit, error) {
	applied, err := d.With(v.Settings...)
	if err != nil {
		return nil, nil, err
	}
	a, err := layout.Screen(applied)
	if err != nil {
		return nil, nil, err
	}
	c, err := space.CostOf(a)
	return a, space.Broken(d.Search, a, c), err
}

// BenchmarkOf is how long it takes to know the space of a stock.
func BenchmarkOf(b *testing.B) {
	d := starter(func(s *design.Search) { s.Drivers = 120 })
	for b.Loop() {
		of(b, d)
	}
}
