package kit

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// Job makes one part of a kit. Jobs may run at once.
type Job func() (Part, error)

// Beside is what there is to say of a kit beside its parts: what its vents come to and where they go
// in, what is to be bought, where the cable comes out, and what is where on the floor.
type Beside struct {
	Vents    Vents
	Fittings []Fitting // to buy
	Outlet   Outlet
	Ground   Ground
	Sockets  []Socket
	Meetings []Meeting
}

// Work is what makes a kit.
type Work struct {
	Jobs []Job
	Beside
}

// Made is a kit that is made: its parts, each with its print, and where they are on plates.
type Made struct {
	Parts  []Part
	Prints []Print // by part
	Spots  []Spot
	Beside
}

// Ground is what is where on a floor, in the body's frame; of the zero value there is none.
type Ground struct {
	Sectors            int
	Outline            []r3.Vec // of its lower side
	Posts, Feet, Vents []r3.Vec
	Gland              *r3.Vec // nil: there is no room for one
	Bare               []int   // numbers of the mounts whose drivers leave no room for the ledge
}

// ground tells what is where on the floor.
func (k *maker) ground() (g Ground) {
	if k.wall.floor == nil {
		return g
	}
	g = Ground{Sectors: k.sectors, Posts: k.posts, Feet: k.feet, Vents: k.vents, Gland: k.gland, Bare: k.bareLedge()}
	pane := k.pane(0, floorThick, 0)
	for i := range 360 {
		if at, ok := rimAt(pane, float64(i)*math.Pi/180); ok {
			g.Outline = append(g.Outline, at)
		}
	}
	return g
}

// Volume is that of all parts in m3, printed solid.
func (m Made) Volume() (sum float64) {
	for _, p := range m.Parts {
		sum += float64(p.Count) * p.Mesh.Volume()
	}
	return sum
}

// Plan returns what makes the parts of a kit: of a shell cut by a plan into meshes, and of what
// goes with it; cores is how many the cable has that leaves one body.
func Plan(a *layout.Array, plan shell.Plan, meshes []poly.Mesh, cores int) (Work, error) {
	k, err := newMaker(a, plan, cores)
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
	beside := Beside{k.Vents, k.fittings(), k.outlet, k.ground(), k.sockets(), k.meetings()}
	return Work{slices.Concat(out, floor, k.cartridges(), k.jigs()), beside}, k.wall.failed()
}
