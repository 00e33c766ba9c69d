package layout

import (
	"fmt"
	"math"

	"pappus/layout/design"
	"pappus/layout/prose"
)

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
		way += prose.Sprintf(" with cut_height_mm = %.4g", d.Body.CutHeightMM)
	}
	if d.Body.HeightMM != 0 {
		way += prose.Sprintf(" and height_mm = %.5g", d.Body.HeightMM)
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
