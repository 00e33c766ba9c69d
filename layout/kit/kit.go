package kit

import (
	"math"
	"strconv"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/prose"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// The words of a design for joints and mounting.
const (
	Lap    = "lap"
	Flange = "flange"
	Front  = "front"
	Rear   = "rear"
)

// Part is one thing to print.
type Part struct {
	Name  string    // plain: "segment-1", "floor"
	Mesh  poly.Mesh // where it is in the whole, in m; loose things about the origin
	Count int
	Loose bool // not a part of the whole: a jig, a test piece
	// Down is the side that it must be printed on; zero: the one that wants least support.
	Down r3.Vec
	// Off is the direction in which a segment comes off those of lower numbers, and from which it goes onto
	// them, and Lean the angle in rad by which it may go otherwise. Of the first, of one that touches none of
	// them and of what is no segment they are zero.
	Off  r3.Vec
	Lean float64
	// Away is where it goes in a picture of the whole taken apart.
	Away r3.Vec
	// Unmarked are the numbers that there was no room to cut.
	Unmarked []string
}

// From is the direction of Off as an azimuth from the front to the left, from 0 to less than a whole turn,
// and an elevation, in rad; false where there is none.
func (p Part) From() (azimuth, elevation float64, ok bool) {
	if p.Off == (r3.Vec{}) {
		return 0, 0, false
	}
	azimuth, elevation = poly.Bearing(p.Off)
	return azimuth, elevation, true
}

// maker makes the parts of a kit.
type maker struct {
	layout.Kit
	array    *layout.Array
	plan     shell.Plan
	wall     *wall
	seats    []pole // by mount, on the outer face
	seams    []seam
	ways     []way        // in which segments come off those before them
	fastened [][]fastener // by seam
	// Of a floor: its posts, feet and vents, and where the cable comes out; nil: nowhere.
	posts, feet, vents []r3.Vec
	gland              *r3.Vec
	hollow             layout.Hollow
	Vents              Vents
	walled             []pole // vents in the wall: on its outside, inward
	outlet             Outlet
	sectors            int // of the floor
	strips             int // screws of the floor's strips
}

// newMaker begins a kit whose body a cable of so many cores leaves.
func newMaker(a *layout.Array, plan shell.Plan, cores int) (*maker, error) {
	w, err := newWall(a, plan)
	if err != nil {
		return nil, err
	}
	k := &maker{Kit: a.Kit, array: a, plan: plan, wall: w, seams: w.seams(), outlet: outletOf(cores, a.Wiring.WireSection)}
	k.findSeats()
	for _, depth := range k.layers() { // made before parts are, which may be at once
		w.under(depth)
	}
	if err = k.findWays(); err != nil {
		return nil, err
	}
	for i := range k.seats {
		k.seats[i] = k.offSeams(k.seats[i])
	}
	k.fastenAll()
	k.findPosts()
	if k.hollow, err = a.Hollow(); err == nil {
		k.Vents.Why = k.hollow.Why
		k.ventWalls()
	}
	return k, err
}

// offSeams turns a seat so that its screws keep off seams as well as can be.
func (k *maker) offSeams(p pole) pole {
	best, most := p, -1.0
	for i := range 6 {
		turned, least := p.turned(float64(i)*math.Pi/12), math.Inf(1)
		for _, c := range circle(k.ring(), screws) {
			at := turned.place(c[0], c[1], 0)
			for _, s := range k.seams {
				for _, q := range s.points {
					least = min(least, r3.Norm(r3.Sub(at, q)))
				}
			}
		}
		if least > most+1e-6 {
			best, most = turned, least
		}
	}
	return best
}

// segment makes one of the shell's segments from its plain mesh.
func (k *maker) segment(i int, m poly.Mesh, of int) (Part, error) {
	p := Part{Name: "shell", Count: 1}
	if of > 1 {
		p.Name = "segment-" + strconv.Itoa(i+1)
	}
	b := &blank{name: p.Name}
	b.add(body, m)
	if of > 1 {
		k.layered(b, m)
	}
	k.join(b, i)
	k.mounted(b, i)
	k.rim(b, i)
	for _, at := range k.walled {
		if k.within(i, at.at, 0) {
			k.socket(b, at, k.wall.thick)
		}
	}
	p.Unmarked = k.mark(b, i, of > 1)
	if err := k.wall.failed(); err != nil {
		return p, err
	}
	var err error
	if p.Mesh, err = b.carve(); err == nil {
		p.Away = middle(p.Mesh)
		if of > 1 {
			p.Off, p.Lean = k.ways[i].off, k.ways[i].lean
		}
		err = k.whole(b)
	}
	return p, err
}

// crumb is the volume in m3 of a bit of wall that is not missed: a cube of a usual nozzle's line.
const crumb = 0.4e-3 * 0.4e-3 * 0.4e-3

// whole gives an error where a carved segment is without a piece of its wall: what hangs on nothing
// and reaches further out than joints do.
func (k *maker) whole(b *blank) error {
	for _, piece := range b.loose {
		least := math.Inf(1)
		for _, v := range piece.Vertices {
			least = min(least, inside(k.wall.planes, v))
		}
		if v := piece.Volume(); least < 0.4*k.wall.thick && v > crumb {
			return prose.Errorf("%w: %s falls apart: cut-outs, seats and the gap leave no wall round a piece of %.2g cm3 at %.0f, %.0f, %.0f mm", ErrPart, b.name, 1e6*v, 1e3*middle(piece).X, 1e3*middle(piece).Y, 1e3*middle(piece).Z)
		}
	}
	return nil
}

// middle returns the mean place of a mesh's corners.
func middle(m poly.Mesh) (sum r3.Vec) {
	for _, v := range m.Vertices {
		sum = r3.Add(sum, v)
	}
	return r3.Scale(1/float64(len(m.Vertices)), sum)
}

// join gives a segment its joints.
func (k *maker) join(b *blank, segment int) {
	for _, s := range k.seams {
		a, c := k.wall.regions[s.a].Segment, k.wall.regions[s.b].Segment
		if a != segment && c != segment {
			// A third one's tongue, where three segments meet.
			if k.Joint == Lap && a < segment && k.comesNear(s, segment) {
				k.lapped(b, s, segment)
			}
			continue
		}
		k.trimmed(b, s)
		if k.Joint == Flange {
			k.flanged(b, s, segment)
		} else {
			k.lapped(b, s, segment)
		}
		k.fasten(b, s)
	}
}

// comesNear tells whether a seam comes near to a segment.
func (k *maker) comesNear(s seam, segment int) bool {
	for _, p := range s.points {
		if k.within(segment, p, 2*reach) {
			return true
		}
	}
	return false
}

// within tells whether a place is in a segment, or so near.
func (k *maker) within(segment int, at r3.Vec, near float64) bool {
	for _, r := range k.wall.regions {
		if r.Segment == segment && inside(r.Sides, at) > -near {
			return true
		}
	}
	return len(k.wall.regions) == 0
}

// mounted cuts the seats of all drivers that reach into a segment, and keeps the room behind
// them clear.
func (k *maker) mounted(b *blank, segment int) {
	for _, p := range k.seats {
		if !k.within(segment, p.at, k.array.Driver.FlangeRadius+2*reach) {
			continue
		}
		if k.nearJoint(segment, p) {
			b.add(clear, k.room(p))
		}
		b.add(cut, k.seated(p)...)
	}
}

// nearJoint tells whether a joint of a segment or a floor's ledge comes into the room behind a
// driver.
func (k *maker) nearJoint(segment int, p pole) bool {
	near := k.behind() + 2*reach
	if p.at.Z-near < k.lowest()+ledgeTall+postTall && k.wall.floor != nil {
		return true
	}
	for _, s := range k.seams {
		for _, q := range s.points {
			if r3.Norm(r3.Sub(q, p.at)) < near && (k.wall.regions[s.a].Segment == segment || k.wall.regions[s.b].Segment == segment || k.comesNear(s, segment)) {
				return true
			}
		}
	}
	return false
}
