package words

import (
	"fmt"
	"path/filepath"
	"strings"

	"pappus/layout/prose"
	"pappus/render/tape"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
	"pappus/timing/radiate"
)

// Picture heads a picture: what it shows, and of what.
type Picture struct{ Title, Below string }

// Name returns the name of a plan's design.
func Name(p *timing.Plan) string {
	if p.Array.Name == "" {
		return "Array"
	}
	return p.Array.Name
}

// NameApart names designs of the same name after their files.
func NameApart(plans []*timing.Plan, paths []string) {
	count := map[string]int{}
	for _, p := range plans {
		count[p.Array.Name]++
	}
	for i, p := range plans {
		if count[p.Array.Name] > 1 {
			p.Array.Name = strings.TrimSuffix(filepath.Base(paths[i]), filepath.Ext(paths[i]))
		}
	}
}

// Spot says where the spot is.
func Spot(p *timing.Plan) string {
	return tape.Spot(p.Array) + " " + tape.Of(p.Array, p.Array.Spot).Full()
}

// Unit names the unit of levels.
func Unit(absolute bool) string {
	if absolute {
		return "dB SPL"
	}
	return "dB over one driver at 1 m"
}

// OfResponse heads the picture of the level at the spot.
func OfResponse(p *timing.Plan) Picture {
	return Picture{Name(p) + ": level at the listening spot", Spot(p) + "; third-octave smoothed, unsmoothed behind"}
}

// OfComparison heads the picture of several plans.
func OfComparison(plans []*timing.Plan) Picture {
	where := Spot(plans[0])
	for _, p := range plans {
		if p.Array.Spot != plans[0].Array.Spot {
			where = "each design at its own listening spot"
		}
	}
	return Picture{"Designs compared: level at the listening spot, with the delays", where + "; third-octave smoothed"}
}

// OfPhase heads the picture of phase and group delay.
func OfPhase(p *timing.Plan) Picture {
	return Picture{Name(p) + ": phase and group delay at the listening spot", Spot(p) + "; direct sound, after its first arrival"}
}

// OfArrivals heads the picture of delays and arrivals.
func OfArrivals(p *timing.Plan) Picture {
	return Picture{Name(p) + ": delay and arrival of each driver", Spot(p) + "; arrivals counted from the first driver heard"}
}

// OfWays heads the picture of the ways of taking delays.
func OfWays(p *timing.Plan) Picture {
	return Picture{Name(p) + ": when each driver is heard, by three ways of taking it", Spot(p) + "; 0: along the straight line, through the body"}
}

// OfCounts heads the picture of numbers of channels.
func OfCounts(p *timing.Plan) Picture {
	return Picture{Name(p) + ": what more channels bring", Spot(p) + "; split by " + p.CountedBy()}
}

// OfFront heads the picture of shorter strings.
func OfFront(p *timing.Plan) Picture {
	return Picture{Name(p) + ": what shorter strings cost and bring", fmt.Sprintf("%s; %s; level from the same amplifier", Spot(p), prose.Count(len(p.Channels), "channel", "channels"))}
}

// Strung names a split by its strings and its load.
func Strung(s timing.Strung) string {
	text := fmt.Sprintf("up to %d", s.Longest)
	if s.Longest == 1 {
		text = "1"
	}
	text += prose.Sprintf(" in a string, %.3g ohm", s.LeastOhm)
	switch {
	case s.Chosen:
		text += ", as planned"
	case !s.InStep:
		text += ", an octave out of step"
	}
	return text
}

// OfExcursion heads the picture of a cone's travel.
func OfExcursion(p *timing.Plan) Picture {
	return Picture{Name(p) + ": how far a cone moves", prose.Sprintf("peak, one way, at %.3g V over the driver", p.Protection.Volt)}
}

// OfWoofer heads the picture of array and woofer.
func OfWoofer(p *timing.Plan, x timing.Woofer) Picture {
	polarity := ""
	if x.Invert {
		polarity = " and inverted"
	}
	return Picture{Name(p) + ": array and woofer at the listening spot",
		prose.Sprintf("%v of order %d at %.4g Hz; woofer delayed by %.2f ms%s, the array by %.2f ms for it",
			x.LowPass.Family(), x.LowPass.Order(), x.LowPass.Corner(), 1000*x.Delay, polarity, 1000*x.ArrayDelay)}
}

// OfLevelling heads the picture of a levelling.
func OfLevelling(p *timing.Plan, l timing.Levelling) Picture {
	return Picture{Name(p) + ": levelling the listening spot",
		fmt.Sprintf("uneven by %.1f dB before, %.1f dB after with the same sections on every channel; sixth-octave smoothed", l.UnevenBefore, l.UnevenAfter)}
}

// OfHarmonics heads the picture of harmonics.
func OfHarmonics(p *timing.Plan) Picture {
	return Picture{Name(p) + ": harmonics", "level over that of the tone, dB; sixth-octave smoothed; what noise would give is left out"}
}

// OfPolar heads a polar diagram.
func OfPolar(p *timing.Plan, vertical bool) Picture {
	if vertical {
		return Picture{Name(p) + ": level over the array, from the side", "upright circle through the " + Spot(p)}
	}
	return Picture{Name(p) + ": level round the array, from above", "horizontal circle through the " + Spot(p)}
}

// PolarNote says what is what in a polar diagram.
func PolarNote(p *timing.Plan, vertical bool) string {
	note := "octave bands; 0 dB: each one's own level towards the spot; "
	if p.Solved() != nil {
		note += "star: a ball for the body, at least in part; "
	}
	if p.Seating != nil && !vertical {
		return note + "blue wedges: the seats"
	}
	return note + "wedge: where the spot is"
}

// Join says what is shaded in a picture over frequency.
const Join = "here a ball takes over for the body"

// partly is the ball's share in the field at the upper edge of an octave from which on the octave
// is marked: with less, as on a cold day, the band is the body's own to a tenth of a dB.
const partly = 0.1

// Octave names an octave band, with a star where the ball has a part in it.
func Octave(s *radiate.Solution, centre float64) string {
	name := band.Hertz(centre)
	if _, high := band.Edges(centre, 1); s != nil && s.Share(high) > partly {
		name += " *"
	}
	return name
}

// OfPolarAsBuilt heads a polar diagram without the delays.
func OfPolarAsBuilt(p *timing.Plan, vertical bool) Picture {
	head := OfPolar(p, vertical)
	return Picture{head.Title, "without the delays; " + head.Below}
}

// OfSlice heads the picture of a quantity over a slice; what light means is loud or good.
func OfSlice(p *timing.Plan, quantity, slice, light string) Picture {
	below := "with the delays for the " + Spot(p)
	if p.Seating != nil {
		below = fmt.Sprintf("with the delays for %d seats, by their numbers", len(p.Array.Seats))
	}
	return Picture{fmt.Sprintf("%s: %s, %s", Name(p), quantity, slice), below + "; light is " + light}
}

// MayLean says what the line round a place on a map is, within which no more than so many dB
// more are lost than there; or that there is none, since that is the whole map.
func MayLean(everywhere bool, loss float64) string {
	if everywhere {
		return prose.Sprintf("one may lean anywhere here: no more than %.3g dB are lost", loss)
	}
	return prose.Sprintf("as far as one may lean: %.3g dB more lost than there", loss)
}

// OutOfPlane says what the outline of a body is that a slice does not cut.
const OutOfPlane = "the body, out of this plane"

// What a map has to say that has nothing to show.
const (
	NoSound    = "no sound comes here"
	SilentSpot = "no sound comes to the spot: 0 dB is the loudest"
	NoSmear    = "all drivers are heard at once everywhere here"
	NoCombs    = "no combs anywhere here, up to the highest frequency computed"
	NoLoss     = "all drivers are in step everywhere here"
)

// NearLevel says what the line of the level near that of the spot is.
const NearLevel = "level within 3 dB of the spot's"

// OfTuning heads the picture of trials of the design of a name.
func OfTuning(name string, g damping.Goal, next *damping.Next) Picture {
	below := prose.Sprintf("target Q %.3g dashed", g.Q)
	if next != nil && next.Reached {
		below += fmt.Sprintf("; trial %d is there", next.Base+1)
	}
	return Picture{name + ": damping the shared box", below + "; numbers are those of trials, bars one standard error"}
}

// OfImpedance heads the picture of a driver's impedance.
func OfImpedance(m impedancefit.Study) Picture {
	with := func(e impedancefit.Estimate) string {
		value, sigma := e.Text(1)
		return value + " ± " + sigma
	}
	return Picture{"Impedance in " + m.Name, fmt.Sprintf("resonance %s Hz, Qts %s, Re %s Ω", with(m.Fit.Resonance), with(m.Fit.Qts), with(m.Fit.DCOhm))}
}

// OfLoad heads the picture of a channel's impedance, in the file named.
func OfLoad(channel int, name string, l impedancefit.Load) Picture {
	below, _, _ := strings.Cut(Load(l), ".")
	return Picture{fmt.Sprintf("Channel %d: %s", channel, name), below}
}
