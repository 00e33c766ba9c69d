package design_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// with returns a text with one key set.
func with(t interface{ Fatal(...any) }, text, key string, value any) string {
	out, err := design.Set([]byte(text), key, value)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// faults are all that is wrong with a text.
func faults(name string, text []byte) []*design.Error {
	_, all := design.Examine(name, text)
	return all
}

// keyNamed finds a key.
func keyNamed(t *testing.T, path string) design.Key {
	t.Helper()
	for _, k := range design.Keys() {
		if k.Path == path {
			return k
		}
	}
	t.Fatalf("no key %s", path)
	return design.Key{}
}

// tables lists all tables, read once: they are asked for with each random key.
var tables = sync.OnceValue(design.Tables)

// inText is a key's full name in a text: of tables of which there may be several, in the first.
func inText(path string) string {
	for _, t := range tables() {
		if name, of := strings.CutPrefix(path, t.Name+"."); of && t.Many {
			return t.Name + "[1]." + name
		}
	}
	return path
}

func TestKeys(t *testing.T) {
	for _, want := range []design.Key{
		{Path: "name", Name: "name", Label: "name", Kind: design.Text, Default: "Unnamed array"},
		{Path: "body.radius_mm", Table: "body", Name: "radius_mm", Label: "radius", Unit: "mm", Kind: design.Number, Low: 20, High: 5000, Needed: true, Remark: "from the centre to a corner"},
		{Path: "body.subdivision", Table: "body", Name: "subdivision", Label: "parts of each edge", Kind: design.Whole, Low: 1, High: 16, Remark: "for a geodesic: into how many parts each edge is divided"},
		{Path: "body.dual", Table: "body", Name: "dual", Label: "faces for corners", Kind: design.Flag, Default: false, Remark: "faces for corners and corners for faces"},
		{Path: "body.base", Table: "body", Name: "base", Label: "solid to divide", Kind: design.Choice, Choices: []string{"icosahedron", "octahedron", "tetrahedron"}, Remark: "for a geodesic: icosahedron, octahedron or tetrahedron"},
		{Path: "body.wall_mm", Table: "body", Name: "wall_mm", Label: "shell thickness", Unit: "mm", Kind: design.Number, Low: 0.4, High: 100, Default: 3.0, Remark: "thickness of the shell"},
		{Path: "driver.vas_l", Table: "driver", Name: "vas_l", Label: "compliance volume Vas", Unit: "l", Kind: design.Number, Low: 0.0001, High: 10000, Remark: "its Vas; leave out to have it worked out"},
		{Path: "print.bed_mm", Table: "print", Name: "bed_mm", Label: "printer's bed", Unit: "mm", Kind: design.List, Low: 10, High: 5000, Default: []any{220.0, 220.0, 250.0}, Remark: "the printer's"},
		{Path: "surface.absorption", Table: "surface", Name: "absorption", Label: "absorption", Kind: design.List, Low: 0, High: 1, Default: 0.0, Remark: "a low wooden table; 0 if not given"},
		{Path: "room.body_at_m", Table: "room", Name: "body_at_m", Label: "body from the corner", Unit: "m", Kind: design.List, Low: 0, High: 100, Needed: true, Remark: "the body's centre from the corner"},
		{Path: "woofer.order", Table: "woofer", Name: "order", Label: "order", Kind: design.Whole, Low: 2, High: 8, Choices: []string{"2", "4", "8"}, Default: 4, Remark: "of the Linkwitz-Riley filters: 2, 4 or 8"},
		{Path: "channel.delay_us", Table: "channel", Name: "delay_us", Label: "delay", Unit: "µs", Kind: design.Number, Low: 0, High: 1e6, Remark: "leave out to have it worked out"},
	} {
		if d := cmp.Diff(want, keyNamed(t, want.Path)); d != "" {
			t.Error(d)
		}
	}
	if shapes := keyNamed(t, "body.shape").Choices; len(shapes) != 23 || !slices.Contains(shapes, "snub cube") || !slices.Contains(shapes, "ball") {
		t.Errorf("shapes %q", shapes)
	}
}

func TestTables(t *testing.T) {
	optional := map[string]bool{"surface": true, "room": true, "woofer": true, "search": true, "seat": true, "area": true, "body_at": true, "channel": true, "part": true}
	for _, tb := range design.Tables() {
		if tb.Optional != optional[tb.Name] {
			t.Errorf("[%s] optional: %v", tb.Name, tb.Optional)
		}
		if tb.Name != "" && tb.Name != "air" && tb.Remark == "" {
			t.Errorf("[%s] has no remark", tb.Name)
		}
	}
}

// Every key with a range takes what is in it and refuses what is not; every choice
// is taken. The reader itself is asked.
func TestRanges(t *testing.T) {
	const base = least + "[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 1, 1]\nabsorption = 0.1\n" +
		"[woofer]\nx_m = 0\ny_m = 0\nz_m = 0\ncrossover_hz = 300\n[[channel]]\ndrivers = [1]\n[[seat]]\nx_m = 1\ny_m = 0\nz_m = 1\n[[area]]\nshape = \"ring\"\ncount = 3\n"
	wrong := func(text, key string) bool {
		for _, f := range faults("a.toml", []byte(text)) {
			if f.Key == key && (errors.Is(f, design.ErrRange) || errors.Is(f, design.ErrType)) {
				return true
			}
		}
		return false
	}
	ranges := 0
	for _, k := range design.Keys() {
		path := inText(k.Path)
		for _, word := range k.Choices {
			if k.Kind == design.Choice && wrong(with(t, base, path, word), path) {
				t.Errorf("%s refuses %q", path, word)
			}
		}
		if k.Kind != design.Number && k.Kind != design.Whole {
			continue
		}
		ranges++
		if k.High <= k.Low {
			t.Errorf("%s from %g to %g", path, k.Low, k.High)
		}
		for _, v := range []float64{k.Low, k.High} {
			if wrong(with(t, base, path, v), path) && path != "mounts.count" { // 0 is for places that are not even
				t.Errorf("%s refuses %g", path, v)
			}
		}
		for _, v := range []float64{k.Low - 1, k.High + 1} {
			if !wrong(with(t, base, path, v), path) {
				t.Errorf("%s takes %g", path, v)
			}
		}
		if k.Kind == design.Whole && !wrong(with(t, base, path, k.Low+0.5), path) {
			t.Errorf("%s takes halves", path)
		}
	}
	if ranges < 50 {
		t.Errorf("only %d ranges", ranges)
	}
}

// The values of a design that are not defaults, written into a file again, give
// the same design.
func TestValuesGoRound(t *testing.T) {
	d := design.Default()
	text := string(design.DefaultTOML())
	for _, k := range design.Keys() {
		if v := d.Values()[k.Path]; v != nil && !cmp.Equal(v, k.Default) {
			text = with(t, text, k.Path, v)
		}
	}
	got, err := design.Parse("lantern.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(d, got); diff != "" {
		t.Error(diff)
	}
}

func TestValues(t *testing.T) {
	text := with(t, least+"[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 1, 1]\nabsorption = 0.1\n[[channel]]\ndrivers = [1, 2]\n", "room.floor_absorption", []any{0, 0.1, 0.2, 0.3, 0.4, 0.5, 1})
	d, err := design.Parse("a.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	v := d.Values()
	for path, want := range map[string]any{
		"name": "Unnamed array", "body.radius_mm": 100.0, "body.cut_height_mm": nil, "body.subdivision": nil, "mounts.on": "even", "mounts.count": 12,
		"driver.dc_ohm": 6.8, "driver.sensitivity_db": nil, "driver.fs_hz": nil, "room.absorption": 0.1, "room.order": 3,
		"room.floor_absorption": []any{0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 1.0}, "channel[1].drivers": []any{1, 2}, "channel[1].delay_us": nil,
		"print.bed_mm": []any{220.0, 220.0, 250.0}, "mounts.keep_clear_deg": []any{}, "body.m": nil, "body.dual": false,
	} {
		got, there := v[path]
		if d := cmp.Diff(want, got); d != "" || !there {
			t.Errorf("%s, there %v: %s", path, there, d)
		}
	}
	if _, there := v["surface.absorption"]; there {
		t.Error("a surface that is not there has values")
	}
}

// Numbers are put and got in the units of the file, whatever stands for them.
func TestPut(t *testing.T) {
	d := design.Default()
	for _, c := range []struct {
		key string
		v   float64
		is  *float64
		si  float64
	}{
		{"body.radius_mm", 123.4, &d.Body.Radius, 0.1234}, {"driver.flange_mm", 41, &d.Driver.FlangeRadius, 0.0205}, {"air.temperature_c", 18.3, &d.Air.Temperature, 291.45},
		{"wiring.wire_mm2", 1.5, &d.Wiring.WireSection, 1.5e-6}, {"driver.sd_cm2", 8.1, &d.Driver.Small.Area, 8.1e-4}, {"driver.vas_l", 0.12, &d.Driver.Small.Vas, 1.2e-4},
		{"driver.le_mh", 0.05, &d.Driver.Small.Inductance, 5e-5}, {"air.humidity_percent", 41.5, &d.Air.Humidity, 0.415}, {"coverage.smear_limit_us", 77, &d.Coverage.SmearLimit, 7.7e-5},
		{"body.cut_height_mm", -33.3, &d.Body.Cut, -0.0333}, {"air.pressure_kpa", 99.9, &d.Air.Pressure, 99900}, {"spot.x_m", 2.5, &d.Spot.X, 2.5},
	} {
		d.Put(c.key, c.v)
		if got := d.Number(c.key); got != c.v || math.Abs(*c.is-c.si) > 1e-12*math.Abs(c.si) {
			t.Errorf("%s = %v reads back as %v and is %v in SI, want %v", c.key, c.v, got, *c.is, c.si)
		}
	}
	if got := d.Shown("mounts.skip") + d.Shown("body.shape") + d.Shown("surface"); got != `[33]"geodesic"` {
		t.Errorf("shown %s", got)
	}
}

// The remark of a table of which the starter has several stands above the first.
func TestTableOfMany(t *testing.T) {
	for _, g := range design.Tables() {
		if g.Name == "seat" && (!g.Many || g.Remark != "One table for each seat, with its place counted as the spot's.") {
			t.Errorf("seats: %+v", g)
		}
	}
}

func TestGiven(t *testing.T) {
	got := design.Given([]byte(least + "[[channel]]\ndrivers = [1]\nodd = 1\n"))
	want := []string{"body.shape", "body.radius_mm", "mounts.count", "driver.diameter_mm", "spot.x_m", "spot.y_m", "spot.z_m", "channel[1].drivers"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// All faults are told at once, and the first that Parse tells is among them.
func TestFaultsAtOnce(t *testing.T) {
	text := with(t, with(t, with(t, least, "body.radius_mm", 1), "mounts.count", "many"), "driver.diameter_mm", nil)
	var keys []string
	for _, f := range faults("a.toml", []byte(text)) {
		keys = append(keys, f.Key)
	}
	if d := cmp.Diff([]string{"body.radius_mm", "mounts.count", "driver.diameter_mm"}, keys); d != "" {
		t.Error(d)
	}
	for _, good := range []string{least, string(design.DefaultTOML())} {
		if f := faults("a.toml", []byte(good)); len(f) > 0 {
			t.Errorf("a good design: %v", f)
		}
	}
}

func TestFaultsAsParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := least
		for range rapid.IntRange(0, 4).Draw(t, "changes") {
			k := rapid.SampledFrom(design.Keys()).Draw(t, "key")
			text = with(t, text, inText(k.Path), anyValue(t))
		}
		_, err := design.Parse("a.toml", []byte(text))
		all := faults("a.toml", []byte(text))
		if (err == nil) != (len(all) == 0) {
			t.Fatalf("Parse: %v; Faults: %v", err, all)
		}
		if err != nil && !slices.ContainsFunc(all, func(f *design.Error) bool { return f.Error() == err.Error() }) {
			t.Fatalf("%v is not among %v", err, all)
		}
	})
}

// TestLabelsName keys that there are.
func TestLabelsNameKeys(t *testing.T) {
	labelled := map[string]string{}
	for _, k := range design.Keys() {
		if k.Label == "" || strings.Contains(k.Label, "_") {
			t.Errorf("%s is labelled %q", k.Path, k.Label)
		}
		if other := labelled[k.Table+" "+k.Label]; other != "" {
			t.Errorf("%s and %s are both labelled %q", other, k.Path, k.Label)
		}
		labelled[k.Table+" "+k.Label] = k.Path
	}
}
