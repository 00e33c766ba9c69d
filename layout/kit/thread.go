package kit

import (
	"math"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// thread is an ISO metric trapezoidal thread (ISO 2901: profile, flanks at 15 degrees from
// square to the axis, 30 between them; ISO 2904: basic dimensions), in m. All from memory.
type thread struct {
	major float64 // of the external thread, d
	pitch float64
}

// threads are sizes of the first choice in ISO 2904, with the finest of their pitches: a nut of
// a few millimetres has two turns, and the bore is wide.
var threads = []thread{
	{16e-3, 2e-3}, {20e-3, 2e-3}, {24e-3, 3e-3}, {28e-3, 3e-3}, {32e-3, 3e-3}, {36e-3, 3e-3},
	{40e-3, 3e-3}, {44e-3, 3e-3}, {48e-3, 3e-3}, {52e-3, 3e-3}, {60e-3, 3e-3}, {70e-3, 4e-3},
}

// crest is the clearance a_c between root and crest.
func (t thread) crest() float64 {
	if t.pitch > 5e-3 {
		return 0.5e-3
	}
	return 0.25e-3
}

// The basic diameters: d2 at half of the profile, where ridge and groove are alike; d3 at the
// external thread's root; D1 and D4 at the internal thread's crest and root.
func (t thread) middle() float64 { return t.major - t.pitch/2 }
func (t thread) minor() float64  { return t.major - t.pitch - 2*t.crest() }
func (t thread) inner() float64  { return t.major - t.pitch }
func (t thread) outer() float64  { return t.major + 2*t.crest() }

// steps is how many flat sides a turn of a thread has; their corners are on the thread.
const steps = 72

// rod returns a thread along the z axis, from one height to another, between two diameters and
// with its flanks moved by a length out of (above 0) or into the material, square to the axis.
// Both ends are ragged: cut them.
func (t thread) rod(low, high, root, top, grow float64) poly.Mesh {
	slope := math.Tan(15 * math.Pi / 180)
	// Half widths of the ridge at both diameters, along the axis; it is a quarter pitch at d2.
	half := func(d float64) float64 { return t.pitch/4 - slope*(d-t.middle())/2 + grow }
	profile := [4][2]float64{{-half(root), root / 2}, {-half(top), top / 2}, {half(top), top / 2}, {half(root), root / 2}}
	turns := int(math.Ceil((high-low)/t.pitch)) + 2
	rows := 4 * turns
	var m poly.Mesh
	at := func(i, j int) int { return i*(rows+4) + j }
	for i := range steps + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
		for j := range rows + 4 {
			p := profile[j%4]
			z := low - 1.5*t.pitch + t.pitch*(float64(j/4)+float64(i)/steps) + p[0]
			m.Vertices = append(m.Vertices, r3.Vec{X: p[1] * cos, Y: p[1] * sin, Z: z})
		}
	}
	// Around, the last step is the first of the next turn.
	number := func(i, j int) int {
		if i == steps {
			return at(0, j+4)
		}
		return at(i, j)
	}
	quad := func(a, b, c, d int) { m.Triangles = append(m.Triangles, [3]int{a, b, c}, [3]int{a, c, d}) }
	for i := range steps {
		for j := range rows - 1 {
			quad(number(i, j), number(i+1, j), number(i+1, j+1), number(i, j+1))
		}
	}
	bottom := r3.Vec{Z: low - 6*t.pitch}
	ceiling := r3.Vec{Z: low + t.pitch*float64(turns+4)}
	m.Vertices = append(m.Vertices, bottom, ceiling)
	b, c := len(m.Vertices)-2, len(m.Vertices)-1
	for i := range steps {
		m.Triangles = append(m.Triangles, [3]int{number(i+1, 0), number(i, 0), b}, [3]int{number(i, rows-1), number(i+1, rows-1), c})
	}
	for j := range 4 { // where the turn ends a pitch higher than it began
		m.Triangles = append(m.Triangles, [3]int{at(0, j), at(0, j+1), b}, [3]int{at(0, rows+j), at(0, rows+j-1), c})
	}
	return m.Tidy()
}

// external returns a printed thread: smaller all round by half of a gap.
func (t thread) external(low, high, gap float64) poly.Mesh {
	return t.rod(low, high, t.minor()-gap, t.major-gap, -gap/2/math.Cos(15*math.Pi/180))
}

// internal returns what an internal thread is cut with: larger all round by half of a gap.
func (t thread) internal(low, high, gap float64) poly.Mesh {
	return t.rod(low, high, t.inner()+gap, t.outer()+gap, gap/2/math.Cos(15*math.Pi/180))
}
