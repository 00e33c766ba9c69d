package body

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// How far measures of one class may be apart: lengths over the radius, angles
// in rad. On a body of 150 mm that is 1.5 micrometres and 0.006 degrees.
const (
	sameLength = 1e-5
	sameAngle  = 1e-4
)

// EdgeClass is the edges of one length and one dihedral angle.
type EdgeClass struct {
	// Name is the letter of the length, A for the shortest; where edges of that
	// length have several angles, with a number, 1 for the sharpest.
	Name   string
	Letter string
	Length float64 // m, the mean of the class
	// Chord is the length over Radius: the chord factor of a geodesic.
	Chord    float64
	Dihedral float64 // rad, inside the body, the mean of the class
	Edges    []int   // places in Edges, ascending
}

// EdgeClasses sorts the edges into classes by length and dihedral angle,
// shortest first, among those sharpest first. Letters go on from Z with AA.
func (b *Body) EdgeClasses() []EdgeClass {
	edges := b.Edges()
	lengths, angles := make([]float64, len(edges)), make([]float64, len(edges))
	all := make([]int, len(edges))
	for i, e := range edges {
		lengths[i] = r3.Norm(r3.Sub(b.Vertices[e.A], b.Vertices[e.B]))
		angles[i], all[i] = b.Dihedral(e), i
	}
	var classes []EdgeClass
	for n, alike := range clusters(all, lengths, sameLength*b.Radius) {
		byAngle := clusters(alike, angles, sameAngle)
		for k, members := range byAngle {
			slices.Sort(members)
			c := EdgeClass{Letter: letter(n), Length: mean(members, lengths), Dihedral: mean(members, angles), Edges: members}
			c.Name, c.Chord = c.Letter, c.Length/b.Radius
			if len(byAngle) > 1 {
				c.Name = fmt.Sprint(c.Letter, k+1)
			}
			classes = append(classes, c)
		}
	}
	return classes
}

// clusters sorts things by value and parts them wherever the next value is more
// than a gap away.
func clusters(things []int, value []float64, gap float64) [][]int {
	things = slices.Clone(things)
	slices.SortStableFunc(things, func(i, j int) int { return cmp.Compare(value[i], value[j]) })
	var out [][]int
	for i, t := range things {
		if i == 0 || value[t]-value[things[i-1]] > gap {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], t)
	}
	return out
}

func mean(things []int, value []float64) float64 {
	sum := 0.0
	for _, t := range things {
		sum += value[t]
	}
	return sum / float64(len(things))
}

// letter names the n-th of a row: A to Z, AA to AZ, BA and so on.
func letter(n int) string {
	out := string(rune('A' + n%26))
	for n = n/26 - 1; n >= 0; n = n/26 - 1 {
		out = string(rune('A'+n%26)) + out
	}
	return out
}

// FaceClass is the faces that a turn and a shift lay on each other, outer side
// up.
type FaceClass struct {
	// Lengths are the edges in m and Angles the corners in rad of the first
	// face, counter-clockwise from its first corner: edge i runs from corner i.
	Lengths, Angles []float64
	Area            float64 // m2, of the first face
	// Mirror is the class of the mirror images: this one where a face is its
	// own mirror image, -1 where the body has none.
	Mirror int
	Faces  []int // ascending
	// Turns has for each of Faces the place in its Corners of the corner that
	// lies on the first corner of the first face.
	Turns []int
}

// FaceClasses sorts the faces into classes of congruent ones, in the order of
// their first faces. Faces count as congruent where sides and short diagonals
// agree within a hundred-thousandth of Radius.
func (b *Body) FaceClasses() []FaceClass {
	var classes []FaceClass
	var shapes []outline
	slack := sameLength * b.Radius
	like := func(o outline) (class, turn int) {
		for c := range shapes {
			if t := shapes[c].turn(o, slack); t >= 0 {
				return c, t
			}
		}
		return -1, 0
	}
	for f := range b.Faces {
		o := b.outline(f)
		class, turn := like(o)
		if class < 0 {
			class = len(classes)
			classes, shapes = append(classes, b.faceClass(f, o)), append(shapes, o)
		}
		classes[class].Faces = append(classes[class].Faces, f)
		classes[class].Turns = append(classes[class].Turns, turn)
	}
	for c, o := range shapes {
		classes[c].Mirror, _ = like(o.mirrored())
	}
	return classes
}

func (b *Body) faceClass(f int, o outline) FaceClass {
	c := FaceClass{Area: r3.Norm(b.AreaVector(f))}
	corners := b.Faces[f].Corners
	n := len(corners)
	for i := range corners {
		back := r3.Sub(b.Vertices[corners[(i+n-1)%n]], b.Vertices[corners[i]])
		on := r3.Sub(b.Vertices[corners[(i+1)%n]], b.Vertices[corners[i]])
		c.Lengths = append(c.Lengths, o.sides[i])
		c.Angles = append(c.Angles, math.Atan2(r3.Norm(r3.Cross(on, back)), r3.Dot(on, back)))
	}
	return c
}

// outline is what tells a convex polygon's shape, in m: its sides, and from
// each corner the diagonal to the next but one.
type outline struct{ sides, diagonals []float64 }

func (b *Body) outline(f int) outline {
	corners := b.Faces[f].Corners
	n := len(corners)
	o := outline{make([]float64, n), make([]float64, n)}
	for i, c := range corners {
		o.sides[i] = r3.Norm(r3.Sub(b.Vertices[corners[(i+1)%n]], b.Vertices[c]))
		o.diagonals[i] = r3.Norm(r3.Sub(b.Vertices[corners[(i+2)%n]], b.Vertices[c]))
	}
	return o
}

// mirrored returns the outline of the mirror image.
func (o outline) mirrored() outline {
	n := len(o.sides)
	m := outline{make([]float64, n), make([]float64, n)}
	for i := range n { // corner i becomes corner n-1-i
		m.sides[i] = o.sides[(2*n-2-i)%n]
		m.diagonals[i] = o.diagonals[(2*n-3-i)%n]
	}
	return m
}

// turn returns the corner of another outline that lies on this one's first, -1
// if they differ however they are turned.
func (o outline) turn(other outline, slack float64) int {
	n := len(o.sides)
	if len(other.sides) != n {
		return -1
	}
	for t := range n {
		same := true
		for i := 0; i < n && same; i++ {
			k := (i + t) % n
			same = math.Abs(o.sides[i]-other.sides[k]) <= slack && math.Abs(o.diagonals[i]-other.diagonals[k]) <= slack
		}
		if same {
			return t
		}
	}
	return -1
}
