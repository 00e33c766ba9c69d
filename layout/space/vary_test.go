package space_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/space"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// searching is the built-in design with choices.
func searching(t rapid.TB, search string) (*design.Design, []byte) {
	text := append(design.DefaultTOML(), search...)
	d, err := design.Parse("lantern.toml", text)
	if err != nil {
		t.Fatalf("%v\n%s", err, search)
	}
	return d, text
}

// What choices come to: how many, and what the first and the last set.
func TestChosen(t *testing.T) {
	for _, c := range []struct {
		name, search string
		length       int
		first, last  string
	}{
		{"a list", "[search.wiring]\nchannels = [4, 6]\n", 2, "wiring.channels=4", "wiring.channels=6"},
		{"steps", "[search.body]\nradius_mm = {from = 100, to = 150, step = 20}\n", 3, "body.radius_mm=100", "body.radius_mm=140"},
		{"a range", "[search.body]\nradius_mm = {from = 100, to = 200}\n", 12, "body.radius_mm=100", "body.radius_mm=200"},
		{"a long range", "[search.body]\nradius_mm = {from = 20, to = 5000}\n", 17, "body.radius_mm=20", "body.radius_mm=5000"},
		{"whole numbers", "[search.body]\nsubdivision = {from = 1, to = 3}\n", 3, "body.subdivision=1;mounts.skip=", "body.subdivision=3;mounts.skip="},
		{"many whole numbers", "[search.wiring]\nchannels = {from = 10, to = 100}\n", 17, "wiring.channels=10", "wiring.channels=100"},
		{"about 0", "[search.placing]\nyaw_deg = {from = -90, to = 90}\n", 5, "placing.yaw_deg=-90", "placing.yaw_deg=90"},
		{"a product", "[search.body]\nradius_mm = [100, 150]\n[search.wiring]\nchannels = [4, 6, 8]\n", 6, "body.radius_mm=100;wiring.channels=4", "body.radius_mm=150;wiring.channels=8"},
		{"one body has no use for what another has", "[search.body]\nshape = [\"geodesic\", \"cube\"]\nsubdivision = [1, 2, 3]\n", 4,
			"body.shape=geodesic;mounts.skip=;body.subdivision=1", "body.base=;body.shape=cube;body.subdivision=;mounts.skip="},
		{"a ball has even places", "[search.body]\nshape = [\"ball\"]\n", 1, "", "body.base=;body.shape=ball;body.subdivision=;mounts.count=120;mounts.on=even;mounts.skip="},
		{"a class of geodesics", "[search.body]\nm = [2]\nn = [0, 1]\n", 2, "body.m=2;body.n=0;body.subdivision=;mounts.skip=", "body.m=2;body.n=1;body.subdivision=;mounts.skip="},
		{"more channels than are set", "[search]\nchannels = 12\n[search.body]\nradius_mm = [100, 150]\n", 2, "body.radius_mm=100;wiring.channels=12", "body.radius_mm=150;wiring.channels=12"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, _ := searching(t, c.search)
			s := of(t, d)
			if s.Len() != c.length {
				t.Fatalf("%d, want %d", s.Len(), c.length)
			}
			for i, want := range map[int]string{0: c.first, s.Len() - 1: c.last} {
				if got := spoken(s.Variant(i)); want != "" && got != spokenSorted(want) {
					t.Errorf("%d: %s, want %s", i, got, want)
				}
			}
		})
	}
}

// spoken are a variant's settings, sorted.
func spoken(v space.Variant) string {
	var out []string
	for _, s := range v.Settings {
		text := strings.Trim(design.Literal(s.Value), `"`)
		out = append(out, s.Key+"="+text)
	}
	slices.Sort(out)
	return strings.Join(out, ";")
}

func spokenSorted(text string) string {
	parts := strings.Split(text, ";")
	slices.Sort(parts)
	return strings.Join(parts, ";")
}

// Whatever may vary, each candidate is a design by its settings exactly where it is one by its
// text, and the same one, and all remarks of the text stay.
func TestAnyChoices(t *testing.T) {
	lines := []string{
		"[search.body]\nshape = [\"geodesic\", \"ball\", \"cube\", \"prism\", \"snub cube\"]\nsides = [5, 12]\nradius_mm = {from = 90, to = 240}",
		"[search.body]\nsubdivision = [1, 2]\ndual = [true, false]\nbase = [\"icosahedron\", \"octahedron\", \"tetrahedron\"]",
		"[search.body]\nm = [1, 2, 3]\nn = [0, 1]\ncut_height_mm = {from = -60, to = 40}\nwall_mm = [2, 3]",
		"[search.mounts]\non = [\"faces\", \"vertices\", \"even\", \"edges\"]\ncount = [12, 20]\nover = [\"ball\", \"dome\"]\nsymmetry = [1, 5]",
		"[search.mounts]\nskip = [[], [33], [1, 2]]\nkeep_clear_below_deg = {from = -30, to = 30}",
		"[search.wiring]\nchannels = [2, 6, 8]\nsplit = [\"arrival\", \"height\"]\namplifier_volt = [2, 4]\nlongest_string = [1, 3]",
		"[search.placing]\non = [\"surface\", \"wall\", \"ceiling\"]\nyaw_deg = {from = -180, to = 180, step = 45}",
		"[search.driver]\ndiameter_mm = [30, 40]\nnominal_ohm = [4, 8]\nresonance_hz = [120, 200]",
		"[search.protection]\nfamily = [\"bessel\", \"linkwitz-riley\"]\norder = [3, 4]",
		"[search.timing]\nmodel = [\"sphere\", \"point\"]",
		"[search.spot]\nx_m = {from = 0.1, to = 2}",
	}
	rapid.Check(t, func(t *rapid.T) {
		var chosen []string
		for _, at := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(lines)-1), 1, 3, rapid.ID[int]).Draw(t, "tables") {
			if head, _, _ := strings.Cut(lines[at], "\n"); !slices.ContainsFunc(chosen, func(c string) bool { return strings.HasPrefix(c, head) }) {
				chosen = append(chosen, lines[at])
			}
		}
		d, base := searching(t, strings.Join(chosen, "\n")+"\n")
		s, err := space.Of(d)
		if err != nil {
			t.Fatal(err)
		}
		v := s.Variant(rapid.IntRange(0, s.Len()-1).Draw(t, "index"))
		text, err := v.Text(base)
		if err != nil {
			t.Fatal(err)
		}
		if n, m := bytes.Count(base, []byte("#")), bytes.Count(text, []byte("#")); m < n-len(v.Settings) {
			t.Fatalf("of %d remarks %d are left", n, m)
		}
		parsed, wrong := design.Parse("lantern.toml", text)
		applied, err := d.With(v.Settings...)
		if (wrong == nil) != (err == nil) {
			t.Fatalf("%v: %v, and %v", v.Settings, wrong, err)
		}
		if err != nil {
			return
		}
		if diff := cmp.Diff(parsed, applied); diff != "" {
			t.Fatalf("%v: %s", v.Settings, diff)
		}
		a, wrong := layout.Build(parsed)
		b, err := layout.Screen(applied)
		if (wrong == nil) != (err == nil) {
			t.Fatalf("%v: %v, and %v", v.Settings, wrong, err)
		}
		if err != nil {
			return
		}
		for _, w := range [][]int{{len(a.Warnings), len(b.Warnings)}} {
			if w[0] != w[1] {
				t.Fatalf("%v and %v", a.Warnings, b.Warnings)
			}
		}
		a.Warnings, b.Warnings = nil, nil // whose cures are not looked for while screening
		if diff := cmp.Diff(a, b, cmpopts.EquateNaNs(), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("%v: %s", v.Settings, diff)
		}
		if c, err := space.CostOf(b); err == nil {
			space.Broken(d.Search, b, c)
		}
	})
}

// More layouts than can be tried are refused, not begun with.
func TestTooMany(t *testing.T) {
	d, _ := searching(t, "[search.body]\nradius_mm = {from = 100, to = 190, step = 0.1}\n[search.placing]\nyaw_deg = {from = 0, to = 90, step = 0.1}\npitch_deg = {from = 0, to = 90, step = 0.1}\n")
	if _, err := space.Of(d); err == nil || !strings.Contains(err.Error(), "more than 10000000 layouts") {
		t.Error(err)
	}
}
