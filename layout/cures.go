package layout

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
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
	key := fmt.Sprint(d.Path, d.Body, asked, below, a.Outline, a.Limits, whole.Vertices, a.Mounts)
	return cures.get(key, func() string { return findCure(a, d, whole) })
}

var cures memory[string]

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
	fits, err := fit.All(shell, fitMounts(m), outlineOf(d.Driver), limitsOf(&d))
	return err == nil && fits
}

// evenHolds tells whether even places for all drivers are found on a ball.
func evenHolds(d *design.Design, whole, shell *body.Body) bool {
	zone, room := evenRoom(d, whole, shell)
	return room >= d.Mounts.Count && spread.Holds(d.Mounts.Count, zone)
}

// evenRoom gives the zone for even places on a ball, and how many at most, which is
// none where not even one at the top fits.
func evenRoom(d *design.Design, whole, shell *body.Body) (spread.Zone, int) {
	zone, room, err := evenZone(d, whole, shell)
	if err != nil {
		return zone, 0
	}
	fits, err := fit.All(shell, fitMounts(onBody(whole, []r3.Vec{{Z: 1}})), outlineOf(d.Driver), limitsOf(d))
	if err != nil || !fits {
		return zone, 0
	}
	return zone, room
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
		if reports, err = fit.Check(a.Body, fitMounts(mounts), a.Outline, a.Limits); err != nil {
			return "", false
		}
	}
	skip := append(slices.Clone(t.design.Mounts.Skip), out...)
	slices.Sort(skip)
	return fmt.Sprintf("leave %s empty with skip = %s", count(len(out), "place", "places"), strings.Join(strings.Fields(fmt.Sprint(skip)), ", ")), true
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
	now := t.design.Driver
	for _, p := range []struct {
		key         string
		least, most float64 // mm
		set         func(*design.Driver, float64)
	}{
		{"flange_mm", now.CutoutMM, now.FlangeMM, func(d *design.Driver, v float64) { d.FlangeMM = v }},
		{"depth_mm", max(now.MagnetHeightMM, 1), now.DepthMM, func(d *design.Driver, v float64) { d.DepthMM = v }},
		{"screw_mm", 0.5, now.ScrewMM, func(d *design.Driver, v float64) { d.ScrewMM = v }},
	} {
		change := func(tenths int) func(*design.Design) {
			return func(d *design.Design) { p.set(&d.Driver, float64(tenths)/10) }
		}
		low, high := int(math.Ceil(p.least*10)), int(math.Ceil(p.most*10))
		if low >= high {
			continue
		}
		n, found := halve(low, high, func(v int) bool { return t.with(change(v)) })
		if found && t.proved(change(n)) {
			return fmt.Sprintf("take %s of at most %.1f", p.key, float64(n)/10), true
		}
	}
	return "", false
}

// smaller looks for the largest driver of the same proportions that fits.
func (t *trial) smaller() (string, bool) {
	now := t.design.Driver
	change := func(tenths int) func(*design.Design) {
		return func(d *design.Design) { d.Driver = scaledDriver(now, float64(tenths)/10/now.FlangeMM) }
	}
	// Nobody builds with less than a tenth of what they had in mind.
	n, found := halve(int(math.Ceil(now.FlangeMM)), int(math.Ceil(now.FlangeMM*10)), func(v int) bool { return t.with(change(v)) })
	if !found || !t.proved(change(n)) {
		return "", false
	}
	return fmt.Sprintf("take a driver of the same proportions with a flange of at most %.1f mm", float64(n)/10), true
}

// scaledDriver gives a driver with all its lengths times a factor, but for its
// screws.
func scaledDriver(d design.Driver, factor float64) design.Driver {
	for _, v := range []*float64{&d.DiameterMM, &d.CutoutMM, &d.FlangeMM, &d.DepthMM, &d.MagnetMM, &d.MagnetHeightMM,
		&d.TerminalReachMM, &d.TerminalFrontMM, &d.TerminalLengthMM} {
		*v *= factor
	}
	return d
}

// largestGrowth is how many times as large a body is tried.
const largestGrowth = 4

// larger looks for the least radius, to a millimetre, of a body of the same shape
// that takes the drivers as they are.
func (t *trial) larger() (string, bool) {
	b := t.design.Body
	if t.design.Mounts.On == "list" {
		return "", false // its places would not move out with the body
	}
	change := func(radius int) func(*design.Design) {
		return func(d *design.Design) {
			factor := float64(radius) / b.RadiusMM
			d.Body.RadiusMM = float64(radius)
			d.Body.CutHeightMM = math.Round(b.CutHeightMM*factor*10) / 10
			d.Body.HeightMM = math.Round(b.HeightMM*factor*10) / 10
		}
	}
	does := func(less int) bool { return t.with(change(-less)) }
	// The larger a cut body, the more faces come free at the cut, so that more is not
	// always better: it is looked for from below.
	// Even places on a ball only gain by it, and are slow to try.
	steps := 25
	if t.design.Mounts.On == "even" && t.directions == nil {
		steps = 4
	}
	low := int(b.RadiusMM)
	high, most := low, int(min(largestGrowth*b.RadiusMM, 5000))
	for {
		if high == most {
			return "", false
		}
		if high = min(high+1+high/steps, most); does(-high) {
			break
		}
		low = high
	}
	n, _ := halve(-high, -low, does)
	radius := -n
	if !t.proved(change(radius)) {
		return "", false
	}
	var d design.Design
	change(radius)(&d)
	way := fmt.Sprintf("take radius_mm of at least %d", radius)
	if d.Body.CutHeightMM != 0 {
		way += fmt.Sprintf(" with cut_height_mm = %.4g", d.Body.CutHeightMM)
	}
	if d.Body.HeightMM != 0 {
		way += fmt.Sprintf(" and height_mm = %.5g", d.Body.HeightMM)
	}
	return way, true
}

// halve looks for the largest number from low up to below high that does, as if all
// below one that does did too; false where even low does not.
func halve(low, high int, does func(int) bool) (int, bool) {
	if low >= high || !does(low) {
		return 0, false
	}
	for high-low > 1 {
		if middle := (low + high) / 2; does(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low, true
}
