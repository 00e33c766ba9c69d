package kit

import (
	"math"
	"strconv"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Measures of a vent's cartridge in m.
const (
	tube     = 1.6e-3 // of plastic between bore and thread: four lines
	threaded = 16e-3  // long
	headTall = 4e-3
	grid     = 2e-3 // thick
	nutTall  = 7e-3
	nutWall  = 4e-3
	// gridHole is wide and gridBar between holes: four to five lines of a usual nozzle.
	gridHole, gridBar = 4e-3, 1.6e-3
	mostVents         = 6 // cartridges; more are smaller than they need be
)

// Cartridge is the size of the vents' cartridges: filled with stuffing, each takes the place of
// so much of the vent's area.
type Cartridge struct {
	thread
	Count int
	Bore  float64 // m
}

// Open is the area in m2 of the holes of one grid.
func (c Cartridge) Open() float64 { return float64(len(c.holes())) * math.Pi * gridHole * gridHole / 4 }

// holes are the places of a grid's holes, in rows of triangles.
func (c Cartridge) holes() (out [][2]float64) {
	pitch := gridHole + gridBar
	n := int(c.Bore/pitch) + 1
	for j := -n; j <= n; j++ {
		for i := -n; i <= n; i++ {
			x, y := pitch*(float64(i)+0.5*float64(j&1)), pitch*math.Sqrt(3)/2*float64(j)
			if math.Hypot(x, y) <= c.Bore/2-gridHole/2-0.4e-3 {
				out = append(out, [2]float64{x, y})
			}
		}
	}
	return out
}

// choose returns the smallest cartridge of which few have an area in m2 in their grids, or as
// many as it takes of the largest.
func choose(area, gap float64) (c Cartridge) {
	for _, t := range threads {
		c = Cartridge{thread: t, Bore: t.minor() - gap - 2*tube}
		c.Count = int(math.Ceil(area/c.Open() - 1e-9))
		if c.Count <= mostVents {
			break
		}
	}
	return c
}

// socketRadius is what a cartridge takes on the floor.
func (c Cartridge) socketRadius() float64 { return c.outer()/2 + nutWall }

var upward = pole{out: r3.Vec{Z: 1}, right: r3.Vec{X: 1}, up: r3.Vec{Y: 1}}

// socket makes the boss for a cartridge on the floor, with its thread.
func (k *maker) socket(b *blank, at pole) {
	c := k.cartridge
	place := func(v r3.Vec) r3.Vec { return r3.Add(v, at.at) }
	b.add(post, at.pin(c.socketRadius(), floorThick/2, floorThick+nutTall, 48))
	b.add(cut, c.internal(-2e-3, floorThick+nutTall+2e-3, k.Gap).Moved(place))
}

// cartridges makes the vent's body, which is screwed into the floor from below, with a grid at
// its outer end, and the lid with the other grid, which is screwed onto it from inside.
func (k *maker) cartridges() []Job {
	if k.cartridge.Count == 0 {
		return nil
	}
	c := k.cartridge
	long := headTall + threaded
	vent := func() (Part, error) {
		b := &blank{name: "vent"}
		b.add(body, upward.pin(c.minor()/2-k.Gap/2-0.1e-3, 0, long, steps))
		b.add(post, upward.extrude(circle(c.socketRadius(), 12), 0, headTall))
		b.add(rib, c.external(0, long+1e-3, k.Gap))
		b.add(half, upward.extrude(circle(c.major, 24), headTall-1e-3, long))
		b.add(cut, upward.pin(c.Bore/2, grid, long+1e-3, steps))
		b.add(cut, k.gridHoles(-1e-3, grid+1e-3))
		m, err := b.carve()
		p := Part{Name: "vent", Mesh: m, Count: c.Count, Loose: true, Down: r3.Vec{Z: -1}}
		if k.wanted > c.Count {
			p.Unmarked = []string{strconv.Itoa(k.wanted-c.Count) + " more vents"}
		}
		return p, err
	}
	lid := func() (Part, error) {
		b := &blank{name: "vent-lid"}
		b.add(body, upward.extrude(circle(c.socketRadius(), 12), 0, grid+nutTall))
		b.add(rib, c.internal(0, grid+nutTall+2e-3, k.Gap))
		b.add(cut, k.gridHoles(-1e-3, grid+1e-3))
		// The thread stops at the grid.
		b.add(opening, upward.extrude(circle(c.major, 24), grid, grid+nutTall+4e-3))
		m, err := b.carveAs(lidRule)
		return Part{Name: "vent-lid", Mesh: m, Count: c.Count, Loose: true, Down: r3.Vec{Z: -1}}, err
	}
	return []Job{vent, lid}
}

// lidRule is how a lid is made: its thread is cut down to the grid.
func lidRule(has [roleCount]bool) bool {
	return has[body] && !has[cut] && !(has[rib] && has[opening])
}

// gridHoles are all holes of a grid between two heights.
func (k *maker) gridHoles(low, high float64) (out poly.Mesh) {
	for i, h := range k.cartridge.holes() {
		more := 1e-6 * float64(i)
		at := upward
		at.at = r3.Vec{X: h[0], Y: h[1]}
		out = poly.Joined(out, at.pin(gridHole/2, low-more, high+more, 12))
	}
	return out
}
