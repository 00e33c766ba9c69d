package kit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// feetCount is how many legs a stand has: four do not tip when one side is pressed.
const feetCount = 4

// disc is room taken on a floor.
type disc struct {
	at     r3.Vec
	radius float64
}

// ground is a floor of n sectors, with what is taken of it.
type ground struct {
	k     *maker
	n     int
	rim   float64
	posts []disc
	taken []disc
}

// free tells whether a disc is off joints, posts, the ledge and what is taken.
func (g *ground) free(at r3.Vec, radius float64) bool {
	if r3.Norm(at) > g.rim-ledgeWide-1e-3-radius {
		return false
	}
	for j := 0; j < g.n && g.n > 1; j++ {
		azimuth := 2 * math.Pi * float64(j) / float64(g.n)
		across := direction(azimuth + math.Pi/2)
		if r3.Dot(at, direction(azimuth)) > -radius && math.Abs(r3.Dot(at, across)) < radius+reach+0.5e-3 {
			return false
		}
	}
	for _, all := range [][]disc{g.posts, g.taken} {
		for _, d := range all {
			if r3.Norm(r3.Sub(at, d.at)) < radius+d.radius+1.5e-3 {
				return false
			}
		}
	}
	return true
}

// Places are looked at on rings that are ringStep apart, this many round each.
const (
	ringStep = 3e-3
	around   = 72
)

// find takes the first free place for a disc, on rings from one radius to another, outward or
// inward, round from an azimuth.
func (g *ground) find(radius, from, to, turn float64) (r3.Vec, bool) {
	steps := int(math.Abs(to-from) / ringStep)
	for i := range steps + 1 {
		ring := from + (to-from)*float64(i)/float64(max(steps, 1))
		for j := range around {
			if at := r3.Scale(ring, direction(turn+2*math.Pi*float64(j)/around)); g.free(at, radius) {
				g.taken = append(g.taken, disc{at, radius})
				return at, true
			}
		}
	}
	return r3.Vec{}, false
}

// pack takes as many places as there are for discs of a radius, up to mostVents: of rows that
// are filled outward and inward from several azimuths, those that hold the most.
func (g *ground) pack(radius float64) (best []r3.Vec) {
	before := len(g.taken)
	far := g.rim - ledgeWide - 1e-3 - radius
	for _, way := range [][2]float64{{0, far}, {far, 0}} {
		for i := range ways {
			var at []r3.Vec
			for len(at) < mostVents {
				p, ok := g.find(radius, way[0], way[1], 2*math.Pi*float64(i)/(ways*float64(max(g.n, 1))))
				if !ok {
					break
				}
				at = append(at, p)
			}
			g.taken = g.taken[:before]
			if len(at) > len(best) {
				best = at
			}
		}
	}
	byRadius(best)
	return best
}

// ways is from how many azimuths, within one sector, a floor is filled.
const ways = 6

// place finds where vents, the cable's gland and feet are on a floor of n sectors: off its joints,
// its posts and each other.
func (k *maker) place(n int) {
	g := &ground{k: k, n: n, rim: k.rimRadius()}
	for _, p := range k.posts {
		g.posts = append(g.posts, disc{r3.Vec{X: p.X, Y: p.Y}, postRadius - 0.5e-3})
	}
	if k.array.Stand > 0 {
		for i := range feetCount {
			if at, ok := g.find(footRadius, g.rim-ledgeWide-1e-3-footRadius, 0.4*g.rim, (float64(i)+0.5)*math.Pi/2-0.2); ok {
				k.feet = append(k.feet, at)
			}
		}
	}
	if at, ok := g.find(k.outlet.nut(), 0, g.rim, math.Pi); ok {
		k.gland = &at
	}
	if k.hollow.Vented == nil {
		return
	}
	var sizes []Cartridge
	var places [][]r3.Vec
	for _, t := range threads {
		c := cartridge(t, k.Gap, floorThick)
		sizes, places = append(sizes, c), append(places, g.pack(c.socketRadius()))
	}
	var size int
	k.Vents, size = k.choose(k.hollow, sizes, places)
	k.vents = places[size][:k.Vents.Count]
}
