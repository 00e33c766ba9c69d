package table

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/excursion"
)

// Channels writes one row for each channel: its drivers, how they are strung,
// what the amplifier sees, and its delay: what can be set, and exactly.
func Channels(w io.Writer, p *timing.Plan) error {
	t := newSheet("channel", "delay_us:2", "exact_us:2", "delay_mm:2", "gain_db:2", "inverted", "drivers",
		"in_series", "in_parallel", "nominal_ohm:2", "dc_ohm:2", "lowest_ohm:2", "lowest_hz:0",
		"amplifier_v:3", "amplifier_a:4", "amplifier_w:3", "driver_v:3", "driver_w:4", "damping:1", "driver_ids")
	for i, c := range p.Channels {
		k := p.Banks[i]
		t.add(c.ID, 1e6*c.Delay, 1e6*c.Exact, 1000*c.Delay*p.SpeedOfSound, c.Gain, c.Invert, len(c.Mounts),
			c.Series, c.Parallel, c.NominalOhm, c.DCOhm, k.LowestOhm, k.LowestHz,
			k.Volt, k.Ampere, k.Watt, k.DriverVolt, k.DriverWatt, k.Damping, p.Array.IDs(c.Mounts))
	}
	return t.write(w)
}

// Processor writes one row for each filter of each channel and of the woofer, one
// at least, with the channel's settings on each: what the processor is to be set to, at
// its rate in Hz. The coefficients are for words.Signs. A cost is empty where
// the channel is out of step, and where the frequency is not below half the rate.
func Processor(w io.Writer, rows []timing.ProcessorRow, rate float64) error {
	t := newSheet("channel", "delay_ms:5", "delay_samples:3", "delay_mm:2", "exact_us:3", "residual_us:3",
		"cost_4k_db:3", "cost_8k_db:3", "out_of_step_hz:0", "gain_db:2", "inverted", "rate_hz",
		"filter", "frequency_hz:3", "q:5", "filter_gain_db:3", "b0", "b1", "b2", "a1", "a2", "signs")
	for _, r := range rows {
		channel := []any{words.Row(r), 1000 * r.Delay, r.Samples, 1000 * r.Metre, 1e6 * r.Exact, 1e6 * r.Residual,
			r.Cost4k, r.Cost8k, r.OutOfStep, r.Gain, r.Invert, rate}
		if len(r.Filters) == 0 {
			t.add(append(channel, make([]any, 10)...)...)
		}
		for _, f := range r.Filters {
			c := f.Coefficients
			t.add(append(slices.Clip(channel), f.Name, f.Frequency, f.Q, f.Gain, c.B0, c.B1, c.B2, c.A1, c.A2, words.SignsInShort)...)
		}
	}
	return t.write(w)
}

// Rounding writes one row for each octave: what setting the delays to the processor's
// step costs the direct sound at the spot.
func Rounding(w io.Writer, r timing.Rounding) error {
	t := newSheet("octave_hz:1", "octave", "loss_db:3")
	for b, centre := range r.Band {
		t.add(centre, band.Name(centre), r.Loss[b])
	}
	return t.write(w)
}

// Counts writes one row for each number of channels: what the design's way of
// splitting leaves at the spot, the smear with energy weights and plain. Where the
// plan's own channels are none of these, as for a layout by hand, they follow.
func Counts(w io.Writer, p *timing.Plan) error {
	t := newSheet("channels", "split", "smear_us:2", "plain_smear_us:2", "comb_onset_hz:1", "longest_string")
	all := p.Counts
	if own, at := p.Own(); at < 0 {
		all = append(slices.Clip(all), own)
	}
	for _, c := range all {
		t.add(c.Channels, c.Split, 1e6*c.Smear, 1e6*c.Plain, c.CombOnset, c.Longest)
	}
	return t.write(w)
}

// Front writes one row for each split that no other beats in both smear and level, from
// the shortest strings to the least smear; only a head where the design leaves no choice.
func Front(w io.Writer, p *timing.Plan) error {
	t := newSheet("longest_string", "smear_us:2", "comb_onset_hz:1", "louder_db:2", "driver_v:4", "limited_by", "least_ohm:3",
		"most_drivers", "in_step", "rule", "chosen")
	for _, f := range p.Front {
		t.add(f.Longest, 1e6*f.Smear, f.CombOnset, f.Louder, f.DriverVolt, f.Limit(), f.LeastOhm, f.Most, f.InStep, f.Rule, f.Chosen)
	}
	return t.write(w)
}

// Highest writes one row for each octave: the loudest tone that nothing limits
// yet, and what does.
func Highest(w io.Writer, p *timing.Plan) error {
	t := newSheet("octave_hz:1", "octave", "highest_db:1", "limited_by")
	for _, h := range p.Maximum.Levels {
		t.add(h.Band, band.Name(h.Band), h.Level, h.By)
	}
	return t.write(w)
}

// ChannelScreen writes the channel plan for people: what more channels would
// bring, and what to set each to.
func ChannelScreen(w io.Writer, p *timing.Plan, rows []timing.ProcessorRow, colour bool) error {
	s := &screen{style: style(colour)}
	if p.Seating == nil {
		s.counts(p)
	} else {
		s.seatCounts(p)
	}
	s.front(p)
	row := s.list("channel  delay ms  samples       mm  exact us  costs at 8k  gain dB  polarity", "%7s %9.4f %8.2f %8.1f %9.1f %12s %8.1f %9s")
	for _, r := range rows {
		row(words.Row(r), 1000*r.Delay, r.Samples, 1000*r.Metre, 1e6*r.Exact, costs(r.Cost8k), r.Gain, words.Polarity(r.Invert))
	}
	s.rounding(p, rows)
	s.protection(p)
	s.loudest(p)
	if err := s.woofer(p); err != nil {
		return err
	}
	return s.to(w)
}

// costs writes what a residual costs a channel.
func costs(db float64) string {
	switch {
	case math.IsNaN(db):
		return "-"
	case math.IsInf(db, 1):
		return "out of step"
	}
	return finite(db, 2) + " dB"
}

// rounding says what the processor's step costs.
func (s *screen) rounding(p *timing.Plan, rows []timing.ProcessorRow) {
	cost := p.Rounding
	prose.Fprintf(s, "Delays are set in steps of %.3g us; the worst is %.1f us off its exact value.\n", 1e6*p.Array.Processor.Step, 1e6*cost.Worst)
	s.say(words.Common(p))
	perOctave(s, s.faint("costs all together, dB"), cost.Band, func(hz float64) string { return s.faint(fmt.Sprintf("%7s", band.Name(hz))) })
	perOctave(s, "", cost.Loss, func(db float64) string { return dash(db, 2) })
	s.note("  at the spot, per octave; below 0 where rounding happens to help")
	if text := words.OutOfStep(rows); text != "" {
		fmt.Fprintf(s, "%s %s\n", s.alert("Look out:"), text)
	}
}

// loudest writes what the array can have at most at the spot in each octave, and what
// limits it.
func (s *screen) loudest(p *timing.Plan) {
	all := p.Maximum.Levels
	if len(all) == 0 {
		return
	}
	row := func(name string, value func(h timing.MaxLevel) string) {
		fmt.Fprintf(s, "%-10s", name)
		for _, h := range all {
			fmt.Fprintf(s, "%10s", value(h))
		}
		fmt.Fprintln(s)
	}
	s.section("loudest tone of the array at the spot, per octave")
	row("", func(h timing.MaxLevel) string { return band.Name(h.Band) })
	if p.IsAbsolute() {
		row("dB SPL", func(h timing.MaxLevel) string { return finite(h.Level, 1) })
	}
	if other := slices.ContainsFunc(all, func(h timing.MaxLevel) bool { return h.By != all[0].By }); other {
		row("limited by", func(h timing.MaxLevel) string { return h.By.String() })
	} else {
		by := all[0].By.String()
		if all[0].By == excursion.ByAmplifier {
			by = words.Volt(p) + " of the amplifier"
		}
		fmt.Fprintf(s, "limited by %s throughout\n", by)
	}
	if p.IsAbsolute() && !p.Silent() {
		fmt.Fprintf(s, "mean from 500 Hz to 4 kHz %s dB\n", finite(p.Loudest, 1))
	}
	if p.Array.Woofer.Present {
		fmt.Fprintln(s)
	}
}

// mostCountRows is how many numbers of channels the screen shows at least.
const mostCountRows = 16

// counts writes what more channels would bring: every number up to where more
// stop paying and to the plan's own, and the last.
func (s *screen) counts(p *timing.Plan) {
	row := s.list("channels  smear us  comb onset  in a string", "%8s %9.1f %11s %12d %s")
	count := func(name string, c timing.Count, own bool) {
		row(name, 1e6*c.Smear, words.Onset(c.CombOnset), c.Longest, mark(own))
	}
	own, at := p.Own()
	smear, comb := p.Knees()
	shown := max(mostCountRows, smear, comb, at+1)
	for i, c := range p.Counts {
		switch last := i == len(p.Counts)-1; {
		case i < shown || last:
			count(strconv.Itoa(c.Channels), c, i == at)
		case i == shown:
			s.note("       … plan writes all to counts.csv")
		}
	}
	if at < 0 {
		name := strconv.Itoa(own.Channels)
		if len(p.Array.Channels) > 0 {
			name = "by hand"
		}
		count(name, own, true)
	}
	s.note("  < as planned" + words.CountedBy(p))
	inString := "  in a string: the most drivers in series"
	if traded(p.Counts[:min(shown, len(p.Counts))]) {
		inString += "; where they are fewer, more channels\n  may leave more smear, for they play louder"
	}
	s.note(inString)
	for line := range strings.SplitSeq(words.Counts(p), "\n") {
		s.say(line)
	}
	fmt.Fprintln(s)
}

// mark marks the plan's own.
func mark(own bool) string {
	if own {
		return "<"
	}
	return ""
}

// traded tells whether a number of channels leaves more smear than one fewer does because
// its strings are shorter: the rule for the strings gives smear for level.
func traded(counts []timing.Count) bool {
	for i := range counts {
		if i > 0 && counts[i].Smear > counts[i-1].Smear && counts[i].Longest < counts[i-1].Longest {
			return true
		}
	}
	return false
}

// front writes for people what shorter strings cost and bring, and which the plan has.
// Where there is one split alone there is nothing to weigh.
func (s *screen) front(p *timing.Plan) {
	if len(p.Front) < 2 {
		return
	}
	row := s.list("strings of  smear us  comb onset  louder dB  V each  least ohm", "%10s %9.1f %11s %10.1f %7s %10.2f %s")
	note := "  < as planned"
	for _, f := range p.Front {
		volt := finite(f.DriverVolt, 2)
		if f.ByDriver {
			volt, note = volt+"*", "  < as planned; * all that a driver stands"
		}
		row(longest(f.Longest), 1e6*f.Smear, words.Onset(f.CombOnset), f.Louder, volt, f.LeastOhm, frontMark(f))
	}
	s.note(note)
	s.say(words.Front(p))
	fmt.Fprintln(s)
}

// longest writes the length of the longest strings.
func longest(drivers int) string {
	if drivers == 1 {
		return "1"
	}
	return "up to " + strconv.Itoa(drivers)
}

func frontMark(f timing.Strung) string {
	switch {
	case f.Chosen:
		return mark(true)
	case f.Rule:
		return "the rule's"
	case !f.InStep:
		return "out of step"
	}
	return ""
}
