package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/channelcount"
)

// Counts says where more channels stop paying, a sentence to a line.
func Counts(p *timing.Plan) string {
	if len(p.Array.Bodies()) > 1 {
		return "What more channels bring is counted for one body alone: leave [[body_at]] out to see it."
	}
	if len(p.Counts) == 0 {
		return prose.Sprintf("No number of channels can be wired at or above the amplifier's %g ohm.", p.Array.Wiring.MinimumLoad)
	}
	smear, onset := p.Curves()
	return strings.Join(channelCounts(smear, onset, countsEnd(p)), "\n")
}

// countsEnd says why there are no counts up to one channel for each driver; empty
// where there are.
func countsEnd(p *timing.Plan) string {
	switch n := p.Counts[len(p.Counts)-1].Channels; {
	case n == len(p.Array.Mounts):
		return ""
	case n < timing.MostCounts:
		return prose.Sprintf("with more, a channel has fewer than %s and loads the amplifier below its %g ohm",
			prose.Count(p.LeastDrivers(), "driver", "drivers"), p.Array.Wiring.MinimumLoad)
	}
	return "more were not looked at"
}

// channelCounts says where more channels stop paying: for the smear in s, for the comb
// onset in Hz, and why the list ends before there is a channel for each driver; empty
// where it does not.
func channelCounts(smear, onset []float64, ends string) []string {
	out := []string{smearCounts(smear), onsetCounts(onset)}
	if ends != "" {
		out = append(out, fmt.Sprintf("The list ends at %d: %s.", len(smear), ends))
	}
	return out
}

func smearCounts(smear []float64) string {
	knee := channelcount.Knee(smear)
	text := func(k int) string { return microseconds(smear[k-1]) }
	switch {
	case len(smear) == 1:
		return fmt.Sprintf("One channel leaves a smear of %s.", text(1))
	case knee == 1:
		return fmt.Sprintf("One channel is enough for the smear: it leaves %s, and no more lower it by a nanosecond.", text(1))
	case knee == len(smear):
		return fmt.Sprintf("For the smear %s: they lower it from %s to %s.", allPay(knee, channelcount.EveryPays(smear)), text(1), text(knee))
	}
	best, gain := channelcount.Best(smear)
	which := "the second channel"
	if best > 2 {
		which = fmt.Sprintf("channel %d", best)
	}
	return prose.Sprintf("More than %s hardly pay for the smear: %d lower it from %s to %s, and each further one gains less than %.2g us, a tenth of what %s does.",
		prose.Count(knee, "channel", "channels"), knee, text(1), text(knee), 1e6*channelcount.Share*gain, which)
}

// allPay says that the last of some channels still pays, and whether every one did.
func allPay(last int, every bool) string {
	if every {
		return fmt.Sprintf("every channel up to %d pays", last)
	}
	return fmt.Sprintf("channels go on to pay up to the last, %d", last)
}

// microseconds writes a time; nothing that is under a hundredth of a microsecond.
func microseconds(s float64) string {
	if s < 1e-8 {
		return "0 us"
	}
	return prose.Sprintf("%.3g us", 1e6*s)
}

func onsetCounts(onset []float64) string {
	knee := channelcount.OnsetKnee(onset)
	first, last := kilohertz(onset[0]), "until there is none"
	if f := onset[knee-1]; !math.IsInf(f, 1) {
		last = "to " + kilohertz(f)
	}
	switch {
	case math.IsInf(onset[0], 1):
		return "There is no comb onset even with one channel."
	case len(onset) == 1:
		return fmt.Sprintf("Its comb onset is at %s.", first)
	case knee == 1:
		return fmt.Sprintf("The comb onset stays: no number of channels raises it by a tenth from %s.", first)
	case knee == len(onset):
		return fmt.Sprintf("For the comb onset %s: they raise it from %s %s.", allPay(knee, channelcount.EveryRaises(onset)), first, last)
	case math.IsInf(onset[knee-1], 1):
		return fmt.Sprintf("For the comb onset more than %d are of no use: %d raise it from %s until there is none.", knee, knee, first)
	}
	return fmt.Sprintf("For the comb onset more than %d hardly pay: %d raise it from %s %s, and no further one raises it by a tenth.",
		knee, knee, first, last)
}

func kilohertz(f float64) string {
	if f >= 1000 {
		return fmt.Sprintf("%.1f kHz", f/1000)
	}
	return fmt.Sprintf("%.0f Hz", f)
}

// CountedBy says how the counts split the drivers, where that is not as the plan does it, by
// arrival; it goes on behind a note.
func CountedBy(p *timing.Plan) string {
	_, at := p.Own()
	switch by := p.CountedBy(); {
	case by != "arrival":
		return "; all split by " + by + ", as the design asks"
	case at < 0:
		return "; the others split by arrival, all drivers as loud"
	}
	return ""
}

// EachHas begins a sentence on what each of some drivers has.
func EachHas(n int) string {
	if n == 1 {
		return "The driver has"
	}
	return fmt.Sprintf("Each of the %d drivers has", n)
}
