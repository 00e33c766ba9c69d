package space_test

import (
	"testing"

	"pappus/layout/design"
	"pappus/layout/space"
)

// Where no body is narrow enough for so many drivers, the space has what comes nearest: the
// most that the width takes, and the least width that takes them.
func TestNearest(t *testing.T) {
	d := with(t, design.Setting{Key: "driver.flange_mm", Value: 60})
	d.Search.Drivers, d.Search.LeastDrivers, d.Search.Width = 60, 50, 0.2
	s := of(t, d)
	most, narrowest := 0.0, 0.0
	for i := range s.Len() {
		_, broken, err := screened(s.Variant(i), d)
		if err != nil {
			t.Fatal(err)
		}
		if len(broken) == 0 {
			t.Fatalf("%v keeps all limits", s.Variant(i).Settings)
		}
		if len(broken) > 1 {
			continue
		}
		switch l := broken[0]; l.Key {
		case "search.least_drivers":
			most = max(most, l.Has)
		case "search.width_mm":
			if narrowest == 0 || l.Has < narrowest {
				narrowest = l.Has
			}
		}
	}
	if most != 38 || narrowest != 235 {
		t.Errorf("%v drivers at most, %v mm at least", most, narrowest)
	}
}

// One limit after the other, broken by an array that keeps the rest.
func TestBroken(t *testing.T) {
	d := with(t, design.Setting{Key: "driver.price", Value: 2}, design.Setting{Key: "driver.mass_g", Value: 30})
	free := d.Search
	v := space.Variant{}
	a, broken, err := screened(v, d)
	if err != nil || len(broken) > 0 {
		t.Fatal(broken, err)
	}
	c, err := space.CostOf(a)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range []struct {
		key        string
		good, bad  func(*design.Search)
		asked, has float64
	}{
		{"search.drivers", func(s *design.Search) { s.Drivers = 39 }, func(s *design.Search) { s.Drivers = 38 }, 38, 39},
		{"search.least_drivers", func(s *design.Search) { s.LeastDrivers = 39 }, func(s *design.Search) { s.LeastDrivers = 40 }, 40, 39},
		{"search.channels", func(s *design.Search) { s.Channels = 8 }, func(s *design.Search) { s.Channels = 7 }, 7, 8},
		{"search.width_mm", func(s *design.Search) { s.Width = 0.3001 }, func(s *design.Search) { s.Width = 0.28 }, 280, 1e3 * c.Width},
		{"search.height_mm", func(s *design.Search) { s.Height = 0.1751 }, func(s *design.Search) { s.Height = 0.16 }, 160, 1e3 * c.Height},
		{"search.depth_mm", func(s *design.Search) { s.Depth = 0.3001 }, func(s *design.Search) { s.Depth = 0.28 }, 280, 1e3 * c.Depth},
		{"search.mass_kg", func(s *design.Search) { s.Mass = 3 }, func(s *design.Search) { s.Mass = 1 }, 1, c.Mass},
		{"search.price", func(s *design.Search) { s.Price = 78 }, func(s *design.Search) { s.Price = 77 }, 77, 78},
		{"search.hours", func(s *design.Search) { s.Hours = 100 }, func(s *design.Search) { s.Hours = 1 }, 1, c.Hours},
		{"search.litres_least", func(s *design.Search) { s.LeastVolume = 0.001 }, func(s *design.Search) { s.LeastVolume = 0.02 }, 20, 1e3 * c.Volume},
		{"search.litres_most", func(s *design.Search) { s.MostVolume = 0.02 }, func(s *design.Search) { s.MostVolume = 0.001 }, 1, 1e3 * c.Volume},
		{"search.lowest_hz", func(s *design.Search) { s.Lowest = 400 }, func(s *design.Search) { s.Lowest = 100 }, 100, max(a.Driver.Resonance, 150)},
		{"search.pieces", func(s *design.Search) { s.Pieces = 2 }, func(s *design.Search) { s.Pieces = 1 }, 1, 2},
	} {
		s := free
		if l.good(&s); len(space.Broken(s, a, c)) > 0 {
			t.Errorf("%s: broken by what keeps it: %v", l.key, space.Broken(s, a, c))
		}
		s = free
		l.bad(&s)
		got := space.Broken(s, a, c)
		if len(got) != 1 || got[0].Key != l.key || !near(got[0].Asked, l.asked) || !near(got[0].Has, l.has) {
			t.Errorf("%s: %+v, want asked %v, has %v", l.key, got, l.asked, l.has)
		}
	}
}

func near(a, b float64) bool { return a == b || (a-b)/b < 1e-9 && (b-a)/b < 1e-9 }

// A driver in the way, and channels without drivers, are told as findings.
func TestBrokenByFindings(t *testing.T) {
	for code, change := range map[string]design.Setting{
		"drivers_misfit":  {Key: "driver.flange_mm", Value: 60},
		"channels_unused": {Key: "wiring.channels", Value: 41},
	} {
		d := with(t, change)
		d.Search.Channels = 41
		_, broken, err := screened(space.Variant{}, d)
		if err != nil || len(broken) != 1 || broken[0].Code != code {
			t.Errorf("%s: %+v, %v", code, broken, err)
		}
	}
}
