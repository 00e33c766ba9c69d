package words

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pappus/layout/prose"
	"pappus/render/tape"
	"pappus/timing"
	"pappus/timing/seats"
)

// SeatsNote says what the columns of seats are.
const SeatsNote = `lost: short of all drivers in step, from 500 Hz to 8 kHz, as the loudspeaker
  sounds with what it stands on or hangs from, without the room; the mean is of
  thirds in dB, where holes count, so it can be above the worst
  middle: with delays for the middle seat alone; none: without delays; bound:
  no processing of the plan's channels loses less there`

// Losses returns what seats lose as planned, with delays for the middle seat alone, without
// delays, and at best; all NaN where that was not worked out, as the best while a seat is
// dragged, or is not bounded, where nothing is heard.
func Losses(p *timing.Spot) [4]seats.Figures {
	s := p.Seating
	all := [4]seats.Figures{s.Planned, s.Middle, s.Without, s.Bound}
	for i, f := range all {
		if len(f.Seat) == 0 || math.IsInf(f.Worst, 0) {
			all[i] = unknown(len(p.Array.Seats), len(s.Thirds))
		}
	}
	return all
}

// unknown are figures for so many seats and thirds that are not known.
func unknown(count, thirds int) seats.Figures {
	nan := math.NaN()
	f := seats.Figures{Worst: nan, Mean: nan, Between: nan, Seat: slices.Repeat([]float64{nan}, count)}
	for range count {
		f.Band = append(f.Band, slices.Repeat([]float64{nan}, thirds))
	}
	return f
}

// Served names what one set of delays for several seats was made for.
func Served(s *timing.Seating) string {
	switch s.Aim {
	case "worst":
		return "for the least loss where most is lost"
	case "mean":
		return "for the least loss on the whole"
	case "round":
		return "to be even all round"
	}
	return "for little loss at each seat and as much at one as at another"
}

// Where says where a plan is heard.
func Where(p *timing.Plan) string {
	at := "heard " + tape.Of(p.Array, p.Array.Spot).Full()
	if p.Seating == nil {
		return at
	}
	return fmt.Sprintf("with delays for %d seats, %s", len(p.Array.Seats), at)
}

// Seats says how one set of delays serves several seats: what it costs, what delays for the
// middle seat alone and none at all would cost, and what no processing can better.
func Seats(p *timing.Spot) []string {
	s := p.Seating
	switch {
	case s == nil:
		return nil
	case s.Round != nil:
		return AllRound(p)
	}
	if p.Silent() && s.Planned.Worst >= timing.SilenceLoss {
		return []string{fmt.Sprintf("No sound of the drivers comes to the %d seats.", len(p.Array.Seats))}
	}
	if s.Without.Worst <= hardly {
		return []string{fmt.Sprintf("At none of the %d seats is anything lost, even without delays.", len(p.Array.Seats))}
	}
	said := []string{losses(p), price(p), losers(p), bound(p)}
	return slices.DeleteFunc(said, func(text string) bool { return text == "" })
}

// losses says what the plan's delays cost.
func losses(p *timing.Spot) string {
	s, of := p.Seating, p.Seating.Planned
	return fmt.Sprintf("One set of delays serves %d seats, %s: the worst, %s, loses %s against all drivers in step; over seats and thirds it is %s on the mean, and %s between seats.",
		len(p.Array.Seats), Served(s), seatName(p, worst(of)), lost(of.Worst), lost(of.Mean), lost(of.Between))
}

// worst is the index of the seat that loses most, the first of several.
func worst(f seats.Figures) int {
	at := 0
	for i, v := range f.Seat {
		if v > f.Seat[at] {
			at = i
		}
	}
	return at
}

// seatName names a seat in a sentence.
func seatName(p *timing.Spot, i int) string { return strconv.Quote(p.Array.Seats[i].Name) }

// lost writes a loss.
func lost(db float64) string { return prose.Fixed(db, 1) + " dB" }

// hardly is a difference in dB that is not told: what is shown as 0.0 or 0.1.
const hardly = 0.15

// price says what delays for one seat, or none, would cost all.
func price(p *timing.Spot) string {
	s, n := p.Seating, len(p.Array.Seats)
	of := fmt.Sprintf("Delays for the middle seat alone, %s, would lose %s at the worst seat, and no delays at all %s",
		seatName(p, s.MiddleSeat), lost(s.Middle.Worst), lost(s.Without.Worst))
	switch over := s.Middle.Worst - s.Without.Worst; {
	case over > hardly:
		of += fmt.Sprintf(": for %d people one seat's delays are worse than none", n)
	case math.Abs(over) <= hardly:
		of += fmt.Sprintf(": for %d people one seat's delays are no better than none", n)
	}
	if s.Planned.Worst > min(s.Middle.Worst, s.Without.Worst)+hardly {
		of += `. The aim asks for more than the worst seat; aim = "worst" under [seats] would lose less there`
	}
	return of + "."
}

// mostNames is how many seats a sentence names.
const mostNames = 3

// losers names the seats that lose more with the plan's delays than without any; nothing where
// there are none.
func losers(p *timing.Spot) string {
	var names []string
	for i, v := range p.Seating.Planned.Seat {
		if v > p.Seating.Without.Seat[i]+hardly {
			names = append(names, seatName(p, i))
		}
	}
	n := len(names)
	if n == 0 {
		return ""
	}
	if n > mostNames {
		names = append(names[:mostNames], prose.Count(n-mostNames, "other", "others"))
	}
	return fmt.Sprintf("With the plan's delays %s %s more than without any, for what the others gain.", prose.Each(names), prose.Noun(n, "loses", "lose"))
}

// evenAsDrivers is how even in dB between seats a plan is for it to be told that drivers are no
// more even: those that differ by 1 dB and 10 us from one to the next (one standard
// deviation), as cheap ones do. Of a hundred draws of such drivers on the demo before five
// seats, planned to 1.15 dB, the most even came to 1.21 and the mean to 1.43.
const evenAsDrivers = 1.5

// bound says what other processing could bring, where that was worked out, and what drivers
// leave of evenness.
func bound(p *timing.Spot) string {
	s, text := p.Seating, ""
	if s.Bound.Worst > hardly && !math.IsInf(s.Bound.Worst, 1) { // nor is anything heard there
		text = fmt.Sprintf("No processing of these channels, not even a filter for each, loses less than %s at the worst seat", lost(s.Bound.Worst))
		if s.Planned.Worst-s.Bound.Worst < nearBound {
			text += ", so only more channels, or other places for them, would bring much"
		}
		text += ". "
	}
	if s.Planned.Between < evenAsDrivers {
		text += "Drivers that differ by 1 dB and 10 us from one to the next, as cheap ones do, make no plan more even than about 1 dB."
	}
	return strings.TrimSpace(text)
}

// nearBound is how much in dB may be left to the bound for nothing but more channels to pay:
// a difference in level that is just heard.
const nearBound = 1.0

// SeatCounts says what other numbers of channels would leave at the seats; nothing where none
// were looked at.
func SeatCounts(p *timing.Spot) string {
	s := p.Seating
	if s == nil || len(s.Counts) < 2 {
		return ""
	}
	first, last := s.Counts[0], s.Counts[len(s.Counts)-1]
	return fmt.Sprintf("From %s to %d the worst seat's loss goes from %s to %s, each number with its own best delays.",
		prose.Count(first.Channels, "channel", "channels"), last.Channels, lost(first.Worst), lost(last.Worst))
}

// OfSeats heads the picture of what seats lose.
func OfSeats(p *timing.Plan) Picture {
	return Picture{Name(p) + ": what each seat loses",
		fmt.Sprintf("one set of delays for %d seats, %s; lost against all drivers in step, 500 Hz to 8 kHz, without the room", len(p.Array.Seats), Served(p.Seating))}
}

// OfSeatThirds heads the picture of what seats lose in each third of an octave.
func OfSeatThirds(p *timing.Plan) Picture {
	return Picture{Name(p) + ": what each seat loses over frequency",
		fmt.Sprintf("a line for each of %d seats, in thirds of an octave; lost against all drivers in step, without the room", len(p.Array.Seats))}
}

// OfSeatCounts heads the picture of what numbers of channels leave at seats.
func OfSeatCounts(p *timing.Plan) Picture {
	return Picture{Name(p) + ": what more channels bring to the seats",
		fmt.Sprintf("one set of delays for %d seats, %s; each number of channels with its own best", len(p.Array.Seats), Served(p.Seating))}
}

// SeatStrings says why the plan's strings for the seats are as long as they are; nothing
// where there was no choice.
func SeatStrings(p *timing.Spot) string {
	if p.Seating == nil || len(p.Seating.Strings) < 2 {
		return ""
	}
	all := p.Seating.Strings
	free := all[len(all)-1]
	for _, c := range all {
		if c.Chosen && c.Longest < free.Longest {
			return fmt.Sprintf("Strings of at most %s cost the seats %s of the aim against strings of up to %d, and are %s louder there from the same amplifier.",
				prose.Count(c.Longest, "driver", "drivers"), lost(max(0, c.Value-free.Value)), free.Longest, lost(c.Louder))
		}
	}
	return fmt.Sprintf("Strings are of up to %s: shorter ones would cost the seats more than %s of the aim.",
		prose.Count(free.Longest, "driver", "drivers"), lost(timing.WorthOctave))
}

// CompareSeats says what the columns of designs at seats are of; p is the first with several
// seats, guests tells that there are designs without.
func CompareSeats(p *timing.Plan, guests bool) string {
	aim := p.Seating.Aim
	if aim == "round" {
		aim = "even" // which has seats
	}
	text := fmt.Sprintf("short of all drivers in step, from 500 Hz to 8 kHz, without the room, each design at its own seats; aim: what %q makes of it, less is better", aim)
	if guests {
		text += fmt.Sprintf("; *: planned for one spot, and judged at the seats of %s", Name(p))
	}
	return text
}

// OfComparedSeats heads the picture of designs at seats; p is the first with several.
func OfComparedSeats(p *timing.Plan, left int) Picture {
	below := fmt.Sprintf("at the %d seats of %s, lost against all drivers in step, 500 Hz to 8 kHz, without the room", len(p.Array.Seats), Name(p))
	if left > 0 {
		below += "; without " + prose.Count(left, "design", "designs") + " of other seats"
	}
	return Picture{"Designs compared: what each seat loses", below}
}

// OfMeasuredSeats heads the picture of what seats measured.
func OfMeasuredSeats(p *timing.Plan) Picture {
	return Picture{Name(p) + ": what each seat loses, measured and planned", "lost against all drivers in step, 500 Hz to 8 kHz, where the microphone was; bars: 95 of 100 lie within"}
}
