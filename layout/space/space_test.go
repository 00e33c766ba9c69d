package space_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/space"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// starter is the built-in design with some of a search's limits.
func starter(change func(*design.Search)) *design.Design {
	d := design.Default()
	change(&d.Search)
	return d
}

// with is the built-in design with some settings.
func with(t testing.TB, settings ...design.Setting) *design.Design {
	t.Helper()
	d, err := design.Default().With(settings...)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// of is a design's space.
func of(t testing.TB, d *design.Design) *space.Space {
	t.Helper()
	s, err := space.Of(d)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// sameArray tells of what two arrays differ in.
func sameArray(a, b *layout.Array) string {
	return cmp.Diff(a, b, cmpopts.EquateNaNs(), cmpopts.EquateEmpty())
}

// A candidate is the same design by its settings and by its text, which keeps all remarks, and
// one in twenty of them is looked at.
func TestSettingsAreText(t *testing.T) {
	d := starter(func(s *design.Search) { s.Drivers, s.Channels = 40, 6 })
	s := of(t, d)
	for i := 0; i < s.Len(); i += 61 {
		v := s.Variant(i)
		applied, err := d.With(v.Settings...)
		if err != nil {
			t.Fatalf("%d %v: %v", i, v.Settings, err)
		}
		text, err := v.Text(design.DefaultTOML())
		if err != nil {
			t.Fatalf("%d %v: %v", i, v.Settings, err)
		}
		parsed, err := design.Parse("lantern.toml", text)
		if err != nil {
			t.Fatalf("%d %v: %v\n%s", i, v.Settings, err, text)
		}
		if diff := cmp.Diff(parsed, applied, cmpopts.IgnoreFields(design.Design{}, "Search")); diff != "" {
			t.Fatalf("%d %v: %s", i, v.Settings, diff)
		}
		a, err := layout.Build(parsed)
		if err != nil {
			t.Fatalf("%d %v: %v", i, v.Settings, err)
		}
		b, err := layout.Screen(applied)
		if err != nil {
			t.Fatalf("%d %v: %v", i, v.Settings, err)
		}
		if diff := sameArray(a, b); diff != "" {
			t.Fatalf("%d %v: %s", i, v.Settings, diff)
		}
	}
}

// The space of a stock is neither a handful nor more than a search can go through. The numbers
// hang on every step and share that a space is made with.
func TestLengths(t *testing.T) {
	for _, c := range []struct {
		name string
		set  func(*design.Search)
		want int
	}{
		{"a dozen", func(s *design.Search) { s.Drivers = 12 }, 264},
		{"some", func(s *design.Search) { s.Drivers = 40 }, 4050},
		{"many", func(s *design.Search) { s.Drivers = 120 }, 6930},
		{"many, narrow", func(s *design.Search) { s.Drivers, s.Width = 120, 0.25 }, 3498},
		{"all that there may be", func(s *design.Search) { s.Drivers = 2000 }, 10542},
		{"too many for the width", func(s *design.Search) { s.Drivers, s.LeastDrivers, s.Width = 90, 80, 0.2 }, 58},
	} {
		if n := of(t, starter(c.set)).Len(); n != c.want {
			t.Errorf("%s: %d layouts, want %d", c.name, n, c.want)
		}
	}
}

// Costs of a body that is known: a cube with edges of 200 mm.
func TestCostOf(t *testing.T) {
	price, kilo := 4.5, 20.0
	d := design.Default()
	d.Body = design.Body{Shape: "cube", Radius: 0.1 * math.Sqrt(3), Wall: 0.003, Stand: 0.01}
	d.Mounts = design.Mounts{On: "faces"}
	d.Driver.Price, d.Print.Price, d.Driver.Mass = &price, &kilo, 0.03
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	c, err := space.CostOf(a)
	if err != nil {
		t.Fatal(err)
	}
	plastic := math.Pow(0.2, 3) - math.Pow(0.194, 3) - 6*math.Pi*math.Pow(0.0165, 2)*0.003
	for _, v := range []struct {
		name      string
		got, want float64
	}{
		{"drivers", float64(c.Drivers), 6}, {"plastic", c.Plastic, plastic * 1240}, {"mass", c.Mass, plastic*1240 + 6*0.03},
		{"price", c.Price, 6*4.5 + 20*plastic*1240}, {"hours", c.Hours, plastic / 5e-9 / 3600},
		{"width", c.Width, 0.2}, {"depth", c.Depth, 0.2}, {"height", c.Height, 0.21},
	} {
		if math.Abs(v.got-v.want) > 1e-9*v.want {
			t.Errorf("%s %v, want %v", v.name, v.got, v.want)
		}
	}
	if !c.InOne {
		t.Error("a cube of 200 mm does not fit a bed of 220 x 220 x 250 mm")
	}
}
