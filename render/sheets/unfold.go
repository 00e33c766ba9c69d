package sheets

import (
	"slices"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r2"
)

// piece is part of a net, laid out flat; y upward, in the net's own mm.
type piece struct {
	faces []laid
	folds [][2]r2.Vec
	tabs  []tab
	ends  []end
}

// laid is a face in its place.
type laid struct {
	face    int
	corners []r2.Vec // in the order of the face's
	mounts  []r2.Vec // in the order of mountsOn
}

// tab is a flap to glue.
type tab struct{ corners []r2.Vec }

// end is an edge of a face that is no fold: it meets another of its number.
type end struct {
	edge int // index into Body.Edges()
	p, q r2.Vec
}

// unfolder lays a body out.
type unfolder struct {
	array         *layout.Array
	on            [][]int
	scale         float64    // mm of paper for each m
	beyond        [][]beyond // of each face, by edge
	width, height float64    // mm that a piece may take, tabs left out
	done          []bool
}

// tabDeep is how deep a tab is, in mm (common practice: 5 to 8).
const tabDeep = 6.0

func newUnfolder(a *layout.Array, scale, width, height float64) *unfolder {
	return &unfolder{array: a, on: mountsOn(a), scale: scale, beyond: beyondOf(a.Body), width: width, height: height, done: make([]bool, len(a.Body.Faces))}
}

// unfold returns the pieces, nil where a face alone is larger than the room.
func (u *unfolder) unfold() []piece {
	var out []piece
	for f := range u.done {
		if u.done[f] {
			continue
		}
		first := u.lay(f, 0, r2.Vec{}, r2.Vec{X: 1})
		if !u.hasRoom(nil, first) {
			return nil
		}
		out = append(out, u.grow(first))
	}
	u.glue(out)
	return out
}

// lay puts a face down with the start of one of its edges at a place and that
// edge along a unit vector.
func (u *unfolder) lay(face, edge int, at, along r2.Vec) laid {
	flat := flatten(u.array, face, edge, u.on[face])
	place := func(p r2.Vec) r2.Vec {
		p = r2.Scale(u.scale, p)
		return r2.Vec{X: at.X + p.X*along.X - p.Y*along.Y, Y: at.Y + p.X*along.Y + p.Y*along.X}
	}
	corners := each(flat.corners, place)
	n := len(corners)
	turned := make([]r2.Vec, n)
	for i, c := range corners {
		turned[(i+edge)%n] = c
	}
	return laid{face, turned, each(flat.mounts, place)}
}

// grow makes a piece from a first face, breadth first.
func (u *unfolder) grow(first laid) piece {
	p := piece{faces: []laid{first}}
	u.done[first.face] = true
	for i := 0; i < len(p.faces); i++ {
		l := p.faces[i]
		n := len(l.corners)
		for k, past := range u.beyond[l.face] {
			if u.done[past.face] {
				continue
			}
			// The edge runs the other way round in the next face.
			from, to := l.corners[(k+1)%n], l.corners[k]
			next := u.lay(past.face, past.at, from, r2.Unit(r2.Sub(to, from)))
			if u.hasRoom(p.faces, next) && !overlapsAny(p.faces, next.corners) {
				u.done[past.face] = true
				p.faces = append(p.faces, next)
				p.folds = append(p.folds, [2]r2.Vec{to, from})
			}
		}
	}
	u.findEnds(&p)
	return p
}

// hasRoom tells whether a piece stays small enough with one face more.
func (u *unfolder) hasRoom(faces []laid, next laid) bool {
	box := bounds(next.corners)
	for _, l := range faces {
		box = box.Union(bounds(l.corners))
	}
	return box.Size().X <= u.width && box.Size().Y <= u.height
}

// findEnds notes the edges that are no folds.
func (u *unfolder) findEnds(p *piece) {
	const near = 1e-6 // mm
	for _, l := range p.faces {
		n := len(l.corners)
		for k, past := range u.beyond[l.face] {
			a, b := l.corners[k], l.corners[(k+1)%n]
			isFold := slices.ContainsFunc(p.folds, func(f [2]r2.Vec) bool {
				return r2.Norm(r2.Sub(f[0], a)) < near && r2.Norm(r2.Sub(f[1], b)) < near ||
					r2.Norm(r2.Sub(f[1], a)) < near && r2.Norm(r2.Sub(f[0], b)) < near
			})
			if !isFold {
				p.ends = append(p.ends, end{past.edge, a, b})
			}
		}
	}
}

// glue gives each pair of ends a tab, at the first of them where it has room.
func (u *unfolder) glue(pieces []piece) {
	has := make(map[int]bool)
	for i := range pieces {
		p := &pieces[i]
		for _, e := range p.ends {
			if has[e.edge] {
				continue
			}
			for _, shape := range tabShapes {
				if t, ok := p.flap(e, shape); ok {
					p.tabs = append(p.tabs, t)
					has[e.edge] = true
					break
				}
			}
		}
	}
}

// tabShape is how deep a tab is, in mm and at most, and over which share of its
// edge each end slants.
type tabShape struct{ deep, slant float64 }

// tabShapes are tried in turn: the flatter ones fit into narrow gaps.
var tabShapes = []tabShape{{tabDeep, 0.15}, {tabDeep, 0.35}, {4, 0.35}, {3, 0.45}}

// flap returns a tab at an end, and whether it is clear of all else.
func (p *piece) flap(e end, shape tabShape) (tab, bool) {
	length := r2.Norm(r2.Sub(e.q, e.p))
	along := r2.Unit(r2.Sub(e.q, e.p))
	out := r2.Scale(min(shape.deep, 0.3*length), r2.Vec{X: along.Y, Y: -along.X})
	in := r2.Scale(shape.slant*length, along)
	t := []r2.Vec{e.q, e.p, r2.Add(e.p, r2.Add(in, out)), r2.Add(e.q, r2.Sub(out, in))}
	if overlapsAny(p.faces, t) {
		return tab{}, false
	}
	for _, other := range p.tabs {
		if overlap(other.corners, t) {
			return tab{}, false
		}
	}
	return tab{t}, true
}

func overlapsAny(faces []laid, corners []r2.Vec) bool {
	return slices.ContainsFunc(faces, func(l laid) bool { return overlap(l.corners, corners) })
}

// overlap tells whether two convex outlines, counter-clockwise, have more in
// common than an edge: no edge of either has all of the other beyond it, but
// for a thousandth of a mm.
func overlap(a, b []r2.Vec) bool { return !parted(a, b) && !parted(b, a) }

func parted(a, b []r2.Vec) bool {
	for i, p := range a {
		along := r2.Unit(r2.Sub(a[(i+1)%len(a)], p))
		if !slices.ContainsFunc(b, func(q r2.Vec) bool { return r2.Cross(along, r2.Sub(q, p)) > 1e-3 }) {
			return true
		}
	}
	return false
}

// extent returns the box round a piece, tabs included.
func (p piece) extent() r2.Box {
	box := bounds(p.faces[0].corners)
	for _, l := range p.faces {
		box = box.Union(bounds(l.corners))
	}
	for _, t := range p.tabs {
		box = box.Union(bounds(t.corners))
	}
	return box
}
