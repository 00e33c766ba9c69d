package kit

import (
	"slices"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/shell"
)

// Job makes one part of a kit. Jobs may run at once.
type Job func() (Part, error)

// Jobs returns what makes the parts of a kit: of a shell cut by a plan into meshes, and of what
// goes with it.
func Jobs(a *layout.Array, plan shell.Plan, meshes []poly.Mesh) ([]Job, error) {
	k, err := newMaker(a, plan)
	if err != nil {
		return nil, err
	}
	var out []Job
	for i, m := range meshes {
		out = append(out, func() (Part, error) { return k.segment(i, m, len(meshes)) })
	}
	floor, err := k.floors()
	if err != nil {
		return nil, err
	}
	return slices.Concat(out, floor, k.cartridges(), k.jigs()), k.wall.failed()
}
