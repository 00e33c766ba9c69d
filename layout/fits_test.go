package layout_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// misfitting returns how many drivers do not fit, and the finding that says so, if
// there is one.
func misfitting(a *layout.Array) (n int, found []advice.Finding) {
	for _, r := range a.Fits {
		if !r.Fits(a.Limits) {
			n++
		}
	}
	for _, f := range a.Warnings {
		if f.Code == "drivers_misfit" {
			found = append(found, f)
		}
	}
	return n, found
}

// said tells whether the finding counts what the reports count.
func said(a *layout.Array) bool {
	n, found := misfitting(a)
	if n == 0 {
		return len(found) == 0
	}
	return len(found) == 1 && found[0].Rank == advice.Misfit && found[0].Cure != "" &&
		strings.HasPrefix(found[0].What, fmt.Sprintf("%d of %d ", n, len(a.Mounts)))
}

// rim52 is a dome with 52 drivers whose flanges used to reach over its rim: the
// plan was silent, the sheets had 23 that did not fit.
const rim52 = "shape = \"ball\"\nradius_mm = 150\ncut_height_mm = 0\n"

const flange34 = "[driver]\ndiameter_mm = 28\ncutout_mm = 29\nflange_mm = 34\ndepth_mm = 18\n"

func TestDomeFits(t *testing.T) {
	large := "shape = \"ball\"\nradius_mm = 400\ncut_height_mm = 0\n"
	for n, body := range map[int]string{1: rim52, 2: rim52, 12: rim52, 52: rim52, 100: rim52, 300: large, 700: large} {
		t.Run(strconv.Itoa(n), func(t *testing.T) {
			a := build(t, with(body, fmt.Sprintf("on = \"even\"\ncount = %d\nover = \"dome\"", n), flange34))
			if bad, found := misfitting(a); len(a.Mounts) != n || bad > 0 || len(found) > 0 || len(a.Warnings) > 0 {
				t.Errorf("%d mounts, %d do not fit: %v", len(a.Mounts), bad, a.Warnings)
			}
		})
	}
}

// One verdict: with a depth of 140 mm on the starter the plan had 10 that do not
// fit, the sheets 39.
func TestOneVerdict(t *testing.T) {
	for _, c := range []struct {
		depth float64
		want  int
	}{{18, 0}, {60, 5}, {80, 34}, {140, 39}} {
		t.Run(fmt.Sprint(c.depth), func(t *testing.T) {
			d := design.Default()
			d.Driver.Depth = c.depth / 1000
			a, err := layout.Build(d)
			if err != nil {
				t.Fatal(err)
			}
			if n, found := misfitting(a); n != c.want || !said(a) {
				t.Errorf("%d do not fit, want %d: %v", n, c.want, found)
			}
		})
	}
}

func TestKeptClearSpreadsAll(t *testing.T) {
	ball := "shape = \"ball\"\nradius_mm = 150\n"
	for _, c := range []struct{ name, body, mounts string }{
		{"below the middle", ball, "keep_clear_below_deg = 0"},
		{"below and a handle", ball, "keep_clear_below_deg = -10\nkeep_clear_deg = [[180, 60, 15]]"},
		{"a dome, higher than its cut", rim52, "over = \"dome\"\nkeep_clear_below_deg = 15"},
		{"a dome with a handle", rim52, "over = \"dome\"\nkeep_clear_deg = [[0, 90, 20]]\nsymmetry = 4"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := parse(t, "a.toml", with(c.body, "on = \"even\"\ncount = 48\n"+c.mounts, flange34))
			a, err := layout.Build(d)
			if err != nil {
				t.Fatal(err)
			}
			if n, _ := misfitting(a); len(a.Mounts) != 48 || n > 0 || len(a.Warnings) > 0 {
				t.Errorf("%d of 48 places, %d do not fit: %v", len(a.Mounts), n, a.Warnings)
			}
			for _, m := range a.Mounts {
				low := math.Asin(m.Point.Z / r3.Norm(m.Point))
				if below := d.Mounts.KeepClearBelowDeg; below != nil && low < *below*math.Pi/180-1e-9 {
					t.Errorf("mount %d is at %g rad", m.ID, low)
				}
			}
		})
	}
}

// Places that drop out are counted, and why.
func TestLeftOut(t *testing.T) {
	cube := "shape = \"cube\"\nradius_mm = 100"
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"faces", with(cube, "keep_clear_below_deg = 10\nkeep_clear_deg = [[0, 90, 20]]\n", small) + "[fit]\napart_mm = 0", []string{}},
		{"faces below", with(cube, "keep_clear_below_deg = 0", small), []string{"1 place is left out of 6: 1 lower than keep_clear_below_deg = 0"}},
		{"faces in a zone", with(cube, "keep_clear_deg = [[0, 0, 20], [90, 0, 20]]\nkeep_clear_below_deg = 0", small),
			[]string{"3 places are left out of 6: 1 lower than keep_clear_below_deg = 0 and 2 where keep_clear_deg lets no flange be"}},
		{"cut faces are no news", with(cube+"\ncut_height_mm = 10", "", small), nil},
		{"skipped are no news", with(cube, "skip = [1]", small), nil},
		{"even, cut afterwards", with("shape = \"ball\"\nradius_mm = 100\ncut_height_mm = 0", "on = \"even\"\ncount = 12", small),
			[]string{"of the 12 places asked for 6 are cut away or too near the cut, and 6 left: set over = \"dome\" to spread all 12 over what is left of the body"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := parse(t, "a.toml", c.text)
			a, err := layout.Build(d)
			if len(c.want) == 0 && c.want != nil {
				if err == nil || !strings.Contains(err.Error(), "no driver left: of 6 places 0 are cut away, 6 kept clear and 0 skipped") {
					t.Errorf("error %v", err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if got := strings.Join(advice.Lines(a.Warnings), "\n"); got != strings.Join(c.want, "\n") {
				t.Errorf("says %q", got)
			}
		})
	}
}

// ways finds the changes that a cure names, and applies them.
var ways = map[*regexp.Regexp]func(*design.Design, []string){
	regexp.MustCompile(`^set count = (\d+), about`):              func(d *design.Design, m []string) { d.Mounts.Count = int(figure(m[1])) },
	regexp.MustCompile(`^take flange_mm of at most ([\d.]+)$`):   func(d *design.Design, m []string) { d.Put("driver.flange_mm", figure(m[1])) },
	regexp.MustCompile(`^take depth_mm of at most ([\d.]+)$`):    func(d *design.Design, m []string) { d.Put("driver.depth_mm", figure(m[1])) },
	regexp.MustCompile(`^take screw_mm of at most ([\d.]+)$`):    func(d *design.Design, m []string) { d.Put("driver.screw_mm", figure(m[1])) },
	regexp.MustCompile(`^take a driver .* at most ([\d.]+) mm$`): func(d *design.Design, m []string) { shrink(&d.Driver, figure(m[1])) },
	regexp.MustCompile(`^take radius_mm of at least (\d+)(?: with cut_height_mm = ([-\d.]+))?(?: and height_mm = ([\d.]+))?$`): func(d *design.Design, m []string) {
		d.Put("body.radius_mm", figure(m[1]))
		if m[2] != "" {
			d.Put("body.cut_height_mm", figure(m[2]))
		}
		if m[3] != "" {
			d.Put("body.height_mm", figure(m[3]))
		}
	},
	regexp.MustCompile(`^leave .* with skip = \[(.*)\]$`): func(d *design.Design, m []string) {
		d.Mounts.Skip = nil
		for _, id := range strings.Split(m[1], ", ") {
			d.Mounts.Skip = append(d.Mounts.Skip, int(figure(id)))
		}
	},
}

func figure(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return v
}

func shrink(d *design.Driver, flange float64) {
	factor := flange / (2000 * d.FlangeRadius)
	for _, v := range []*float64{&d.ConeRadius, &d.CutoutRadius, &d.FlangeRadius, &d.Depth, &d.MagnetRadius, &d.MagnetHeight,
		&d.TerminalReach, &d.TerminalFront, &d.TerminalLength} {
		*v *= factor
	}
}

// sizes returns the sizes in mm to try of one that a way tells: itself, and where it is the most
// on a ball, some that are less by what a builder's driver may be. On a body with faces even
// places move with the size of a flange, and may come to lie on edges.
func sizes(d *design.Design, way, told string) []string {
	out := []string{told}
	if strings.Contains(way, "at most") && d.Body.Shape == "ball" {
		for _, less := range []float64{0.01, 0.05} {
			out = append(out, fmt.Sprintf("%.2f", figure(told)-less))
		}
	}
	return out
}

// cured applies each way of a cure to the design and tells of those that leave
// something that does not fit. It returns how many ways there were.
func cured(t rapid.TB, read func() *design.Design, cure string) int {
	t.Helper()
	all := strings.Split(cure, ", or ")
	for _, way := range all {
		known := false
		for pattern, apply := range ways {
			m := pattern.FindStringSubmatch(way)
			if m == nil {
				continue
			}
			known = true
			for i, size := range sizes(read(), way, m[1]) {
				d := read()
				m[1] = size
				apply(d, m)
				a, err := layout.Build(d)
				if err != nil {
					if i == 0 { // less may not be at all
						t.Errorf("%s: %v", way, err)
					}
					continue
				}
				if n, _ := misfitting(a); n > 0 {
					t.Errorf("%s, %s: still %d do not fit: %v", way, size, n, a.Warnings)
				}
			}
		}
		if !known {
			t.Errorf("a way that no builder can go: %q", way)
		}
	}
	return len(all)
}

func TestCuresCure(t *testing.T) {
	geo := "shape = \"geodesic\"\nsubdivision = 2\nradius_mm = 150\n"
	for _, c := range []struct {
		name, text string
		ways       int
	}{
		{"too many on a dome", with(rim52, "on = \"even\"\ncount = 140\nover = \"dome\"", flange34), 3},
		{"far too many on a dome", with(rim52, "on = \"even\"\ncount = 300\nover = \"dome\"", flange34), 3},
		{"too many in fives", with(rim52, "on = \"even\"\ncount = 140\nover = \"dome\"\nsymmetry = 5", flange34), 3},
		{"too many on a ball", with("shape = \"ball\"\nradius_mm = 80", "on = \"even\"\ncount = 60", flange34), 3},
		{"too deep for a dome", with(rim52, "on = \"even\"\ncount = 30\nover = \"dome\"", strings.Replace(flange34, "18", "120", 1)), 3},
		{"no place takes it", with(rim52, "on = \"even\"\ncount = 30\nover = \"dome\"", strings.Replace(flange34, "18", "149", 1)), 2},
		{"little over a cut", with("shape = \"ball\"\nradius_mm = 150\ncut_height_mm = 60", "on = \"even\"\ncount = 90\nover = \"dome\"", flange34), 3},
		{"all but jammed", with("shape = \"ball\"\nradius_mm = 140\ncut_height_mm = 0", "on = \"even\"\ncount = 43\nover = \"dome\"\nkeep_clear_below_deg = 5\nkeep_clear_deg = [[0, 60, 15]]",
			"[driver]\ndiameter_mm = 55\nflange_mm = 65\ndepth_mm = 40\n"), 3},
		{"faces of a dome", with(geo+"cut_height_mm = 20", "", strings.Replace(flange34, "18", "60", 1)), 2},
		{"flanges over edges", with(geo, "", "[driver]\ndiameter_mm = 30\nflange_mm = 52\n"), 2},
		{"a driver too large", with(geo, "", "[driver]\ndiameter_mm = 50\n"), 2},
		{"vertices", with(geo, "on = \"vertices\"", "[driver]\ndiameter_mm = 60\nflange_mm = 90\n"), 2},
		{"edges", with("shape = \"cube\"\nradius_mm = 100", "on = \"edges\"", "[driver]\ndiameter_mm = 40\nflange_mm = 120\n"), 2},
		{"a prism", with("shape = \"prism\"\nsides = 6\nradius_mm = 100\nheight_mm = 120", "", "[driver]\ndiameter_mm = 90\nflange_mm = 105\n"), 2},
		{"screws", with("shape = \"cube\"\nradius_mm = 100", "", "[driver]\ndiameter_mm = 60\nflange_mm = 68\nscrew_mm = 4\n[fit]\nedge_mm = 0.5\n"), 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			read := func() *design.Design { return parse(t, "a.toml", c.text) }
			a, err := layout.Build(read())
			if err != nil {
				t.Fatal(err)
			}
			if n, found := misfitting(a); n == 0 || !said(a) {
				t.Fatalf("%d do not fit, and it says %v", n, a.Warnings)
			} else if n := cured(t, read, found[0].Cure); n != c.ways {
				t.Errorf("%d ways, want %d: %s", n, c.ways, found[0])
			}
		})
	}
}

// What the program spreads itself fits, or a finding says what would.
func TestEvenPlacesFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(40, 300).Draw(t, "radius")
		cutout := rapid.Float64Range(12, 45).Draw(t, "cut-out")
		// On a body with faces its edges may be in the way, which is no doing of the
		// program's; what it says must hold there too.
		shape := rapid.SampledFrom([]string{"ball", "ball", "ball", "dodecahedron", "geodesic"}).Draw(t, "shape")
		body := fmt.Sprintf("shape = %q\nradius_mm = %g\n", shape, radius)
		mounts := fmt.Sprintf("on = \"even\"\ncount = %d\n", rapid.IntRange(1, 40).Draw(t, "count"))
		if rapid.Bool().Draw(t, "cut") {
			body += fmt.Sprintf("cut_height_mm = %g\n", radius*rapid.Float64Range(-0.8, 0.5).Draw(t, "cut height"))
			if rapid.Bool().Draw(t, "dome") {
				mounts += "over = \"dome\"\n"
			}
		}
		if rapid.Bool().Draw(t, "low") {
			mounts += fmt.Sprintf("keep_clear_below_deg = %g\n", rapid.Float64Range(-80, 40).Draw(t, "below"))
		}
		if rapid.Bool().Draw(t, "zone") {
			mounts += fmt.Sprintf("keep_clear_deg = [[%g, %g, %g]]\n", rapid.Float64Range(-180, 180).Draw(t, "azimuth"),
				rapid.Float64Range(0, 90).Draw(t, "elevation"), rapid.Float64Range(1, 25).Draw(t, "half-angle"))
		}
		driver := fmt.Sprintf("[driver]\ndiameter_mm = %g\nflange_mm = %g\ndepth_mm = %g\n", cutout,
			cutout*rapid.Float64Range(1, 1.5).Draw(t, "flange"), rapid.SampledFrom([]float64{0, 8, 15, 25, 40, 80}).Draw(t, "depth"))
		limits := fmt.Sprintf("[fit]\napart_mm = %g\nedge_mm = %g\n", rapid.Float64Range(0, 4).Draw(t, "apart"), rapid.Float64Range(0, 4).Draw(t, "edge"))
		text := with(body, mounts, driver+limits)
		read := func() *design.Design {
			d, err := design.Parse("a.toml", []byte(text))
			if err != nil {
				t.Skip(err)
			}
			return d
		}
		a, err := layout.Build(read())
		if err != nil {
			return // no room at all: an error that names the key
		}
		n, found := misfitting(a)
		if !said(a) {
			t.Fatalf("%d of %d do not fit, and it says %v", n, len(a.Mounts), a.Warnings)
		}
		if n > 0 && shape == "ball" && !strings.Contains(text, "over") && !strings.Contains(text, "cut_height") &&
			!strings.Contains(found[0].Cure, "set count = ") && a.Driver.Depth <= a.Body.Radius/2 && len(a.Mounts) > 1 {
			t.Errorf("does not say how many fit: %v", found)
		}
		if n > 0 && !strings.HasPrefix(found[0].Cure, "take a smaller driver") && !strings.HasPrefix(found[0].Cure, "set on = ") {
			cured(t, read, found[0].Cure)
		}
	})
}

// A driver that fits in no way is told in three.
func TestMostMisfits(t *testing.T) {
	d := design.Default()
	d.Mounts.Skip = nil
	d.Put("driver.cutout_mm", 60)
	d.Put("driver.flange_mm", 90)
	d.Put("driver.depth_mm", 140)
	d.Put("driver.screw_mm", 5)
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	if f, _ := found(a, "drivers_misfit"); strings.Count(f.What, "; ") != 2 {
		t.Errorf("%s", f.What)
	}
}
