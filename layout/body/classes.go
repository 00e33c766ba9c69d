package body

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// How far measures of one class of edges may be apart: lengths over the radius, angles
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
