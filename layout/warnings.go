package layout

import (
	"fmt"
	"math"

	"pappus/layout/advice"
	"pappus/layout/fit"
	"pappus/layout/prose"
	"pappus/layout/wiring"

	"gonum.org/v1/gonum/spatial/r3"
)

// fitWarnings says what does not fit, one finding for each kind.
func fitWarnings(a *Array) []advice.Finding {
	var out []advice.Finding
	for _, check := range []func(*Array) (advice.Finding, bool){touching, overhanging, tooDeep} {
		if f, found := check(a); found {
			out = append(out, f)
		}
	}
	return out
}

// visible is the least length in m that is worth a word: what a saw or a
// printer cannot keep.
const visible = 0.05 * mm

// touching speaks of flanges that touch or overlap.
func touching(a *Array) (f advice.Finding, found bool) {
	points, normals := make([]r3.Vec, len(a.Mounts)), make([]r3.Vec, len(a.Mounts))
	for i, m := range a.Mounts {
		points[i], normals[i] = m.Point, m.Normal
	}
	pairs := fit.Flanges(points, normals, a.Driver.FlangeRadius)
	if len(pairs) == 0 {
		return f, false
	}
	worst := fit.Pair{Gap: math.Inf(1)}
	for _, p := range pairs {
		if p.Gap < worst.Gap-visible {
			worst = p
		}
	}
	return advice.Finding{Code: "flanges_overlap", Rank: advice.Misfit,
		What: fmt.Sprintf("%s; drivers %d and %d most, by %.1f mm",
			count(len(pairs), "pair of flanges overlaps", "pairs of flanges overlap"), a.Mounts[worst.A].ID, a.Mounts[worst.B].ID, -worst.Gap/mm),
		Cure: "take a smaller flange, a larger body or fewer drivers"}, true
}

// overhanging speaks of flanges that reach beyond their face.
func overhanging(a *Array) (f advice.Finding, found bool) {
	n, worst, most := 0, 0, 0.0
	for _, m := range a.Mounts {
		if m.Face < 0 {
			continue
		}
		over := fit.Overhang(a.Body, m.Face, m.Point, a.Driver.FlangeRadius)
		if over < visible {
			continue
		}
		if n++; over > most+visible {
			worst, most = m.ID, over
		}
	}
	if n == 0 {
		return f, false
	}
	return advice.Finding{Code: "flanges_overhang", Rank: advice.Misfit,
		What: fmt.Sprintf("%s over the edge of the face; driver %d most, by %.1f mm", count(n, "flange reaches", "flanges reach"), worst, most/mm),
		Cure: "take a smaller flange or a larger body"}, true
}

// tooDeep speaks of drivers that are deeper than the body. It is a rough check:
// the axis of a driver must not pass the body's middle or the cut.
func tooDeep(a *Array) (f advice.Finding, found bool) {
	n, worst, least := 0, 0, math.Inf(1)
	for _, m := range a.Mounts {
		room := r3.Norm(m.Point)
		if a.Body.IsCut && m.Normal.Z > rounding {
			room = min(room, (m.Point.Z-a.Body.Cut)/m.Normal.Z)
		}
		if a.Driver.Depth <= room+visible {
			continue
		}
		if n++; room < least-visible {
			worst, least = m.ID, room
		}
	}
	if n == 0 {
		return f, false
	}
	return advice.Finding{Code: "drivers_too_deep", Rank: advice.Misfit,
		What: fmt.Sprintf("%s deeper than the body allows; driver %d most, which needs %.1f mm behind its flange and has about %.1f",
			count(n, "driver is", "drivers are"), worst, a.Driver.Depth/mm, least/mm),
		Cure: "take a shallower driver or a larger body"}, true
}

// wiringWarnings says what the amplifier will not like.
func wiringWarnings(a *Array) []advice.Finding {
	var out []advice.Finding
	if k := a.Wiring.Channels; k > len(a.Mounts) {
		out = append(out, advice.Finding{Code: "channels_unused", Rank: advice.Cost,
			What: fmt.Sprintf("%d of %d channels stay unused, for there are %s", k-len(a.Mounts), k, count(len(a.Mounts), "driver", "drivers")),
			Cure: fmt.Sprintf("set channels = %d", len(a.Mounts))})
	}
	n, worst, least := 0, 0, math.Inf(1)
	for _, c := range a.Channels {
		load := wiring.Load(c.Series, c.Parallel, a.Driver.LeastOhm())
		if load >= a.Wiring.MinimumLoad {
			continue
		}
		if n++; load < least {
			worst, least = c.ID, load
		}
	}
	if n > 0 {
		out = append(out, advice.Finding{Code: "load_too_low", Rank: advice.Danger,
			What: fmt.Sprintf("%s under the amplifier's minimum of %.1f ohm; channel %d is at %.1f ohm, and the amplifier can overheat",
				count(n, "channel is", "channels are"), a.Wiring.MinimumLoad, worst, least),
			Cure: "do not connect it so; put more drivers in series"})
	}
	return out
}

// wooferWarnings says where the crossover asks more of the small drivers than the
// design itself lets them give. What has to be worked out, timing warns of.
func wooferWarnings(a *Array) []advice.Finding {
	var out []advice.Finding
	for _, c := range []struct {
		hz   float64
		what string
	}{{a.Driver.Resonance, "the drivers' resonance in the body"}, {a.Protection.Corner, "the high-pass that protects the drivers"}} {
		if f, found := CrossoverWarning(a.Woofer, c.hz, c.what); found {
			out = append(out, f)
		}
	}
	return out
}

// CrossoverWarning says that a woofer's crossover is below something of the drivers,
// at a frequency in Hz, and what to do; nothing where it is not, or where the
// frequency is 0 or NaN.
func CrossoverWarning(w Woofer, hz float64, what string) (f advice.Finding, found bool) {
	if !w.Present || !(hz > w.Crossover) {
		return f, false
	}
	return advice.Finding{Code: "crossover_low", Rank: advice.Cost,
		What: prose.Sprintf("the crossover at %.4g Hz is below %s at %.4g Hz, where the array is weak and out of step with the woofer", w.Crossover, what, hz),
		Cure: prose.Sprintf("set it to %.3g Hz or above, an octave higher", 2*hz)}, true
}

// count writes a number with its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
