package kit

import (
	"math"
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Measures of joints in m; all are common practice for melted filament and small screws.
const (
	reach       = 10e-3  // of a lap past the seam, to either side
	flangeThick = 4e-3   // of one half of a flange
	flangeTall  = 12e-3  // from the wall inward
	clearRing   = 1e-3   // from a cut-out to what is behind the wall
	skin        = 0.8e-3 // left of the wall at the end of a blind hole: four layers
	pitch       = 20e-3  // between fasteners, at least
	// A lap is held by screws of 2.2 mm from inside while the glue sets, a flange by M3.
	lapScrew, lapPilot = 1.25e-3, 0.9e-3
	boltHole           = 1.6e-3
	dowel              = 0.95e-3 // a piece of filament of 1.75 mm, with room
	boss               = 3e-3    // of material round a fastener, from its axis
	grooveWide         = 1.2e-3
	grooveDeep         = 0.8e-3
	grooveFrom         = 1.2e-3 // behind the wall, in a flange
)

// outer returns the sides of a region, moved outward; those to a region of the same segment a
// little further, so that what is made of both hangs together.
func (k *maker) outer(region int, by float64) []poly.Plane {
	r := k.wall.regions[region]
	out := about(r.Sides, by)
	for i, p := range r.Sides {
		if k.inSegment(r.Segment, p) {
			out[i].Offset += 0.05e-3
		}
	}
	return out
}

// inSegment tells whether a plane parts two regions of a segment.
func (k *maker) inSegment(segment int, p poly.Plane) bool {
	for _, r := range k.wall.regions {
		if r.Segment != segment {
			continue
		}
		for _, q := range r.Sides {
			if r3.Norm(r3.Add(p.Normal, q.Normal)) < 1e-9 {
				return true
			}
		}
	}
	return false
}

// layers are the depths of what joints are made of.
func (k *maker) layers() map[role]float64 {
	t := k.wall.thick
	if k.Joint == Flange {
		return map[role]float64{half: t / 2, start: t + grooveFrom, deep: t + flangeTall, bottom: t + grooveFrom + grooveWide}
	}
	return map[role]float64{half: t / 2, start: t - 0.1e-3, top: t + k.Gap, deep: 2*t + k.Gap, bottom: t + k.Gap + grooveDeep}
}

// layered gives a segment its layers, as far as they are near.
func (k *maker) layered(b *blank, plain poly.Mesh) {
	box, depths := plain.Bounds(), k.layers()
	more := 2*reach + 5e-3
	around := []poly.Plane{{Normal: r3.Vec{X: 1}, Offset: box.Max.X + more}, {Normal: r3.Vec{X: -1}, Offset: more - box.Min.X},
		{Normal: r3.Vec{Y: 1}, Offset: box.Max.Y + more}, {Normal: r3.Vec{Y: -1}, Offset: more - box.Min.Y},
		{Normal: r3.Vec{Z: 1}, Offset: box.Max.Z + more}, {Normal: r3.Vec{Z: -1}, Offset: more - box.Min.Z}}
	for r := half; r < roleCount; r++ {
		if depth, ok := depths[r]; ok {
			// No two end in one plane: there is nothing to be kept there, but it would be cut.
			b.add(r, k.wall.within(k.wall.under(depth), about(around, 0.1e-3*float64(r-half))).Mesh())
		}
	}
}

// slab returns the planes on either side of a seam, from one distance past it to another.
func (s seam) slab(from, to float64) []poly.Plane {
	return []poly.Plane{
		{Normal: s.plane.Normal, Offset: s.plane.Offset + to},
		{Normal: r3.Scale(-1, s.plane.Normal), Offset: -s.plane.Offset - from},
	}
}

// near returns the room within a distance of both regions of a seam, through the wall and
// somewhat deeper.
func (k *maker) near(s seam, by float64, more ...[]poly.Plane) poly.Mesh {
	// No two seams end in one plane.
	by += 2e-6 * float64(s.number)
	return k.beside(s, append(more, about(k.wall.regions[s.a].Sides, by), about(k.wall.regions[s.b].Sides, by))...)
}

// beside returns the room in half-spaces, at a seam.
func (k *maker) beside(s seam, more ...[]poly.Plane) poly.Mesh {
	mean := r3.Unit(k.meanOf(s))
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range s.points {
		low, high = min(low, r3.Dot(p, mean)), max(high, r3.Dot(p, mean))
	}
	ends := []poly.Plane{{Normal: mean, Offset: high + 2*reach}, {Normal: r3.Scale(-1, mean), Offset: flangeTall + 2*reach - low}}
	return k.wall.within(poly.Box(2*k.wall.radius), append(more, ends)...).Mesh()
}

// meanOf returns the middle of a seam; of one that goes round, a direction that it does not leave.
func (k *maker) meanOf(s seam) (sum r3.Vec) {
	for _, p := range s.points {
		sum = r3.Add(sum, p)
	}
	if sum = r3.Scale(1/float64(len(s.points)), sum); r3.Norm(sum) < 0.1*k.wall.radius {
		return s.plane.Normal
	}
	return sum
}

// trimmed takes half of the gap off a segment's edge.
func (k *maker) trimmed(b *blank, s seam) {
	b.add(trim, k.near(s, 2*k.Gap, s.slab(-k.Gap/2, k.Gap/2)))
}

// A rib ends in the gap that is trimmed off, not where the segment does: what lies in one plane is cut
// along all of it.

// lapped gives a segment the tongue of a lap, or room for it. The tongue is as thick as the wall
// and belongs to the segment of the lower number.
func (k *maker) lapped(b *blank, s seam, segment int) {
	if k.wall.regions[s.a].Segment != segment {
		b.add(other, k.past(s, k.ways[segment].off))
		return
	}
	b.add(tongue, k.near(s, reach))
	b.add(rib, k.beside(s, k.outer(s.a, k.Gap/4), about(k.wall.regions[s.b].Sides, reach-0.1e-3-2e-6*float64(s.number))))
	b.add(groove, k.near(s, reach-0.2e-3, s.slab(2e-3, 2e-3+grooveWide)))
}

// leastRise is the least sine to the wall with which a segment is taken to come off a tongue: one that slides
// along it is far off before it is above.
const leastRise = 0.3

// past returns the room that a segment which goes off along a way keeps clear for a seam's tongue: the
// tongue with its gap, and what it goes by until the segment's own tongues and ribs, which are as deep as
// it is, are above it.
func (k *maker) past(s seam, way r3.Vec) poly.Mesh {
	rise := 1.0
	for _, p := range s.points {
		from := r3.Scale(s.plane.Offset, s.plane.Normal)
		_, plane := k.wall.hit(from, r3.Sub(p, from), k.wall.thick)
		rise = min(rise, max(leastRise, r3.Dot(plane.Normal, way)))
	}
	far := (k.wall.thick + k.Gap) / rise
	by := reach + k.Gap + 2e-6*float64(s.number)
	room := about(slices.Concat(k.wall.regions[s.a].Sides, k.wall.regions[s.b].Sides), by)
	for i, p := range room {
		room[i].Offset += far * max(0, -r3.Dot(p.Normal, way))
	}
	return k.beside(s, room)
}

// flanged gives a segment its half of a flange.
func (k *maker) flanged(b *blank, s seam, segment int) {
	own, across := s.a, s.b
	if k.wall.regions[s.a].Segment != segment {
		own, across = s.b, s.a
	}
	b.add(rib, k.beside(s, k.outer(own, k.Gap/4), about(k.wall.regions[across].Sides, flangeThick+k.Gap/2+2e-6*float64(s.number))))
	wide := k.Gap/2 + grooveDeep
	b.add(groove, k.near(s, flangeThick, s.slab(-wide, wide)))
}

// fasten drills the screws and the dowels of a seam: turn about, where there is room.
func (k *maker) fasten(b *blank, s seam) {
	for i, p := range k.fastened[s.number] {
		long := p.room + 1e-3
		switch {
		case k.Joint == Flange:
			radius := boltHole
			if i%2 == 1 {
				radius = dowel
			}
			b.add(cut, p.pin(radius, -long, long, 16))
		case i%2 == 1:
			b.add(cut, p.pin(dowel, skin-k.wall.thick, long, 12))
		default:
			b.add(cut, p.pin(lapScrew, k.Gap/2, long, 16), p.pin(lapPilot, skin-k.wall.thick, k.Gap/2+0.01e-3, 12))
		}
	}
}

// fastener is where a screw or a dowel goes: out of the wall through a lap, across a flange.
type fastener struct {
	pole
	room float64 // m of material along it
}

// fastenAll finds the fasteners of all seams: apart along each, and with material round those of others.
func (k *maker) fastenAll() {
	k.fastened = make([][]fastener, len(k.seams))
	var all []r3.Vec
	for i, s := range k.seams {
		var at []r3.Vec
		for _, f := range k.fasteners(s) {
			if alone(f.at, at, pitch) && alone(f.at, all, 2*boss) {
				at, k.fastened[i] = append(at, f.at), append(k.fastened[i], f)
			}
		}
		all = append(all, at...)
	}
}

// alone tells whether a place is farther than a length from some others.
func alone(at r3.Vec, others []r3.Vec, by float64) bool {
	return !slices.ContainsFunc(others, func(o r3.Vec) bool { return r3.Norm(r3.Sub(at, o)) <= by })
}

// fasteners finds where one could be along a seam.
func (k *maker) fasteners(s seam) (out []fastener) {
	w := k.wall
	from := r3.Scale(s.plane.Offset, s.plane.Normal)
	for _, at := range s.points {
		var f fastener
		if k.Joint == Flange {
			p := w.on(from, r3.Sub(at, from), s.plane.Normal, w.thick)
			f = fastener{poleAt(p.place(0, 0, 0.55*flangeTall), s.plane.Normal), flangeThick + k.Gap}
		} else {
			beside := r3.Add(at, r3.Scale(0.6*reach, s.plane.Normal))
			p := w.on(from, r3.Sub(beside, from), s.plane.Normal, w.thick)
			f = fastener{p, k.Gap + w.thick}
		}
		if k.free(s, f.at) {
			out = append(out, f)
		}
	}
	return out
}

// free tells whether a place has material all round for a fastener.
func (k *maker) free(s seam, at r3.Vec) bool {
	w := k.wall
	if w.floor != nil && -w.floor.Above(at) < ledgeTall+postTall+boss {
		return false
	}
	for _, r := range []int{s.a, s.b} {
		for _, p := range w.regions[r].Sides {
			along := r3.Norm(r3.Cross(p.Normal, s.plane.Normal)) > 1e-6
			if along && !k.inSegment(w.regions[r].Segment, p) && -p.Above(at) < boss {
				return false
			}
		}
	}
	return k.offDrivers(at, boss)
}

// offDrivers tells whether a place behind the wall is so far from what drivers take.
func (k *maker) offDrivers(at r3.Vec, by float64) bool {
	for _, p := range k.seats {
		away := r3.Sub(at, p.at)
		if r3.Dot(away, p.out) > -k.depth() && r3.Norm(r3.Cross(away, p.out)) < k.behind()+by && r3.Dot(away, p.out) < k.wall.radius/2 {
			return false
		}
	}
	return true
}
