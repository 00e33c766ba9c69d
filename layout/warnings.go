package layout

import (
	"fmt"
	"math"

	"pappus/layout/fit"
	"pappus/layout/wiring"

	"gonum.org/v1/gonum/spatial/r3"
)

// fitWarnings says what does not fit, one line for each kind.
func fitWarnings(a *Array) []string {
	var out []string
	for _, check := range []func(*Array) string{touching, overhanging, tooDeep} {
		if w := check(a); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// visible is the least length in m that is worth a word: what a saw or a
// printer cannot keep.
const visible = 0.05 * mm

// touching speaks of flanges that touch or overlap.
func touching(a *Array) string {
	points, normals := make([]r3.Vec, len(a.Mounts)), make([]r3.Vec, len(a.Mounts))
	for i, m := range a.Mounts {
		points[i], normals[i] = m.Point, m.Normal
	}
	pairs := fit.Flanges(points, normals, a.Driver.FlangeRadius)
	if len(pairs) == 0 {
		return ""
	}
	worst := fit.Pair{Gap: math.Inf(1)}
	for _, p := range pairs {
		if p.Gap < worst.Gap-visible {
			worst = p
		}
	}
	return fmt.Sprintf("%s; drivers %d and %d most, by %.1f mm: take a smaller flange, a larger body or fewer drivers",
		count(len(pairs), "pair of flanges overlaps", "pairs of flanges overlap"), a.Mounts[worst.A].ID, a.Mounts[worst.B].ID, -worst.Gap/mm)
}

// overhanging speaks of flanges that reach beyond their face.
func overhanging(a *Array) string {
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
		return ""
	}
	return fmt.Sprintf("%s over the edge of the face; driver %d most, by %.1f mm: take a smaller flange or a larger body",
		count(n, "flange reaches", "flanges reach"), worst, most/mm)
}

// tooDeep speaks of drivers that are deeper than the body. It is a rough check:
// the axis of a driver must not pass the body's middle or the cut.
func tooDeep(a *Array) string {
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
		return ""
	}
	return fmt.Sprintf("%s deeper than the body allows; driver %d most: it needs %.1f mm behind its flange and has about %.1f",
		count(n, "driver is", "drivers are"), worst, a.Driver.Depth/mm, least/mm)
}

// wiringWarnings says what the amplifier will not like.
func wiringWarnings(a *Array) []string {
	var out []string
	if k := a.Wiring.Channels; k > len(a.Mounts) {
		out = append(out, fmt.Sprintf("%d channels for %s: %d stay unused", k, count(len(a.Mounts), "driver", "drivers"), k-len(a.Mounts)))
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
		out = append(out, fmt.Sprintf("%s under the amplifier's minimum of %.1f ohm however it is wired; channel %d is at %.1f ohm: the amplifier can overheat, do not connect it so",
			count(n, "channel is", "channels are"), a.Wiring.MinimumLoad, worst, least))
	}
	return out
}

// wooferWarnings says where the crossover asks more of the small drivers than the
// design itself lets them give. What has to be worked out, timing warns of.
func wooferWarnings(a *Array) []string {
	var out []string
	for _, c := range []struct {
		hz   float64
		what string
	}{{a.Driver.Resonance, "the drivers' resonance in the body"}, {a.Protection.Corner, "the high-pass that protects the drivers"}} {
		if w := CrossoverWarning(a.Woofer, c.hz, c.what); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// CrossoverWarning says that a woofer's crossover is below something of the drivers,
// at a frequency in Hz, and what to do; nothing where it is not, or where the
// frequency is 0 or NaN.
func CrossoverWarning(w Woofer, hz float64, what string) string {
	if !w.Present || !(hz > w.Crossover) {
		return ""
	}
	return fmt.Sprintf("the crossover at %.4g Hz is below %s at %.4g Hz, where the array is weak and out of step with the woofer: set it to %.3g Hz or above, an octave higher",
		w.Crossover, what, hz, 2*hz)
}

// count writes a number with its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
