package layout_test

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// fromList lays a body out with a list of mounts.
func fromList(t *testing.T, body, list, mounts string) (*layout.Array, error) {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "p.csv"), []byte(list), 0o600); err != nil {
		t.Fatal(err)
	}
	return layout.Build(parse(t, filepath.Join(dir, "a.toml"), with(body, "on = \"list\"\nlist = \"p.csv\"\n"+mounts, small)))
}

func numbersOf(a *layout.Array) []int {
	var out []int
	for _, m := range a.Mounts {
		out = append(out, m.ID)
	}
	return out
}

// Rows keep their numbers whatever their height and whatever is cut away or skipped.
func TestListNumbers(t *testing.T) {
	const ball = "shape = \"ball\"\nradius_mm = 100"
	const rows = "0,0,-100,0,0,-1\n0,0,100,0,0,1\n100,0,0,1,0,0\n0,100,0,0,1,0\n"
	for _, c := range []struct {
		name, body, list, mounts string
		want                     []int
	}{
		{"rows count from 1", ball, "x_mm,y_mm,z_mm,nx,ny,nz\n" + rows, "", []int{1, 2, 3, 4}},
		{"remarks and empty lines do not", ball, "# a\nx_mm,y_mm,z_mm,nx,ny,nz\n\n# b\n,,,,,\n" + rows, "skip = [2]", []int{1, 3, 4}},
		{"a cut takes the first", ball + "\ncut_height_mm = -50", "x_mm,y_mm,z_mm,nx,ny,nz\n" + rows, "", []int{2, 3, 4}},
		{"cut away and skipped", ball + "\ncut_height_mm = -50", "x_mm,y_mm,z_mm,nx,ny,nz\n" + rows, "skip = [1, 4]", []int{2, 3}},
		{"a column of numbers, as a spreadsheet saves it", ball,
			"Number;X_mm;Y_mm;Z_mm;nx;ny;nz\n30;0;0;−100;0;0;−1\n7;0;0;100,0;0;0;1\n12;100;0;0;1;0;0\n", "skip = [30]", []int{7, 12}},
	} {
		t.Run(c.name, func(t *testing.T) {
			a, err := fromList(t, c.body, c.list, c.mounts)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(c.want, numbersOf(a)); d != "" {
				t.Error(d)
			}
		})
	}
	for _, c := range []struct {
		name, list, mounts, want string
		kind                     error
	}{
		{"twice", "number,x_mm,y_mm,z_mm,nx,ny,nz\n7,0,0,100,0,0,1\n7,0,0,-100,0,0,-1\n", "", "p.csv:3: number = 7: line 2 has it already; must be different for each mount", design.ErrRange},
		{"not whole", "number,x_mm,y_mm,z_mm,nx,ny,nz\n7.5,0,0,100,0,0,1\n", "", "p.csv:2: number = 7.5: must be a whole number from 1 to 10000", design.ErrType},
		{"skipped and not there", "number,x_mm,y_mm,z_mm,nx,ny,nz\n7,0,0,100,0,0,1\n", "skip = [1]", "mounts.skip: there is no mount 1 in p.csv; must be a number of the list", layout.ErrNoSuchMount},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := fromList(t, ball, c.list, c.mounts)
			if !errors.Is(err, c.kind) || !strings.HasSuffix(err.Error(), c.want) {
				t.Errorf("\n got %v\nwant %s", err, c.want)
			}
		})
	}
}

// scaledList writes the mounts of a body as a list, moved out by a factor, some by more.
func scaledList(a *layout.Array, factor float64, more map[int]float64) string {
	var b strings.Builder
	b.WriteString("x_mm,y_mm,z_mm,nx,ny,nz\n")
	for _, m := range a.Mounts {
		p := r3.Scale(1000*(factor+more[m.ID]), m.Point)
		fmt.Fprintf(&b, "%v,%v,%v,%v,%v,%v\n", p.X, p.Y, p.Z, m.Normal.X, m.Normal.Y, m.Normal.Z)
	}
	return b.String()
}

func found(a *layout.Array, code string) (advice.Finding, bool) {
	for _, f := range a.Warnings {
		if f.Code == code {
			return f, true
		}
	}
	return advice.Finding{}, false
}

// Points off the body are told with the radius that fits, and seats stay on the body in
// the points' own direction.
func TestListOffBody(t *testing.T) {
	for _, c := range []struct {
		name, body string
		factor     float64
		more       map[int]float64
		what, cure string
	}{
		{"on a ball", "shape = \"ball\"\nradius_mm = 100", 1, nil, "", ""},
		{"within a print", "shape = \"ball\"\nradius_mm = 100", 1.0045, nil, "", ""},
		{"within a print of a large ball", "shape = \"ball\"\nradius_mm = 200", 1.0045, nil, "", ""},
		{"within a print of a small ball", "shape = \"ball\"\nradius_mm = 80", 1.0056, nil, "", ""},
		{"a larger ball", "shape = \"ball\"\nradius_mm = 100", 1.04, nil,
			"12 points of 12 in p.csv off the body by more than a print's 0.5 mm; mount 1 most, 4.0 mm outside, where the shell's seat stays on the body",
			"set radius_mm = 104.0, which fits best and leaves mount 1 0.0 mm off, or correct the list"},
		{"one row wrong", "shape = \"ball\"\nradius_mm = 100", 1, map[int]float64{5: -0.06},
			"1 point of 12 in p.csv off the body by more than a print's 0.5 mm; mount 5 most, 6.0 mm inside, where the shell's seat stays on the body",
			"correct the list: no radius fits all its points; the best, radius_mm = 99.5, leaves mount 5 5.5 mm off"},
		{"a larger dodecahedron", "shape = \"dodecahedron\"\nradius_mm = 100", 1.04, nil,
			"12 points of 12 in p.csv off the body by more than a print's 0.5 mm; mount 1 most, 3.2 mm outside, where the shell's seat stays on the body",
			"set radius_mm = 104.0, which fits best and leaves mount 1 0.0 mm off, or correct the list"},
	} {
		t.Run(c.name, func(t *testing.T) {
			even := ""
			if strings.Contains(c.body, "ball") {
				even = "on = \"even\"\ncount = 12"
			}
			model := build(t, with(c.body, even, small))
			a, err := fromList(t, c.body, scaledList(model, c.factor, c.more), "")
			if err != nil {
				t.Fatal(err)
			}
			f, told := found(a, "list_off_body")
			if told != (c.what != "") || !strings.HasPrefix(f.What, strings.SplitN(c.what, "; mount", 2)[0]) {
				t.Errorf("told %q, want %q", f.What, c.what)
			}
			// Of points that are equally far off by rounding any may be named.
			if len(c.more) > 0 && (f.What != c.what || f.Cure != c.cure) {
				t.Errorf("told %q, want %q", f, c.what+": "+c.cure)
			}
			if told && !strings.HasPrefix(f.Cure, strings.SplitN(c.cure, " mount", 2)[0]) {
				t.Errorf("cure %q, want %q", f.Cure, c.cure)
			}
			for i, m := range a.Mounts {
				if m.Face != model.Mounts[i].Face {
					t.Errorf("mount %d is on face %d, want %d", m.ID, m.Face, model.Mounts[i].Face)
				}
				seat := a.Seat(m)
				if off := r3.Norm(r3.Sub(seat, model.Mounts[i].Point)); off > 1e-9 {
					t.Errorf("the seat of mount %d is %g m from where its point looks", m.ID, off)
				}
			}
		})
	}
}

// A seat on a flat face stands where the ray through an oblique point meets it, not at
// the point's foot.
func TestSeatDirection(t *testing.T) {
	a, err := fromList(t, "shape = \"cube\"\nradius_mm = 173.2050807568877", "x_mm,y_mm,z_mm,nx,ny,nz\n60,105,30,0,1,0\n", "")
	if err != nil {
		t.Fatal(err)
	}
	want := r3.Scale(1/1.05, r3.Vec{X: 0.06, Y: 0.105, Z: 0.03})
	if got := a.Seat(a.Mounts[0]); a.Mounts[0].Face < 0 || r3.Norm(r3.Sub(got, want)) > 1e-12 {
		t.Errorf("%v, want %v", got, want)
	}
	f, _ := found(a, "list_off_body")
	if math.Abs(a.Mounts[0].Point.Y-0.105) > 1e-12 || !strings.Contains(f.What, "5.0 mm outside") {
		t.Errorf("%v; %s", a.Mounts[0].Point, f)
	}
}

// A mount is one of a face where it looks as the face does, within a degree.
func TestListedFace(t *testing.T) {
	for lean, on := range map[float64]bool{0: true, 0.9: true, 1.3: false, 3: false, 40: false} {
		sin, cos := math.Sincos(lean * math.Pi / 180)
		a, err := fromList(t, "shape = \"cube\"\nradius_mm = 173.2050807568877", fmt.Sprintf("x_mm,y_mm,z_mm,nx,ny,nz\n10,100,0,%v,%v,0\n", sin, cos), "")
		if err != nil {
			t.Fatal(err)
		}
		if got := a.Mounts[0].Face >= 0; got != on {
			t.Errorf("leaning %v degrees, on a face: %v", lean, got)
		}
	}
}

// A few places are proposed to stay empty, of pairs that are too close one each.
func TestMostEmptied(t *testing.T) {
	for pairs, want := range map[int]bool{1: true, 8: true, 9: false} {
		var b strings.Builder
		b.WriteString("x_mm,y_mm,z_mm,nx,ny,nz\n")
		for i := range pairs {
			for _, off := range []float64{0, 0.03} { // 9 mm apart, with drivers of 10 mm
				sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(pairs) + off)
				fmt.Fprintf(&b, "%v,%v,0,%v,%v,0\n", 300*cos, 300*sin, cos, sin)
			}
		}
		a, err := fromList(t, "shape = \"ball\"\nradius_mm = 300", b.String(), "")
		if err != nil {
			t.Fatal(err)
		}
		f, _ := found(a, "drivers_misfit")
		if got := strings.Contains(f.Cure, fmt.Sprintf("leave %d place", pairs)); got != want {
			t.Errorf("%d pairs: %s", pairs, f)
		}
	}
}
