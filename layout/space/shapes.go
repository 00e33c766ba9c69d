package space

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/design"
)

// solids are the regular solids, and those half-regular ones that have a use: of the others
// the smallest faces are so much smaller than the largest that a driver that fits them is lost
// on the body.
var solids = []string{
	"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron",
	"truncated tetrahedron", "cuboctahedron", "truncated cube", "truncated octahedron", "rhombicuboctahedron",
	"truncated cuboctahedron", "snub cube", "icosidodecahedron", "truncated dodecahedron", "truncated icosahedron",
	"rhombicosidodecahedron", "truncated icosidodecahedron", "snub dodecahedron",
}

// regular is how many of the solids are regular: their duals are among them.
const regular = 5

// shapes lists the bodies with flat faces: solids, duals of the half-regular ones, and
// geodesics with their duals, of which a cut leaves as few as are there.
func shapes(drivers int) [][]design.Setting {
	var out [][]design.Setting
	for i, name := range solids {
		out = append(out, []design.Setting{{Key: "body.shape", Value: name}})
		if i >= regular {
			out = append(out, []design.Setting{{Key: "body.shape", Value: name}, {Key: "body.dual", Value: true}})
		}
	}
	for _, base := range []struct {
		name  string
		faces int
	}{{"icosahedron", 20}, {"octahedron", 8}} {
		for _, c := range classes(mostWhole*float64(drivers)/float64(base.faces), 1) {
			out = append(out, geodesic(base.name, c))
		}
		// Faces for corners: half as many and two.
		for _, c := range classes(2*float64(drivers)/float64(base.faces), 1) {
			out = append(out, append(geodesic(base.name, c), design.Setting{Key: "body.dual", Value: true}))
		}
	}
	return out
}

// mostWhole is how many times as many places as drivers a body may have before it is cut.
const mostWhole = 2.0

// class is a class of geodesics: m steps along an edge, then n to the side.
type class struct{ m, n int }

// triangles is by how many each face is divided (H. S. M. Coxeter, Virus macromolecules and
// geodesic domes, 1971).
func (c class) triangles() int { return c.m*c.m + c.m*c.n + c.n*c.n }

// mostSteps is the most steps of a class.
const mostSteps = 16

// The places of one class are by so much more than those of the one before it, as a share, and
// of a large stock by as much as leaves so many classes.
const (
	apartBy     = 0.06
	mostClasses = 20
)

// classes lists the classes that divide a face by more than least and up to most triangles,
// few first; of those with about as many, the one with the least difference of m and n, whose
// faces are the most alike.
func classes(most float64, least int) []class {
	var all []class
	for m := 1; m <= mostSteps; m++ {
		for n := 0; n <= m && m+n <= mostSteps; n++ {
			if c := (class{m, n}); c.triangles() > least && float64(c.triangles()) <= most {
				all = append(all, c)
			}
		}
	}
	slices.SortFunc(all, func(a, b class) int {
		return cmp.Or(cmp.Compare(a.triangles(), b.triangles()), cmp.Compare(b.n, a.n))
	})
	step := max(apartBy, math.Log(max(most, 1))/mostClasses)
	var out []class
	for _, c := range all {
		if n := len(out); n == 0 || float64(c.triangles()) >= (1+step)*float64(out[n-1].triangles()) {
			out = append(out, c)
		}
	}
	return out
}

func geodesic(base string, c class) []design.Setting {
	out := []design.Setting{{Key: "body.shape", Value: "geodesic"}, {Key: "body.base", Value: base}}
	if c.n == 0 {
		return append(out, design.Setting{Key: "body.subdivision", Value: c.m})
	}
	return append(out, design.Setting{Key: "body.m", Value: c.m}, design.Setting{Key: "body.n", Value: c.n})
}

// One count of even places is by such a share more than the one before it; of a large stock it
// is by as much as leaves so many counts.
const (
	countStep  = 0.15
	mostCounts = 20
)

// counts are the counts of even places from the least to the most drivers.
func counts(least, most int) []int {
	step := max(countStep, math.Log(float64(most)/float64(least))/mostCounts)
	var out []int
	for n := float64(least); n < float64(most); n *= 1 + step {
		if k := int(math.Round(n)); len(out) == 0 || k > out[len(out)-1] {
			out = append(out, k)
		}
	}
	if len(out) > 0 && float64(most) < (1+step/2)*float64(out[len(out)-1]) {
		out = out[:len(out)-1]
	}
	return append(out, most)
}
