package kit

import (
	"math"
	"slices"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// ventWalls finds where vents are on a body without a floor: on flat faces that no driver is on
// and air comes to. Where there are none it finds what would do in place of drivers.
func (k *maker) ventWalls() {
	if k.wall.floor != nil || k.hollow.Vented == nil {
		return
	}
	bare := k.bareFaces()
	var sizes []Cartridge
	var places [][]r3.Vec
	var poles [][]pole
	for _, t := range threads {
		c := cartridge(t, k.Gap, k.wall.thick)
		var at []r3.Vec
		on := k.onFaces(bare, c)
		for _, p := range on {
			at = append(at, p.at)
		}
		sizes, places, poles = append(sizes, c), append(places, at), append(poles, on)
	}
	var size int
	if k.Vents, size = k.choose(k.hollow, sizes, places); k.Vents.Count > 0 {
		k.walled = poles[size][:k.Vents.Count]
		return
	}
	if k.Vents.Box.Q > 0 { // there is room, and they would do next to nothing
		return
	}
	k.ventMounts(sizes)
}

// ventMounts finds how many mounts would have to be given up to the largest cartridges that fit
// in a driver's place.
func (k *maker) ventMounts(sizes []Cartridge) {
	room := k.array.Driver.FlangeRadius + k.array.Limits.Apart/2
	i := len(sizes) - 1
	for i > 0 && sizes[i].socketRadius() > room {
		i--
	}
	if sizes[i].socketRadius() > room {
		return
	}
	most := make([]r3.Vec, min(mostVents, len(k.seats)/2))
	k.Vents, _ = k.choose(k.hollow, sizes[i:i+1], [][]r3.Vec{most})
	k.Vents.Mounts, k.Vents.Count = k.Vents.Count, 0
}

// bareFaces are the flat faces without a driver; not one that lies on what the body is fixed to.
func (k *maker) bareFaces() (out []int) {
	a := k.array
	used := make(map[int]bool)
	for _, m := range a.Own() {
		used[m.Face] = true
	}
	down := a.Bodies()[0].In(layout.Towards(a.On))
	for f := range a.Body.Faces {
		blocked := a.Stand <= headTall && r3.Dot(a.Body.Plane(f).Normal, down) > lean
		if !used[f] && !blocked {
			out = append(out, f)
		}
	}
	return out
}

// onFaces takes up to mostVents places for cartridges on faces, inward, each face from its middle
// outward.
func (k *maker) onFaces(faces []int, c Cartridge) (out []pole) {
	for _, f := range faces {
		body := k.array.Body
		in := poleAt(body.Centroid(f), r3.Scale(-1, body.Plane(f).Normal))
		for ring := 0.0; ring < body.Radius; ring += ringStep {
			for _, at := range circle(ring, around) {
				p := in
				p.at = in.place(at[0], at[1], 0)
				if len(out) < mostVents && k.freeWall(p, c, out) {
					out = append(out, p)
				}
			}
		}
	}
	return out
}

// freeWall tells whether a cartridge that goes in at a pole keeps off other walls, joints,
// drivers and other cartridges.
func (k *maker) freeWall(p pole, c Cartridge, others []pole) bool {
	radius := c.socketRadius()
	for _, depth := range []float64{0, k.wall.thick, c.Long() + grid} {
		at := p.place(0, 0, depth)
		for _, w := range k.wall.planes {
			if r3.Dot(w.Normal, p.out) > -1+1e-9 && -w.Above(at) < radius+k.wall.thick+1e-3 {
				return false
			}
		}
		if !k.offDrivers(at, radius+1e-3) {
			return false
		}
	}
	for _, s := range k.seams {
		if math.Abs(s.plane.Above(p.at)) < radius+reach+1e-3 {
			return false
		}
	}
	return !slices.ContainsFunc(others, func(o pole) bool { return r3.Norm(r3.Sub(o.at, p.at)) < 2*radius+1.5e-3 })
}
