package repair

import (
	"math"
	"slices"

	"pappus/layout/design"
	"pappus/layout/prose"
)

// driverRules are for faults of [driver]. Nothing of its data sheet is changed for
// anyone but what follows from what was changed: the hole and the flange with the cone,
// and what a meter found on another voice coil.
func driverRules(p *patient, now state, f *design.Error) []remedy {
	d, width := now.design.Driver, 2*now.design.Body.RadiusMM
	switch {
	case (f.Key == "driver.diameter_mm" || f.Key == "driver.cutout_mm" || f.Key == "driver.flange_mm") && widest(d) >= width:
		// Three quarters of its own width is the least radius on which a driver is one of several.
		return []remedy{to("body.radius_mm", min(math.Ceil(0.75*widest(d)), 5000), "a smaller body is narrower than one driver").asked()}
	case f.Key == "driver.cutout_mm":
		return holeRules(p, now)
	case f.Key == "driver.flange_mm":
		return []remedy{to(f.Key, tenthUp(d.CutoutMM+flangeOver(p)), "a flange is wider than its hole")}
	case f.Key == "driver.magnet_height_mm":
		return []remedy{to(f.Key, d.DepthMM, "a magnet is no deeper than its driver")}
	case f.Key == "driver.dc_ohm":
		return []remedy{out(f.Key, prose.Sprintf("it cannot be that of a voice coil of %g ohm; measure it with a meter", d.NominalOhm))}
	case f.Key == "driver":
		const why = "no air would be left in the body"
		larger := to("body.radius_mm", min(2*now.design.Body.RadiusMM, 5000), why).asked()
		return append(p.fewer(now, why), larger)
	}
	return nil
}

func widest(d design.Driver) float64 { return max(d.DiameterMM, d.CutoutMM, d.FlangeMM) }

// holeRules widen a hole that a driver does not go through, and its flange with it, by
// as much as the cone is wider.
func holeRules(p *patient, now state) []remedy {
	over := 0.0
	if was := p.before().design; was != nil {
		over = max(0, was.Driver.CutoutMM-was.Driver.DiameterMM)
	}
	d := now.design.Driver
	hole := tenthUp(d.DiameterMM + over)
	r := to("driver.cutout_mm", hole, prose.Sprintf("a cone of %g mm does not go through a smaller hole", d.DiameterMM))
	if d.FlangeMM >= hole {
		return []remedy{r}
	}
	if !p.mine["driver.flange_mm"] {
		r.set = append(r.set, Change{"driver.flange_mm", tenthUp(hole + flangeOver(p))})
	}
	return []remedy{r}
}

// flangeOver is by how many mm the flange was wider than the hole.
func flangeOver(p *patient) float64 {
	if was := p.before().design; was != nil {
		return max(0, was.Driver.FlangeMM-was.Driver.CutoutMM)
	}
	return 0
}

// timingRules are for the band of delays by the field.
func timingRules(_ *patient, now state, f *design.Error) []remedy {
	t := now.design.Timing
	const why = "the band is at least one and a half times as high as it is low"
	var list []remedy
	if high := math.Ceil(1.5 * t.FieldLowHz); high <= 20000 {
		list = append(list, to("timing.field_high_hz", high, why))
	}
	if low := math.Floor(t.FieldHighHz / 1.5); low >= 50 {
		list = append(list, to("timing.field_low_hz", low, why))
	}
	return list
}

// highPassRules are for a high-pass that is not there, or that the processor does not
// reach.
func highPassRules(_ *patient, now state, f *design.Error) []remedy {
	switch f.Key {
	case "protection.order":
		orders := []int{2, 4, 6, 8}
		near := slices.MinFunc(orders, func(a, b int) int {
			return abs(a-now.design.Protection.Order) - abs(b-now.design.Protection.Order)
		})
		if near < now.design.Protection.Order && near < 8 {
			near += 2 // of two as near the steeper one, which keeps the cones in
		}
		return []remedy{to(f.Key, near, "Linkwitz-Riley filters are of orders 2, 4, 6 and 8")}
	case "processor.rate_hz":
		return []remedy{out("protection.corner_hz", "the processor does not reach so high a corner").asked()}
	}
	return nil
}

func abs(n int) int { return max(n, -n) }
