package layout

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/prose"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// cure says what would make every driver fit, each way tried on the design itself
// and found to do: places to leave empty or a count; a smaller part of the driver,
// or a smaller driver; a larger body.
func cure(a *Array, d *design.Design, whole *body.Body) string {
	below := math.Inf(-1)
	if d.Mounts.KeepClearBelowDeg != nil {
		below = *d.Mounts.KeepClearBelowDeg
	}
	asked := d.Mounts
	asked.KeepClearBelowDeg = nil
	key := fmt.Sprint(d.Path, d.Body, asked, below, a.Driver.Outline, a.Limits, whole.Vertices, a.Mounts)
	return cures.get(key, func() string { return findCure(a, d, whole) })
}

var cures = newMemory[string](mostKept)

func findCure(a *Array, d *design.Design, whole *body.Body) string {
	t := newTrial(a, d, whole)
	var ways []string
	add := func(way string, found bool) {
		if found {
			ways = append(ways, way)
		}
	}
	few, n := "", 0
	if d.Mounts.On == "even" {
		few, n = t.fewer(a)
	} else {
		add(t.emptied(a))
	}
	add(few, 2*n >= d.Mounts.Count && n > 0)
	part, found := t.part()
	if !found {
		part, found = t.smaller()
	}
	add(part, found)
	add(t.larger())
	add(few, 2*n < d.Mounts.Count && n > 0) // who asked for so many will rather change the driver
	if len(ways) == 0 && t.directions != nil {
		return "set on = \"faces\", or shape = \"ball\": places that are even fall on edges"
	}
	if len(ways) == 0 {
		return "take a smaller driver, a larger body or fewer drivers"
	}
	return strings.Join(ways, ", or ")
}

// fewer looks for how many even places a ball has room for; 0 where it has none, or
// none too few.
func (t *trial) fewer(a *Array) (string, int) {
	d := t.design
	if !a.Body.IsBall() {
		return "", 0
	}
	whole, err := wholeBody(d)
	if err != nil {
		return "", 0
	}
	zone, n := evenRoom(d, whole, a.Body)
	if n > 1 {
		n = spread.Capacity(d.Mounts.Count, zone)
	}
	if n == 0 || n >= d.Mounts.Count || !t.proved(func(d *design.Design) { d.Mounts.Count = n }) {
		return "", 0
	}
	return fmt.Sprintf("set count = %d, about as many as fit", n), n
}

// mostEmptied is how many places it may be worth to leave empty.
const mostEmptied = 8

// emptied looks for a few places that, left empty, let all other drivers fit:
// always the worst of those that are left.
func (t *trial) emptied(a *Array) (string, bool) {
	mounts, reports := slices.Clone(a.Mounts), a.Fits
	bad := 0
	for _, r := range reports {
		if !r.Fits(a.Limits) {
			bad++
		}
	}
	if bad > 3*mostEmptied { // each that is left empty helps itself and some neighbours
		return "", false
	}
	var out []int
	for {
		worst := worstOf(reports, a.Limits)
		if worst < 0 {
			break
		}
		if len(out) == mostEmptied || 2*(len(mounts)-1) < t.least {
			return "", false
		}
		out = append(out, mounts[worst].ID)
		mounts = slices.Delete(mounts, worst, worst+1)
		var err error
		if reports, err = fit.Check(a.Body, fitMounts(mounts), a.Driver.Outline, a.Limits); err != nil {
			return "", false
		}
	}
	skip := append(slices.Clone(t.design.Mounts.Skip), out...)
	slices.Sort(skip)
	return fmt.Sprintf("leave %s empty with skip = %s", prose.Count(len(out), "place", "places"), strings.Join(strings.Fields(fmt.Sprint(skip)), ", ")), true
}

// worstOf returns the mount that lacks most of a limit, of several that to which most
// others are nearest; -1 where all fit.
func worstOf(reports []fit.Report, l fit.Limits) int {
	near := make([]int, len(reports))
	for _, r := range reports {
		for _, to := range []int{r.GapTo, r.InsideTo} {
			if to >= 0 {
				near[to]++
			}
		}
	}
	worst, most := -1, 0.0
	for i, r := range reports {
		lack := r.Lack(l)
		if !(lack > fit.Slack) {
			continue
		}
		if worst < 0 || lack > most+visible || lack > most-visible && near[i] > near[worst] {
			worst, most = i, lack
		}
	}
	return worst
}

// part looks for the largest flange, depth or screw alone that fits, all else of
// the driver as it is.
func (t *trial) part() (string, bool) {
	now := t.design.Number
	for _, p := range []struct {
		key   string
		least float64 // mm
	}{
		{"flange_mm", now("driver.cutout_mm")},
		{"depth_mm", max(now("driver.magnet_height_mm"), 1)},
		{"screw_mm", 0.5},
	} {
		key := "driver." + p.key
		change := func(tenths int) func(*design.Design) {
			return func(d *design.Design) { d.Put(key, float64(tenths)/10) }
		}
		n, found := t.most(int(math.Ceil(p.least*10)), int(math.Ceil(now(key)*10)), change)
		if found && t.proved(change(n)) {
			return fmt.Sprintf("take %s of at most %.1f", p.key, float64(n)/10), true
		}
	}
	return "", false
}

// smaller looks for the largest driver of the same proportions that fits.
func (t *trial) smaller() (string, bool) {
	flange := t.design.Number("driver.flange_mm")
	change := func(tenths int) func(*design.Design) {
		return func(d *design.Design) { scale(&d.Driver, float64(tenths)/10/flange) }
	}
	// Nobody builds with less than a tenth of what they had in mind.
	n, found := t.most(int(math.Ceil(flange)), int(math.Ceil(flange*10)), change)
	if !found || !t.proved(change(n)) {
		return "", false
	}
	return fmt.Sprintf("take a driver of the same proportions with a flange of at most %.1f mm", float64(n)/10), true
}

// scale makes all lengths of a driver so many times as large, but for its screws.
func scale(d *Driver, factor float64) {
	d.ConeRadius *= factor
	d.Outline = d.Outline.Times(factor)
}

// largestGrowth is how many times as large a body is tried, mostRadius the largest in mm.
const largestGrowth, mostRadius = 4, 5000

// larger looks for the least radius, to a millimetre, of a body of the same shape
// that takes the drivers as they are.
func (t *trial) larger() (string, bool) {
	if t.design.Mounts.On == "list" {
		return "", false // its places would not move out with the body
	}
	radius, cut, height := t.design.Number("body.radius_mm"), t.design.Number("body.cut_height_mm"), t.design.Number("body.height_mm")
	grown := func(of float64, to int) float64 { return math.Round(of*float64(to)/radius*10) / 10 }
	change := func(to int) func(*design.Design) {
		return func(d *design.Design) {
			d.Put("body.radius_mm", float64(to))
			d.Body.Cut, d.Body.Height = grown(cut, to)*mm, grown(height, to)*mm
		}
	}
	// The larger a cut body, the more faces come free at the cut, so that more is not
	// always better: it is looked for from below.
	// Even places on a ball only gain by it, and are slow to try.
	steps := 25
	if t.design.Mounts.On == "even" && t.directions == nil {
		steps = 4
	}
	low := int(radius)
	high, most := low, int(min(largestGrowth*radius, mostRadius))
	for {
		if high == most {
			return "", false
		}
		if high = min(high+1+high/steps, most); t.with(change(high)) {
			break
		}
		low = high
	}
	n := low + 1 + sort.Search(high-low-1, func(i int) bool { return t.with(change(low + 1 + i)) })
	if !t.proved(change(n)) {
		return "", false
	}
	way := fmt.Sprintf("take radius_mm of at least %d", n)
	if cut != 0 {
		way += prose.Sprintf(" with cut_height_mm = %.4g", grown(cut, n))
	}
	if height != 0 {
		way += prose.Sprintf(" and height_mm = %.5g", grown(height, n))
	}
	return way, true
}

// most looks for the largest number from low up to below high with which all drivers fit,
// as if they did with all below; false where they do not even with low.
func (t *trial) most(low, high int, change func(int) func(*design.Design)) (int, bool) {
	if low >= high || !t.with(change(low)) {
		return 0, false
	}
	return low + sort.Search(high-low-1, func(i int) bool { return !t.with(change(low + 1 + i)) }), true
}

// trial asks of a changed design whether all its drivers would fit.
type trial struct {
	design *design.Design
	least  int // mounts that must be left
	// Even places are not spread for each size that is tried: on a ball it is enough
	// that room for all is found, and on a body with faces they stay in these
	// directions. Where that is not the last word, what was found is proved with
	// places spread anew.
	directions []r3.Vec
	prove      bool
}

func newTrial(a *Array, d *design.Design, whole *body.Body) *trial {
	t := &trial{design: d, least: len(a.Mounts)}
	if d.Mounts.On != "even" {
		return t
	}
	if !whole.IsBall() {
		for _, m := range a.Mounts {
			t.directions = append(t.directions, r3.Unit(m.Point))
		}
	}
	if d.Mounts.Over != "dome" && d.Body.HasCut {
		t.least = 1 // the cut takes of what is spread anew what it takes
		t.prove = true
	}
	t.prove = t.prove || t.directions != nil
	return t
}

// with tells whether all drivers fit once a copy of the design is changed.
func (t *trial) with(change func(*design.Design)) bool { return t.fits(change, false) }

// proved tells whether a change does that was found to.
func (t *trial) proved(change func(*design.Design)) bool { return !t.prove || t.fits(change, true) }

func (t *trial) fits(change func(*design.Design), exact bool) bool {
	d := *t.design
	d.Mounts.Skip = slices.Clone(d.Mounts.Skip)
	change(&d)
	whole, err := wholeBody(&d)
	if err != nil {
		return false
	}
	shell, err := cutBody(&d, whole)
	if err != nil {
		return false
	}
	if d.Mounts.On == "even" && whole.IsBall() && !exact {
		return evenHolds(&d, whole, shell)
	}
	var m []Mount
	if t.directions != nil && !exact {
		if m = onBody(whole, t.directions); shell != whole {
			toShell(m, whole, shell)
		}
	} else if p, err := place(&d, whole, shell); err == nil {
		m = p.mounts
	}
	if len(m) < t.least {
		return false
	}
	fits, err := fit.All(shell, fitMounts(m), d.Driver.Outline, limitsOf(&d))
	return err == nil && fits
}

// evenHolds tells whether even places for all drivers are found on a ball, and are found there
// too by a builder whose sizes are off by rounding.
func evenHolds(d *design.Design, whole, shell *body.Body) bool {
	zone, room := evenRoom(d, whole, shell)
	return room >= d.Mounts.Count && spread.HoldsSteadily(d.Mounts.Count, zone)
}

// evenRoom gives the zone for even places on a ball, and how many at most, which is
// none where not even one at the top fits.
func evenRoom(d *design.Design, whole, shell *body.Body) (spread.Zone, int) {
	zone, room, err := evenZone(d, whole, shell)
	if err != nil {
		return zone, 0
	}
	fits, err := fit.All(shell, fitMounts(onBody(whole, []r3.Vec{{Z: 1}})), d.Driver.Outline, limitsOf(d))
	if err != nil || !fits {
		return zone, 0
	}
	return zone, room
}
