package repair_test

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/repair"
	"pappus/testdata/thorough"

	"github.com/google/go-cmp/cmp"
)

// with is the starter with changes that need no repair.
func with(t *testing.T, changes ...repair.Change) []byte {
	t.Helper()
	text := design.DefaultTOML()
	for _, c := range changes {
		var err error
		if text, err = design.Set(text, c.Key, c.Value); err != nil {
			t.Fatal(err)
		}
	}
	if why := planned(text); why != "" {
		t.Fatal(why)
	}
	return text
}

type changes = []repair.Change

// TestEdit: what a change breaks is mended, said, and nothing else is touched.
func TestEdit(t *testing.T) {
	whole := changes{{Key: "body.cut_height_mm", Value: nil}, {Key: "surface", Value: nil}}
	for _, test := range []struct {
		name     string
		from, by changes
		mended   []string
		values   map[string]any
	}{
		{"another shape has fewer places", whole, changes{{Key: "body.shape", Value: "dodecahedron"}},
			[]string{
				`base = "icosahedron" and subdivision = 2 were taken out: only for body.shape = "geodesic"`,
				`skip = [33] was taken out: a dodecahedron has 12 places`,
			}, nil},
		{"some places are there still", append(whole, repair.Change{Key: "mounts.skip", Value: []any{1, 77}}), changes{{Key: "body.subdivision", Value: 1}},
			[]string{"skip became [1] in place of [1, 77]: a geodesic has 20 places"}, map[string]any{"mounts.skip": []any{1}}},
		{"a number that is another place", nil, changes{{Key: "body.subdivision", Value: 3}},
			[]string{"skip = [33] was taken out: 33 is another place on this body"}, map[string]any{"mounts.skip": []any{}}},
		{"a larger body has the same places", nil, changes{{Key: "body.radius_mm", Value: 200.0}}, nil, map[string]any{"mounts.skip": []any{33}}},
		{"even places need a number", append(whole, repair.Change{Key: "mounts.skip", Value: nil}), changes{{Key: "mounts.on", Value: "even"}},
			[]string{"count = 80 was put in: even places need a number; there were as many drivers before"}, map[string]any{"mounts.count": 80}},
		{"and no longer", append(whole, repair.Change{Key: "mounts.skip", Value: nil}, repair.Change{Key: "mounts.on", Value: "even"}, repair.Change{Key: "mounts.count", Value: 24}), changes{{Key: "mounts.on", Value: "edges"}},
			[]string{`count = 24 was taken out: only for mounts.on = "even"`}, nil},
		{"a ball has no faces", append(whole, repair.Change{Key: "mounts.skip", Value: nil}), changes{{Key: "body.shape", Value: "ball"}},
			[]string{
				`base = "icosahedron" and subdivision = 2 were taken out: only for body.shape = "geodesic"`,
				`on became "even" in place of "faces" and count = 80 was put in: a ball has no faces, corners or edges, so the drivers are spread evenly`,
			}, map[string]any{"mounts.on": "even", "mounts.count": 80}},
		{"a wider cone, its hole and flange", nil, changes{{Key: "driver.diameter_mm", Value: 45.0}},
			[]string{"cutout_mm became 46 in place of 33 and flange_mm became 53 in place of 40: a cone of 45 mm does not go through a smaller hole"},
			map[string]any{"driver.cutout_mm": 46.0, "driver.flange_mm": 53.0}},
		{"a wider hole and its flange", nil, changes{{Key: "driver.cutout_mm", Value: 42.0}},
			[]string{"flange_mm became 49 in place of 40: a flange is wider than its hole"}, map[string]any{"driver.flange_mm": 49.0}},
		{"another voice coil", nil, changes{{Key: "driver.nominal_ohm", Value: 4.0}},
			[]string{"dc_ohm = 7.1 was taken out: it cannot be that of a voice coil of 4 ohm; measure it with a meter"}, map[string]any{"driver.dc_ohm": 3.4}},
		{"a room in the table's place", nil, changes{{Key: "room", Value: true}},
			[]string{
				"size_m = [6, 4.5, 2.7], body_at_m = [2, 2.2, 0.8] and absorption = 0.2 were put in: a room needs them; set your own",
				"[surface] was taken out: a room has its own floor, walls and ceiling",
			}, nil},
		{"hung from the ceiling", nil, changes{{Key: "placing.on", Value: "ceiling"}},
			[]string{"z_m became -1.275 in place of 0.6: the chair must be below the ceiling"}, nil},
		{"on a wall, the chair behind", changes{{Key: "spot.x_m", Value: -1.0}}, changes{{Key: "placing.on", Value: "wall"}},
			[]string{"x_m became 0.975 in place of -1: the chair must be before the wall"}, nil},
		{"one more body", nil, changes{{Key: "body_at[1].channels", Value: "shared"}},
			[]string{"x_m = 0, y_m = -1.5 and z_m = 0 were put in: a body_at needs them; set your own"}, nil},
		{"several bodies all round", changes{{Key: "seats.aim", Value: "round"}}, changes{{Key: "body_at[1].x_m", Value: 0.0}, {Key: "body_at[1].y_m", Value: 2.0}, {Key: "body_at[1].z_m", Value: 0.0}},
			[]string{`aim = "round" was taken out: nobody sits all round several bodies`}, nil},
		{"a body as large as the chair is far", nil, changes{{Key: "body.radius_mm", Value: 2500.0}},
			[]string{"x_m became 4.146 in place of 1.8 and y_m became 0.921 in place of 0.4: the chair must be outside the body"}, nil},
		{"steps and subdivision", whole, changes{{Key: "body.m", Value: 2}},
			[]string{"subdivision = 2 was taken out: a geodesic is divided by it, or by m and n"}, nil},
		{"a filter of another family", changes{{Key: "protection.order", Value: 3}}, changes{{Key: "protection.family", Value: "linkwitz-riley"}},
			[]string{"order became 4 in place of 3: Linkwitz-Riley filters are of orders 2, 4, 6 and 8"}, nil},
		{"channels by hand and by number", append(whole, repair.Change{Key: "body.subdivision", Value: 1}, repair.Change{Key: "mounts.skip", Value: nil},
			repair.Change{Key: "wiring.channels", Value: nil}, repair.Change{Key: "channel[1].drivers", Value: numbers(20)}), changes{{Key: "wiring.channels", Value: 4}},
			[]string{"[channel] was taken out: wiring.channels sorts the drivers instead"}, map[string]any{"wiring.channels": 4}},
		{"channels by hand for another body", append(whole, repair.Change{Key: "body.subdivision", Value: 1}, repair.Change{Key: "mounts.skip", Value: nil},
			repair.Change{Key: "wiring.channels", Value: nil}, repair.Change{Key: "channel[1].drivers", Value: numbers(20)}), changes{{Key: "body.subdivision", Value: 2}},
			[]string{"[channel] was taken out and channels = 1 was put in: the channels were laid out by hand for other drivers; as many are sorted anew"}, nil},
		{"a body as large as a seat is far", append(seats(2), repair.Change{Key: "spot", Value: nil}), changes{{Key: "body.radius_mm", Value: 2000.0}},
			[]string{`x_m became 2.22 in place of 1.7: seat "seat 1" must be outside the body`}, nil},
		{"an area of another shape", changes{{Key: "area[1].shape", Value: "ring"}, {Key: "area[1].count", Value: 5}, {Key: "area[1].radius_m", Value: 2.0}, {Key: "area[1].z_m", Value: 0.6}}, changes{{Key: "area[1].shape", Value: "line"}},
			[]string{
				"from_m = [1.5, -1, 0.6] and to_m = [2.5, 1, 0.6] were put in: an area needs them; set your own",
				`radius_m = 2 and z_m = 0.6 were taken out: only for area[1].shape = "arc" or "ring"`,
			}, map[string]any{"area[1].count": 5}},
		{"the last seat out, and no spot", append(seats(2), repair.Change{Key: "spot", Value: nil}), changes{{Key: "seat", Value: nil}, {Key: "body.wall_mm", Value: 4.0}},
			[]string{"x_m = 1.8, y_m = 0.4 and z_m = 0.6 were put in: a spot needs them; set your own"}, map[string]any{"spot.x_m": 1.8}},
		{"a seat that is moved", seats(2), changes{{Key: "seat[2].x_m", Value: 2.5}}, nil, map[string]any{"seat[2].x_m": 2.5}},
		{"a chair that is moved", nil, changes{{Key: "spot.x_m", Value: 2.5}}, nil, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, err := repair.Edit("lantern.toml", with(t, test.from...), test.by)
			if err != nil {
				t.Fatal(err)
			}
			if why := planned(got.Text); why != "" {
				t.Errorf("it cannot be planned: %s", why)
			}
			if diff := cmp.Diff(test.mended, got.Mended); diff != "" {
				t.Error(diff)
			}
			d, err := design.Parse("lantern.toml", got.Text)
			if err != nil {
				t.Fatal(err)
			}
			for key, want := range test.values {
				if diff := cmp.Diff(want, d.Values()[key]); diff != "" {
					t.Errorf("%s: %s", key, diff)
				}
			}
		})
	}
}

// seats are some beside each other.
func seats(n int) changes {
	var set changes
	for i := range n {
		at := "seat[" + strconv.Itoa(i+1) + "]"
		set = append(set, repair.Change{Key: at + ".x_m", Value: 1.7}, repair.Change{Key: at + ".y_m", Value: float64(i)}, repair.Change{Key: at + ".z_m", Value: 0.6})
	}
	return set
}

func numbers(n int) []any {
	out := make([]any, n)
	for i := range out {
		out[i] = i + 1
	}
	return out
}

// TestEditKeeps: what a person has set stays as it was set, and becomes a fault where it
// cannot be; the cure is another press.
func TestEditKeeps(t *testing.T) {
	for _, test := range []struct {
		name  string
		by    repair.Change
		fault error
		cure  string
	}{
		{"a radius that cannot be", repair.Change{Key: "body.radius_mm", Value: 5.0}, design.ErrRange, "radius_mm becomes 101: the drivers need room"},
		{"a radius taken out", repair.Change{Key: "body.radius_mm", Value: nil}, design.ErrMissing, "radius_mm = 101 is put in"},
		{"a hole that is too narrow", repair.Change{Key: "driver.cutout_mm", Value: 20.0}, design.ErrConflict, "cutout_mm becomes 32 in place of 20"},
		{"a dual of a dome", repair.Change{Key: "body.dual", Value: true}, design.ErrConflict, "cut_height_mm = 0 is taken out"},
		{"a place there is not", repair.Change{Key: "mounts.skip", Value: []any{99}}, layout.ErrNoSuchMount, "skip = [99] is taken out: a geodesic, cut as this one is, has 40 places"},
		{"nothing left", repair.Change{Key: "mounts.keep_clear_below_deg", Value: 89.0}, layout.ErrNoMounts, "keep_clear_below_deg = 89 is taken out: else no driver is left"},
		{"more than there may be", repair.Change{Key: "body.subdivision", Value: 16}, layout.ErrTooManyMounts, "subdivision becomes 9 in place of 16"},
	} {
		if test.by.Value == 16 && !thorough.Set {
			continue // so many drivers take too long for every day
		}
		t.Run(test.name, func(t *testing.T) {
			got, err := repair.Edit("lantern.toml", design.DefaultTOML(), changes{test.by})
			if err != nil {
				t.Fatal(err)
			}
			found := fault(got.Text)
			if !errors.Is(found, test.fault) || len(got.Mended) > 0 {
				t.Errorf("the fault is %v, mended %q", found, got.Mended)
			}
			cure, ok := repair.Cure("lantern.toml", got.Text)
			if !ok || fault(cure.Text) != nil || !strings.HasPrefix(strings.Join(cure.Mended, "; "), test.cure) {
				t.Errorf("cure %v: %q", ok, cure.Mended)
			}
		})
	}
}

// fault is what keeps a text from being laid out.
func fault(text []byte) error {
	d, err := design.Parse("lantern.toml", text)
	if err == nil {
		_, err = layout.Build(d)
	}
	return err
}

// TestNoCure: the least load of an amplifier is never lowered for anyone, a text that is
// no design is left as it is, and nor is a good one changed.
func TestNoCure(t *testing.T) {
	load := with(t, repair.Change{Key: "wiring.channels", Value: nil})
	for _, c := range (changes{{Key: "wiring.channels", Value: 1}, {Key: "wiring.minimum_load_ohm", Value: 100.0},
		{Key: "mounts.skip", Value: nil}, {Key: "body.shape", Value: "cube"}, {Key: "body.base", Value: nil}, {Key: "body.subdivision", Value: nil}}) {
		var err error
		if load, err = design.Set(load, c.Key, c.Value); err != nil {
			t.Fatal(err)
		}
	}
	for name, text := range map[string][]byte{"load": load, "no TOML": []byte("[body"), "good": design.DefaultTOML()} {
		if name == "load" && planned(text) == "" {
			t.Fatal("it can be planned")
		}
		if got, ok := repair.Cure("lantern.toml", text); ok {
			t.Errorf("%s: %q", name, got.Mended)
		}
	}
}

// TestCureFigures: where a cure puts what can be nowhere, and how many drivers it takes
// where nothing tells.
func TestCureFigures(t *testing.T) {
	room := changes{{Key: "surface", Value: nil}, {Key: "room.size_m", Value: []any{6.0, 4.5, 2.7}}, {Key: "room.body_at_m", Value: []any{2.0, 2.2, 0.8}}, {Key: "room.absorption", Value: 0.2}}
	woofer := func(x, y, z float64) changes {
		return changes{{Key: "woofer.x_m", Value: x}, {Key: "woofer.y_m", Value: y}, {Key: "woofer.z_m", Value: z}, {Key: "woofer.crossover_hz", Value: 450.0}}
	}
	for _, test := range []struct {
		name string
		set  changes
		want string
	}{
		{"a chair below the table", changes{{Key: "spot.z_m", Value: -0.5}}, "z_m becomes 0.675 in place of -0.5: the chair must be above the surface"},
		{"a chair in the body", changes{{Key: "spot.x_m", Value: 0.05}, {Key: "spot.y_m", Value: 0.0}, {Key: "spot.z_m", Value: 0.05}}, "x_m becomes 0.447 in place of 0.05: the chair must be outside the body"},
		{"a chair beyond a wall", append(room, repair.Change{Key: "spot.x_m", Value: 5.0}), "x_m becomes 3.9 in place of 5: the chair must be in the room"},
		{"a woofer in the body", woofer(0.05, 0, 0.05), "x_m becomes 0.447 in place of 0.05: the woofer must be outside the body"},
		{"a woofer below the table", woofer(-0.5, 0.3, -0.4), "z_m becomes 0.075 in place of -0.4: the woofer must be above the surface"},
		{"a woofer at the chair", woofer(1.8, 0.45, 0.6), "x_m becomes 1.3 in place of 1.8: the woofer must not stand where somebody listens"},
		{"a woofer beyond a wall", append(slices.Clone(room), woofer(-0.5, 5, 0.3)...), "y_m becomes 2.2 in place of 5: the woofer must be in the room"},
		{"a seat in the body", append(seats(2), repair.Change{Key: "seat[2].x_m", Value: 0.05}, repair.Change{Key: "seat[2].y_m", Value: 0.0}, repair.Change{Key: "seat[2].z_m", Value: 0.05}), `x_m becomes 0.447 in place of 0.05: seat "seat 2" must be outside the body`},
		{"a seat below the table", append(seats(2), repair.Change{Key: "seat[1].z_m", Value: -0.5}), `z_m becomes 0.675 in place of -0.5: seat "seat 1" must be above the surface`},
		{"two seats at one place", append(seats(2), repair.Change{Key: "seat[2].y_m", Value: 0.0}), `y_m becomes 0.5 in place of 0: seat "seat 2" must be beside the other`},
		{"two seats of one name", append(seats(2), repair.Change{Key: "seat[1].name", Value: "a"}, repair.Change{Key: "seat[2].name", Value: "a"}), `name = "a" is taken out: another seat has that name`},
		{"one seat beside the spot", seats(1), `[spot] is taken out: one seat is the spot`},
		{"an area through the body", changes{{Key: "area[1].shape", Value: "line"}, {Key: "area[1].count", Value: 3}, {Key: "area[1].from_m", Value: []any{2.0, 0.0, 0.1}}, {Key: "area[1].to_m", Value: []any{-2.0, 0.0, 0.1}}},
			`[area 1] is taken out: seat "seat 2" is 0.1 m from the body's centre and so inside the body; must be further than body.radius_mm, 150 mm`},
		{"a body larger than the room", append(slices.Clone(room), repair.Change{Key: "room.size_m", Value: []any{1.0, 4.5, 2.7}}, repair.Change{Key: "body.radius_mm", Value: 600.0}),
			"size_m becomes [1.4, 4.5, 2.7] in place of [1, 4.5, 2.7]: the body must fit in"},
		{"a body in the wall of a room", append(slices.Clone(room), repair.Change{Key: "room.size_m", Value: []any{2.1, 4.5, 2.7}}), "body_at_m becomes [1.95, 2.2, 0.8] in place of [2, 2.2, 0.8]: the body must be inside the room"},
		{"even places on a ball without a number", changes{{Key: "body.shape", Value: "ball"}, {Key: "body.base", Value: nil}, {Key: "body.subdivision", Value: nil}, {Key: "mounts.on", Value: "even"}, {Key: "mounts.skip", Value: nil}, {Key: "wiring.channels", Value: nil}},
			"count = 60 and over = \"dome\" are put in: even places need a number; there were as many drivers before"},
	} {
		t.Run(test.name, func(t *testing.T) {
			text := design.DefaultTOML()
			for _, c := range test.set {
				var err error
				if text, err = design.Set(text, c.Key, c.Value); err != nil {
					t.Fatal(err)
				}
			}
			if got, _ := repair.Cure("lantern.toml", text); !slices.Contains(got.Mended, test.want) {
				t.Errorf("%q, want %q", got.Mended, test.want)
			}
		})
	}
}
