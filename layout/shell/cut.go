package shell

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with what is asked.
var (
	ErrNoCleanCut = errors.New("no seam keeps off the cut-outs")
	ErrBed        = errors.New("the bed is smaller than one mount")
	ErrTooMany    = errors.New("it would take more than 144 segments")
	ErrSegment    = errors.New("the shell cannot be parted round segment")
)

// most is the most sectors, and the most levels: more joints than anyone would glue.
const most = 12

// Job is what a shell is printed with.
type Job struct {
	Bed     Size
	Wall    float64 // m; the base of a cut is open
	Margin  float64 // m, the least from a cut to a cut-out
	Density float64 // kg/m3 of the material
}

// Plan is a shell cut into segments.
type Plan struct {
	Sectors int       // in each level that is not whole
	From    []float64 // azimuth in rad of each level's first plane through the axis
	Heights []float64 // m, of the cuts between levels, rising
	// Cells are the shares of the shell that segments are made of where seams are
	// stepped, the mounts' own first; none where seams are flat.
	Cells    []Cell
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
	Cells         []int   // indices into Plan.Cells; none where seams are flat
}

// Parts returns each segment of a shell's mesh; the whole where it is not cut. The error of a
// stepped seam wraps [ErrSegment].
func (p Plan) Parts(whole poly.Mesh) ([]poly.Mesh, error) {
	if len(p.Segments) < 2 {
		return []poly.Mesh{whole}, nil
	}
	out := make([]poly.Mesh, len(p.Segments))
	for i, s := range p.Segments {
		var err error
		if len(p.Cells) > 0 {
			if out[i], err = whole.Cells(p.cells(s)); err != nil {
				return nil, fmt.Errorf("%w %d: %w", ErrSegment, i+1, err)
			}
		} else if out[i], err = whole.Part(p.planes(s)...); err != nil {
			return nil, fmt.Errorf("segment %d: %w", i+1, err)
		}
	}
	return out, nil
}

// planes returns the half-spaces of a segment with flat seams.
func (p Plan) planes(s Segment) (out []poly.Plane) {
	level := poly.Level(s.Low, s.High)
	if s.Level > 0 {
		out = append(out, level[0])
	}
	if s.Level < len(p.Heights) {
		out = append(out, level[1])
	}
	if s.To-s.From < 2*math.Pi-1e-9 {
		out = append(out, poly.Sector(s.From, s.To)...)
	}
	return out
}

// cells returns the cells of a segment with stepped seams.
func (p Plan) cells(s Segment) []poly.Cell {
	out := make([]poly.Cell, len(s.Cells))
	for i, c := range s.Cells {
		for _, side := range p.Cells[c].Sides {
			out[i].Sides = append(out[i].Sides, poly.Plane{Normal: side.Normal})
			out[i].Open = append(out[i].Open, slices.Contains(s.Cells, side.Beyond))
		}
	}
	return out
}

// Cut cuts the shell of a body into the fewest segments that fit a bed; of as
// many, into the fewest levels. One segment is the whole: it fits.
//
// Errors wrap [ErrNoCleanCut] where a number of segments would fit, but only with cuts through
// cut-outs, and [ErrTooMany] where none would.
func Cut(b *body.Body, holes []Hole, job Job) (Plan, error) {
	if err := job.check(); err != nil {
		return Plan{}, err
	}
	stock, err := pieces(b, job.Wall)
	if err != nil {
		return Plan{}, err
	}
	c := &cutter{stock: stock, job: job, holes: holes}
	for _, h := range holes {
		c.onAxis = append(c.onAxis, h.onAxis(job.Margin))
		c.blocked = append(c.blocked, h.blocked(job.Margin))
	}
	for _, h := range holes {
		if !h.fits(job.Bed) {
			return Plan{}, prose.Errorf("%w: the cut-out of mount %d, %.4g mm across, does not lie on %v",
				ErrBed, h.ID, 2e3*h.Radius, job.Bed)
		}
	}
	p, err := c.search()
	if c.stock.err != nil {
		return Plan{}, c.stock.err
	}
	return p, err
}

// Fits tells whether the shell of a body fits a bed without a cut.
func Fits(b *body.Body, job Job) bool {
	if low, high := b.Span(); job.check() != nil || high-low > job.Bed.Z*(1+spare) {
		return false
	}
	stock, err := pieces(b, job.Wall)
	if err != nil {
		return false
	}
	c := &cutter{stock: stock, job: job}
	return c.fill(&Plan{Sectors: 1, From: make([]float64, 1)})
}

func (j Job) check() error {
	for _, side := range []float64{j.Bed.X, j.Bed.Y, j.Bed.Z} {
		if !(side > 0) || math.IsInf(side, 1) {
			return prose.Errorf("the bed must have three finite sides above 0, not %v", j.Bed)
		}
	}
	for _, v := range []struct {
		name  string
		value float64
	}{{"margin in mm", 1e3 * j.Margin}, {"density in kg/m3", j.Density}} {
		if !(v.value >= 0) || math.IsInf(v.value, 1) {
			return prose.Errorf("%s must be finite and at least 0, not %.4g", v.name, v.value)
		}
	}
	return nil
}

// fits tells whether the disc of a cut-out, as it stands, fits a bed.
func (c Hole) fits(bed Size) bool {
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
	holes   []Hole
	sites   []Hole       // of cells: the cut-outs, then places without one
	onAxis  []bool       // by cut-out
	blocked [][2]float64 // azimuths, by cut-out
	meeting [][]int      // cells that meet four or more in a line
	tooBig  *oversize    // a cell that does not fit the bed; nil: none was found
	narrow  *narrow      // the least room for a seam; nil: all have the margin
}

// way is one way to cut that is tried.
type way struct{ sectors, levels, pieces int }

// ways returns all, fewest pieces first and of as many fewest levels. Levels at
// an end that stay whole count as one piece.
func (c *cutter) ways() []way {
	low, high := c.stock.body.Span()
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
	if p, ok := c.stepped(); ok {
		return p, nil
	}
	return Plan{}, c.hopeless(clean)
}

// hopeless says why there is no plan, and what would make one. clean tells that no cut was
// refused for running through a cut-out.
func (c *cutter) hopeless(clean bool) error {
	kind := ErrTooMany
	if !clean {
		kind = prose.Errorf("%w by %.4g mm", ErrNoCleanCut, 1e3*c.job.Margin)
	}
	switch {
	case c.tooBig != nil && c.tooBig.site < len(c.holes):
		return prose.Errorf("%w: what is nearest to mount %d alone is %v, and the bed %v; take a larger bed",
			kind, c.holes[c.tooBig.site].ID, c.tooBig.size, c.job.Bed)
	case !clean && c.narrow != nil:
		return prose.Errorf("%w: between mounts %d and %d is room for %.1f mm; take a larger bed, a smaller margin_mm, or leave out a driver",
			kind, c.holes[c.narrow.from].ID, c.holes[c.narrow.to].ID, 1e3*max(0, c.narrow.gap))
	}
	return prose.Errorf("%w: take a larger bed than %v, or a smaller body", kind, c.job.Bed)
}

// anyhow tells whether a way would fit if cuts might go through cut-outs.
func (c *cutter) anyhow(w way) bool {
	low, high := c.stock.body.Span()
	p := Plan{Sectors: w.sectors, From: make([]float64, w.levels)}
	for i := 1; i < w.levels; i++ {
		p.Heights = append(p.Heights, low+(high-low)*float64(i)/float64(w.levels))
	}
	blind := &cutter{stock: c.stock, job: c.job}
	return !c.tooTall(p.Heights) && blind.fill(&p)
}

// tries is how many heights are tried for a level that stays whole. With a fifth more or fewer
// all designs that the tests cut are cut as well.
const tries = 16

// plans returns clean plans of one way, and whether there would be others that
// are not.
func (c *cutter) plans(w way) (plans []Plan, through bool) {
	low, high := c.stock.body.Span()
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
		for _, g := range free {
			if g[1] > high-cap {
				to = min(to, max(g[0], high-cap))
			}
		}
		n--
	}
	if at[0] {
		from = math.Inf(-1)
		for _, g := range free {
			if g[0] < low+cap {
				from = max(from, min(g[1], low+cap))
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
	at, high := c.stock.body.Span()
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
	low, high := c.stock.body.Span()
	for l := range len(p.Heights) + 1 {
		from, to := p.level(l, low, high)
		holes, whole := c.inLevel(*p, l)
		sectors := p.Sectors
		if whole {
			sectors = 1
		}
		outer := c.stock.level(c.stock.outer, from, to)
		inner := c.stock.level(c.stock.inner, from, to)
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
func (c *cutter) segment(s *Segment, outer, inner poly.Solid) bool {
	if c.stock.body.IsBall() {
		if !s.measure(c.stock.round(*s), c.job.Bed) {
			return false
		}
		b, share := c.stock.body, (s.To-s.From)/(2*math.Pi)
		s.Volume = share * (body.BallZone(b.Radius, s.Low, s.High) - c.stock.hollow(s.Low, s.High))
		s.Area = share * 2 * math.Pi * b.Radius * (s.High - s.Low)
		if b.IsCut && s.Low <= b.Cut {
			s.Area += share * math.Pi * (b.Radius*b.Radius - b.Cut*b.Cut)
		}
		return true
	}
	outer = c.stock.sector(outer, s.From, s.To)
	inner = c.stock.sector(inner, s.From, s.To)
	if !s.measure(c.stock.outline(outer, inner), c.job.Bed) {
		return false
	}
	s.Volume, s.Area = outer.Volume()-inner.Volume(), skinOf(outer)
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
			s.Volume -= math.Pi * c.holes[i].Radius * c.holes[i].Radius * c.job.Wall
		}
	}
	s.Mass = s.Volume * c.job.Density
}
