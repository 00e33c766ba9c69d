package kit

import (
	"math"

	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Measures of a vent's cartridge in m.
const (
	tube     = 1.6e-3 // of plastic between bore and thread: four lines
	headTall = 4e-3
	grid     = 2e-3 // thick
	nutTall  = 6e-3 // two turns of most threads, or more
	nutWall  = 3e-3
	// ventSlack is left between a socket and a lid.
	ventSlack = 0.5e-3
	// gridHole is wide and gridBar between holes: four to five lines of a usual nozzle.
	gridHole, gridBar = 4e-3, 1.6e-3
	mostVents         = 12 // cartridges; more are smaller than they need be
)

// Cartridge is the size of a vent's cartridge, which is filled with stuffing.
type Cartridge struct {
	thread
	Bore  float64 // m
	Thick float64 // m, of the wall or floor that it goes through
}

// gridSides is how many sides a grid's holes have, which touch a circle from outside.
const gridSides = 12

// Open is the area in m2 of the holes of one grid.
func (c Cartridge) Open() float64 {
	return float64(len(c.holes())) * gridSides * math.Tan(math.Pi/gridSides) * gridHole * gridHole / 4
}

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

// cartridge returns the cartridge with a thread, for a wall of a thickness.
func cartridge(t thread, gap, thick float64) Cartridge {
	return Cartridge{thread: t, Bore: t.minor() - gap - 2*tube, Thick: thick}
}

// Long is how long it is in m, with its head and without its lid: through its socket, and as far
// into its lid.
func (c Cartridge) Long() float64 { return headTall + c.Thick + 2*nutTall + ventSlack }

// Fill is the length of its stuffing in m, between its grids.
func (c Cartridge) Fill() float64 { return c.Long() - grid }

// FloorFill is Fill of a cartridge in a floor, whatever its thread.
const FloorFill = headTall + floorThick + 2*nutTall + ventSlack - grid

// Thread names it as drawings do, such as Tr 48x8.
func (c Cartridge) Thread() string {
	return prose.Sprintf("Tr %gx%g", 1e3*c.major, 1e3*c.pitch)
}

// socketRadius is what a cartridge takes on the floor.
func (c Cartridge) socketRadius() float64 { return c.outer()/2 + nutWall }

var upward = pole{out: r3.Vec{Z: 1}, right: r3.Vec{X: 1}, up: r3.Vec{Y: 1}}

// threadFrom is where a socket's thread begins, outside of the wall.
const threadFrom = -2e-3

// socket makes the boss for a cartridge, with its thread, on a wall of a thickness; at is on its
// outside and looks inward.
func (k *maker) socket(b *blank, at pole, thick float64) {
	c := k.Vents.Cartridge
	b.add(post, at.pin(c.socketRadius(), thick/2, thick+nutTall, 48))
	b.add(cut, c.internal(threadFrom, thick+nutTall+2e-3, k.Gap).Moved(func(v r3.Vec) r3.Vec { return at.place(v.X, v.Y, v.Z) }))
}

// cartridges makes the vent's body, which is screwed into the floor from below, with a grid at
// its outer end, and the lid with the other grid, which is screwed onto it from inside.
func (k *maker) cartridges() []Job {
	if k.Vents.Count == 0 {
		return nil
	}
	c := k.Vents.Cartridge
	long := k.Vents.Long()
	vent := func() (Part, error) {
		b := &blank{name: "vent"}
		b.add(body, upward.pin(c.minor()/2-k.Gap/2-0.1e-3, 0, long, steps))
		b.add(post, upward.extrude(circle(c.socketRadius(), 12), 0, headTall))
		b.add(rib, c.external(0, long+1e-3, k.Gap))
		b.add(half, upward.extrude(circle(c.major, 24), headTall-1e-3, long))
		b.add(cut, upward.pin(c.Bore/2, grid, long+1e-3, steps))
		b.add(cut, k.gridHoles(-1e-3, grid+1e-3))
		m, err := b.carve()
		return Part{Name: "vent", Mesh: m, Count: k.Vents.Count, Loose: true, Down: r3.Vec{Z: -1}}, err
	}
	lid := func() (Part, error) {
		b := &blank{name: "vent-lid"}
		b.add(body, upward.extrude(circle(c.socketRadius(), 12), 0, grid+nutTall))
		b.add(rib, c.internal(0, grid+nutTall+2e-3, k.Gap))
		b.add(cut, k.gridHoles(-1e-3, grid+1e-3))
		// The thread stops at the grid.
		b.add(opening, upward.extrude(circle(c.major, 24), grid, grid+nutTall+4e-3))
		m, err := b.carveAs(lidRule)
		return Part{Name: "vent-lid", Mesh: m, Count: k.Vents.Count, Loose: true, Down: r3.Vec{Z: -1}}, err
	}
	return []Job{vent, lid}
}

// lidRule is how a lid is made: its thread is cut down to the grid.
func lidRule(has [roleCount]bool) bool {
	return has[body] && !has[cut] && !(has[rib] && has[opening])
}

// gridHoles are all holes of a grid between two heights.
func (k *maker) gridHoles(low, high float64) (out poly.Mesh) {
	for i, h := range k.Vents.Cartridge.holes() {
		more := 1e-6 * float64(i)
		at := upward
		at.at = r3.Vec{X: h[0], Y: h[1]}
		out = poly.Joined(out, at.pin(gridHole/2, low-more, high+more, gridSides))
	}
	return out
}
