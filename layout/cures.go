package layout

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/prose"
	"pappus/layout/spread"
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
