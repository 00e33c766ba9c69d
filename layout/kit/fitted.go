package kit

import (
	"math"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Socket is where a cartridge goes in: on the outside, inward.
type Socket struct{ At, In r3.Vec }

// sockets returns where all cartridges go in.
func (k *maker) sockets() (out []Socket) {
	for _, v := range k.vents {
		out = append(out, Socket{r3.Vec{X: v.X, Y: v.Y, Z: -k.wall.floor.Offset}, r3.Vec{Z: 1}})
	}
	for _, p := range k.walled {
		out = append(out, Socket{p.at, p.out})
	}
	return out
}

// Fitted returns the cartridges, their lids and the feet where they go, of a body whose cut is at
// a height in m; Away is where they go in a picture of the whole taken apart: with what they are
// in, and on beyond it.
func (m Made) Fitted(cut, stand float64) (out []Part) {
	c := m.Vents.Cartridge
	long := c.Long() - headTall + grid // of a cartridge and its lid, inward
	// They are turned until their threads meet; each thread is at azimuth 0 where it begins.
	turn := -2 * math.Pi * (threadFrom + headTall) / c.pitch
	lidTurn := turn + 2*math.Pi*(long+headTall)/c.pitch
	for _, s := range m.Sockets {
		at, with := poleAt(s.At, s.In), m.awayWith(s.At)
		in := at.turned(turn)
		out = append(out, m.fitted("vent", r3.Add(with, r3.Scale(-beyond, s.In)), func(v r3.Vec) r3.Vec { return in.place(v.X, v.Y, v.Z-headTall) })...)
		// A lid is turned over, its grid inward.
		lid := at.turned(lidTurn)
		out = append(out, m.fitted("vent-lid", r3.Add(with, r3.Scale(beyond, s.In)), func(v r3.Vec) r3.Vec { return lid.place(v.X, -v.Y, long-v.Z) })...)
	}
	for _, f := range m.Ground.Feet {
		out = append(out, m.fitted("foot", r3.Add(m.awayWith(f), r3.Vec{Z: -beyond}), func(v r3.Vec) r3.Vec { return r3.Add(v, r3.Vec{X: f.X, Y: f.Y, Z: cut - stand}) })...)
	}
	return out
}

// beyond is how much further than what it is in a fitted part goes, in m.
const beyond = 0.1 // free: clear of it in the picture

// awayWith is where what is at a place goes: with the part of the floor, or straight out.
func (m Made) awayWith(at r3.Vec) r3.Vec {
	if m.Ground.Sectors == 0 {
		return at
	}
	azimuth, _ := poly.Bearing(at)
	i := int(azimuth / (2 * math.Pi) * float64(m.Ground.Sectors))
	for _, p := range m.Parts {
		if p.Name == floorName(i, m.Ground.Sectors) {
			return p.Away
		}
	}
	return at
}

// fitted is the part of a name, moved.
func (m Made) fitted(name string, away r3.Vec, to func(r3.Vec) r3.Vec) (out []Part) {
	for _, p := range m.Parts {
		if p.Name == name {
			out = append(out, Part{Name: name, Mesh: p.Mesh.Moved(to), Count: 1, Away: away})
		}
	}
	return out
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
