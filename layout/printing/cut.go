package printing

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"pappus/layout/body"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with what is asked.
var (
	ErrBed        = errors.New("the bed must have three finite sides above 0")
	ErrNumber     = errors.New("must be finite and at least 0")
	ErrBedSmall   = errors.New("the bed is smaller than one mount")
	ErrNoCleanCut = errors.New("no cut keeps off the cut-outs")
	ErrTooMany    = errors.New("it would take more segments than 12 sectors of 12 levels")
)

// most is the most sectors, and the most levels.
const most = 12

// Mount is a place for one driver.
type Mount struct {
	Point  r3.Vec // m
	Normal r3.Vec // unit length, outward
}

// Job is what a shell is printed with.
type Job struct {
	Bed          Size
	Shell        Shell
	CutoutRadius float64 // m
	Margin       float64 // m, the least from a cut to a cut-out
	Density      float64 // kg/m3 of the material
}

// Plan is a shell cut into segments.
type Plan struct {
	Sectors  int       // in each level that is not whole
	From     []float64 // azimuth in rad of each level's first plane through the axis
	Heights  []float64 // m, of the cuts between levels, rising
	Segments []Segment // level by level from below, sectors counter-clockwise
}

// Segment is one piece of a shell.
type Segment struct {
	Level, Sector int     // from 0
	Low, High     float64 // m
	From, To      float64 // rad; a whole turn where the level is not cut by sectors
	Turn          float64 // rad about z, by which it fits the bed
	Size          Size    // turned so
	Area          float64 // m2 of the body's surface, cut-outs not taken off
	Volume        float64 // m3 of the shell, cut-outs taken off
	Mass          float64 // kg
	Mounts        []int   // indices
}

// Cut cuts the shell of a body into the fewest segments that fit a bed; of as
// many, into the fewest levels. One segment is the whole: it fits.
//
// Errors wrap [ErrBed], [ErrNumber], [ErrWall], [ErrBedSmall], [ErrNoCleanCut]
// (a number of segments would fit, but only with cuts through cut-outs) and
// [ErrTooMany].
func Cut(b *body.Body, mounts []Mount, job Job) (Plan, error) {
	if err := job.check(); err != nil {
		return Plan{}, err
	}
	stock, err := pieces(b, job.Shell)
	if err != nil {
		return Plan{}, err
	}
	c := &cutter{stock: stock, job: job}
	for _, m := range mounts {
		h := cutout{m, job.CutoutRadius}
		c.holes = append(c.holes, h)
		c.onAxis = append(c.onAxis, h.onAxis(job.Margin))
		c.blocked = append(c.blocked, h.blocked(job.Margin))
	}
	for i, h := range c.holes {
		if !h.fits(job.Bed) {
			return Plan{}, prose.Errorf("%w: the cut-out of mount %d, %g m across, does not lie on %g by %g by %g m",
				ErrBedSmall, i, 2*h.radius, job.Bed.X, job.Bed.Y, job.Bed.Z)
		}
	}
	return c.search()
}

func (j Job) check() error {
	for _, side := range []float64{j.Bed.X, j.Bed.Y, j.Bed.Z} {
		if !(side > 0) || math.IsInf(side, 1) {
			return prose.Errorf("%w, not %g by %g by %g m", ErrBed, j.Bed.X, j.Bed.Y, j.Bed.Z)
		}
	}
	for _, v := range []struct {
		name  string
		value float64
	}{{"cut-out radius in m", j.CutoutRadius}, {"margin in m", j.Margin}, {"density in kg/m3", j.Density}} {
		if !(v.value >= 0) || math.IsInf(v.value, 1) {
			return prose.Errorf("%s %w, not %g", v.name, ErrNumber, v.value)
		}
	}
	return nil
}

// fits tells whether the disc of a cut-out, as it stands, fits a bed.
func (c cutout) fits(bed Size) bool {
	for i := range 180 {
		sin, cos := math.Sincos(float64(i) * degree)
		box := Size{2 * c.extent(r3.Vec{X: cos, Y: sin}), 2 * c.extent(r3.Vec{X: -sin, Y: cos}), 2 * c.extent(r3.Vec{Z: 1})}
		if box.within(bed) {
			return true
		}
	}
	return false
}

// cutter looks for the best way to cut.
type cutter struct {
	stock   *stock
	job     Job
	holes   []cutout
	onAxis  []bool       // by cut-out
	blocked [][2]float64 // azimuths, by cut-out
}

// way is one way to cut that is tried.
type way struct{ sectors, levels, pieces int }

// ways returns all, fewest pieces first and of as many fewest levels. Levels at
// an end that stay whole count as one piece.
func (c *cutter) ways() []way {
	low, high := c.stock.span()
	whole := 0
	for _, at := range c.caps(low, high) {
		if at {
			whole++
		}
	}
	var all []way
	for k := 1; k <= most; k++ {
		for m := 1; m <= most; m++ {
			if k == 1 {
				all = append(all, way{k, m, m})
			} else if m > whole {
				all = append(all, way{k, m, (m-whole)*k + whole})
			}
		}
	}
	slices.SortStableFunc(all, func(p, q way) int {
		return cmp.Or(cmp.Compare(p.pieces, q.pieces), cmp.Compare(p.levels, q.levels))
	})
	return all
}

// caps tells whether a cut-out is across the axis at the bottom, and at the top.
func (c *cutter) caps(low, high float64) (at [2]bool) {
	for i, h := range c.holes {
		if c.onAxis[i] {
			if h.Point.Z < (low+high)/2 {
				at[0] = true
			} else {
				at[1] = true
			}
		}
	}
	return at
}

func (c *cutter) search() (Plan, error) {
	clean := true
	for _, w := range c.ways() {
		plans, through := c.plans(w)
		for _, p := range plans {
			if c.fill(&p) {
				return p, nil
			}
		}
		if through && clean {
			clean = !c.anyhow(w)
		}
	}
	if !clean {
		return Plan{}, prose.Errorf("%w by %g m: turn the body, take a larger bed or leave out a driver", ErrNoCleanCut, c.job.Margin)
	}
	return Plan{}, ErrTooMany
}

// anyhow tells whether a way would fit if cuts might go through cut-outs.
func (c *cutter) anyhow(w way) bool {
	low, high := c.stock.span()
	p := Plan{Sectors: w.sectors, From: make([]float64, w.levels)}
	for i := 1; i < w.levels; i++ {
		p.Heights = append(p.Heights, low+(high-low)*float64(i)/float64(w.levels))
	}
	blind := &cutter{stock: c.stock, job: c.job}
	return !c.tooTall(p.Heights) && blind.fill(&p)
}

// tries is how many heights are tried for a level that stays whole.
const tries = 16

// plans returns clean plans of one way, and whether there would be others that
// are not.
func (c *cutter) plans(w way) (plans []Plan, through bool) {
	low, high := c.stock.span()
	free := gaps(c.holes, c.job.Margin, low, high)
	caps := c.caps(low, high)
	if w.sectors == 1 || caps == [2]bool{} {
		cuts, ok := heights(w.levels, low, high, free)
		if !ok {
			return nil, true
		}
		return c.turned(w, [][]float64{cuts})
	}
	var all [][]float64
	for i := 1; i < tries; i++ {
		cap := (high - low) * float64(tries-i) / tries
		if cuts, ok := capped(w.levels, cap, low, high, caps, free); ok {
			all = append(all, cuts)
		}
	}
	plans, _ = c.turned(w, all)
	return plans, true
}

// capped returns where to cut into levels with one of about a height at each
// end that asks for it, moved outward to where the cut is clean.
func capped(n int, cap, low, high float64, at [2]bool, free [][2]float64) (cuts []float64, ok bool) {
	from, to := low, high
	if at[1] {
		to = math.Inf(1)
		for _, g := range slices.Backward(free) {
			if g[1] > high-cap && max(g[0], high-cap) < to && g[1] > low {
				to = max(g[0], high-cap)
			}
		}
		n--
	}
	if at[0] {
		from = math.Inf(-1)
		for _, g := range free {
			if g[0] < low+cap && min(g[1], low+cap) > from {
				from = min(g[1], low+cap)
			}
		}
		n--
	}
	if !(from < to) || n < 1 || at[1] && to >= high || at[0] && from <= low {
		return nil, false
	}
	if at[0] {
		cuts = append(cuts, from)
	}
	between, ok := heights(n, from, to, free)
	cuts = append(cuts, between...)
	if at[1] {
		cuts = append(cuts, to)
	}
	return cuts, ok
}

// turned turns the sectors of each level to where they cut no cut-out.
func (c *cutter) turned(w way, cuts [][]float64) (plans []Plan, through bool) {
	for _, h := range cuts {
		if c.tooTall(h) {
			continue
		}
		p := Plan{Sectors: w.sectors, Heights: h, From: make([]float64, len(h)+1)}
		clean := true
		for l := range p.From {
			holes, whole := c.inLevel(p, l)
			if w.sectors > 1 && !whole {
				var ok bool
				p.From[l], ok = bestTurn(w.sectors, c.azimuths(holes))
				clean = clean && ok
			}
		}
		if clean {
			plans = append(plans, p)
		}
		through = through || !clean
	}
	return plans, through
}

// tooTall tells whether a level between cuts is higher than the bed allows.
func (c *cutter) tooTall(cuts []float64) bool {
	at, high := c.stock.span()
	for _, cut := range append(slices.Clone(cuts), high) {
		if cut-at > c.job.Bed.Z*(1+spare) {
			return true
		}
		at = cut
	}
	return false
}

// azimuths returns the ranges of azimuth that cut-outs block.
func (c *cutter) azimuths(holes []int) [][2]float64 {
	out := make([][2]float64, len(holes))
	for i, h := range holes {
		out[i] = c.blocked[h]
	}
	return out
}

// inLevel returns the cut-outs in a level, and whether one is across the axis.
func (c *cutter) inLevel(p Plan, l int) (holes []int, whole bool) {
	low, high := p.level(l, math.Inf(-1), math.Inf(1))
	for i, h := range c.holes {
		if h.Point.Z >= low && h.Point.Z < high {
			holes = append(holes, i)
			whole = whole || c.onAxis[i]
		}
	}
	return holes, whole
}

// level returns the heights of a level between those of the body.
func (p Plan) level(l int, low, high float64) (from, to float64) {
	from, to = low, high
	if l > 0 {
		from = p.Heights[l-1]
	}
	if l < len(p.Heights) {
		to = p.Heights[l]
	}
	return from, to
}

// fill makes the segments of a plan; false where one does not fit the bed.
func (c *cutter) fill(p *Plan) bool {
	low, high := c.stock.span()
	for l := range len(p.Heights) + 1 {
		from, to := p.level(l, low, high)
		holes, whole := c.inLevel(*p, l)
		sectors := p.Sectors
		if whole {
			sectors = 1
		}
		outer := level(c.stock.outer, from, to, c.stock.slack)
		inner := level(c.stock.inner, from, to, c.stock.slack)
		for k := range sectors {
			pitch := 2 * math.Pi / float64(sectors)
			s := Segment{Level: l, Sector: k, Low: from, High: to,
				From: p.From[l] + float64(k)*pitch, To: p.From[l] + float64(k+1)*pitch}
			if !c.segment(&s, outer, inner) {
				return false
			}
			c.carry(&s, holes)
			p.Segments = append(p.Segments, s)
		}
	}
	return true
}

// segment measures a segment of a level; false where it does not fit the bed.
func (c *cutter) segment(s *Segment, outer, inner solid) bool {
	if c.stock.body.IsBall() {
		if !s.measure(c.stock.round(*s), c.job.Bed) {
			return false
		}
		b, share := c.stock.body, (s.To-s.From)/(2*math.Pi)
		s.Volume = share * (zone(b.Radius, s.Low, s.High) - c.stock.hollow(s.Low, s.High))
		s.Area = share * 2 * math.Pi * b.Radius * (s.High - s.Low)
		if b.IsCut && s.Low <= b.Cut {
			s.Area += share * math.Pi * (b.Radius*b.Radius - b.Cut*b.Cut)
		}
		return true
	}
	outer = sector(outer, s.From, s.To, c.stock.slack)
	inner = sector(inner, s.From, s.To, c.stock.slack)
	if !s.measure(c.stock.outline(outer, inner), c.job.Bed) {
		return false
	}
	s.Volume, s.Area = outer.volume()-inner.volume(), outer.skin()
	return true
}

// carry takes those of a level's mounts that are in a segment, and takes off
// their cut-outs.
func (c *cutter) carry(s *Segment, holes []int) {
	for _, i := range holes {
		turn := math.Mod(math.Atan2(c.holes[i].Point.Y, c.holes[i].Point.X)-s.From, 2*math.Pi)
		if turn < 0 {
			turn += 2 * math.Pi
		}
		if turn < s.To-s.From || s.To-s.From >= 2*math.Pi-rounding {
			s.Mounts = append(s.Mounts, i)
			s.Volume -= math.Pi * c.holes[i].radius * c.holes[i].radius * c.job.Shell.Wall
		}
	}
	s.Mass = s.Volume * c.job.Density
}
