package body_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/reference"
	"pappus/testdata/testkit"
)

// TestEdgeClassTable checks letters, chord factors and counts against
// geodesic_chords.csv (Kenner, Geodesic Math and How to Use It, 1976), to the
// printed digits. Kenner's letters go by length alone.
func TestEdgeClassTable(t *testing.T) {
	rows, err := reference.Table("geodesic_chords.csv")
	if err != nil {
		t.Fatal(err)
	}
	letters := map[int]int{}
	for _, row := range rows {
		n := int(row.Float("frequency"))
		letters[n]++
		count := 0
		for _, c := range geodesic(t, "icosahedron", n).EdgeClasses() {
			if c.Letter != row["letter"] {
				continue
			}
			count += len(c.Edges)
			if math.Abs(c.Chord-row.Float("chord_factor")) > 0.0000050001 {
				t.Errorf("divided in %d, %s: chord factor %.7f", n, c.Name, c.Chord)
			}
			testkit.Near(t, "length", c.Length, c.Chord*radius, 1e-14)
		}
		if count != int(row.Float("edges_in_full_sphere")) {
			t.Errorf("divided in %d, %s: %d edges", n, row["letter"], count)
		}
	}
	for n, want := range letters {
		classes := geodesic(t, "icosahedron", n).EdgeClasses()
		if last := classes[len(classes)-1].Letter; last != string(rune('A'+want-1)) {
			t.Errorf("divided in %d: letters to %s", n, last)
		}
	}
}

// TestEdgeClassAngles: the truncated icosahedron has one length and the two
// angles of polyhedra.csv, 142.6226 degrees at the 60 edges of the pentagons.
func TestEdgeClassAngles(t *testing.T) {
	classes := testkit.Body(t)(body.Archimedean("truncated icosahedron", radius)).EdgeClasses()
	if len(classes) != 2 {
		t.Fatalf("%d classes", len(classes))
	}
	for i, want := range []string{"A1 A 30 138.1897", "A2 A 60 142.6226"} {
		c := classes[i]
		if got := fmt.Sprintf("%s %s %d %.4f", c.Name, c.Letter, len(c.Edges), c.Dihedral*180/math.Pi); got != want {
			t.Errorf("class %d is %s, want %s", i, got, want)
		}
	}
}

func TestEdgeLetters(t *testing.T) {
	classes := testkit.Body(t)(body.GeodesicMN("tetrahedron", 9, 5, radius)).EdgeClasses()
	var letters []string
	for _, c := range classes {
		letters = append(letters, c.Letter)
	}
	letters = slices.Compact(letters)
	for at, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA"} {
		if at < len(letters) && letters[at] != want {
			t.Errorf("letter %d is %s, want %s", at, letters[at], want)
		}
	}
	if len(letters) < 53 {
		t.Errorf("%d letters are too few for this test", len(letters))
	}
	if got := len(body.Ball(radius).EdgeClasses()); got != 0 {
		t.Errorf("a ball has %d classes", got)
	}
}

// TestClassesPart: each edge is in one class, which has its measures.
func TestClassesPart(t *testing.T) {
	all(t, func(t *testing.T, b *body.Body) {
		edges := b.Edges()
		seen := make([]int, len(edges))
		for _, c := range b.EdgeClasses() {
			for _, e := range c.Edges {
				seen[e]++
				testkit.Near(t, "length", testkit.Length(b, edges[e]), c.Length, 1e-4)
				testkit.Near(t, "dihedral angle", b.Dihedral(edges[e]), c.Dihedral, 1e-3)
			}
		}
		if slices.ContainsFunc(seen, func(n int) bool { return n != 1 }) {
			t.Errorf("edges in none or several classes")
		}
	})
}

func BenchmarkEdgeClasses(b *testing.B) {
	whole := geodesic(b, "icosahedron", 16)
	b.ReportAllocs()
	for b.Loop() {
		whole.EdgeClasses()
	}
}

// TestClassLimit: lengths that differ by less than a hundred-thousandth of the radius are one.
func TestClassLimit(t *testing.T) {
	for _, c := range []struct {
		off     float64 // of a square prism's height from its sides, over the radius
		classes int
	}{{0.85e-5, 1}, {1.15e-5, 2}} {
		side := radius * math.Sqrt2
		b := testkit.Body(t)(body.Prism(4, radius, side+c.off*math.Hypot(radius, side/2)))
		if got := len(b.EdgeClasses()); got != c.classes {
			t.Errorf("off by %g: %d classes of edges, want %d", c.off, got, c.classes)
		}
	}
}
