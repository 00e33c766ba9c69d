package design

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestMerge(t *testing.T) {
	const base = "name = \"a\"  # mine\n[body]\nradius_mm = 100\nwall_mm = 3\n[[seat]]\nname = \"one\"\nx_m = 1\n"
	swap := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(base) }
	second := "[[seat]]\nname = \"two\"\nx_m = 2\n"
	for _, test := range []struct {
		name         string
		mine, theirs string
		keep         []string
		want         string
		put          []string
		conflicts    []Conflict
	}{
		{"nothing", base, base, nil, base, nil, nil},
		{"theirs alone", base, swap("100", "120"), nil, swap("100", "120"), nil, nil},
		{"mine alone", swap("100", "120"), base, nil, swap("100", "120"), []string{"body.radius_mm"}, nil},
		{"both, apart", swap("100", "120"), swap("# mine", "# theirs", "wall_mm = 3", "wall_mm = 4"), nil,
			swap("100", "120", "# mine", "# theirs", "wall_mm = 3", "wall_mm = 4"), []string{"body.radius_mm"}, nil},
		{"both, alike", swap("100", "120"), swap("100", "120"), nil, swap("100", "120"), nil, nil},
		{"both, not alike", swap("100", "120"), swap("100", "130"), nil, swap("100", "130"), nil, []Conflict{{"body.radius_mm", "100", "120", "130"}}},
		{"both, mine kept", swap("100", "120"), swap("100", "130"), []string{"body.radius_mm"}, swap("100", "120"), []string{"body.radius_mm"},
			[]Conflict{{"body.radius_mm", "100", "120", "130"}}},
		{"a key taken away", swap("wall_mm = 3", "# wall_mm = 3"), swap("100", "120"), nil, swap("wall_mm = 3", "# wall_mm = 3", "100", "120"), []string{"body.wall_mm"}, nil},
		{"a seat more", base + second, swap("100", "120"), nil, "", []string{"seat"}, nil},
		{"seats of both", base + second, swap("x_m = 1", "x_m = 3"), nil, swap("x_m = 1", "x_m = 3"), nil,
			[]Conflict{{"seat", `name = "one", x_m = 1`, `name = "one", x_m = 1; name = "two", x_m = 2`, `name = "one", x_m = 3`}}},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, err := Merge([]byte(base), []byte(test.mine), []byte(test.theirs), test.keep)
			if err != nil {
				t.Fatal(err)
			}
			if test.want != "" {
				if diff := cmp.Diff(test.want, string(got.Text)); diff != "" {
					t.Error(diff)
				}
			}
			if diff := cmp.Diff(test.put, got.Mine); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(test.conflicts, got.Conflicts); diff != "" {
				t.Error(diff)
			}
			if len(test.conflicts) == 0 { // each then has what it changed
				again, err := Merge([]byte(base), []byte(test.mine), got.Text, nil)
				if err != nil || len(again.Mine)+len(again.Conflicts) > 0 {
					t.Errorf("merged once more: %v, %+v, of\n%s", err, again, got.Text)
				}
			}
		})
	}
	const table = base + "[surface]\nabsorption = 0.2\n"
	for name, pair := range map[string][2]string{"a table taken away": {table, base}, "a table more": {base, table}} {
		got, err := Merge([]byte(pair[0]), []byte(pair[1]), []byte(strings.Replace(pair[0], "100", "120", 1)), nil)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		want, _ := parts([]byte(strings.Replace(pair[1], "100", "120", 1)))
		held, _ := parts(got.Text)
		if diff := cmp.Diff(want, held); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
	if _, err := Merge([]byte(base), []byte("[bod"), []byte(base), nil); err == nil || !strings.Contains(err.Error(), "the page's text") {
		t.Errorf("no TOML: %v", err)
	}
	for broken, want := range map[string]string{
		"[body]\nradius_mm = 4,5\n":  "the file:2: body.radius_mm = 4,5: must be a number",
		"[body]\nradius_mm =\xe42\n": "the file: the text is not saved as UTF-8",
		"[body]\nshape = cube\n":     `write "cube"`,
	} {
		if _, err := Merge([]byte(base), []byte(base), []byte(broken), nil); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", broken, err)
		}
	}
}
