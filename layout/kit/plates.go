package kit

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Print is a part as it is printed: on its flat side, its least corner at the origin.
type Print struct {
	Mesh poly.Mesh
	Size r3.Vec // m
	// Overhang is the area in m2 that leans out by more than 45 degrees and wants support.
	Overhang float64
	Fits     bool // the bed
}

// Spot is where a print stands.
type Spot struct {
	Print int // index
	Plate int // from 0
	X, Y  float64
}

// lean is the cosine from straight down of a face that is printed without support: 45 degrees
// (common practice).
const lean = math.Sqrt2 / 2

// slender is how many times as tall as it is narrow a print may stand, or it sways and falls
// (common practice).
const slender = 4

// apart is the room in m between prints, for a brim.
const apart = 5e-3

// Lay lays a part as it wants least support: of the directions that its largest flat sides look
// in, and those of the axes, the one with the least area that overhangs, and of those alike the
// one with the most on the bed.
func Lay(part Part, bed r3.Vec) (best Print) {
	m := part.Mesh
	normals, areas := facesOf(m)
	found := math.Inf(1)
	ways := []r3.Vec{part.Down}
	if part.Down == (r3.Vec{}) {
		ways = downs(normals, areas)
	}
	for _, down := range ways {
		low := math.Inf(1)
		for _, v := range m.Vertices {
			low = min(low, -r3.Dot(v, down))
		}
		overhang, contact := 0.0, 0.0
		for i, t := range m.Triangles {
			if fall := r3.Dot(normals[i], down); fall > lean {
				if fall > 1-1e-6 && -r3.Dot(m.Vertices[t[0]], down)-low < 1e-5 {
					contact += areas[i]
				} else {
					overhang += areas[i]
				}
			}
		}
		// A thousandth of what is on the bed breaks ties.
		score := overhang - 1e-3*contact
		if score >= found-1e-9 && best.Fits {
			continue
		}
		p := flatOn(m, down, bed)
		if p.Size.Z > slender*min(p.Size.X, p.Size.Y) {
			score++ // a square metre more than any part has
		}
		if p.Fits && (!best.Fits || score < found-1e-9) || !p.Fits && !best.Fits && score < found-1e-9 {
			p.Overhang = overhang
			best, found = p, score
		}
	}
	return best
}

// facesOf returns the normals of triangles and their areas.
func facesOf(m poly.Mesh) (normals []r3.Vec, areas []float64) {
	for _, t := range m.Triangles {
		n := r3.Triangle{m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]}.Normal()
		area := r3.Norm(n) / 2
		if area > 0 {
			n = r3.Scale(0.5/area, n)
		}
		normals, areas = append(normals, n), append(areas, area)
	}
	return normals, areas
}

// sides is how many of a part's largest flat sides are tried.
const sides = 12

// downs returns the directions that may be down.
func downs(normals []r3.Vec, areas []float64) []r3.Vec {
	out := []r3.Vec{{Z: -1}, {Z: 1}, {X: -1}, {X: 1}, {Y: -1}, {Y: 1}}
	type flat struct {
		normal r3.Vec
		area   float64
	}
	var all []flat
	index := make(map[[3]int]int)
	for i, n := range normals {
		key := [3]int{int(math.Round(n.X * 500)), int(math.Round(n.Y * 500)), int(math.Round(n.Z * 500))}
		at, ok := index[key]
		if !ok {
			at = len(all)
			index[key] = at
			all = append(all, flat{normal: n})
		}
		all[at].area += areas[i]
	}
	slices.SortStableFunc(all, func(a, b flat) int { return cmp.Compare(b.area, a.area) })
	for _, f := range all[:min(sides, len(all))] {
		if f.area > 0 {
			out = append(out, f.normal)
		}
	}
	return out
}

// flatOn turns a part so that a direction is down, and about the vertical as it is narrowest on
// the bed.
func flatOn(m poly.Mesh, down, bed r3.Vec) Print {
	frame := poleAt(r3.Vec{}, r3.Scale(-1, down))
	turned := m.Moved(func(v r3.Vec) r3.Vec {
		return r3.Vec{X: r3.Dot(v, frame.right), Y: r3.Dot(v, frame.up), Z: r3.Dot(v, frame.out)}
	})
	best, least, fits := 0.0, math.Inf(1), false
	for step := range 36 {
		angle := float64(step) * math.Pi / 36
		sin, cos := math.Sincos(angle)
		size := sizeOf(turned.Vertices, sin, cos)
		ok := size.X <= bed.X && size.Y <= bed.Y && size.Z <= bed.Z
		if area := size.X * size.Y; ok && !fits || ok == fits && area < least*(1-1e-9) {
			best, least, fits = angle, area, ok
		}
	}
	sin, cos := math.Sincos(best)
	turned = turned.Moved(func(v r3.Vec) r3.Vec { return r3.Vec{X: cos*v.X - sin*v.Y, Y: sin*v.X + cos*v.Y, Z: v.Z} })
	box := turned.Bounds()
	return Print{Mesh: turned.Moved(func(v r3.Vec) r3.Vec { return r3.Sub(v, box.Min) }), Size: r3.Sub(box.Max, box.Min), Fits: fits}
}

// sizeOf returns the box of points turned about z.
func sizeOf(points []r3.Vec, sin, cos float64) r3.Vec {
	low, high := r3.Vec{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}, r3.Vec{X: math.Inf(-1), Y: math.Inf(-1), Z: math.Inf(-1)}
	for _, v := range points {
		x, y := cos*v.X-sin*v.Y, sin*v.X+cos*v.Y
		low = r3.Vec{X: min(low.X, x), Y: min(low.Y, y), Z: min(low.Z, v.Z)}
		high = r3.Vec{X: max(high.X, x), Y: max(high.Y, y), Z: max(high.Z, v.Z)}
	}
	return r3.Sub(high, low)
}

// Plates shares prints out over plates, in rows, the deepest first; counts has how often each is
// printed. One that does not fit is left out. What is on a plate is in its middle.
func Plates(prints []Print, counts []int, bed r3.Vec) (out []Spot) {
	var order []int
	for i, p := range prints {
		for range counts[i] {
			if p.Fits {
				order = append(order, i)
			}
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(prints[b].Size.Y, prints[a].Size.Y) })
	plate, x, y, row := 0, 0.0, 0.0, 0.0
	for _, i := range order {
		size := prints[i].Size
		if x > 0 && x+size.X > bed.X {
			x, y, row = 0, y+row+apart, 0
		}
		if y > 0 && y+size.Y > bed.Y {
			plate, x, y, row = plate+1, 0, 0, 0
		}
		out = append(out, Spot{i, plate, x, y})
		x, row = x+size.X+apart, max(row, size.Y)
	}
	centre(prints, out, bed)
	return out
}

// centre moves what is on each plate to the middle of the bed, so that brims have room all round.
func centre(prints []Print, spots []Spot, bed r3.Vec) {
	far := make(map[int]r3.Vec)
	for _, s := range spots {
		f, size := far[s.Plate], prints[s.Print].Size
		far[s.Plate] = r3.Vec{X: max(f.X, s.X+size.X), Y: max(f.Y, s.Y+size.Y)}
	}
	for i, s := range spots {
		spots[i].X += (bed.X - far[s.Plate].X) / 2
		spots[i].Y += (bed.Y - far[s.Plate].Y) / 2
	}
}
