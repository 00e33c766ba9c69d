package boundary

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"
)

// mesh is a surface in elements: pieces of patches on which the pressure is a polynomial in u
// and v, given by its values at the nodes of a product of two Gauss-Legendre rules.
type mesh struct {
	patch   []Patch
	element []element
	at      []r3.Vec  // of each node, m
	normal  []r3.Vec  // of unit length, out of the body
	weight  []float64 // the part of the area that it stands for, m2
	home    []int     // the element that it is in
}

// element is part of a patch: u and v between two values, with so many nodes along each.
type element struct {
	patch          int
	u0, u1, v0, v1 float64
	nu, nv         int
	first          int    // its first node
	middle         r3.Vec // of its corners and middle
	reach          float64
}

// newMesh returns the mesh of a surface that has so many nodes to a wavelength of 2 pi/k m,
// and, next to its edges, where the pressure goes with the distance to a power below one,
// elements that are smaller.
func newMesh(patches []Patch, k, density, piston float64, c choices) *mesh {
	m := &mesh{patch: patches}
	size := 0.0
	for p := range patches {
		for _, v := range patches[p].corners() {
			size = max(size, r3.Norm(v))
		}
	}
	for p := range patches {
		one := &patches[p]
		perMetre := density * k / (2 * math.Pi)
		if one.flat < 0 {
			perMetre *= c.Curved
			perMetre = max(perMetre, min(1/(c.Round*piston), 1.6*perMetre))
		}
		us := c.spans(one.length(true), size, perMetre, one.bendU)
		vs := c.spans(one.length(false), size, perMetre, one.bendV)
		for _, u := range us {
			for _, v := range vs {
				m.add(element{patch: p, u0: u.from, u1: u.to, v0: v.from, v1: v.to, nu: u.nodes, nv: v.nodes})
			}
		}
	}
	return m
}

// length returns how long a patch is along u or v, in m: the longer of its two sides and its
// middle line.
func (p *Patch) length(alongU bool) float64 {
	longest := 0.0
	for _, across := range []float64{0, 0.5, 1} {
		const steps = 8
		sum := 0.0
		for i := range steps {
			along := (float64(i) + 0.5) / steps
			if alongU {
				_, d, _ := p.at(along, across)
				sum += r3.Norm(d) / steps
			} else {
				_, _, d := p.at(across, along)
				sum += r3.Norm(d) / steps
			}
		}
		longest = max(longest, sum)
	}
	return longest
}

// corners returns the patch's.
func (p *Patch) corners() (out [4]r3.Vec) {
	for i, c := range [4][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
		out[i], _, _ = p.at(c[0], c[1])
	}
	return out
}

type span struct {
	from, to float64
	nodes    int
}

// spans cuts a side of a length in m, of a body of a size, into elements. A side that is short
// beside the body has few nodes whatever the wavelength, one that is long at least three. Where
// the surface bends sharply at its beginning a short element comes first.
func (c choices) spans(length, size, perMetre, bend float64) []span {
	nodes := max(c.fewest(length/size, bend), int(math.Ceil(perMetre*length)))
	var out []span
	from := 0.0
	if bend >= c.Bluntest && nodes > 1 {
		out = append(out, span{0, c.Graded, min(3, nodes)})
		from = c.Graded
		nodes = max(2, int(math.Ceil(float64(nodes)*(1-c.Graded))))
	}
	pieces := (nodes + c.Most - 1) / c.Most
	each := (nodes + pieces - 1) / pieces
	for i := range pieces {
		out = append(out, span{from + (1-from)*float64(i)/float64(pieces), from + (1-from)*float64(i+1)/float64(pieces), each})
	}
	for i := range out {
		out[i].nodes = max(1, out[i].nodes-c.Fewer)
	}
	return out
}

// fewest is how many nodes a side has at least, by its length over the body's size. Between two
// sharp edges that are near each other, as on the rim of a slab, the pressure is never even.
func (c choices) fewest(share, bend float64) int {
	switch {
	case share > 0.25:
		return max(3, int(math.Ceil(c.Least*share)))
	case share > 0.1, share > c.Short && bend >= c.Bluntest:
		return 2
	}
	return 1
}

// add adds an element and its nodes.
func (m *mesh) add(e element) {
	p := &m.patch[e.patch]
	e.first = len(m.at)
	u, v := rule(e.nu), rule(e.nv)
	for i, x := range u.at {
		for j, y := range v.at {
			at, du, dv := p.at(e.u0+(e.u1-e.u0)*x, e.v0+(e.v1-e.v0)*y)
			out := r3.Cross(du, dv)
			area := r3.Norm(out)
			m.at = append(m.at, at)
			m.normal = append(m.normal, r3.Scale(1/area, out))
			m.weight = append(m.weight, area*u.weight[i]*v.weight[j]*(e.u1-e.u0)*(e.v1-e.v0))
			m.home = append(m.home, len(m.element))
		}
	}
	e.middle, _, _ = p.at((e.u0+e.u1)/2, (e.v0+e.v1)/2)
	for _, u := range []float64{e.u0, (e.u0 + e.u1) / 2, e.u1} {
		for _, v := range []float64{e.v0, (e.v0 + e.v1) / 2, e.v1} {
			at, _, _ := p.at(u, v)
			e.reach = max(e.reach, r3.Norm(r3.Sub(at, e.middle)))
		}
	}
	m.element = append(m.element, e)
}

// Len is how many nodes a mesh has.
func (m *mesh) Len() int { return len(m.at) }

// gauss is a rule on 0 to 1, with what Lagrange's polynomials on its nodes are divided by.
type gauss struct {
	at, weight, over []float64
}

var rules = func() (out [16]gauss) {
	for n := 1; n < len(out); n++ {
		g := gauss{make([]float64, n), make([]float64, n), make([]float64, n)}
		quad.Legendre{}.FixedLocations(g.at, g.weight, 0, 1)
		for i, x := range g.at {
			g.over[i] = 1
			for j, y := range g.at {
				if i != j {
					g.over[i] /= x - y
				}
			}
		}
		out[n] = g
	}
	return out
}()

// rule returns that with so many nodes, from 1 to 15.
func rule(nodes int) gauss { return rules[nodes] }

// lagrange sets dst[i] to the polynomial that is 1 at node i and 0 at the others.
func (g gauss) lagrange(dst []float64, x float64) {
	for i := range g.at {
		v := g.over[i]
		for j, y := range g.at {
			if i != j {
				v *= x - y
			}
		}
		dst[i] = v
	}
}
