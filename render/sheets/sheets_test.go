package sheets_test

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/render/sheets"
	"pappus/testdata/planned"
	"pappus/timing"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

var keep = flag.String("keep", "", "folder to leave the sheets in, to be looked at")

// lantern is the demo design.
func lantern(t testing.TB) *layout.Array {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// on puts drivers on every face of a body but the base.
func on(b *body.Body) *layout.Array {
	a := &layout.Array{Name: "A test", Body: b, Wall: 0.003, Spot: r3.Vec{X: 2, Y: 0.5, Z: 1},
		Print:  layout.Print{Bed: r3.Vec{X: 0.3, Y: 0.3, Z: 0.3}, Density: 1240, Flow: 5e-9},
		Kit:    layout.Kit{Gap: 2e-4, Joint: "lap", Mounting: "front"},
		Driver: layout.Driver{Outline: fit.Outline{CutoutRadius: 0.0125, FlangeRadius: 0.015}, NominalOhm: 8}}
	for f, face := range b.Faces {
		if !face.Base() {
			a.Mounts = append(a.Mounts, layout.Mount{ID: len(a.Mounts) + 1, Point: b.Centroid(f), Normal: b.Normal(f), Face: f})
		}
	}
	return a
}

func platonic(t testing.TB, name string, radius float64) *body.Body {
	t.Helper()
	b, err := body.Platonic(name, radius)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func geodesic(t testing.TB, base string, n int, radius float64) *body.Body {
	t.Helper()
	b, err := body.Geodesic(base, n, radius)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// ball is a cut ball with a few drivers.
func ball(t testing.TB) *layout.Array {
	t.Helper()
	b, err := body.Ball(0.14).CutAt(-0.04)
	if err != nil {
		t.Fatal(err)
	}
	a := on(b)
	for i, v := range platonic(t, "icosahedron", 1).Vertices {
		if p := r3.Scale(b.Radius, v); p.Z > 0 {
			a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: p, Normal: v, Face: -1})
		}
	}
	return a
}

// halves is a plan of two levels.
func halves() shell.Plan {
	return shell.Plan{Sectors: 1, Heights: []float64{0}, Segments: []shell.Segment{
		{Level: 0, Low: -1, High: 0, To: 2 * math.Pi}, {Level: 1, Low: 0, High: 1, To: 2 * math.Pi}}}
}

func TestFiles(t *testing.T) {
	large := on(geodesic(t, "octahedron", 3, 0.4))
	large.Name = "Größe <1> & mehr"
	for _, test := range []struct {
		name string
		a    *layout.Array
		o    sheets.Options
		stl  int
	}{
		{"lantern", lantern(t), sheets.Options{}, 1},
		{"segments", on(geodesic(t, "icosahedron", 2, 0.15)), sheets.Options{Print: halves()}, 2},
		{"cube", on(platonic(t, "cube", 0.2)), sheets.Options{}, 1},
		{"octahedron", large, sheets.Options{NoShell: true}, 0},
		{"ball", ball(t), sheets.Options{}, 1},
	} {
		t.Run(test.name, func(t *testing.T) {
			files, err := sheets.Files(&timing.Plan{Spot: timing.Spot{Array: test.a}}, test.o)
			if err != nil {
				t.Fatal(err)
			}
			stl := 0
			for _, f := range files {
				var one, two bytes.Buffer
				if err := errors.Join(f.Write(&one), f.Write(&two)); err != nil {
					t.Fatalf("%s: %v", f.Name, err)
				}
				if !bytes.Equal(one.Bytes(), two.Bytes()) {
					t.Errorf("%s: two writings differ", f.Name)
				}
				leave(t, test.name, f.Name, one.Bytes())
				switch filepath.Ext(f.Name) {
				case ".stl":
					if strings.HasPrefix(f.Name, "shell") {
						stl++
					}
				case ".svg":
					wellFormed(t, f.Name, one.Bytes())
				case ".csv":
					if _, err := csv.NewReader(&one).ReadAll(); err != nil {
						t.Errorf("%s: %v", f.Name, err)
					}
				}
			}
			if stl != test.stl {
				t.Errorf("%d meshes, want %d", stl, test.stl)
			}
		})
	}
}

// TestQuarters: a cube whose cut-outs are off the planes at 45 degrees comes in four alike.
func TestQuarters(t *testing.T) {
	a := on(platonic(t, "cube", 0.2))
	a.Mounts = a.Mounts[1:5]
	plan := shell.Plan{Sectors: 4}
	for i := range 4 {
		from := math.Pi/4 + float64(i)*math.Pi/2
		plan.Segments = append(plan.Segments, shell.Segment{Sector: i, Low: -1, High: 1, From: from, To: from + math.Pi/2})
	}
	parts, err := shells(a, plan)
	if err != nil || len(parts) != 4 {
		t.Fatalf("%d parts, %v", len(parts), err)
	}
	for i, p := range parts {
		if err := p.Check(); err != nil || math.Abs(p.Volume()/parts[0].Volume()-1) > 1e-9 {
			t.Errorf("part %d: %g m3, %v", i+1, p.Volume(), err)
		}
	}
}

func leave(t *testing.T, folder, name string, data []byte) {
	t.Helper()
	if *keep == "" {
		return
	}
	if err := os.MkdirAll(filepath.Join(*keep, folder), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(*keep, folder, name), data, 0o644); err != nil {
		t.Fatal(err)
	}
}

func wellFormed(t *testing.T, name string, data []byte) {
	t.Helper()
	for d := xml.NewDecoder(bytes.NewReader(data)); ; {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
}

// drawing is what a test reads of an SVG.
type drawing struct {
	Width    string    `xml:"width,attr"`
	Height   string    `xml:"height,attr"`
	ViewBox  string    `xml:"viewBox,attr"`
	Polygons []outline `xml:"polygon"`
	Lines    []outline `xml:"polyline"`
	Circles  []struct {
		R      float64 `xml:"r,attr"`
		Dashes string  `xml:"stroke-dasharray,attr"`
	} `xml:"circle"`
	Texts []struct {
		X     float64 `xml:"x,attr"`
		Words string  `xml:",chardata"`
	} `xml:"text"`
}

type outline struct {
	Points string `xml:"points,attr"`
	Fill   string `xml:"fill,attr"`
	Stroke string `xml:"stroke,attr"`
	Dashes string `xml:"stroke-dasharray,attr"`
}

func (o outline) points(t *testing.T) []r2.Vec {
	t.Helper()
	var out []r2.Vec
	for _, pair := range strings.Fields(o.Points) {
		var p r2.Vec
		if _, err := fmt.Sscanf(pair, "%g,%g", &p.X, &p.Y); err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return out
}

func read(t *testing.T, s *sheets.Sheet) drawing {
	t.Helper()
	var out bytes.Buffer
	if err := s.WriteSVG(&out); err != nil {
		t.Fatal(err)
	}
	var d drawing
	if err := xml.Unmarshal(out.Bytes(), &d); err != nil {
		t.Fatal(err)
	}
	return d
}

// TestScale: a unit of the drawing is a mm, the check bar has 100 of them, the
// cube's face has its edge and the circles their radii.
func TestScale(t *testing.T) {
	const edge = 0.15
	a := on(platonic(t, "cube", edge*math.Sqrt(3)/2))
	templates := sheets.Templates(a)
	if len(templates) != 1 {
		t.Fatalf("%d templates for a cube, want 1", len(templates))
	}
	d := read(t, templates[0])
	if d.Width != "210mm" || d.Height != "297mm" || d.ViewBox != "0 0 210 297" {
		t.Errorf("page %s by %s, viewBox %s", d.Width, d.Height, d.ViewBox)
	}
	low, high := math.Inf(1), math.Inf(-1)
	ticks := 0
	for _, l := range d.Lines {
		p := l.points(t)
		if len(p) == 2 && p[0].X == p[1].X && math.Abs(math.Abs(p[1].Y-p[0].Y)-1.5) < 1e-9 {
			low, high = min(low, p[0].X), max(high, p[0].X)
			ticks++
		}
	}
	if ticks != 11 || math.Abs(high-low-100) > 1e-9 {
		t.Errorf("check bar: %d ticks over %g mm", ticks, high-low)
	}
	square := 0
	for _, o := range d.Polygons {
		p := o.points(t)
		if len(p) == 4 && math.Abs(r2.Norm(r2.Sub(p[1], p[0]))-1e3*edge) < 1e-3 && math.Abs(r2.Norm(r2.Sub(p[2], p[0]))-1e3*edge*math.Sqrt2) < 1e-3 {
			square++
		}
		if len(p) == 4 && o.Dashes != "" && math.Abs(r2.Norm(r2.Sub(p[1], p[0]))-(1e3*edge-6)) > 1e-3 {
			t.Errorf("inside of the wall the edge is %g mm", r2.Norm(r2.Sub(p[1], p[0])))
		}
	}
	if square != 1 {
		t.Errorf("%d faces of the right size, want 1", square)
	}
	if len(d.Circles) != 2 || d.Circles[0].R != 15 || d.Circles[1].R != 12.5 {
		t.Errorf("circles %+v, want 15 and 12.5 mm", d.Circles)
	}
}

// TestMarkedByHand: a centre is as far from a face's corners as the circle about a square (edge over root
// two) and a pentagon (edge by 0.85065, whose edge is 0.71364 of the dodecahedron's radius; Coxeter, Regular
// Polytopes, tables) has it.
func TestMarkedByHand(t *testing.T) {
	for shape, want := range map[string]string{
		"cube":         "from corners 1, 2 and 3: the centre 106.1, 106.1, 106.1.",
		"dodecahedron": "from corners 1, 2 and 3: the centre 78.9, 78.9, 78.9.", // 129.9 mm by 0.71364 by 0.85065
	} {
		var b bytes.Buffer
		if err := sheets.Templates(on(platonic(t, shape, 0.15*math.Sqrt(3)/2)))[0].WriteSVG(&b); err != nil {
			t.Fatal(err)
		}
		text := regexp.MustCompile("<[^>]*>").ReplaceAllString(b.String(), "")
		if text = strings.Join(strings.Fields(text), " "); !strings.Contains(text, want) {
			t.Errorf("%s: %q is not in %q", shape, want, text)
		}
	}
}

// TestPaper: a face of so many mm needs so large a page (ISO 216).
func TestPaper(t *testing.T) {
	for _, test := range []struct {
		edge          float64
		width, height string
	}{{0.1, "210mm", "297mm"}, {0.2, "297mm", "420mm"}, {0.3, "420mm", "594mm"}, {0.5, "594mm", "841mm"}, {0.7, "841mm", "1189mm"}, {1, "1044mm", "1108mm"}} {
		d := read(t, sheets.Templates(on(platonic(t, "cube", test.edge*math.Sqrt(3)/2)))[0])
		if d.Width != test.width || d.Height != test.height {
			t.Errorf("edge of %g m: %s by %s, want %s by %s", test.edge, d.Width, d.Height, test.width, test.height)
		}
	}
}

// TestPDFPages reads the sizes of pages back, by pdfinfo where it is installed.
func TestPDFPages(t *testing.T) {
	pdfinfo, err := exec.LookPath("pdfinfo")
	if err != nil {
		t.Skip("pdfinfo is not installed")
	}
	all := sheets.All(&timing.Plan{Spot: timing.Spot{Array: lantern(t)}}, sheets.Options{})
	path := filepath.Join(t.TempDir(), "sheets.pdf")
	var out bytes.Buffer
	if err := sheets.WritePDF(&out, "A test", all...); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command(pdfinfo, "-l", "99", path).Output()
	if err != nil {
		t.Fatal(err)
	}
	sizes := regexp.MustCompile(`size:\s+([0-9.]+) x ([0-9.]+) pts`).FindAllStringSubmatch(string(text), -1)
	if len(sizes) != len(all) {
		t.Fatalf("%d pages, want %d", len(sizes), len(all))
	}
	for i, s := range sizes {
		w, _ := strconv.ParseFloat(s[1], 64)
		h, _ := strconv.ParseFloat(s[2], 64)
		if math.Abs(w*25.4/72-all[i].Width) > 0.1 || math.Abs(h*25.4/72-all[i].Height) > 0.1 {
			t.Errorf("page %d: %s, want %g by %g mm", i+1, s[0], all[i].Width, all[i].Height)
		}
	}
}

// TestClasses: regular solids have one kind of edge and face; the two-fold
// icosahedral geodesic has two edges, of chord factors 0.54653 and 0.61803, 60
// of each (Kenner, Geodesic Math and How to Use It, 1976), and two faces, 20 and
// 60 of them.
func TestClasses(t *testing.T) {
	for _, name := range []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"} {
		a := on(platonic(t, name, 0.15))
		if e, f := table(t, a, sheets.Edges), table(t, a, sheets.Faces); len(e) != 1 || len(f) != 1 {
			t.Errorf("%s: %d edges, %d faces, want one of each", name, len(e), len(f))
		}
	}
	a := on(geodesic(t, "icosahedron", 2, 0.15))
	e, f := table(t, a, sheets.Edges), table(t, a, sheets.Faces)
	for i, want := range [][]string{{"A", "60", "0.54653"}, {"B", "60", "0.61803"}} {
		if e[i][0] != want[0] || e[i][1] != want[1] || !strings.HasPrefix(e[i][3], want[2]) {
			t.Errorf("edge %q, want %q", e[i], want)
		}
	}
	if len(e) != 2 || len(f) != 2 || f[0][1] != "60" || f[1][1] != "20" {
		t.Errorf("faces %q", f)
	}
	// Class I at 3: 3 edges, 2 faces; at 4: 6 edges, 5 faces (Kenner, tables of
	// chord factors), of which scalene ones come in mirrored pairs.
	for n, want := range map[int][2]int{3: {3, 2}, 4: {6, 5}} {
		a := on(geodesic(t, "icosahedron", n, 0.15))
		if e, f := table(t, a, sheets.Edges), table(t, a, sheets.Faces); len(f) != want[1] || lengths(e) != want[0] {
			t.Errorf("at %d: %d edges, %d faces, want %v", n, lengths(e), len(f), want)
		}
	}
}

// lengths counts the lengths among rows of edges.
func lengths(rows [][]string) int {
	seen := make(map[string]bool)
	for _, r := range rows {
		seen[r[3]] = true
	}
	return len(seen)
}

// table writes a table and reads it back without its heading.
func table(t *testing.T, a *layout.Array, write func(io.Writer, *layout.Array) error) [][]string {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out, a); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// TestParts: the bill has what other tables know: the wire of the harness, the cable's
// copper, volume and mass of each print, the stuffing; and no number that nobody knows.
func TestParts(t *testing.T) {
	p := planned.Demo(t, func(d *design.Design) { d.Wiring.WireLength, d.Wiring.WireSection = 5, 0.75e-6 })
	a := p.Array
	segments, err := a.Segments()
	if err != nil {
		t.Fatal(err)
	}
	rows := table(t, a, func(w io.Writer, _ *layout.Array) error {
		return sheets.Parts(w, p, sheets.Options{Print: segments, Stuffing: 0.0123})
	})
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	volume, mass, wire, cables := 0.0, 0.0, 0.0, 0
	found := map[string][]string{}
	for _, r := range rows {
		found[r[0]] = r
		switch {
		case strings.HasPrefix(r[0], "segment "):
			volume, mass = volume+number(r[4]), mass+number(r[5])
		case strings.HasPrefix(r[0], "wire of channel "):
			wire, cables = wire+number(r[3]), cables+1
		}
	}
	if len(segments.Segments) < 2 || math.Abs(volume-number(found["shell"][4])) > 1 || math.Abs(mass-number(found["shell"][5])) > 1 || mass < 10 {
		t.Errorf("%d segments of %g cm3 and %g g; the shell %q", len(segments.Segments), volume, mass, found["shell"])
	}
	// Two joints at each driver and at both ends of a string together.
	want, joints := 0.0, 2*len(a.Mounts)
	for _, s := range loom.Strings(p) {
		want, joints = want+s.Length(), joints+2
	}
	if cables != len(p.Channels) || math.Abs(wire-want) > 0.01*float64(cables) || want < 1 {
		t.Errorf("%g m of wire in %d channels, want %g in %d", wire, cables, want, len(p.Channels))
	}
	// Two cores of 0.75 mm2 of copper at 8.96 g/cm3 are 13.44 g for each metre.
	n := float64(len(p.Channels))
	if c := found["cable to the amplifier"]; math.Abs(number(c[3])-5*n) > 1e-9 || math.Abs(number(c[5])-13.44*5*n) > 1 {
		t.Errorf("cable %q", c)
	}
	if found["driver"][1] != strconv.Itoa(len(a.Mounts)) || found["screw"][1] != "" || found["stuffing"][5] != "12.3" ||
		found["driver"][2] != "2" || found["all together"][8] != strconv.Itoa(4*joints+6*len(a.Mounts)) {
		t.Errorf("parts %q", rows)
	}
}

// TestShellError: what the shell refuses names the mount.
func TestShellError(t *testing.T) {
	a := on(platonic(t, "cube", 0.2))
	a.Mounts[2].Face = -1
	if _, err := sheets.Files(&timing.Plan{Spot: timing.Spot{Array: a}}, sheets.Options{}); !errors.Is(err, shell.ErrCutout) || !strings.Contains(err.Error(), "mount 3") {
		t.Errorf("got %v", err)
	}
	if _, err := sheets.Files(&timing.Plan{Spot: timing.Spot{Array: a}}, sheets.Options{NoShell: true}); err != nil {
		t.Error(err)
	}
}

func BenchmarkAll(b *testing.B) {
	a := lantern(b)
	b.ReportAllocs()
	for b.Loop() {
		if err := sheets.WritePDF(io.Discard, a.Name, sheets.All(&timing.Plan{Spot: timing.Spot{Array: a}}, sheets.Options{})...); err != nil {
			b.Fatal(err)
		}
	}
}

// shells makes the printed shell, whole or in the segments of a plan.
func shells(a *layout.Array, plan shell.Plan) ([]poly.Mesh, error) {
	whole, err := shell.Make(a.Body, a.Wall, a.Holes())
	if err != nil {
		return nil, err
	}
	return plan.Parts(whole)
}
