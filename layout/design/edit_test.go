package design_test

import (
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"pappus/layout/design"
	"pappus/testdata/drawn"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
	"pgregory.net/rapid"
)

func TestSet(t *testing.T) {
	cases := []struct {
		name, text, key string
		value           any
		want            string
	}{
		{"number", "[body]\nradius_mm = 150 # corner\n", "body.radius_mm", 160.5, "[body]\nradius_mm = 160.5 # corner\n"},
		{"column kept", "[body]\nradius_mm = 150            # corner\n", "body.radius_mm", 1600.25, "[body]\nradius_mm = 1600.25        # corner\n"},
		{"column kept, shorter", "[body]\nradius_mm = 150.25 # corner\n", "body.radius_mm", 20, "[body]\nradius_mm = 20     # corner\n"},
		{"remark becomes live", "[air]\n# pressure_kpa = 101.325   # at the sea\n", "air.pressure_kpa", 90, "[air]\npressure_kpa = 90          # at the sea\n"},
		{"remarked out", "[air]\npressure_kpa = 90          # at the sea\n", "air.pressure_kpa", nil, "[air]\n# pressure_kpa = 90        # at the sea\n"},
		{"not there and out", "[air]\n", "air.pressure_kpa", nil, "[air]\n"},
		{"remark of another table", "[surface]\n# [room]\n# absorption = 0.15\n", "surface.absorption", 0.2, "[surface]\nabsorption = 0.2\n# [room]\n# absorption = 0.15\n"},
		{"remarked table", "[spot]\nx_m = 1\n# [room]\n# size_m = [1, 2, 3] # of it\n", "room.size_m", []any{4, 5, 2.5}, "[spot]\nx_m = 1\n[room]\nsize_m = [4, 5, 2.5] # of it\n"},
		{"remarked table without the key", "# [room]\n# order = 3\n", "room.absorption", 0.1, "[room]\nabsorption = 0.1\n# order = 3\n"},
		{"remarked table in the way", "[spot]\n# [room]\nx_m = 1\n", "room.order", 2, "[spot]\n# [room]\nx_m = 1\n\n[room]\norder = 2\n"},
		{"table not there", "[spot]\nx_m = 1\n", "body.radius_mm", 100, "[spot]\nx_m = 1\n\n[body]\nradius_mm = 100\n"},
		{"no end of line", "[spot]\nx_m = 1", "spot.y_m", 2, "[spot]\nx_m = 1\ny_m = 2"},
		{"nothing", "", "spot.y_m", -2, "[spot]\ny_m = -2\n"},
		{"after the last key", "[spot]\nx_m = 1\n\n# next\n[air]\n", "spot.y_m", 2, "[spot]\nx_m = 1\ny_m = 2\n\n# next\n[air]\n"},
		{"indented", "[spot]\n  x_m = 1\n", "spot.y_m", 2, "[spot]\n  x_m = 1\n  y_m = 2\n"},
		{"top", "# All.\n\n# Body.\n[body]\n", "name", "a", "# All.\n\nname = \"a\"\n# Body.\n[body]\n"},
		{"quotes", "name = 'x' # n\n", "name", "a \"b\" \\ \t", "name = \"a \\\"b\\\" \\\\ \\u0009\" # n\n"},
		{"Windows", "[spot]\r\nx_m = 1\r\n", "spot.y_m", 2, "[spot]\r\nx_m = 1\r\ny_m = 2\r\n"},
		{"Windows, remark", "[spot]\r\n# x_m = 1\r\n", "spot.x_m", 2, "[spot]\r\nx_m = 2\r\n"},
		{"byte order mark", "\ufeffname = \"x\"\n", "name", "y", "\ufeffname = \"y\"\n"},
		{"within braces", "air = { temperature_c = 20, pressure_kpa = 90 } # a\n", "air.temperature_c", 21.5, "air = { temperature_c = 21.5, pressure_kpa = 90 } # a\n"},
		{"into braces", "air = { temperature_c = 20 }\n", "air.pressure_kpa", 90, "air = { temperature_c = 20, pressure_kpa = 90 }\n"},
		{"into empty braces", "air = {}\n", "air.pressure_kpa", 90, "air = { pressure_kpa = 90 }\n"},
		{"out of braces", "air = { temperature_c = 20, pressure_kpa = 90 }\n", "air.temperature_c", nil, "air = { pressure_kpa = 90 }\n"},
		{"out of braces, last", "air = { temperature_c = 20, pressure_kpa = 90 }\n", "air.pressure_kpa", nil, "air = { temperature_c = 20 }\n"},
		{"dotted", "air.temperature_c = 20\n[spot]\n", "air.temperature_c", 5, "air.temperature_c = 5\n[spot]\n"},
		{"dotted, another", "air.temperature_c = 20\n[spot]\n", "air.pressure_kpa", 90, "air.temperature_c = 20\nair.pressure_kpa = 90\n[spot]\n"},
		{"key in quotes", "['body']\n\"radius_mm\" = 100\n", "body.radius_mm", 120, "['body']\n\"radius_mm\" = 120\n"},
		{"many lines", "[mounts]\nskip = [ # two\n  1,\n  2, # back\n] # end\n", "mounts.skip", []any{3}, "[mounts]\nskip = [3] # end\n"},
		{"many lines out", "[mounts]\nskip = [\n  1, # back\n]\non = \"faces\"\n", "mounts.skip", nil, "[mounts]\n# skip = [\n#   1, # back\n# ]\non = \"faces\"\n"},
		{"text that looks like a remark", "name = \"\"\"\n# name = 1\n\"\"\"\n[spot]\n", "spot.x_m", 1, "name = \"\"\"\n# name = 1\n\"\"\"\n[spot]\nx_m = 1\n"},
		{"channel", "[[channel]]\ndrivers = [1]\n[[channel]]\ndrivers = [2]\n# gain_db = 0\n", "channel[2].gain_db", -3, "[[channel]]\ndrivers = [1]\n[[channel]]\ndrivers = [2]\ngain_db = -3\n"},
		{"remark that is no header", "# [[room]\n# order = 3\n\n[room]\n", "room.order", 2, "# [[room]\n# order = 3\n\n[room]\norder = 2\n"},
		{"new channel", "[spot]\n", "channel[1].drivers", []any{1, 2}, "[spot]\n\n[[channel]]\ndrivers = [1, 2]\n"},
		{"channels out", "[[channel]] # a\ndrivers = [1]\n[spot]\nx_m = 1\n[[channel]]\ndrivers = [2]\n", "channel", nil, "# [[channel]] # a\n# drivers = [1]\n[spot]\nx_m = 1\n# [[channel]]\n# drivers = [2]\n"},
		{"second seat", "[[seat]]\nx_m = 1\n[seats]\n", "seat[2].x_m", 2, "[[seat]]\nx_m = 1\n[seats]\n\n[[seat]]\nx_m = 2\n"},
		{"area", "", "area[1].from_m", []any{1, -2, 0.5}, "[[area]]\nfrom_m = [1, -2, 0.5]\n"},
		{"first seat, from a remark", "# [[seat]]\n# x_m = 1 # a\n# y_m = 2\n# [[seat]]\n# x_m = 3\n[air]\n", "seat[1].x_m", 5, "[[seat]]\nx_m = 5   # a\n# y_m = 2\n# [[seat]]\n# x_m = 3\n[air]\n"},
		{"second seat, from a remark", "[[seat]]\nx_m = 5\n# y_m = 2\n# [[seat]]\n# x_m = 3\n[air]\n", "seat[2].x_m", 4, "[[seat]]\nx_m = 5\n# y_m = 2\n[[seat]]\nx_m = 4\n[air]\n"},
		{"its key that is no remark", "# [[seat]]\n# x_m = 3\n[air]\n", "seat[1].z_m", 4, "[[seat]]\nz_m = 4\n# x_m = 3\n[air]\n"},
		{"a remark before the others stays one", "# [[seat]]\n# x_m = 3\n[[seat]]\nx_m = 5\n", "seat[2].x_m", 4, "# [[seat]]\n# x_m = 3\n[[seat]]\nx_m = 5\n\n[[seat]]\nx_m = 4\n"},
		{"a remark of another table in the way", "# [seats]\n# aim = \"mean\"\n[air]\n", "seat[1].x_m", 4, "# [seats]\n# aim = \"mean\"\n[air]\n\n[[seat]]\nx_m = 4\n"},
		{"one seat out", "[[seat]]\nx_m = 1\n[[seat]] # b\nx_m = 2\n[spot]\nx_m = 1\n[[seat]]\nx_m = 3\n", "seat[2]", nil, "[[seat]]\nx_m = 1\n# [[seat]] # b\n# x_m = 2\n[spot]\nx_m = 1\n[[seat]]\nx_m = 3\n"},
		{"the only seat out", "[[seat]]\nx_m = 1\n[seats]\naim = \"mean\"\n", "seat[1]", nil, "# [[seat]]\n# x_m = 1\n[seats]\naim = \"mean\"\n"},
		{"seats out, their aim not", "[seats]\naim = \"mean\"\n[[seat]]\nx_m = 1\n[[seat]]\nx_m = 3\n", "seat", nil, "[seats]\naim = \"mean\"\n# [[seat]]\n# x_m = 1\n# [[seat]]\n# x_m = 3\n"},
		{"spot out", "[spot] # here\nx_m = 1\n[[seat]]\nx_m = 1\n", "spot", nil, "# [spot] # here\n# x_m = 1\n[[seat]]\nx_m = 1\n"},
		{"table out", "[surface] # low\nabsorption = 0.1   # wood\n# end\n", "surface", nil, "# [surface] # low\n# absorption = 0.1 # wood\n# end\n"},
		{"table in", "# [surface]\n# absorption = 0.1\n", "surface", true, "[surface]\n# absorption = 0.1\n"},
		{"table in at the end", "[spot]\nx_m = 1\n", "surface", true, "[spot]\nx_m = 1\n\n[surface]\n"},
		{"table that is there", "[surface]\n", "surface", true, "[surface]\n"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := design.Set([]byte(c.text), c.key, c.value)
			if err != nil {
				t.Fatal(err)
			}
			if string(got) != c.want {
				t.Errorf("\n got %q\nwant %q", got, c.want)
			}
		})
	}
}

func TestSetRefuses(t *testing.T) {
	cases := []struct {
		name, text, key string
		value           any
		kind            error
	}{
		{"syntax", "[body", "body.radius_mm", 1, design.ErrSyntax},
		{"stranger", "", "body.size_mm", 1, design.ErrUnknownKey},
		{"table that is always there", "", "body", nil, design.ErrUnknownKey},
		{"row 0", "", "channel[0].gain_db", 1, design.ErrUnknownKey},
		{"row with a sign", "", "channel[+1].gain_db", 1, design.ErrUnknownKey},
		{"whole row in", "", "seat[1]", true, design.ErrUnknownKey},
		{"spot in", "", "spot", true, design.ErrUnknownKey},
		{"row out that is not there", "[[seat]]\nx_m = 1\n", "seat[x]", nil, design.ErrUnknownKey},
		{"row too far on", "[[channel]]\n", "channel[3].gain_db", 1, design.ErrSyntax},
		{"rows within brackets", "channel = [{drivers = [1]}]\n", "channel[1].gain_db", 1, design.ErrSyntax},
		{"a number for a table", "body = 1\n", "body.radius_mm", 1, design.ErrSyntax},
		{"no number", "", "body.radius_mm", nan(), design.ErrType},
		{"a map", "", "body.radius_mm", map[string]any{}, design.ErrType},
		{"a number for a whole table", "", "surface", 1, design.ErrType},
		{"bad letters", "", "name", "\xff", design.ErrType},
		{"large", strings.Repeat("#", 1<<20+1), "name", "a", design.ErrRange},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := design.Set([]byte(c.text), c.key, c.value)
			var e *design.Error
			if !errors.Is(err, c.kind) || !errors.As(err, &e) {
				t.Errorf("%v, want %v", err, c.kind)
			}
		})
	}
}

func nan() float64 { zero := 0.0; return zero / zero }

// To take a key of the starter out and to bring it back gives the starter, letter
// by letter.
func TestOutAndBack(t *testing.T) {
	text := string(design.DefaultTOML())
	var in map[string]any
	if err := toml.Unmarshal([]byte(text), &in); err != nil {
		t.Fatal(err)
	}
	for table, v := range in {
		keys, ok := v.(map[string]any)
		if !ok {
			continue
		}
		for name, value := range keys {
			path := table + "." + name
			out := with(t, text, path, nil)
			if out == text {
				t.Errorf("%s stays", path)
			}
			if back := with(t, out, path, value); back != text && path != "air.temperature_c" && path != "air.humidity_percent" { // 21.0 becomes 21
				t.Errorf("%s: not the same again", path)
			}
		}
	}
}

// holds lists all keys of a file by name, with their values.
func holds(t interface{ Fatalf(string, ...any) }, text string) map[string]any {
	var in map[string]any
	if err := toml.Unmarshal([]byte(strings.TrimPrefix(text, "\ufeff")), &in); err != nil {
		t.Fatalf("not TOML any more: %v\n%s", err, text)
	}
	out := map[string]any{}
	for table, v := range in {
		keys, ok := v.(map[string]any)
		if !ok {
			out[table] = v
			continue
		}
		for name, value := range keys {
			out[table+"."+name] = value
		}
	}
	return out
}

// comments lists all comments of a text.
func comments(text string) []string {
	p := unstable.Parser{KeepComments: true}
	p.Reset([]byte(text))
	var out []string
	var walk func(n *unstable.Node)
	walk = func(n *unstable.Node) {
		for ; n.Valid(); n = n.Next() {
			if n.Kind == unstable.Comment {
				out = append(out, string(n.Data))
			}
			walk(n.Child())
		}
	}
	for p.NextExpression() {
		walk(p.Expression())
	}
	return out
}

// anyValue draws a value of any kind that a file may hold.
func anyValue(t *rapid.T) any {
	one := func(label string) any {
		switch rapid.IntRange(0, 3).Draw(t, label) {
		case 0:
			return float64(rapid.IntRange(-100, 6000).Draw(t, "whole"))
		case 1:
			return rapid.Float64Range(-1e12, 1e12).Draw(t, "number")
		case 2:
			return rapid.Bool().Draw(t, "flag")
		}
		return rapid.StringOfN(rapid.Rune(), 0, 8, -1).Draw(t, "text")
	}
	if rapid.IntRange(0, 3).Draw(t, "list") > 0 {
		return one("kind")
	}
	list := []any{}
	for range rapid.IntRange(0, 7).Draw(t, "length") {
		list = append(list, one("kind in list"))
	}
	return list
}

// The file holds the new value and all else as before, and every comment but the
// remark that became the key.
func TestSetKeepsAllElse(t *testing.T) {
	starts := []string{
		string(design.DefaultTOML()), least, strings.ReplaceAll(string(design.DefaultTOML()), "\n", "\r\n"),
		"air = { temperature_c = 25, pressure_kpa = 90 } # braces\ndriver.diameter_mm = 40 # dots\n\n# over\n['body'] # quotes\n  shape = \"ball\" # in\n",
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(starts).Draw(t, "text")
		for range rapid.IntRange(1, 4).Draw(t, "changes") {
			path := rapid.SampledFrom(paths()).Draw(t, "key")
			want := holds(t, text)
			var value any
			delete(want, path)
			if !rapid.Bool().Draw(t, "out") {
				value = anyValue(t)
			}
			after := with(t, text, path, value)
			got := holds(t, after)
			if value != nil {
				if !alike(value, got[path]) {
					t.Fatalf("%s is %v, want %v", path, got[path], value)
				}
				delete(got, path)
			}
			if !reflect.DeepEqual(want, got) {
				t.Fatalf("%s changed more:\n%v\n%v", path, want, got)
			}
			checkComments(t, text, after, path[strings.Index(path, ".")+1:])
			text = after
		}
	})
}

// paths lists all keys but those of tables of which there may be several.
var paths = sync.OnceValue(func() (out []string) {
	for _, k := range design.Keys() {
		if inText(k.Path) == k.Path {
			out = append(out, k.Path)
		}
	}
	return out
})

// alike compares what was set with what was read.
func alike(set, read any) bool {
	switch s := set.(type) {
	case float64:
		if n, ok := read.(int64); ok {
			return float64(n) == s
		}
	case []any:
		r, ok := read.([]any)
		return ok && slices.EqualFunc(s, r, alike)
	}
	return set == read
}

// checkComments finds each comment of one text in the other, but for remarks of
// the key that was set.
func checkComments(t *rapid.T, before, after, name string) {
	left := map[string]int{}
	for _, c := range comments(after) {
		left[c]++
	}
	for _, c := range comments(before) {
		if left[c]--; left[c] >= 0 {
			continue
		}
		// What trails a remark is part of it until the remark is a key.
		_, tail, trails := strings.Cut(c, " #")
		ofKey := strings.HasPrefix(c, "# "+name+" = ")
		isHeader := strings.HasPrefix(c, "# [")
		inRemark := slices.ContainsFunc(slices.Collect(maps.Keys(left)), func(o string) bool { return strings.HasSuffix(o, c) })
		if isHeader || ofKey && (!trails || slices.Contains(comments(after), "#"+tail)) || inRemark {
			continue
		}
		t.Fatalf("the comment %q is lost", c)
	}
}

// FuzzSet: the first line is a key, the second what it is set to (a number, "out" or a word), the
// rest a design. What comes out is TOML, the same when it is set again, and the design stays.
func FuzzSet(f *testing.F) {
	drawn.Bytes(f, []string{
		"body.radius_mm\n1.5\n" + least,
		"room.size_m\nout\n" + string(design.DefaultTOML()),
		"room.order\n2\nair = { a = 1, } # x\n# [room]\n# order = 3\n",
		"channel[1].gain_db\nx\n[[channel]]\n# gain_db = 1 # a\n\"\" = '''\n#\n'''",
		"surface\nout\n[surface]\n[a.b]\nsurface.c = 1",
		"surface\ntrue\n# [surface]\n# absorption = 1",
		"seat[2].name\ndoor\n[[seat]]\nx_m = 1\n# [[seat]]\n# name = \"a\"\n",
	}, func(t testing.TB, data []byte) {
		key, rest, _ := strings.Cut(string(data), "\n")
		word, text, _ := strings.Cut(rest, "\n")
		value := any(word)
		if number, err := strconv.ParseFloat(word, 64); err == nil {
			value = number
		} else if word == "out" {
			value = nil
		} else if word == "true" {
			value = true
		}
		in := []byte(text)
		got, err := design.Set(in, key, value)
		var e *design.Error
		if err != nil {
			if !errors.As(err, &e) || strings.ContainsAny(err.Error(), "\n\r\x1b") {
				t.Fatalf("%T %q", err, err)
			}
			return
		}
		if text != string(in) {
			t.Fatal("the text itself changed")
		}
		var out map[string]any
		if err := toml.Unmarshal([]byte(strings.TrimPrefix(string(got), "\ufeff")), &out); err != nil {
			t.Fatalf("%v\n%s", err, got)
		}
		if again, err := design.Set(got, key, value); err != nil || string(again) != string(got) {
			t.Fatalf("not the same when set again: %v\n%q\n%q", err, got, again)
		}
	})
}

// Whatever stands between them, live or as a remark, one of many tables is taken out alone,
// and a new one is the last.
func TestRowsComeAndGo(t *testing.T) {
	between := []string{"", "\n", "# note\n", "# [[seat]]\n# x_m = 9\n# y_m = 9\n# z_m = 9 # there\n", "# [seats]\n# aim = \"mean\"\n", "[fit]\n", "[[channel]]\ndrivers = [1]\n"}
	rapid.Check(t, func(t *rapid.T) {
		text, n := least, rapid.IntRange(0, 5).Draw(t, "seats")
		used := map[string]bool{}
		gap := func() {
			part := rapid.SampledFrom(between).Draw(t, "between")
			if header, _, _ := strings.Cut(part, "\n"); strings.HasPrefix(header, "[") && used[header] {
				return
			} else if strings.HasPrefix(header, "[") {
				used[header] = true
			}
			text += part
		}
		for i := range n {
			gap()
			text += fmt.Sprintf("[[seat]] # %d\nx_m = %d\ny_m = %d\nz_m = 1\n", i, i+1, i+1)
		}
		gap()
		places := func(text string) (x []float64) {
			d, _ := design.Examine("a.toml", []byte(text))
			if d == nil {
				t.Fatalf("not TOML any more:\n%s", text)
			}
			for _, s := range d.Seats {
				x = append(x, s.At.X, s.At.Y, s.At.Z)
			}
			return x
		}
		want := places(text)
		if n > 0 && rapid.Bool().Draw(t, "out") {
			gone := rapid.IntRange(1, n).Draw(t, "which")
			text = with(t, text, fmt.Sprintf("seat[%d]", gone), nil)
			want, n = slices.Delete(want, 3*gone-3, 3*gone), n-1
			if got := places(text); !slices.Equal(got, want) {
				t.Fatalf("%v, want %v:\n%s", got, want, text)
			}
		}
		for axis, v := range []float64{7, 8, 0.5} {
			text = with(t, text, fmt.Sprintf("seat[%d].%s_m", n+1, []string{"x", "y", "z"}[axis]), v)
		}
		if got := places(text); !slices.Equal(got, append(want, 7, 8, 0.5)) {
			t.Fatalf("%v, want %v and a new one:\n%s", got, want, text)
		}
	})
}
