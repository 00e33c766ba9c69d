package kit

import (
	"errors"
	"fmt"

	"pappus/layout/carve"
	"pappus/layout/poly"
)

// role is what a mesh does to a part.
type role int

const (
	body    role = iota // the part to begin with
	rib                 // joined to it, from half of the wall's depth inward, and trimmed as it is
	tongue              // joined below a lap, and not trimmed: it reaches over another part
	trim                // taken off body and ribs
	clear               // kept clear of ribs, tongues and ledges for drivers
	other               // and for other parts' tongues, below the wall
	groove              // taken off ribs and tongues
	ledge               // joined, outside of its opening
	opening             // of the ledge
	post                // joined, whatever is there
	cut                 // taken off all
	// Layers: what is deeper than half of the wall, than where grooves and others' tongues
	// begin, than a lap's gap, than ribs and tongues reach, and than grooves.
	half
	start
	top
	deep
	bottom
	roleCount // how many there are
)

// blank is a part before it is carved.
type blank struct {
	name   string
	roles  []role
	meshes []poly.Mesh
	loose  []poly.Mesh // what was carved and hangs on nothing
}

func (b *blank) add(r role, meshes ...poly.Mesh) {
	for _, m := range meshes {
		if len(m.Triangles) > 0 {
			b.roles, b.meshes = append(b.roles, r), append(b.meshes, m)
		}
	}
}

// keeps is the rule of how roles make a part.
func keeps(has [roleCount]bool) bool {
	blocked := has[clear] || has[other] && has[start]
	inner := !blocked && !has[deep] && !(has[groove] && has[start] && !has[bottom])
	solid := (has[body] || has[rib] && has[half] && inner) && !has[trim] || has[tongue] && has[top] && inner ||
		has[ledge] && !has[opening] && !blocked || has[post]
	return solid && !has[cut]
}

// ErrPart tells of a part that cannot be made.
var ErrPart = errors.New("a part of the kit cannot be made")

// carve makes the part: its largest piece, for a bit of a tongue that a driver cuts off hangs
// on nothing.
func (b *blank) carve() (poly.Mesh, error) { return b.carveAs(keeps) }

// carveAs makes a part by another rule.
func (b *blank) carveAs(rule func([roleCount]bool) bool) (poly.Mesh, error) {
	m, err := carve.Combine(func(in []bool) bool {
		var has [roleCount]bool
		for i, is := range in {
			if is { // few are
				has[b.roles[i]] = true
			}
		}
		return rule(has)
	}, b.meshes...)
	if err != nil {
		return poly.Mesh{}, fmt.Errorf("%w: %s: %w", ErrPart, b.name, err)
	}
	pieces := m.Pieces()
	b.loose = pieces[1:]
	return pieces[0], nil
}
