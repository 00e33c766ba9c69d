package kit

import (
	"math"
	"slices"
	"strconv"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Measures of a floor in m; common practice for small parts.
const (
	floorThick = 4e-3
	gasket     = 1e-3 // room for a strip of foam between floor and ledge
	ledgeTall  = 3e-3
	ledgeWide  = 8e-3
	postTall   = 10e-3
	postRadius = 4.5e-3
	postInset  = 7e-3
	// Screws of M3: through the floor, under their heads, and into posts.
	m3Through, m3Head, m3Pilot = ScrewHole, 3.2e-3, 1.25e-3
	headDeep                   = 2e-3
	footRadius                 = FootWide
	postPitch                  = 45e-3
)

// ScrewHole and FootWide are the radii in m of the floor's screw holes and of feet.
const ScrewHole, FootWide = 1.7e-3, 8e-3

// pane returns the upright prism that fits inside the wall between two heights over the cut, so
// far inward of the wall's inside and a gap.
func (k *maker) pane(low, high, inset float64) poly.Solid {
	w := k.wall
	base := -w.floor.Offset
	planes := []poly.Plane{{Normal: r3.Vec{Z: -1}, Offset: -base - low}, {Normal: r3.Vec{Z: 1}, Offset: base + high}}
	for _, p := range w.planes {
		level := math.Hypot(p.Normal.X, p.Normal.Y)
		if level < 0.05 {
			continue
		}
		off := p.Offset - w.thick - k.Gap
		off = min(off-p.Normal.Z*base, off-p.Normal.Z*(base+floorThick)) / level
		planes = append(planes, poly.Plane{Normal: r3.Vec{X: p.Normal.X / level, Y: p.Normal.Y / level}, Offset: off - inset})
	}
	s, err := poly.Meet(planes, w.radius, slack*w.radius)
	if err != nil {
		w.fail(err)
	}
	return s
}

// rim gives a segment the ledge and the posts that a floor is screwed to.
func (k *maker) rim(b *blank, segment int) {
	if k.wall.floor == nil {
		return
	}
	from := floorThick + gasket
	base := -k.wall.floor.Offset
	solid := k.wall.within(k.wall.under(k.wall.thick/2), poly.Level(base+from, base+from+ledgeTall))
	for r, region := range k.wall.regions {
		if region.Segment == segment {
			b.add(ledge, k.wall.within(solid, k.outer(r, -k.Gap/2-0.05e-3)).Mesh())
		}
	}
	if len(k.wall.regions) == 0 {
		b.add(ledge, solid.Mesh())
	}
	// Joints end above the floor.
	b.add(clear, k.wall.within(poly.Box(2*k.wall.radius), poly.Level(base-5e-3, base+from-0.02e-3)).Mesh())
	b.add(opening, k.pane(from-1e-3, from+ledgeTall+1e-3, ledgeWide).Mesh())
	for _, p := range k.posts {
		if !k.within(segment, p, 0) {
			continue
		}
		at := pole{at: r3.Vec{X: p.X, Y: p.Y, Z: base}, out: r3.Vec{Z: 1}, right: r3.Vec{X: 1}, up: r3.Vec{Y: 1}}
		b.add(post, at.pin(postRadius, from, from+ledgeTall+postTall, 24))
		b.add(cut, at.pin(m3Pilot, from-1e-3, from+ledgeTall+postTall-1.5e-3, 12))
	}
}

// bareLedge returns the numbers of the mounts whose drivers reach into the side of the ledge that the
// floor's foam lies against.
func (k *maker) bareLedge() (out []int) {
	var under []r3.Vec
	for _, inset := range []float64{0, ledgeWide / 2} {
		pane := k.pane(0, floorThick, inset)
		for i := range 360 {
			if at, ok := rimAt(pane, float64(i)*math.Pi/180); ok {
				under = append(under, r3.Vec{X: at.X, Y: at.Y, Z: floorThick + gasket - k.wall.floor.Offset})
			}
		}
	}
	for i, p := range k.seats {
		if slices.ContainsFunc(under, func(at r3.Vec) bool {
			away := r3.Sub(at, p.at)
			deep := -r3.Dot(away, p.out)
			return deep > 0 && deep < k.depth()+flangeTall && r3.Norm(r3.Cross(away, p.out)) < k.behind()
		}) {
			out = append(out, k.array.Own()[i].ID)
		}
	}
	return out
}

// mostSectors is how many parts a floor is cut into at most.
const mostSectors = 12

// findPosts finds in how many parts a floor is, and where it is screwed on: round it, clear of
// drivers, seams and its own joints.
func (k *maker) findPosts() {
	if k.wall.floor == nil {
		return
	}
	k.sectors = 1
	for whole := k.pane(0, floorThick, 0); k.sectors < mostSectors && !flatOn(k.sector(whole, 0, k.sectors, 0).Mesh(), r3.Vec{Z: -1}, k.array.Print.Bed).Fits; {
		k.sectors++
	}
	pane := k.pane(0, floorThick, postInset)
	z := -k.wall.floor.Offset + floorThick + gasket + ledgeTall
	for i := range 120 {
		at, ok := rimAt(pane, 2*math.Pi*float64(i)/120)
		if !ok {
			return
		}
		at.Z = z
		free := k.offDrivers(at, postRadius+1e-3) && k.offDrivers(r3.Add(at, r3.Vec{Z: postTall}), postRadius+1e-3)
		for _, s := range k.seams {
			free = free && math.Abs(s.plane.Above(at)) > reach+postRadius+1e-3
		}
		for _, p := range k.posts {
			free = free && r3.Norm(r3.Sub(p, at)) > postPitch
		}
		for j := 0; j < k.sectors && k.sectors > 1; j++ {
			azimuth := 2 * math.Pi * float64(j) / float64(k.sectors)
			free = free && (r3.Dot(at, direction(azimuth)) < 0 || math.Abs(r3.Dot(at, direction(azimuth+math.Pi/2))) > postRadius+1e-3)
		}
		if free {
			k.posts = append(k.posts, at)
		}
	}
}

// rimAt returns where the outline of an upright prism is at an azimuth.
func rimAt(s poly.Solid, azimuth float64) (r3.Vec, bool) {
	sin, cos := math.Sincos(azimuth)
	along, least := r3.Vec{X: cos, Y: sin}, math.Inf(1)
	for f := range s.Faces {
		p := s.Plane(f)
		if fall := r3.Dot(p.Normal, along); fall > 1e-9 {
			least = min(least, p.Offset/fall)
		}
	}
	return r3.Scale(least, along), !math.IsInf(least, 1)
}

// floors makes the floor, in as many sectors as the bed wants, and its feet.
func (k *maker) floors() ([]Job, error) {
	if k.wall.floor == nil {
		return nil, nil
	}
	whole, n := k.pane(0, floorThick, 0), k.sectors
	k.place(n)
	for j := 0; j < n && n > 1; j++ {
		k.strips += len(k.stripScrews(2 * math.Pi * float64(j+1) / float64(n)))
	}
	var out []Job
	for i := range n {
		out = append(out, func() (Part, error) { return k.floorPart(whole, i, n) })
	}
	if k.array.Stand > 0 && len(k.feet) > 0 {
		out = append(out, func() (Part, error) { return k.foot() })
	}
	return out, k.wall.failed()
}

// sector returns one of n equal parts of a floor, its sides moved by a length.
func (k *maker) sector(s poly.Solid, i, n int, by float64) poly.Solid {
	if n == 1 {
		return s
	}
	from := 2 * math.Pi * float64(i) / float64(n)
	return k.wall.within(s, about(poly.Sector(from, from+2*math.Pi/float64(n)), by))
}

// floorName is the name of one of n parts of a floor.
func floorName(i, n int) string {
	if n > 1 {
		return "floor-" + strconv.Itoa(i+1)
	}
	return "floor"
}

// floorPart makes one part of a floor.
func (k *maker) floorPart(whole poly.Solid, i, n int) (Part, error) {
	p := Part{Name: floorName(i, n), Count: 1, Down: r3.Vec{Z: -1}, Away: r3.Vec{Z: -k.wall.radius}}
	b := &blank{name: p.Name}
	b.add(body, k.sector(whole, i, n, -k.Gap/2).Mesh())
	for j := range n {
		if n > 1 {
			k.floorLap(b, i, j, n)
		}
	}
	up := func(at r3.Vec) pole {
		return pole{at: r3.Vec{X: at.X, Y: at.Y, Z: -k.wall.floor.Offset}, out: r3.Vec{Z: 1}, right: r3.Vec{X: 1}, up: r3.Vec{Y: 1}}
	}
	for _, at := range k.posts {
		b.add(cut, up(at).pin(m3Through, -1e-3, floorThick+1e-3, 16), up(at).pin(m3Head, -1.1e-3, headDeep, 20))
	}
	for _, at := range k.feet {
		b.add(cut, up(at).pin(m3Through, -1e-3, floorThick+1e-3, 16))
	}
	if k.gland != nil {
		b.add(cut, up(*k.gland).pin(k.outlet.Hole()/2, -1e-3, floorThick+1e-3, 40))
	}
	for _, v := range k.vents {
		k.socket(b, up(v), floorThick)
	}
	mark := up(r3.Scale(0.3*k.rimRadius(), direction((float64(i)+0.5)*2*math.Pi/float64(n))))
	mark.at.Z += floorThick
	if n > 1 {
		b.add(cut, mark.engrave("F"+strconv.Itoa(i+1), tall))
	}
	var err error
	if p.Mesh, err = b.carve(); err == nil && n > 1 {
		p.Away = r3.Add(p.Away, r3.Scale(0.3, middle(p.Mesh)))
	}
	return p, err
}

func direction(azimuth float64) r3.Vec {
	sin, cos := math.Sincos(azimuth)
	return r3.Vec{X: cos, Y: sin}
}

func (k *maker) rimRadius() float64 {
	least := math.Inf(1)
	pane := k.pane(0, floorThick, 0)
	for i := range 36 {
		at, _ := rimAt(pane, float64(i)*math.Pi/18)
		least = min(least, r3.Norm(at))
	}
	return least
}

// floorLap gives a part of a floor the strip over the joint at an azimuth, which belongs to the
// part that ends there, or the holes for its screws.
func (k *maker) floorLap(b *blank, part, joint, n int) {
	azimuth := 2 * math.Pi * float64(joint+1) / float64(n)
	along, across := direction(azimuth), direction(azimuth+math.Pi/2)
	if part != joint && part != (joint+1)%n {
		return
	}
	ends := []poly.Plane{{Normal: r3.Scale(-1, along), Offset: -stripFrom}}
	side := func(from, to float64) []poly.Plane {
		return []poly.Plane{{Normal: across, Offset: to}, {Normal: r3.Scale(-1, across), Offset: -from}}
	}
	if part == joint {
		strip := k.pane(floorThick+k.Gap, floorThick+k.Gap+k.wall.thick, ledgeWide+6e-3)
		b.add(post, k.wall.within(strip, ends, side(-reach, reach)).Mesh())
		root := k.pane(floorThick/2, floorThick+k.Gap+1e-3, ledgeWide+6.2e-3)
		b.add(post, k.wall.within(root, ends, side(-reach+0.1e-3, -k.Gap/2-0.05e-3)).Mesh())
		seal := k.pane(floorThick+k.Gap/2, floorThick+k.Gap+grooveDeep, ledgeWide+7.5e-3)
		inner := []poly.Plane{{Normal: r3.Scale(-1, along), Offset: -stripFrom - 1.5e-3}}
		b.add(cut, k.wall.within(seal, inner, side(2e-3, 2e-3+grooveWide)).Mesh())
	}
	for _, d := range k.stripScrews(azimuth) {
		at := r3.Add(r3.Scale(d, along), r3.Scale(0.55*reach, across))
		at.Z = -k.wall.floor.Offset
		p := pole{at: at, out: r3.Vec{Z: 1}, right: r3.Vec{X: 1}, up: r3.Vec{Y: 1}}
		b.add(cut, p.pin(lapScrew, floorThick+k.Gap/2, floorThick+k.wall.thick+2e-3, 16), p.pin(lapPilot, skin, floorThick+k.Gap/2+0.01e-3, 12))
	}
}

// stripFrom is where strips begin, off the axis, where all joints meet.
const stripFrom = 16e-3

// stripScrews returns how far from the axis the screws of a strip are.
func (k *maker) stripScrews(azimuth float64) (out []float64) {
	far, _ := rimAt(k.pane(0, floorThick, ledgeWide+12e-3), azimuth)
	for d := stripFrom + 8e-3; d < r3.Norm(far); d += 30e-3 {
		out = append(out, d)
	}
	return out
}

// foot is one leg of the stand, with a hole for its screw.
func (k *maker) foot() (Part, error) {
	p := Part{Name: "foot", Count: len(k.feet), Loose: true, Down: r3.Vec{Z: -1}}
	at := poleAt(r3.Vec{}, r3.Vec{Z: 1})
	b := &blank{name: p.Name}
	b.add(body, at.pin(footRadius, 0, k.array.Stand, 40))
	b.add(cut, at.pin(m3Pilot, k.array.Stand-min(12e-3, 0.7*k.array.Stand), k.array.Stand+1e-3, 12))
	var err error
	p.Mesh, err = b.carve()
	return p, err
}
