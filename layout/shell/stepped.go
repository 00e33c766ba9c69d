package shell

import (
	"math"
	"slices"

	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// rounds is how often centres move to the middle of their mounts; later moves hardly
// change which is nearest: with a fifth more or fewer the tests' designs are cut as well.
const rounds = 20

// mostStepped is the most segments of cells: as many as of flat seams.
const mostStepped = most * most

// stepped looks for segments of whole cells, whose seams go in steps midway between
// mounts: where mounts are spread evenly no plane keeps off all cut-outs, but such seams
// do as long as there is room between two of them. Numbers of segments are tried one after
// the other, each with its mounts parted by equal sectors and levels and by nearest centres;
// the first that fits is taken.
func (c *cutter) stepped() (Plan, bool) {
	if len(c.holes) < 2 {
		return Plan{}, false
	}
	c.sites = slices.Clone(c.holes)
	if p, ok := c.fewest(); ok {
		return p, true
	}
	if c.tooBig == nil || !c.fillIn() {
		return Plan{}, false
	}
	return c.fewest()
}

// fewest returns the fewest segments of the sites' cells that fit.
func (c *cutter) fewest() (Plan, bool) {
	cells := c.shares()
	if cells == nil {
		return Plan{}, false
	}
	c.tooBig = nil
	c.narrowest(cells)
	c.meeting = c.crossings(cells)
	for i, s := range cells {
		if lone := (Segment{}); !lone.measure(s.outline(), c.job.Bed) {
			c.tooBig = &oversize{i, lone.Size}
			return Plan{}, false
		}
	}
	for n := 2; n <= min(len(c.sites), mostStepped); n++ {
		for _, groups := range append(c.gridded(n), c.parted(n)) {
			if p, ok := c.steps(cells, groups); ok {
				return p, true
			}
		}
	}
	if len(c.sites) > mostStepped {
		return Plan{}, false
	}
	alone := make([][]int, len(c.sites))
	for i := range alone {
		alone[i] = []int{i}
	}
	return c.steps(cells, alone)
}

// candidates is how many directions are tried for sites between the mounts, and mostSites
// how many sites there may be: bounds of the time it takes, of which a fifth cuts no design of
// the tests otherwise.
const candidates, mostSites = 4000, 1000

// fillIn adds sites between the mounts where cells are large: each time the direction that
// is farthest from all there are, while that is over a third of the bed's least side, and
// only where the seam to each mount keeps off its cut-out. It tells whether any was added.
func (c *cutter) fillIn() bool {
	b, bed := c.stock.body, c.job.Bed
	near := min(bed.X, bed.Y, bed.Z) / 3 / b.Radius
	var free []r3.Vec
	var far []float64 // chord to the nearest site
	for _, p := range spread.Spiral(candidates) {
		if b.IsCut && b.Radius*p.Z <= b.Cut {
			continue
		}
		least, clear := math.Inf(1), true
		for _, h := range c.holes {
			away := r3.Sub(p, r3.Unit(h.Point))
			least = min(least, r3.Norm(away))
			clear = clear && h.gap(r3.Unit(away)) >= c.job.Margin
		}
		if clear {
			free, far = append(free, p), append(far, least)
		}
	}
	for len(free) > 0 && len(c.sites) < mostSites {
		best := 0
		for i, f := range far {
			if f > far[best] {
				best = i
			}
		}
		if far[best] < near {
			break
		}
		at := free[best]
		c.sites = append(c.sites, Hole{Point: r3.Scale(b.Radius, at), Normal: at})
		for i, p := range free {
			far[i] = min(far[i], r3.Norm(r3.Sub(p, at)))
		}
	}
	return len(c.sites) > len(c.holes)
}

// narrow is a place between two mounts where a seam would be nearer to a cut-out than the
// margin.
type narrow struct {
	from, to int     // indices
	gap      float64 // m
}

// narrowest finds the least room for a seam that is under the margin.
func (c *cutter) narrowest(cells []share) {
	c.narrow = nil
	for i := range c.holes {
		for k, side := range cells[i].Sides {
			gap := cells[i].gaps[k]
			if i < side.Beyond && side.Beyond < len(c.holes) && gap < c.job.Margin && (c.narrow == nil || gap < c.narrow.gap) {
				c.narrow = &narrow{i, side.Beyond, gap}
			}
		}
	}
}

// oversize is a cell that does not fit the bed alone.
type oversize struct {
	site int // index
	size Size
}

// turns is how many turns of equal sectors are tried, over one sector; as with rounds, a fifth
// changes no design of the tests from one that can be cut to one that cannot.
const turns = 8

// gridded returns the sites by the sectors and levels that they are in, for each way to
// have n of equal angle and height.
func (c *cutter) gridded(n int) (all [][][]int) {
	low, high := c.stock.body.Span()
	for levels := 1; levels <= min(n, most); levels++ {
		sectors := n / levels
		if sectors*levels != n || sectors > most {
			continue
		}
		pitch, tall := 2*math.Pi/float64(sectors), (high-low)/float64(levels)
		for t := 0; t < turns && (t == 0 || sectors > 1); t++ {
			groups := make([][]int, n)
			for i, h := range c.sites {
				l := max(0, min(levels-1, int((h.Point.Z-low)/tall)))
				azimuth := math.Mod(math.Atan2(h.Point.Y, h.Point.X)-pitch*float64(t)/turns+4*math.Pi, 2*math.Pi)
				at := l*sectors + min(sectors-1, int(azimuth/pitch))
				groups[at] = append(groups[at], i)
			}
			all = append(all, slices.DeleteFunc(groups, func(g []int) bool { return len(g) == 0 }))
		}
	}
	return all
}

// parted returns the sites in n groups of about one size and as round as can be, from the
// top down: those nearest to each of n centres, which begin on a spiral of equal areas over
// the body and move to the middle of their sites (S. Lloyd, IEEE Trans. Inf. Theory 28
// (1982) 129).
func (c *cutter) parted(n int) [][]int {
	at := make([]r3.Vec, len(c.sites))
	low := 1.0
	for i, h := range c.sites {
		at[i] = r3.Unit(h.Point)
		low = min(low, at[i].Z)
	}
	centres := spread.SpiralAbove(n, low)
	var groups [][]int
	for range rounds {
		groups = make([][]int, n)
		for i, p := range at {
			best := 0
			for k := range centres {
				if r3.Dot(p, centres[k]) > r3.Dot(p, centres[best])+rounding {
					best = k
				}
			}
			groups[best] = append(groups[best], i)
		}
		for k, g := range groups {
			var sum r3.Vec
			for _, i := range g {
				sum = r3.Add(sum, at[i])
			}
			if r3.Norm(sum) > rounding {
				centres[k] = r3.Unit(sum)
			}
		}
	}
	return slices.DeleteFunc(groups, func(g []int) bool { return len(g) == 0 })
}

// outline returns points whose box is that of a cell, however it is turned about z.
func (s share) outline() []r3.Vec {
	out := slices.Clone(s.points)
	for _, z := range []float64{s.low, s.high} {
		out = append(out, r3.Vec{X: s.points[0].X, Y: s.points[0].Y, Z: z})
	}
	return out
}

// steps makes the segments of some groups of sites; false where one does not fit the bed,
// is in two pieces, or has a seam too near to a cut-out.
func (c *cutter) steps(cells []share, groups [][]int) (Plan, bool) {
	if len(groups) < 2 {
		return Plan{}, false
	}
	p := Plan{Sectors: len(groups), From: []float64{0}}
	for k, g := range groups {
		s := Segment{Sector: k, Cells: g}
		if !c.gather(&s, cells) {
			return Plan{}, false
		}
		p.Segments = append(p.Segments, s)
	}
	for _, s := range cells {
		p.Cells = append(p.Cells, s.Cell)
	}
	return p, true
}

// gather measures a segment of cells; false where it will not do.
func (c *cutter) gather(s *Segment, cells []share) bool {
	member := make(map[int]bool, len(s.Cells))
	for _, i := range s.Cells {
		member[i] = true
	}
	reached, next := map[int]bool{s.Cells[0]: true}, []int{s.Cells[0]}
	for len(next) > 0 {
		i := next[0]
		next = next[1:]
		for k, side := range cells[i].Sides {
			switch {
			case !member[side.Beyond]:
				if i < len(c.holes) && cells[i].gaps[k] < c.job.Margin {
					return false
				}
			case !reached[side.Beyond]:
				reached[side.Beyond] = true
				next = append(next, side.Beyond)
			}
		}
	}
	if len(reached) < len(s.Cells) || pinched(member, c.meeting) {
		return false
	}
	var points []r3.Vec
	s.Low, s.High = math.Inf(1), math.Inf(-1)
	for _, i := range s.Cells {
		points = append(points, cells[i].outline()...)
		s.Low, s.High = min(s.Low, cells[i].low), max(s.High, cells[i].high)
		s.Volume += cells[i].volume - math.Pi*c.sites[i].Radius*c.sites[i].Radius*c.job.Wall
		s.Area += cells[i].area
		if i < len(c.holes) {
			s.Mounts = append(s.Mounts, i)
		}
	}
	s.Mass = s.Volume * c.job.Density
	return s.measure(points, c.job.Bed)
}
