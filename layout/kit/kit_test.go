package kit

import (
	"errors"
	"flag"
	"fmt"
	"math"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/carve"
	"pappus/layout/design"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

// slow has the kits made, too, that take minutes.
var slow = flag.Bool("slow", false, "make the kits that take minutes, too")

const plainDesign = `
[body]
%s
[mounts]
%s
[driver]
diameter_mm = 28
cutout_mm = 33
flange_mm = 44
depth_mm = 18
screw_mm = 2.2
nominal_ohm = 8
[print]
bed_mm = [%[3]g, %[3]g, %[3]g]
[spot]
x_m = 2
y_m = 0
z_m = 0
[kit]
recess_mm = 1
%[4]s
`

// prismBody is cut by flat seams, between the drivers of its sides.
const prismBody, sideMounts = "shape = \"prism\"\nsides = 4\nradius_mm = 140\nheight_mm = 120", "on = \"faces\"\nskip = [1, 6]"

// made is a kit and what it was made from.
type made struct {
	*maker
	plain []poly.Mesh
	parts []Part
}

func buildOnly(t testing.TB, body, mounts string, bed float64, kit string) made {
	t.Helper()
	return cutUp(t, built(t, fmt.Sprintf(plainDesign, body, mounts, bed, kit)))
}

// built builds the array of a design that is a text.
func built(t testing.TB, text string) *layout.Array {
	t.Helper()
	d, err := design.Parse("a.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// cutUp cuts an array's shell for the printer's bed.
func cutUp(t testing.TB, a *layout.Array) (m made) {
	t.Helper()
	plan, plain, err := Segments(a)
	if err != nil {
		t.Fatal(err)
	}
	m.plain = plain
	if m.maker, err = newMaker(a, plan, 2); err != nil {
		t.Fatal(err)
	}
	return m
}

func build(t testing.TB, body, mounts string, bed float64, kit string) made {
	t.Helper()
	return madeOf(t, buildOnly(t, body, mounts, bed, kit))
}

// madeOf makes all parts of a kit.
func madeOf(t testing.TB, m made) made {
	t.Helper()
	work, err := Plan(m.array, m.plan, m.plain, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, j := range work.Jobs {
		p, err := j()
		if err != nil {
			t.Fatal(err)
		}
		m.parts = append(m.parts, p)
	}
	return m
}

// TestKits: parts of odd sizes are closed, in one piece and by another program's judgement
// too, lie on the bed, and are not in each other's way.
func TestKits(t *testing.T) {
	for _, c := range []struct {
		name, body, mounts string
		bed                float64
		kit                string
		slow               bool
	}{
		{"cube, whole", "shape = \"cube\"\nradius_mm = 80", "on = \"faces\"", 200, "", false},
		{"prism in laps", prismBody, sideMounts, 150, "", false},
		{"prism in flanges", prismBody, sideMounts, 150, "joint = \"flange\"", true},
		{"mounted from the rear", prismBody, sideMounts, 150, "mounting = \"rear\"", true},
		{"cube, stepped", "shape = \"cube\"\nradius_mm = 120", "on = \"faces\"", 130, "", true},
		{"dome of a dodecahedron", "shape = \"dodecahedron\"\nradius_mm = 130\ncut_height_mm = -30", "on = \"faces\"", 170, "", true},
		{"stepped", "shape = \"dodecahedron\"\nradius_mm = 150", "on = \"faces\"", 100, "", true},
		{"ball of 12", "shape = \"ball\"\nradius_mm = 100", "on = \"even\"\ncount = 12", 150, "", true},
		{"two on a ball", "shape = \"ball\"\nradius_mm = 100", "on = \"even\"\ncount = 2", 150, "", true},
		{"one on a ball", "shape = \"ball\"\nradius_mm = 70", "on = \"even\"\ncount = 1", 200, "", true},
		{"one on a ball in parts", "shape = \"ball\"\nradius_mm = 100", "on = \"even\"\ncount = 1", 150, "", true},
		{"ball of 96", "shape = \"ball\"\nradius_mm = 170", "on = \"even\"\ncount = 96", 200, "", true},
		{"ball of 300", "shape = \"ball\"\nradius_mm = 300", "on = \"even\"\ncount = 300", 250, "", true},
		{"ball of 1000", "shape = \"ball\"\nradius_mm = 540", "on = \"even\"\ncount = 1000", 300, "", true},
		{"dome of 60 on a ball", "shape = \"ball\"\nradius_mm = 180\ncut_height_mm = 20\nstand_height_mm = 25", "on = \"even\"\ncount = 60", 200, "", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.slow && !*slow {
				t.Skip("few cases every day")
			}
			checkKit(t, build(t, c.body, c.mounts, c.bed, c.kit))
		})
	}
}

// checkKit looks a kit over: each part is closed, one piece, printable and on the bed; no two that
// are put together have a place in common or are nearer than the gap, and somewhere they are as
// near; and the plain segments are the shell.
func checkKit(t *testing.T, m made) {
	t.Helper()
	least := math.Inf(1)
	for i, p := range m.parts {
		if err := p.Mesh.Check(); err != nil {
			t.Errorf("%s: %v", p.Name, err)
		}
		if n := len(p.Mesh.Pieces()); n != 1 {
			t.Errorf("%s: %d pieces", p.Name, n)
		}
		if l := Lay(p, m.array.Print.Bed); !l.Fits {
			t.Errorf("%s: %v on the bed", p.Name, l.Size)
		}
		if i%3 == 0 {
			testkit.Printable(t, p.Mesh, 1)
		}
		for _, q := range m.parts[:i] {
			if p.Loose || q.Loose || !near(p.Mesh, q.Mesh) {
				continue
			}
			if both, err := carve.Combine(func(in []bool) bool { return in[0] && in[1] }, p.Mesh, q.Mesh); !errors.Is(err, carve.ErrEmpty) {
				t.Errorf("%s and %s have %g mm3 in common (%v)", q.Name, p.Name, 1e9*both.Volume(), err)
			}
			least = min(least, m.checkApart(t, p, q), m.checkApart(t, q, p))
		}
	}
	checkOrder(t, m)
	if !math.IsInf(least, 1) && least > 1.01*m.Gap {
		t.Errorf("parts are %g m from each other and nowhere nearer, want %g", least, m.Gap)
	}
	checkSum(t, m)
}

// checkSum: the plain segments have the volume of the shell. Corners of segments that are nearer
// than 3 millionths of the shell's size are one ([poly.Mesh.Cells]).
func checkSum(t *testing.T, m made) {
	t.Helper()
	whole, err := shell.Make(m.array.Body, m.array.Wall, m.array.Holes())
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, p := range m.plain {
		sum += p.Volume()
	}
	if math.Abs(sum/whole.Volume()-1) > 1e-6 {
		t.Errorf("segments have %.9g m3, the shell %.9g", sum, whole.Volume())
	}
}

func near(p, q poly.Mesh) bool {
	a, b := p.Bounds(), q.Bounds()
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y && a.Min.Z < b.Max.Z && b.Min.Z < a.Max.Z
}

// TestGaps: along every seam the edges of two segments are apart by the gap that is asked for,
// and so are a tongue and the wall that it lies under; and a tongue is as thick as the wall.
func TestGaps(t *testing.T) {
	for _, joint := range []string{Lap, Flange} {
		m := buildOnly(t, prismBody, sideMounts, 150, "gap_mm = 0.3\njoint = \""+joint+"\"")
		seen := 0
		for _, s := range m.seams {
			p, ok := m.plainPoint(s, 2)
			if !ok || seen > 0 {
				continue
			}
			a, b := m.one(t, m.wall.regions[s.a].Segment), m.one(t, m.wall.regions[s.b].Segment)
			q := m.wall.on(r3.Vec{}, r3.Add(p, r3.Scale(5e-3, s.plane.Normal)), r3.Vec{Z: 1}, m.wall.thick/2)
			mid := m.wall.on(r3.Vec{}, p, r3.Vec{Z: 1}, m.wall.thick/2)
			from := r3.Sub(mid.at, r3.Scale(2e-3, s.plane.Normal))
			out, in := crossings(a, from, s.plane.Normal), crossings(b, from, s.plane.Normal)
			if len(out) == 0 || len(in) == 0 || math.Abs(in[0]-out[0]-0.3e-3) > 1e-8 {
				t.Errorf("%s: the edges are %v and %v m away", joint, out, in)
			}
			if joint == Lap {
				wall, tongue := crossings(b, q.at, q.out), crossings(a, q.at, q.out)
				if len(wall) == 0 || len(tongue) < 2 || math.Abs(tongue[0]-wall[0]-0.3e-3) > 1e-8 || !slices.ContainsFunc(tongue, func(v float64) bool { return math.Abs(v-tongue[0]-m.wall.thick) < 1e-8 }) {
					t.Errorf("the wall ends at %v m, the tongue is from %v m", wall, tongue)
				}
			}
			seen++
		}
		if seen < 1 {
			t.Errorf("%s: %d seams looked at", joint, seen)
		}
	}
}

// one makes a segment alone.
func (m made) one(t *testing.T, i int) poly.Mesh {
	t.Helper()
	p, err := m.segment(i, m.plain[i], len(m.plain))
	if err != nil {
		t.Fatal(err)
	}
	return p.Mesh
}

// plainPoint returns a place on a seam that nothing else is near to but so many planes of the wall, off the
// edges of triangles.
func (m made) plainPoint(s seam, planes int) (r3.Vec, bool) {
	const room = 14e-3
points:
	for _, p := range s.points {
		p = r3.Add(p, r3.Vec{X: 1.7e-5, Y: 2.3e-5, Z: 3.1e-5})
		p = s.plane.Foot(p)
		for _, o := range m.seams {
			for _, at := range o.points {
				if o.number != s.number && r3.Norm(r3.Sub(at, p)) < 1.5*room {
					continue points
				}
			}
		}
		near := 0
		for _, w := range m.wall.planes {
			if w.Above(p) > -room {
				near++
			}
		}
		clear := near <= planes && m.offDrivers(p, room)
		for _, f := range m.fastened[s.number] {
			clear = clear && r3.Norm(r3.Sub(f.at, p)) > room
		}
		if clear {
			return p, true
		}
	}
	return r3.Vec{}, false
}

// crossings returns how far a ray from a place goes to each meeting with a mesh.
func crossings(m poly.Mesh, from, along r3.Vec) (out []float64) {
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		if d, ok := pierced(from, along, a, b, c); ok && d > 0 {
			out = append(out, d)
		}
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(p, q float64) bool { return math.Abs(q-p) < 1e-9 })
}

// TestSumOfSegments: segments trimmed for the gap, and what is trimmed, are the shell.
func TestSumOfSegments(t *testing.T) {
	m := buildOnly(t, prismBody, sideMounts, 150, "")
	whole, err := shell.Make(m.array.Body, m.array.Wall, m.array.Holes())
	if err != nil {
		t.Fatal(err)
	}
	all := &blank{}
	all.add(body, whole)
	sum := 0.0
	for i, plain := range m.plain {
		b := &blank{}
		b.add(body, plain)
		for _, s := range m.seams {
			if i == 0 {
				m.trimmed(all, s)
			}
			if m.wall.regions[s.a].Segment == i || m.wall.regions[s.b].Segment == i {
				m.trimmed(b, s)
			}
		}
		left, err := b.carve()
		if err != nil {
			t.Fatal(err)
		}
		sum += left.Volume()
	}
	gaps, err := carve.Combine(func(in []bool) bool {
		if !in[0] {
			return false
		}
		return slices.Contains(in[1:], true)
	}, all.meshes...)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(sum+gaps.Volume()-whole.Volume()) > 1e-7*whole.Volume() {
		t.Errorf("segments %g, gaps %g, shell %g m3", sum, gaps.Volume(), whole.Volume())
	}
}
