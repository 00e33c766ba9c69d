package sheets

import (
	"container/heap"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// grid is a drawing in small squares, with what a step into each costs over its length.
type grid struct {
	corner r2.Vec
	step   float64 // mm
	wide   int
	cost   []float64 // +Inf: nothing goes there
	best   []float64 // of a way that is sought: what it costs to a square; +Inf: not reached
	before []int     // and from which square it is reached
}

func newGrid(area r2.Box, step float64) grid {
	size := area.Size()
	g := grid{corner: area.Min, step: step, wide: int(size.X/step) + 1}
	g.cost = slices.Repeat([]float64{1}, g.wide*(int(size.Y/step)+1))
	g.best, g.before = make([]float64, len(g.cost)), make([]int, len(g.cost))
	return g
}

// at is the middle of a square, in which it is the square at a place; -1 outside.
func (g grid) at(square int) r2.Vec {
	return r2.Add(g.corner, r2.Scale(g.step, r2.Vec{X: float64(square%g.wide) + 0.5, Y: float64(square/g.wide) + 0.5}))
}

func (g grid) in(p r2.Vec) int {
	i, j := int(math.Floor((p.X-g.corner.X)/g.step)), int(math.Floor((p.Y-g.corner.Y)/g.step))
	if i < 0 || i >= g.wide || j < 0 || j >= len(g.cost)/g.wide {
		return -1
	}
	return j*g.wide + i
}

// each goes over the squares in a box.
func (g grid) each(b r2.Box, do func(square int)) {
	for y := b.Min.Y; y < b.Max.Y+g.step; y += g.step {
		for x := b.Min.X; x < b.Max.X+g.step; x += g.step {
			if s := g.in(r2.Vec{X: x, Y: y}); s >= 0 {
				do(s)
			}
		}
	}
}

// bar keeps lines out of squares in a box.
func (g grid) bar(b r2.Box, inside func(r2.Vec) bool) {
	g.each(b, func(s int) {
		if inside(g.at(s)) {
			g.cost[s] = math.Inf(1)
		}
	})
}

// empty tells whether no driver and no words are in a box, and no line is near: soon, and before all
// are looked at.
func (g grid) empty(b r2.Box) bool {
	for y := b.Min.Y; y < b.Max.Y; y += g.step {
		for x := b.Min.X; x < b.Max.X; x += g.step {
			if s := g.in(r2.Vec{X: x, Y: y}); s < 0 || g.cost[s] > 1 {
				return false
			}
		}
	}
	return true
}

// beside is what a step near a line costs: lines cross where they must, and do not run along
// each other. nearby is how near in mm.
const beside, nearby = 5.0, 1.5 // free: how drawings look

// crowd makes squares near a line dear.
func (g grid) crowd(a, b r2.Vec) {
	area := r2.NewBox(min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y))
	g.each(grown(area, nearby), func(s int) {
		if toSegment(g.at(s), a, b) < nearby {
			g.cost[s] = max(g.cost[s], beside)
		}
	})
}

// reached is a square with what the way to it costs, and with what is left at least.
type reached struct {
	square    int
	cost, all float64
}

type frontier []reached

func (f frontier) Len() int           { return len(f) }
func (f frontier) Less(i, j int) bool { return f[i].all < f[j].all }
func (f frontier) Swap(i, j int)      { f[i], f[j] = f[j], f[i] }
func (f *frontier) Push(x any)        { *f = append(*f, x.(reached)) }
func (f *frontier) Pop() any {
	last := (*f)[len(*f)-1]
	*f = (*f)[:len(*f)-1]
	return last
}

// way finds the cheapest way from one of some places to where goal is true; none where there is
// none. goal may ask for the way so far by back; left is what is left of a way at least (A*; P. E. Hart, N. J. Nilsson and B. Raphael, IEEE
// Trans. Syst. Sci. Cybern. 4 (1968) 100).
func (g grid) way(from []r2.Vec, left func(r2.Vec) float64, goal func(square int, cost float64) bool) []r2.Vec {
	for i := range g.best {
		g.best[i] = math.Inf(1)
	}
	var open frontier
	reach := func(s, by int, cost float64) {
		if cost < g.best[s] {
			g.best[s], g.before[s] = cost, by
			heap.Push(&open, reached{s, cost, cost + left(g.at(s))})
		}
	}
	for _, p := range from {
		if s := g.in(p); s >= 0 && !math.IsInf(g.cost[s], 1) {
			reach(s, -1, 0)
		}
	}
	for open.Len() > 0 {
		now := heap.Pop(&open).(reached)
		if now.cost > g.best[now.square] {
			continue
		}
		if goal(now.square, now.cost) {
			return g.back(now.square)
		}
		g.around(now.square, func(s int, long float64) { reach(s, now.square, now.cost+long*g.cost[s]) })
	}
	return nil
}

// around goes over a square's neighbours that lines may go to, with how far they are.
func (g grid) around(square int, do func(square int, long float64)) {
	for dj := -1; dj <= 1; dj++ {
		for di := -1; di <= 1; di++ {
			i, s := square%g.wide+di, square+dj*g.wide+di
			if i >= 0 && i < g.wide && s >= 0 && s < len(g.cost) && s != square && !math.IsInf(g.cost[s], 1) {
				do(s, g.step*math.Hypot(float64(di), float64(dj)))
			}
		}
	}
}

// back is the way to a square.
func (g grid) back(square int) (out []r2.Vec) {
	for ; square >= 0; square = g.before[square] {
		out = append(out, g.at(square))
	}
	slices.Reverse(out)
	return out
}
