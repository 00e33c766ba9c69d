package kit

import (
	"slices"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/shell"
)

// Job makes one part of a kit. Jobs may run at once.
type Job func() (Part, error)

// Work is what makes a kit.
type Work struct {
	Jobs     []Job
	Vents    Vents
	Fittings []Fitting // to buy
}

// Made is a kit that is made: its parts, each with its print, where they are on plates, what its
// vents come to, and what is to be bought.
type Made struct {
	Parts    []Part
	Prints   []Print // by part
	Spots    []Spot
	Vents    Vents
	Fittings []Fitting
}

// Volume is that of all parts in m3, printed solid.
func (m Made) Volume() (sum float64) {
	for _, p := range m.Parts {
		sum += float64(p.Count) * p.Mesh.Volume()
	}
	return sum
}

// Whole returns what is put together of the parts, as one mesh: not jigs, vents and feet.
func (m Made) Whole() (out poly.Mesh) {
	for _, p := range m.Parts {
		if !p.Loose {
			out = poly.Joined(out, p.Mesh)
		}
	}
	return out
}

// Plan returns what makes the parts of a kit: of a shell cut by a plan into meshes, and of what
// goes with it.
func Plan(a *layout.Array, plan shell.Plan, meshes []poly.Mesh) (Work, error) {
	k, err := newMaker(a, plan)
	if err != nil {
		return Work{}, err
	}
	var out []Job
	for i, m := range meshes {
		out = append(out, func() (Part, error) { return k.segment(i, m, len(meshes)) })
	}
	floor, err := k.floors()
	if err != nil {
		return Work{}, err
	}
	return Work{slices.Concat(out, floor, k.cartridges(), k.jigs()), k.Vents, k.fittings()}, k.wall.failed()
}
