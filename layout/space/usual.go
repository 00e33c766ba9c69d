package space

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

const mm = 1e-3 // m

// family is a body with its places, in any size.
type family struct {
	always []design.Setting
	places []layout.Mount // on a body of radius 1; none: a ball's, spread evenly
	least  float64        // m, the least radius that takes the driver
	period float64        // degrees
}

// usual returns the blocks of a design that gives no choices. Where none of them is sure to be
// narrow enough, those that come nearest are among them: as many drivers as the width takes,
// and the narrowest that take as many as are asked for.
func usual(d *design.Design) ([]block, error) {
	u := newUsuals(d)
	out := u.all()
	if wide := min(limitOr(d.Search.Width), limitOr(d.Search.Depth)) / 2; u.narrowest > wide {
		out = append(out, u.fullest(wide)...)
		out = append(out, u.narrow()...)
	}
	return out, u.err
}

// all are the blocks of all families.
func (u *usuals) all() []block {
	var out []block
	for _, f := range u.faceted() {
		out = append(out, u.block(f, u.sizes(f)))
	}
	for _, n := range counts(u.few, u.many) {
		if f, found := u.even(n); found {
			out = append(out, u.block(f, append(u.balls(f, n), u.domes(f, n)...)))
		}
	}
	return out
}

// usuals makes families for a design.
type usuals struct {
	d         *design.Design
	few, many int     // drivers
	most      float64 // m, of radii
	narrowest float64 // m, the least radius that was tried
	err       error
}

func newUsuals(d *design.Design) *usuals {
	return &usuals{d: d, few: d.Search.LeastDrivers, many: d.Search.Drivers, most: mostRadius(d), narrowest: math.Inf(1)}
}

// limitOr is a limit in m, or where there is none more than any body.
func limitOr(v float64) float64 {
	if v == 0 {
		return math.Inf(1)
	}
	return v
}

// How radii go on from the least that takes the driver: in steps of a fourteenth, until the
// flanges cover less than a seventh of the ball round the body. A body with 1.75 times the
// radius of the least is louder at the bottom, and worse in all else.
const (
	radiusStep  = 1.0 / 14
	mostLarger  = 1.75
	leastCover  = 1.0 / 7
	anyNarrower = 1.06 // a body is narrower than its ball by up to so much
)

// mostRadius is the largest radius in m that the width, the depth and those who listen allow.
func mostRadius(d *design.Design) float64 {
	most := 5.0
	for _, l := range d.Listeners() {
		most = min(most, 0.9*r3.Norm(l.At))
	}
	return min(most, anyNarrower*min(limitOr(d.Search.Width), limitOr(d.Search.Depth))/2)
}

// covered is the share of a ball that so many flanges cover, as flat discs.
func (u *usuals) covered(n int, radius float64) float64 {
	f := u.d.Driver.FlangeRadius
	return float64(n) * f * f / (4 * radius * radius)
}

// radii are the radii in mm that are tried, from the least in m on, for n places.
func (u *usuals) radii(least float64, n int) []float64 {
	var out []float64
	for r := least; r <= min(u.most, mostLarger*least) && u.covered(n, r) >= leastCover; r *= 1 + radiusStep {
		out = append(out, upHalf(r))
	}
	return out
}

// upHalf is a length in m in mm, up to the next half.
func upHalf(m float64) float64 { return math.Ceil(2*m/mm-rounding) / 2 }

// turns is how many turns of a body are tried within the angle after which it is the same.
const turns = 6

// block makes a block of a family and its sizes, each of which begins with the radius.
func (u *usuals) block(f family, sizes axis) block {
	var yaws axis
	for i := range turns {
		yaw := math.Round(f.period * float64(i) / turns)
		if yaw > 180 {
			yaw -= 360
		}
		yaws = append(yaws, []design.Setting{{Key: "placing.yaw_deg", Value: yaw}})
	}
	for _, s := range sizes {
		u.narrowest = min(u.narrowest, s[0].Value.(float64)*mm)
	}
	return block{always: f.always, axes: []axis{sizes, yaws}}
}

// always lists what a family sets beside its own: what stood there for another body goes.
func (u *usuals) always(own ...design.Setting) []design.Setting {
	d := u.d
	set := func(key string) bool {
		return slices.ContainsFunc(own, func(s design.Setting) bool { return s.Key == key })
	}
	out := slices.Clone(own)
	for _, key := range []string{"body.base", "body.subdivision", "body.m", "body.n", "body.sides", "body.height_mm", "body.file", "body.dual", "mounts.count",
		"mounts.over", "mounts.symmetry", "mounts.list", "mounts.skip", "mounts.keep_clear_below_deg", "channel"} {
		if !set(key) && given(d, key) {
			out = append(out, design.Setting{Key: key})
		}
	}
	if k := d.Search.Channels; k > 0 && (k != d.Wiring.Channels || len(d.Channels) > 0) {
		out = append(out, design.Setting{Key: "wiring.channels", Value: k})
	}
	return out
}

// given tells whether a design's file has a key or a table.
func given(d *design.Design, key string) bool { return d.Lines == nil || d.Lines[key] > 0 }

// faceted returns the families with flat faces that take from the least to the most drivers.
func (u *usuals) faceted() []family {
	var out []family
	for _, s := range shapes(u.many) {
		own := append(s, design.Setting{Key: "mounts.on", Value: "faces"})
		f := family{always: u.always(own...)}
		least := u.d.Driver.FlangeRadius
		trial, err := u.d.With(append(f.always, radius(math.Ceil(min(u.most, 8*least)/mm)), design.Setting{Key: "body.cut_height_mm"})...)
		if err != nil {
			u.err = err
			continue
		}
		places, size, err := layout.Places(trial)
		if err != nil {
			continue // no size takes the driver
		}
		for i := range places {
			places[i].Point = r3.Scale(1/trial.Body.Radius, places[i].Point)
		}
		f.places, f.least, f.period = places, size, layout.Period(places)
		if u.covered(len(places), size) >= leastCover && size <= u.most {
			out = append(out, f)
		}
	}
	return out
}

func radius(mm float64) design.Setting { return design.Setting{Key: "body.radius_mm", Value: mm} }

func cutAt(mm float64) design.Setting {
	return design.Setting{Key: "body.cut_height_mm", Value: mm}
}

// sizes are the radii of a family, each whole and with its cuts.
func (u *usuals) sizes(f family) axis {
	var out axis
	for _, r := range u.radii(f.least, len(f.places)) {
		if n := len(f.places); n >= u.few && n <= u.many {
			out = append(out, u.strung(n, radius(r), design.Setting{Key: "body.cut_height_mm"}))
		}
		if dual(f) {
			continue // which is not to be cut
		}
		for _, c := range u.cuts(f, r*mm) {
			out = append(out, u.strung(u.above(f, r*mm, c*mm), radius(r), cutAt(c)))
		}
	}
	return out
}

// above is how many drivers are above a cut, whose flanges are: those of which anything is below
// are cut away.
func (u *usuals) above(f family, radius, cut float64) (n int) {
	for _, m := range f.places {
		if m.Point.Z*radius-u.d.Driver.FlangeRadius*math.Sqrt(max(0, 1-m.Normal.Z*m.Normal.Z)) > cut {
			n++
		}
	}
	return n
}

// strung adds to the settings of n drivers that they have fewer channels than there are, where
// they are too few for all: each channel needs as many in series as its load asks for.
func (u *usuals) strung(n int, own ...design.Setting) []design.Setting {
	series := 1
	if ohm := u.d.Driver.LeastOhm(); ohm > 0 {
		series = max(1, int(math.Ceil(u.d.Wiring.MinimumLoad/ohm-rounding)))
	}
	if k := max(1, n/series); k < u.d.Search.Channels {
		return append(own, design.Setting{Key: "wiring.channels", Value: k})
	}
	return own
}

func dual(f family) bool {
	return slices.ContainsFunc(f.always, func(s design.Setting) bool { return s.Key == "body.dual" && s.Value == true })
}

// targets are the heights of cuts over the radius that are looked for.
var targets = []float64{-0.7, -0.4, 0, 0.3}

// cuts are the heights in mm at which a body of a radius in m may be cut between two of its
// rings, each the nearest to one of the targets.
func (u *usuals) cuts(f family, radius float64) []float64 {
	clean := u.clean(f, radius)
	var out []float64
	for _, t := range targets {
		best := math.NaN()
		for _, c := range clean {
			if away := math.Abs(c*mm - t*radius); away < targetReach*radius && !(away >= math.Abs(best*mm-t*radius)) {
				best = c
			}
		}
		if !math.IsNaN(best) && !slices.Contains(out, best) {
			out = append(out, best)
		}
	}
	return out
}

// targetReach is how far from a target a cut may be, over the radius.
const targetReach = 0.2

// clean lists all heights in mm between rings that neither a flange above nor a cut-out below
// is in the way of.
func (u *usuals) clean(f family, radius float64) []float64 {
	o := u.d.Driver.Outline
	n := len(f.places)
	above := make([]float64, n+1) // by how many are kept: the highest cut that clears them
	above[0] = math.Inf(1)
	for i, m := range f.places {
		tilt := math.Sqrt(max(0, 1-m.Normal.Z*m.Normal.Z))
		z := m.Point.Z * radius
		inside := z - o.Depth*m.Normal.Z - max(o.MagnetRadius, o.CutoutRadius*min(1, 1-m.Normal.Z))*tilt - u.d.Body.Wall - u.d.Fit.Apart
		above[i+1] = min(above[i], z-o.FlangeRadius*tilt-u.d.Fit.Edge, inside)
	}
	var out []float64
	below := math.Inf(-1)
	for kept := n - 1; kept > 0; kept-- {
		m := f.places[kept]
		below = max(below, m.Point.Z*radius-o.CutoutRadius*math.Sqrt(max(0, 1-m.Normal.Z*m.Normal.Z)))
		c := math.Round((below+above[kept])/2/mm*10) / 10
		if kept >= u.few && kept <= u.many && c*mm > below && c*mm < above[kept] && math.Abs(c*mm) < 0.95*radius {
			out = append(out, c)
		}
	}
	return out
}

// even is the family of n places spread evenly over a ball.
func (u *usuals) even(n int) (family, bool) {
	f := family{period: 360, always: u.evenly(n)}
	least, err := layout.LeastBall(u.d, evenAngle/math.Sqrt(float64(n)))
	if err != nil || least > u.most || u.covered(n, least) < leastCover {
		return f, false
	}
	f.least = least
	return f, true
}

// evenly lists what is set for n places spread evenly over a ball.
func (u *usuals) evenly(n int) []design.Setting {
	return u.always(design.Setting{Key: "body.shape", Value: "ball"}, design.Setting{Key: "mounts.on", Value: "even"}, design.Setting{Key: "mounts.count", Value: n},
		design.Setting{Key: "mounts.symmetry"}, design.Setting{Key: "mounts.over"}, design.Setting{Key: "mounts.keep_clear_below_deg"})
}

// evenAngle over the root of their number is about the least angle in rad between points that
// are spread evenly: 3.6 is between what is least in energy has (3.5) and the densest packing
// of many (the root of 8 pi over the root of 3: 3.81).
const evenAngle = 3.6

// balls are the sizes of a whole ball.
func (u *usuals) balls(f family, n int) axis {
	var out axis
	for _, r := range u.radii(f.least, n) {
		out = append(out, u.strung(n, radius(r), design.Setting{Key: "body.cut_height_mm"}))
	}
	return out
}

// domeCuts are the heights at which balls are cut, over their radius, floorStep the steps in
// degrees of the elevation from which up drivers sit: places need not be found anew for radii
// that have the same.
var domeCuts = []float64{0, -0.4}

const floorStep = 7.5

// domes are the sizes of a ball that is cut, with n drivers above.
func (u *usuals) domes(f family, n int) axis {
	var out axis
	for _, cut := range domeCuts {
		first := math.Inf(1)
		for r := f.least; r <= min(u.most, mostLarger*first); r *= 1 + radiusStep {
			size := upHalf(r)
			dome, area := u.dome(size, cut)
			cover := u.covered(n, size*mm) / area
			if dome == nil || cover > mostCover {
				continue // too small
			}
			if cover < leastCover {
				break
			}
			first = min(first, r)
			out = append(out, u.strung(n, dome...))
		}
	}
	return out
}

// dome is a cut ball of a radius in mm, and the share of it that is above its drivers' floor; nil
// where no driver clears the cut.
func (u *usuals) dome(size, cut float64) ([]design.Setting, float64) {
	c := math.Round(cut * size)
	floor := u.floor(size, c)
	if floor > 90 {
		return nil, 0
	}
	return []design.Setting{radius(size), cutAt(c), {Key: "mounts.over", Value: "dome"}, {Key: "mounts.keep_clear_below_deg", Value: floor}},
		(1 - math.Sin(floor*math.Pi/180)) / 2
}

// mostCover is the most of a ball that discs cover that are spread evenly and fit: the densest
// packing of many covers pi over the root of 12, 0.907.
const mostCover = 0.9

// floor is the elevation in degrees from which up a driver clears the cut of a ball, as it is
// set; +Inf where none does.
func (u *usuals) floor(radiusMM, cutMM float64) float64 {
	d := *u.d
	d.Body.Shape, d.Body.Dual = "ball", false
	d.Body.Radius, d.Body.Cut, d.Body.HasCut = radiusMM*mm, cutMM*mm, true
	floor, err := layout.DomeFloor(&d)
	if err != nil {
		return math.Inf(1)
	}
	return floorStep * math.Ceil(floor/floorStep)
}
