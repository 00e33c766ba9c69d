package radiate_test

import (
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing/radiate"
	"pappus/timing/store"
)

// TestFieldKey: a body is solved for anew where its field is another, and only there.
func TestFieldKey(t *testing.T) {
	const plain = "name = \"x\"\n[body]\nshape = \"cube\"\nradius_mm = 100\nstand_height_mm = 20\n[driver]\ndiameter_mm = 30\n[spot]\nx_m = 2\ny_m = 0\nz_m = 0.3\n[timing]\nmodel = \"body\"\n[surface]\n"
	key := func(name string, value any) store.Key {
		t.Helper()
		text, err := design.Set([]byte(plain), name, value)
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Parse("x.toml", text)
		if err != nil {
			t.Fatal(err)
		}
		a, err := layout.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		if !a.Surface.Near {
			t.Fatalf("%s: nothing is near", name)
		}
		k, err := radiate.FieldKey(a)
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	was := key("spot.x_m", 2.0)
	for _, c := range []struct {
		name  string
		value any
		same  bool
	}{
		{"spot.x_m", 3.0, true}, {"placing.yaw_deg", 33.0, true}, {"mounts.skip", []any{3, 1}, true}, {"wiring.channels", 2, true},
		{"placing.pitch_deg", 3.0, false}, {"body.radius_mm", 101.0, false}, {"driver.diameter_mm", 31.0, false},
		{"body.stand_height_mm", 21.0, false}, {"timing.solve_to_hz", 4100.0, false},
	} {
		if got := key(c.name, c.value); (got == was) != c.same {
			t.Errorf("%s = %v: the same field %v", c.name, c.value, got == was)
		}
	}
}
