package design_test

import (
	"errors"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
)

// What is wrong in [search] is told with its line, key, value and range.
func TestSearchFaults(t *testing.T) {
	for _, c := range []struct {
		name, search, want string
		kind               error
	}{
		{"few drivers", "drivers = 0", "1: search.drivers = 0: must be from 1 to 2000", design.ErrRange},
		{"half a driver", "drivers = 1.5", "1: search.drivers = 1.5: must be a whole number from 1 to 2000", design.ErrType},
		{"least", "drivers = 20\nleast_drivers = 30", "2: search.least_drivers = 30: must be at most search.drivers, 20", design.ErrConflict},
		{"channels", "channels = 0", "1: search.channels = 0: must be from 1 to 2000", design.ErrRange},
		{"width", "width_mm = 10", "1: search.width_mm = 10: must be from 20 to 10000", design.ErrRange},
		{"height", "height_mm = -1", "1: search.height_mm = -1: must be from 20 to 10000", design.ErrRange},
		{"depth", "depth_mm = 20000", "1: search.depth_mm = 20000: must be from 20 to 10000", design.ErrRange},
		{"mass", "mass_kg = 0", "1: search.mass_kg = 0: must be from 0.01 to 10000", design.ErrRange},
		{"mass of drivers", "mass_kg = 3", "1: search.mass_kg = 3: must be left out where there is no driver.mass_g", design.ErrConflict},
		{"price", "price = 0", "1: search.price = 0: must be from 0.01 to 1e9", design.ErrRange},
		{"price of drivers", "price = 30", "1: search.price = 30: must be left out where there is no driver.price", design.ErrConflict},
		{"hours", "hours = 0", "1: search.hours = 0: must be from 0.1 to 100000", design.ErrRange},
		{"litres", "litres_least = 3\nlitres_most = 2", "1: search.litres_least = 3: must be at most search.litres_most, 2", design.ErrConflict},
		{"level", "level_db = 10", "1: search.level_db = 10: must be from 20 to 160", design.ErrRange},
		{"frequency", "lowest_hz = 5", "1: search.lowest_hz = 5: must be from 20 to 20000", design.ErrRange},
		{"pieces", "pieces = 0", "1: search.pieces = 0: must be from 1 to 1000", design.ErrRange},
		{"aim", `aims = ["loss", "comb"]`, `1: search.aims = ["loss", "comb"]: must be a list in square brackets of "loss", "level", "cost"`, design.ErrRange},
		{"aim twice", `aims = ["loss", "loss"]`, "none twice", design.ErrRange},
		{"no aim", "aims = []", "1: search.aims = []: must be a list", design.ErrRange},
		{"aims in no list", `aims = "loss"`, `1: search.aims = "loss": must be a list`, design.ErrType},
		{"aim of a price", `aims = ["price"]`, `1: search.aims = ["price"]: must be without "price" where there is no driver.price`, design.ErrConflict},
		{"misspelt", "driver = 30", "1: search.driver: not a known key; did you mean drivers?", design.ErrUnknownKey},
		{"misspelt table", "[search.bodi]\nshape = [\"cube\"]", "1: search.bodi: not a known table; did you mean body?", design.ErrUnknownKey},
		{"misspelt key", "[search.body]\nshapes = [\"cube\"]", "2: search.body.shapes: not a known key; did you mean shape?", design.ErrUnknownKey},
		{"no choices", "[search.body]\nshape = []", "2: search.body.shape = []: must be 1 to 1000 values", design.ErrRange},
		{"no list", "[search.body]\nshape = \"cube\"", "2: search.body.shape = \"cube\": must be a list of values in square brackets, each \"geodesic\", \"ball\"", design.ErrType},
		{"no such shape", "[search.body]\nshape = [\"ball\", \"cub\"]", `2: search.body.shape = "cub": must be a list`, design.ErrRange},
		{"twice", "[search.body]\nradius_mm = [90, 100, 90]", "2: search.body.radius_mm = 90: there twice", design.ErrConflict},
		{"out of range", "[search.body]\nradius_mm = [90, 5001]", "2: search.body.radius_mm = 5001: must be a list of values in square brackets, each from 20 to 5000, or a range such as {from = 20, to = 5000}", design.ErrRange},
		{"range of words", "[search.body]\nshape = {from = 1, to = 2}", "2: search.body.shape: a range is for numbers only", design.ErrType},
		{"range from", "[search.body]\nradius_mm = {from = 1, to = 200}", "2: search.body.radius_mm.from = 1: must be a number from 20 to 5000", design.ErrRange},
		{"range to", "[search.body]\nradius_mm = {from = 100, to = \"far\"}", "2: search.body.radius_mm.to = \"far\": must be a number from 20 to 5000", design.ErrType},
		{"range without an end", "[search.body]\nradius_mm = {from = 100}", "2: search.body.radius_mm.to: missing; must be a number from 20 to 5000", design.ErrMissing},
		{"range backward", "[search.body]\nradius_mm = {from = 100, to = 90}", "2: search.body.radius_mm.to = 90: must be at least from, 100", design.ErrConflict},
		{"step of nothing", "[search.body]\nradius_mm = {from = 100, to = 900, step = 0}", "2: search.body.radius_mm.step = 0: must be a number from", design.ErrRange},
		{"small step", "[search.body]\nradius_mm = {from = 100, to = 900, step = 0.1}", "2: search.body.radius_mm.step = 0.1: must be larger: there may be 1000 steps at most", design.ErrRange},
		{"half a step", "[search.body]\nsubdivision = {from = 1, to = 9, step = 1.5}", "2: search.body.subdivision.step = 1.5: must be a whole number", design.ErrType},
		{"word in a range", "[search.body]\nradius_mm = {from = 100, to = 900, steps = 9}", "2: search.body.radius_mm.steps: not a known key; did you mean step?", design.ErrUnknownKey},
		{"table that is not there", "[search.woofer]\ngain_db = [0, 3]", "2: search.woofer.gain_db: only where there is a [woofer]", design.ErrIdle},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := c.search + "\n"
			if !strings.HasPrefix(text, "[") {
				text = "[search]\n" + text
			} else {
				text = "\n" + text
			}
			_, err := design.Parse("a.toml", []byte(least+text))
			at := strings.Count(least, "\n") + 1
			want := c.want
			if line, rest, ok := strings.Cut(c.want, ": "); ok && len(line) == 1 {
				want = "a.toml:" + number(at+int(line[0]-'0')) + ": " + rest
			}
			if err == nil || !strings.Contains(err.Error(), want) || !errors.Is(err, c.kind) {
				t.Errorf("\n got %v\nwant %s", err, want)
			}
		})
	}
}

func number(n int) string { return design.Literal(n) }

// Choices and ranges are set, changed and taken out as other keys are, remarks and all.
func TestSetSearch(t *testing.T) {
	span := map[string]any{"from": 90.0, "to": 180.0, "step": 10.0}
	for _, c := range []struct {
		name, text, key string
		value           any
		want            string
	}{
		{"range", "[spot]\n", "search.body.radius_mm", span, "[spot]\n\n[search.body]\nradius_mm = { from = 90, to = 180, step = 10 }\n"},
		{"range for a list", "[search.body]\nradius_mm = [1, 2] # in mm\n", "search.body.radius_mm", span, "[search.body]\nradius_mm = { from = 90, to = 180, step = 10 } # in mm\n"},
		{"list for a range", "[search.body]\nradius_mm = { from = 1, to = 2 } # in mm\n", "search.body.radius_mm", []any{90, 100}, "[search.body]\nradius_mm = [90, 100]            # in mm\n"},
		{"end of a range", "[search]\n[search.body]\nradius_mm = { from = 1, to = 2 }\n[air]\n", "search.body.radius_mm", map[string]any{"from": 1, "to": 3}, "[search]\n[search.body]\nradius_mm = { from = 1, to = 3 }\n[air]\n"},
		{"out", "[search.body]\nradius_mm = { from = 1, to = 2 }\n", "search.body.radius_mm", nil, "[search.body]\n# radius_mm = { from = 1, to = 2 }\n"},
		{"from a remark", "# [search]\n# drivers = 9\n\n# [search.body]\n# radius_mm = { from = 1, to = 2 } # mm\n", "search.body.radius_mm", span,
			"# [search]\n# drivers = 9\n\n[search.body]\nradius_mm = { from = 90, to = 180, step = 10 } # mm\n"},
		{"a table out", "[search]\ndrivers = 3\n[search.body]\nradius_mm = [90]\n", "search.body", nil, "[search]\ndrivers = 3\n# [search.body]\n# radius_mm = [90]\n"},
		{"all out", "[search]\ndrivers = 3\n[search.body]\nradius_mm = [90]\n[air]\n", "search", nil, "# [search]\n# drivers = 3\n# [search.body]\n# radius_mm = [90]\n[air]\n"},
		{"in", "# [search]\n# drivers = 3\n", "search", true, "[search]\n# drivers = 3\n"},
		{"a key", "[search]\ndrivers = 3 # there\n", "search.drivers", 4, "[search]\ndrivers = 4 # there\n"},
		{"another key stays", "[body]\nradius_mm = 90\n[search.body]\nradius_mm = [90]\n", "body.radius_mm", 100, "[body]\nradius_mm = 100\n[search.body]\nradius_mm = [90]\n"},
		{"a new key of another table", "[body]\nshape = \"ball\"\n# [search.body]\n# radius_mm = [90]\n", "body.radius_mm", 100, "[body]\nshape = \"ball\"\nradius_mm = 100\n# [search.body]\n# radius_mm = [90]\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := with(t, c.text, c.key, c.value); got != c.want {
				t.Errorf("\n got %q\nwant %q", got, c.want)
			}
		})
	}
}

// The remarks of the starter on a search are a search that is good.
func TestStarterSearch(t *testing.T) {
	text := string(design.DefaultTOML())
	at := strings.Index(text, "# [search]")
	live := text[:at] + strings.ReplaceAll(strings.ReplaceAll(text[at:], "\n# ", "\n"), "# [search]", "[search]")
	live = strings.ReplaceAll(live, "\nAny key", "\n# Any key")
	live = strings.ReplaceAll(live, "\nnone of these", "\n# none of these")
	live = with(t, with(t, live, "driver.price", 4), "driver.mass_g", 30)
	d, err := design.Parse("lantern.toml", []byte(live))
	if err != nil {
		t.Fatal(err)
	}
	if !d.Search.Present || len(d.Search.Vary) != 3 || d.Search.Width != 0.4 {
		t.Errorf("%+v", d.Search)
	}
	// What is searched for changes nothing of the design itself.
	plain, err := design.Parse("lantern.toml", []byte(with(t, with(t, text, "driver.price", 4), "driver.mass_g", 30)))
	if err != nil {
		t.Fatal(err)
	}
	d.Search = plain.Search
	if diff := cmp.Diff(plain, d); diff != "" {
		t.Error(diff)
	}
}
