package body_test

import (
	"fmt"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

func ExamplePlatonic() {
	b, err := body.Platonic("dodecahedron", 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d faces, each with room for a circle of %.1f mm\n", len(b.Faces), 2000*b.InscribedRadius(0))
	fmt.Printf("%.2f litres, as a ball of %.1f mm\n", 1000*b.Volume(), 2000*b.BallRadius)
	// Output:
	// 12 faces, each with room for a circle of 147.3 mm
	// 9.40 litres, as a ball of 261.8 mm
}

func ExampleGeodesic() {
	b, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	edges := b.Edges()
	first := r3.Sub(b.Vertices[edges[0].A], b.Vertices[edges[0].B])
	fmt.Printf("%d edges; the first is %.1f mm long\n", len(edges), 1000*r3.Norm(first))
	// Output: 120 edges; the first is 82.0 mm long
}

func ExampleBody_CutAt() {
	ball, _ := body.Geodesic("icosahedron", 2, 0.15)
	dome, err := ball.CutAt(0)
	if err != nil {
		fmt.Println(err)
		return
	}
	base := len(dome.Faces) - 1
	fmt.Println(len(ball.Faces), "faces,", len(dome.Faces), "after the cut")
	fmt.Println("corners of the base:", len(dome.Faces[base].Corners))
	_, err = ball.CutAt(0.2)
	fmt.Println(err)
	// Output:
	// 80 faces, 41 after the cut
	// corners of the base: 10
	// nothing of the body is left above the cut at 0.2 m
}

func ExampleOrder() {
	points := []r3.Vec{{Z: -1}, {Y: 1}, {X: 1}, {Z: 1}}
	fmt.Println(poly.Order(points))
	// Output: [3 2 1 0]
}

func BenchmarkGeodesic(b *testing.B) {
	for _, n := range []int{2, 16} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				geodesic(b, "icosahedron", n)
			}
		})
	}
}

func BenchmarkCutAt(b *testing.B) {
	for _, n := range []int{2, 16} {
		whole := geodesic(b, "icosahedron", n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				cutAt(b, whole, 0.01)
			}
		})
	}
}

func BenchmarkContains(b *testing.B) {
	for _, n := range []int{2, 16} {
		whole := geodesic(b, "icosahedron", n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				whole.Contains(r3.Vec{X: 0.01, Y: 0.02, Z: 0.03})
			}
		})
	}
}

func BenchmarkSection(b *testing.B) {
	whole := geodesic(b, "icosahedron", 16)
	b.ReportAllocs()
	for b.Loop() {
		whole.Section(r3.Vec{}, x, z)
	}
}
