package poly_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/iotest"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/testdata/drawn"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// off writes a body as an object file in mm.
func off(b *body.Body) []byte {
	var out bytes.Buffer
	fmt.Fprintf(&out, "OFF # %s\n%d %d 0\n", b.Name, len(b.Vertices), len(b.Faces))
	for _, v := range b.Vertices {
		fmt.Fprintf(&out, "%.9g %.9g %.9g\n", 1000*v.X, 1000*v.Y, 1000*v.Z)
	}
	for _, f := range b.Faces {
		fmt.Fprintln(&out, len(f.Corners), strings.Trim(fmt.Sprint(f.Corners), "[]"))
	}
	return out.Bytes()
}

// triangles divides a body's faces, corners in mm.
func triangles(b *body.Body) [][3]r3.Vec {
	var out [][3]r3.Vec
	for _, f := range b.Faces {
		for i := 2; i < len(f.Corners); i++ {
			var t [3]r3.Vec
			for k, c := range []int{f.Corners[0], f.Corners[i-1], f.Corners[i]} {
				t[k] = r3.Scale(1000, b.Vertices[c])
			}
			out = append(out, t)
		}
	}
	return out
}

// textSTL writes triangles with six digits, as many programs do.
func textSTL(triangles [][3]r3.Vec) []byte {
	var out bytes.Buffer
	fmt.Fprintln(&out, "solid lantern of the story corner")
	for _, t := range triangles {
		fmt.Fprintln(&out, "  facet normal 0 0 0\n    outer loop")
		for _, v := range t {
			fmt.Fprintf(&out, "      vertex %.5e %.5e %.5e\n", v.X, v.Y, v.Z)
		}
		fmt.Fprintln(&out, "    endloop\n  endfacet")
	}
	fmt.Fprintln(&out, "endsolid")
	return out.Bytes()
}

func binarySTL(triangles [][3]r3.Vec) []byte {
	out := make([]byte, 80, 84+50*len(triangles))
	copy(out, "solid begins this title too")
	out = binary.LittleEndian.AppendUint32(out, uint32(len(triangles)))
	for _, t := range triangles {
		out = append(out, make([]byte, 12)...)
		for _, v := range t {
			for _, x := range []float64{v.X, v.Y, v.Z} {
				out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(x)))
			}
		}
		out = append(out, 0, 0)
	}
	return out
}

// TestFiles: every body comes back from every format.
func TestFiles(t *testing.T) {
	all(t, func(t *testing.T, b *body.Body) {
		shortest := math.Inf(1)
		for _, e := range b.Edges() {
			shortest = min(shortest, testkit.Length(b, e))
		}
		tri := triangles(b)
		for name, got := range map[string]*body.Body{
			"OFF":          testkit.Body(t)(fromOFF(b.Name, bytes.NewReader(off(b)))),
			"text STL":     testkit.Body(t)(fromSTL(b.Name, bytes.NewReader(textSTL(tri)))),
			"binary STL":   testkit.Body(t)(fromSTL(b.Name, bytes.NewReader(binarySTL(tri)))),
			"OFF by bytes": testkit.Body(t)(fromOFF(b.Name, iotest.OneByteReader(bytes.NewReader(off(b))))),
		} {
			if len(got.Vertices) != len(b.Vertices) || len(got.Faces) > len(b.Faces) {
				t.Errorf("%s: %d vertices for %d, %d faces for %d", name, len(got.Vertices), len(b.Vertices), len(got.Faces), len(b.Faces))
			}
			testkit.SamePoints(t, got.Vertices, b.Vertices, 1e-5*radius*4)
			testkit.Near(t, name+" volume", got.Volume(), b.Volume(), 1e-4)
			testkit.Near(t, name+" radius", got.Radius, b.Radius, 1e-5)
			if got.Name != b.Name {
				t.Errorf("%s: name %q", name, got.Name)
			}
			testkit.Closed(t, got, 1e-4*b.Radius)
		}
	})
}

const cubeCorners = "1 1 1\n-1 1 1\n-1 -1 1\n1 -1 1\n1 1 -1\n-1 1 -1\n-1 -1 -1\n1 -1 -1\n"
const cubeFaces = "4 0 1 2 3\n4 4 7 6 5\n4 0 4 5 1\n4 1 5 6 2\n4 2 6 7 3\n4 3 7 4 0\n"

// moved returns an object file of a cube of 20 mm with its middle at x mm.
func moved(x float64) string {
	var out strings.Builder
	for line := range strings.Lines(cubeCorners) {
		var p r3.Vec
		fmt.Sscan(line, &p.X, &p.Y, &p.Z)
		fmt.Fprintln(&out, 10*p.X+x, 10*p.Y, 10*p.Z)
	}
	return "OFF\n8 6 12\n" + out.String() + cubeFaces
}

func TestFileErrors(t *testing.T) {
	good := moved(0)
	turned := strings.NewReplacer("4 0 1 2 3", "4 3 2 1 0", "4 4 7 6 5", "4 5 6 7 4", "4 0 4 5 1", "4 1 5 4 0",
		"4 1 5 6 2", "4 2 6 5 1", "4 2 6 7 3", "4 3 7 6 2", "4 3 7 4 0", "4 0 4 7 3")
	two := "OFF\n16 12 0\n"
	for _, x := range []float64{0, 40} {
		two += strings.SplitN(strings.TrimPrefix(moved(x), "OFF\n8 6 12\n"), "4 0 1 2 3", 2)[0]
	}
	two += cubeFaces + "4 8 9 10 11\n4 12 15 14 13\n4 8 12 13 9\n4 9 13 14 10\n4 10 14 15 11\n4 11 15 12 8\n"
	cases := []struct {
		name, file string
		want       error
		says       string
	}{
		{"empty", "", errFormat, "line 0"},
		{"other format", "ply\n", errFormat, "line 1"},
		{"coloured kind", "C" + good, errFormat, "begin with OFF"},
		{"no counts", "OFF\n", errFormat, "numbers"},
		{"bad count", "OFF\n-1 2 3\n", errFormat, "count"},
		{"too many", "OFF\n8 20001 0\n", errTooLarge, "20001"},
		{"far too many", "OFF\n99999999999999999999 6 0\n", errTooLarge, "line 2"},
		{"ends in vertices", "OFF\n8 6 12\n1 1 1\n", errFormat, "coordinates"},
		{"two coordinates", strings.Replace(good, "10 10 10", "10 10", 1), errFormat, "line 3"},
		{"no number", strings.Replace(good, "10 10 10", "10 ten 10", 1), errFormat, `"ten"`},
		{"not finite", strings.Replace(good, "10 10 10", "10 NaN 10", 1), errNotFinite, "line 3"},
		{"out of range", strings.Replace(good, "10 10 10", "10 1e999 10", 1), errNotFinite, "line 3"},
		{"huge", strings.Replace(good, "10 10 10", "10 1e307 10", 1), errSize, "1 mm to 100 m"},
		{"in metres", strings.ReplaceAll(good, "10", ".01"), errSize, "1 mm to 100 m"},
		{"ends in faces", strings.Replace(good, "4 3 7 4 0\n", "", 1), errFormat, "last face"},
		{"goes on", good + "3 0 1 2\n", errFormat, "goes on"},
		{"two corners", strings.Replace(good, "4 3 7 4 0", "2 3 7", 1), errFormat, "corners"},
		{"no such vertex", strings.Replace(good, "4 3 7 4 0", "4 3 7 8 0", 1), errFormat, "0 to 7"},
		{"nothing", "OFF\n0 0 0\n", errFlat, ""},
		{"no face", "OFF\n1 0 0\n1 2 3\n", errFlat, ""},
		{"one point", "OFF\n1 1 0\n10 20 30\n3 0 0 0\n", errFlat, "no face"},
		{"open", strings.Replace(good, "4 3 7 4 0", "3 3 7 4", 1), errOpen, "(10, -10, 10) mm"},
		{"a face turned", strings.Replace(good, "4 3 7 4 0", "4 0 4 7 3", 1), errInsideOut, "2 faces one way"},
		{"inside out", turned.Replace(good), errInsideOut, ""},
		{"a wall inside", strings.Replace(strings.Replace(good, "8 6 12", "8 8 12", 1), "4 3 7 4 0\n", "4 3 7 4 0\n4 0 2 6 4\n4 4 6 2 0\n", 1), errCrossing, "edge"},
		{"two cubes", two, errPieces, "second"},
		{"flat", "OFF\n3 2 0\n10 0 0\n0 10 0\n0 0 0\n3 0 1 2\n3 2 1 0\n", errFlat, ""},
		{"concave", strings.Replace(strings.Replace(good, "8 6 12\n", "9 9 0\n", 1), "4 0 1 2 3", "0 0 5\n3 0 1 8\n3 1 2 8\n3 2 3 8\n3 3 0 8", 1), errConcave, "beyond the face"},
		{"origin outside", moved(30), errOriginOutside, "20 mm beyond"},
		{"origin on a face", moved(10), errOriginOutside, ""},
		{"star", star(), errConcave, ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b, err := body.FromFile("lamp.off", strings.NewReader(c.file), false)
			if !testkit.Says(err, c.want) || b != nil {
				t.Fatalf("%v, want %v", err, c.want)
			}
			if s := err.Error(); !strings.HasPrefix(s, "lamp.off: ") || !strings.Contains(s, c.says) || strings.Contains(s, "\n") {
				t.Errorf("says: %s", s)
			}
		})
	}
	testkit.Body(t)(fromOFF("cube", strings.NewReader(good)))
	testkit.Body(t)(fromOFF("coloured", strings.NewReader(strings.Replace(good, "4 3 7 4 0", "4 3 7 4 0 255 0 0", 1))))
	testkit.Body(t)(fromOFF("off centre", strings.NewReader(moved(9))))
}

// star is a closed surface that goes round the origin twice: a drum on a
// pentagram.
func star() string {
	var out strings.Builder
	fmt.Fprintln(&out, "OFF\n12 15 0\n0 0 30\n0 0 -30")
	for _, z := range []int{20, -20} {
		for i := range 5 {
			sin, cos := math.Sincos(4 * math.Pi / 5 * float64(i))
			fmt.Fprintln(&out, 50*cos, 50*sin, z)
		}
	}
	for i := range 5 {
		k := (i + 1) % 5
		fmt.Fprintf(&out, "3 0 %d %d\n3 1 %d %d\n4 %d %d %d %d\n", 2+i, 2+k, 7+k, 7+i, 2+i, 7+i, 7+k, 2+k)
	}
	return out.String()
}

func TestSTLErrors(t *testing.T) {
	tri := triangles(platonic(t, "cube"))
	text := string(textSTL(tri))
	long := make([][3]r3.Vec, 20_000+1)
	nan := append([][3]r3.Vec{}, tri...)
	nan[3][1].Y = math.NaN()
	cases := []struct {
		name string
		file []byte
		want error
	}{
		{"empty", nil, errFormat},
		{"word", []byte("something else"), errFormat},
		{"cut short", binarySTL(tri)[:300], errFormat},
		{"binary open", binarySTL(tri[1:]), errOpen},
		{"binary not finite", binarySTL(nan), errNotFinite},
		{"binary of none", binarySTL(nil), errFlat},
		{"binary too many", binarySTL(long), errTooLarge},
		{"text too many", textSTL(long), errTooLarge},
		{"too long", append([]byte("solid\n"), bytes.Repeat([]byte(" "), poly.MostFileBytes)...), errTooLarge},
		{"text cut short", []byte(text[:len(text)/2]), errFormat},
		{"text goes on", []byte(text + text), errFormat},
		{"text without loop", []byte(strings.Replace(text, "outer loop", "outer rim", 1)), errFormat},
		{"text not finite", []byte(strings.Replace(text, "vertex", "vertex inf 0 0\n", 1)), errNotFinite},
		{"four coordinates", []byte(strings.Replace(text, "vertex", "vertex 1", 1)), errFormat},
		{"text of none", []byte("solid\nendsolid\n"), errFlat},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if b, err := fromSTL("lamp.stl", bytes.NewReader(c.file)); !testkit.Says(err, c.want) || b != nil {
				t.Errorf("%v, want %v", err, c.want)
			}
		})
	}
	broken := errors.New("the cable is out")
	if _, err := fromSTL("lamp.stl", iotest.ErrReader(broken)); !testkit.Says(err, broken) {
		t.Errorf("%v", err)
	}
	testkit.Body(t)(fromSTL("capitals", strings.NewReader(strings.ToUpper(text))))
}

// TestFileJoins: corners in the middle of faces and edges go, and triangles of
// one face become one, however a leaning cube is divided.
func TestFileJoins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cuts := rapid.IntRange(1, 6).Draw(t, "cuts")
		shift := rapid.Float64Range(-0.9, 0.9).Draw(t, "shift")
		var tri [][3]r3.Vec
		cube := testkit.Body(t)(body.Platonic("cube", radius))
		for _, f := range cube.Faces {
			corner := func(i int) r3.Vec { return r3.Scale(1000, cube.Vertices[f.Corners[i]]) }
			at := func(i, j int) r3.Vec {
				u, v := float64(i)/float64(cuts), float64(j)/float64(cuts)
				p := r3.Add(corner(0), r3.Add(r3.Scale(u, r3.Sub(corner(1), corner(0))), r3.Scale(v, r3.Sub(corner(3), corner(0)))))
				return r3.Add(p, r3.Vec{X: shift * p.Z})
			}
			for i := range cuts {
				for j := range cuts {
					tri = append(tri, [3]r3.Vec{at(i, j), at(i+1, j), at(i+1, j+1)}, [3]r3.Vec{at(i, j), at(i+1, j+1), at(i, j+1)})
				}
			}
		}
		b, err := fromSTL("cube", bytes.NewReader(textSTL(tri)))
		if err != nil {
			t.Fatal(err)
		}
		if len(b.Vertices) != 8 || len(b.Faces) != 6 {
			t.Errorf("%d vertices, %d faces", len(b.Vertices), len(b.Faces))
		}
		testkit.Near(t, "volume", b.Volume(), cube.Volume(), 1e-4)
	})
}

// sound reports what no body from a file may be.
func sound(t testing.TB, b *body.Body, err error) {
	if err != nil {
		if b != nil || strings.Contains(err.Error(), "\n") {
			t.Errorf("%v with %v", err, b)
		}
		return
	}
	if len(b.Vertices) <= 200 {
		testkit.Closed(t, b, 1e-3*b.Radius)
	}
	if !(b.Volume() > 0) || !(b.BallRadius > 0) || b.BallRadius > b.Radius || !b.Contains(r3.Vec{}) {
		t.Errorf("volume %g, ball radius %g, radius %g", b.Volume(), b.BallRadius, b.Radius)
	}
}

func FuzzFromOFF(f *testing.F) {
	seeds := []string{moved(0), moved(30), star(), string(off(platonic(f, "dodecahedron"))), string(off(geodesic(f, "octahedron", 2)))}
	drawn.Bytes(f, seeds, func(t testing.TB, data []byte) {
		b, err := body.FromFile("fuzz", bytes.NewReader(data), false)
		sound(t, b, err)
	})
}

func FuzzFromSTL(f *testing.F) {
	tri := triangles(platonic(f, "octahedron"))
	seeds := []string{string(textSTL(tri)), string(binarySTL(tri)), string(binarySTL(tri[1:]))}
	drawn.Bytes(f, seeds, func(t testing.TB, data []byte) {
		b, err := fromSTL("fuzz", bytes.NewReader(data))
		sound(t, b, err)
	})
}

func ExampleRead() {
	const file = `OFF
5 5 8
60 60 -30
-60 60 -30
-60 -60 -30
60 -60 -30
0 0 90
3 0 1 4
3 1 2 4
3 2 3 4
3 3 0 4
4 3 2 1 0
`
	b, err := body.FromFile("pyramid.off", strings.NewReader(file), false)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d faces, %.3f litres, %.0f mm to the farthest corner\n", len(b.Faces), 1000*b.Volume(), 1000*b.Radius)
	_, err = body.FromFile("lid.off", strings.NewReader("OFF\n3 1 0\n50 0 0\n0 50 0\n0 0 50\n3 0 1 2\n"), false)
	fmt.Println(err)
	// Output:
	// 5 faces, 0.576 litres, 90 mm to the farthest corner
	// lid.off: the surface is open: the edge from (50, 0, 0) mm to (0, 50, 0) mm has one face
}

func BenchmarkFromSTL(b *testing.B) {
	file := binarySTL(triangles(geodesic(b, "icosahedron", 16)))
	b.SetBytes(int64(len(file)))
	b.ReportAllocs()
	for b.Loop() {
		testkit.Body(b)(fromSTL("ball", bytes.NewReader(file)))
	}
}

// TestFileLimits: what a file may be off by and how large it may be, from both sides.
func TestFileLimits(t *testing.T) {
	const good = "OFF\n8 6 12\n" + "10 10 10\n-10 10 10\n-10 -10 10\n10 -10 10\n10 10 -10\n-10 10 -10\n-10 -10 -10\n10 -10 -10\n" + cubeFaces
	reach := 10 * math.Sqrt(3)
	// A ninth corner h over the middle of the top: the face across it is 2h off the plane of one beside.
	roof := func(h float64) string {
		text := strings.Replace(good, "8 6 12\n", "9 9 0\n", 1)
		return strings.Replace(text, "4 0 1 2 3", fmt.Sprintf("0 0 %.9f\n3 0 1 8\n3 1 2 8\n3 2 3 8\n3 3 0 8", 10+h*reach), 1)
	}
	// The top has a corner of its own, a little off.
	split := func(d float64) string {
		text := strings.Replace(good, "8 6 12\n", "9 6 0\n", 1)
		return strings.Replace(text, "4 0 1 2 3", fmt.Sprintf("10 %.9f 10\n4 8 1 2 3", 10-d*reach), 1)
	}
	for _, c := range []struct {
		name, file string
		faces      int
		want       error
	}{
		{"a flat roof", roof(2.1e-5), 6, nil},
		{"a roof", roof(2.9e-5), 9, nil},
		{"one corner", split(0.85e-5), 6, nil},
		{"two corners", split(1.15e-5), 0, errOpen},
		{"16 MiB", good + strings.Repeat(" ", 16<<20-len(good)), 6, nil},
		{"a byte more", good + strings.Repeat(" ", 16<<20-len(good)+1), 0, errTooLarge},
		{"20000 faces told of", "OFF\n8 20000 0\n", 0, errFormat},
		{"20001 faces told of", "OFF\n8 20001 0\n", 0, errTooLarge},
		{"a millimetre", strings.ReplaceAll(good, "10", "0.578"), 6, nil},
		{"less than a millimetre", strings.ReplaceAll(good, "10", "0.576"), 0, errSize},
		{"a hundred metres", strings.ReplaceAll(good, "10", "57735"), 6, nil},
		{"more than a hundred metres", strings.ReplaceAll(good, "10", "57740"), 0, errSize},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, err := fromOFF("cube.off", strings.NewReader(c.file))
			if c.want == nil && err != nil || c.want != nil && !testkit.Says(err, c.want) {
				t.Fatalf("%v, want %v", err, c.want)
			}
			if err == nil && len(b.Faces) != c.faces {
				t.Errorf("%d faces, want %d", len(b.Faces), c.faces)
			}
		})
	}
}
