package table

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"pappus/layout/impedance"
	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
)

// Strings writes one row for each string: its drivers in the order of their
// joints, and the wire that takes.
func Strings(w io.Writer, p *timing.Plan) error {
	t := newSheet("channel", "string", "drivers_in_order", "wire_m:3")
	for _, r := range timing.Harness(p) {
		t.add(p.Channels[r.Channel].ID, r.String+1, p.Array.IDs(r.Order), r.Length)
	}
	return t.write(w)
}

// Deaths writes one row for each driver or string that may fail: what is left of
// the load, who goes quiet, who gets more, and what is lost round the loudspeaker.
// The last two are of the channel's worst open string, spread and of neighbours.
func Deaths(w io.Writer, p *timing.Plan, deaths []timing.Death) error {
	t := newSheet("channel", "string", "driver", "fault", "dc_ohm:2", "lowest_ohm:2", "under_minimum", "quiet", "power_times:2", "louder",
		"loss_at_worst_angle_db:2", "worst_angle_deg:0", "strung", "worst_if_spread_db:2", "worst_if_neighbours_db:2")
	for _, d := range deaths {
		var driver any
		if !d.Whole {
			driver = p.Array.Mounts[d.Mount].ID
		}
		c := p.Channels[d.Channel]
		t.add(c.ID, d.String+1, driver, d.Fault(), d.DCOhm, d.LowestOhm, d.Under(p.Array.Wiring.MinimumLoad), p.Array.IDs(d.Quiet), d.Power, p.Array.IDs(d.Hotter),
			d.Loss, degrees(d.Angle), strung(p.Banks[d.Channel]), d.LossSpread, d.LossNeighbours)
	}
	return t.write(w)
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// strung says how a channel's drivers are dealt out to its strings; nothing where
// there is one string only.
func strung(b timing.Bank) string {
	switch {
	case len(b.Strings) < 2:
		return ""
	case b.Near:
		return "neighbours"
	}
	return "spread"
}

// Arrangements writes one row for each way of stringing each channel's drivers,
// at the design's voltage.
func Arrangements(w io.Writer, stringings []timing.Stringing) error {
	t := newSheet("drivers", "channels", "strings", "unequal", "chosen", "nominal_ohm:3", "dc_ohm:3", "lowest_ohm:3", "lowest_hz:0",
		"amplifier_w:4", "least_driver_w:4", "most_driver_w:4", "refused")
	for _, s := range stringings {
		for _, o := range s.Options {
			var refused any
			if o.Refused != nil {
				refused = o.Refused
			}
			t.add(s.Drivers, s.Channels, o.Lengths(), !o.IsEqual(), o.Chosen, o.NominalOhm, o.DCOhm, o.LowestOhm, o.LowestHz,
				o.Watt, o.LeastWatt, o.MostWatt, refused)
		}
	}
	return t.write(w)
}

// WiringScreen writes for people how each channel is strung, what the amplifier
// sees and gives, and what a dead driver does. Where each driver has a channel of its
// own one line stands for all.
func WiringScreen(w io.Writer, p *timing.Plan, deaths []timing.Death, colour bool) error {
	s := &screen{style: style(colour)}
	alone := isAlone(p)
	s.banks(p, alone)
	runs := timing.Harness(p)
	if !alone {
		row := s.list("channel  string  drivers in the order of their joints", "%7d %7d  %s")
		for _, r := range runs {
			row(p.Channels[r.Channel].ID, r.String+1, spaced(p.Array.IDs(r.Order)))
		}
	}
	fmt.Fprintf(s, "%.1f m of wire in straight lines; leave slack at every joint.\n\n", timing.HarnessLength(runs))
	if alone {
		deaths = worstDeaths(deaths)
	}
	s.deaths(p, deaths)
	if alone {
		s.note("  the channels that lose most; the others lose less")
	}
	return s.to(w)
}

// isAlone tells whether every driver has a channel of its own that the design does not
// lay out by hand: then the channels differ in nothing but place.
func isAlone(p *timing.Plan) bool {
	return len(p.Array.Channels) == 0 && len(p.Channels) > 1 && len(p.Channels) == len(p.Arrivals)
}

// banks writes what each channel's amplifier sees and gives.
func (s *screen) banks(p *timing.Plan, alone bool) {
	row := s.list("channel  strings   dc ohm  least ohm  at Hz   amp V   amp A   amp W  W each", "%7s %3d of %-3d %6.2f %10.2f %6.0f %7.2f %7.3f %7.2f %7.3f%s")
	for i, c := range p.Channels {
		k, name := p.Banks[i], strconv.Itoa(c.ID)
		if alone {
			name = "each"
		}
		row(name, c.Parallel, c.Series, c.DCOhm, k.LowestOhm, k.LowestHz, k.Volt, k.Ampere, k.Watt, k.DriverWatt, s.under(" ", p.Under(i)))
		if alone {
			fmt.Fprintf(s, "%s a channel of its own, in the drivers' order.\n", words.EachHas(len(p.Arrivals)))
			break
		}
	}
	prose.Fprintf(s, "The amplifier allows %g ohm or more per channel; measure before you switch on.\n\n", p.Array.Wiring.MinimumLoad)
	s.front(p)
}

// under says that a load is below the amplifier's minimum; nothing where it is not.
func (s *screen) under(before string, is bool) string {
	if !is {
		return ""
	}
	return before + s.alert("under the minimum")
}

// worstDeaths returns of each fault the one that loses most.
func worstDeaths(deaths []timing.Death) []timing.Death {
	var out []timing.Death
	for _, d := range deaths {
		i := slices.IndexFunc(out, func(o timing.Death) bool { return o.State == d.State && o.Whole == d.Whole })
		switch {
		case i < 0:
			out = append(out, d)
		case d.Loss > out[i].Loss:
			out[i] = d
		}
	}
	return out
}

// hardlyLost is the loss in dB below which it is 0.0.
const hardlyLost = 0.05

// deaths writes the worst that each fault does to each channel.
func (s *screen) deaths(p *timing.Plan, deaths []timing.Death) {
	row := s.list("if a driver dies          load ohm quiet  others' power  loss dB  at deg strings", "channel %2d %-14s %8.2f %5d %14s %8s %7.0f%s%s")
	for _, d := range deaths {
		c, at := p.Channels[d.Channel], degrees(d.Angle)
		if d.Loss >= timing.SilenceLoss || d.Loss < hardlyLost {
			at = math.NaN() // the same all round
		}
		end := ""
		if how := strung(p.Banks[d.Channel]); how != "" && d.State == impedance.Open {
			end = "  " + how
			if gain := d.Gain(); gain >= hardlyLost {
				end += fmt.Sprintf(", %.1f dB better", gain)
			}
		}
		row(c.ID, d.Fault(), d.DCOhm, len(d.Quiet), others(c, d), words.Lost(d.Loss), at, end, s.under("  ", d.Under(p.Array.Wiring.MinimumLoad)))
	}
	s.note("  the worst of each kind, an open driver silencing its string; all: deaths.csv")
	s.note("  loss: at the worst place round the spot, 1 to 4 kHz, 90 degrees is its left")
	s.note("  strings: spread over the body or of neighbours, whichever loses less")
}

// others writes how many times its power the driver of a channel that then gets most has
// after a fault; a dash where all of the channel are quiet.
func others(c timing.Channel, d timing.Death) string {
	if len(d.Quiet) >= len(c.Mounts) {
		return "-"
	}
	return fmt.Sprintf("%.2f x", d.Power)
}

// manyWays is how many ways of stringing with unequal strings that the amplifier allows
// a screen shows of each size, from the lowest load; the table has them all.
const manyWays = 4

// ArrangementScreen writes the ways of stringing for people: all equal strings and the first
// few unequal ones of each size, and what the wire takes.
func ArrangementScreen(w io.Writer, p *timing.Plan, stringings []timing.Stringing, colour bool) error {
	s := &screen{style: style(colour)}
	s.note("ways to string     dc ohm  least ohm   amp W  W each")
	for _, group := range stringings {
		fmt.Fprintf(s, "%s (%s %s)\n", prose.Count(group.Drivers, "driver", "drivers"), prose.Noun(len(group.Channels), "channel", "channels"), runs(group.Channels))
		allowed, refused := 0, 0
		for _, o := range group.Options {
			switch {
			case o.IsEqual():
				s.arrangement(o)
			case o.Refused != nil:
				refused++
			default:
				if allowed++; allowed <= manyWays {
					s.arrangement(o)
				}
			}
		}
		s.WriteString(unshown(allowed-manyWays, refused))
	}
	s.note(prose.Sprintf("  < as planned; power at %.3g V (RMS), least and most of a driver", p.Array.Wiring.Voltage))
	s.say(words.Wire(p))
	return s.to(w)
}

// unshown says how many ways with unequal strings a screen leaves out: that are allowed,
// and that load the amplifier too much.
func unshown(allowed, refused int) string {
	switch {
	case allowed > 0 && refused > 0:
		return fmt.Sprintf("  and %d more with unequal strings, beside %d under the minimum\n", allowed, refused)
	case allowed > 0:
		return fmt.Sprintf("  and %d more with unequal strings\n", allowed)
	case refused > 0:
		return fmt.Sprintf("  and %d with unequal strings under the minimum\n", refused)
	}
	return ""
}

// runs writes numbers that rise with those in a row together: 1 to 3, 7, 9.
func runs(numbers []int) string {
	var parts []string
	for from := 0; from < len(numbers); {
		to := from
		for to+1 < len(numbers) && numbers[to+1] == numbers[to]+1 {
			to++
		}
		part := strconv.Itoa(numbers[from])
		if to > from+1 {
			part = fmt.Sprintf("%s to %d", part, numbers[to])
		} else {
			to = from
		}
		parts, from = append(parts, part), to+1
	}
	return strings.Join(parts, ", ")
}

func (s *screen) arrangement(o timing.Option) {
	watt := finite(o.MostWatt, 3)
	if !o.IsEqual() {
		watt = finite(o.LeastWatt, 3) + " to " + watt
	}
	end := ""
	if o.Chosen {
		end = " " + mark(true)
	}
	s.row("  %-16s %6.2f %10.2f %7.2f  %s%s%s", short(o), o.DCOhm, o.LowestOhm, o.Watt, watt, end, s.under(" ", o.Refused != nil))
}

// short names an arrangement in few letters: 3 of 2, or 2 of 3 + 1 of 2.
func short(o timing.Option) string {
	parts := make([]string, len(o.Arrangement))
	for i, g := range o.Arrangement {
		parts[i] = fmt.Sprintf("%d of %d", g.Parallel, g.Series)
	}
	return strings.Join(parts, " + ")
}
