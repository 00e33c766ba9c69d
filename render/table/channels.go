package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/excursion"
)

// Processor writes one row for each filter of each channel and of the woofer, one
// at least, with the channel's settings on each: what the processor is to be set to, at
// its rate in Hz. The coefficients are for words.Signs. A cost is empty where
// the channel is out of step, and where the frequency is not below half the rate.
func Processor(w io.Writer, rows []timing.ProcessorRow, rate float64) error {
	out := [][]string{{"channel", "delay_ms", "delay_samples", "delay_mm", "exact_us", "residual_us",
		"cost_4k_db", "cost_8k_db", "out_of_step_hz", "gain_db", "inverted", "rate_hz",
		"filter", "frequency_hz", "q", "filter_gain_db", "b0", "b1", "b2", "a1", "a2", "signs"}}
	for _, r := range rows {
		channel := []string{words.Row(r), fixed(1000*r.Delay, 5), fixed(r.Samples, 3), fixed(1000*r.Metre, 2),
			fixed(1e6*r.Exact, 3), fixed(1e6*r.Residual, 3), finite(r.Cost4k, 3), finite(r.Cost8k, 3),
			finite(r.OutOfStep, 0), fixed(r.Gain, 2), strconv.FormatBool(r.Invert), exact(rate)}
		if len(r.Filters) == 0 {
			out = append(out, append(channel, "", "", "", "", "", "", "", "", "", ""))
		}
		for _, f := range r.Filters {
			c := f.Coefficients
			out = append(out, append(append([]string{}, channel...), f.Name, fixed(f.Frequency, 3), fixed(f.Q, 5), fixed(f.Gain, 3),
				exact(c.B0), exact(c.B1), exact(c.B2), exact(c.A1), exact(c.A2), words.SignsInShort))
		}
	}
	return csv.NewWriter(w).WriteAll(out)
}

// Rounding writes one row for each octave: what setting the delays to the processor's
// step costs the direct sound at the spot.
func Rounding(w io.Writer, r timing.Rounding) error {
	rows := [][]string{{"octave_hz", "octave", "loss_db"}}
	for b, centre := range r.Band {
		rows = append(rows, []string{fixed(centre, 1), band.Name(centre), finite(r.Loss[b], 3)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// exact writes all digits of a coefficient.
func exact(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// Strings writes one row for each string: its drivers in the order of their
// joints, and the wire that takes.
func Strings(w io.Writer, p *timing.Plan) error {
	rows := [][]string{{"channel", "string", "drivers_in_order", "wire_m"}}
	for _, r := range timing.Harness(p) {
		rows = append(rows, []string{strconv.Itoa(p.Channels[r.Channel].ID), strconv.Itoa(r.String + 1),
			numbers(p.Array, r.Order), fixed(r.Length, 3)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// numbers writes the numbers of mounts by their indices.
func numbers(a *layout.Array, index []int) string {
	out := make([]string, len(index))
	for i, m := range index {
		out[i] = strconv.Itoa(a.Mounts[m].ID)
	}
	return strings.Join(out, " ")
}

// finite writes a number, nothing where it is not finite.
func finite(v float64, places int) string {
	if math.IsInf(v, 0) {
		return ""
	}
	return fixed(v, places)
}

// Excursion writes how far a cone moves, with and without the high-pass; only a
// head where the driver's values are not known.
func Excursion(w io.Writer, p *timing.Plan) error {
	rows := [][]string{{"frequency_hz", "excursion_mm", "unprotected_mm"}}
	for i, f := range p.Maximum.Frequency {
		if i < len(p.Maximum.Excursion) {
			rows = append(rows, []string{fixed(f, 2), fixed(1000*p.Maximum.Excursion[i], 5), fixed(1000*p.Maximum.Unprotected[i], 5)})
		}
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// ProtectionWords says in plain words which high-pass to set and how loud it may
// be.
func ProtectionWords(p *timing.Plan) string {
	return wrap(words.HighPass(p)) + "\n" + wrap(words.Noise(p))
}

// ChannelScreen writes the channel plan for people: what more channels would
// bring, and what to set each to.
func ChannelScreen(w io.Writer, p *timing.Plan, rows []timing.ProcessorRow, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	countScreen(b, p, s)
	front(b, p, s)
	fmt.Fprintln(b, s.faint("channel  delay ms  samples       mm  exact us  costs at 8k  gain dB  polarity"))
	for _, r := range rows {
		fmt.Fprintf(b, "%7s %9.4f %8.2f %8.1f %9.1f %12s %8.1f %9s\n", words.Row(r), 1000*r.Delay, r.Samples, 1000*r.Metre,
			1e6*r.Exact, costs(r.Cost8k), r.Gain, sign(r.Invert))
	}
	rounding(b, p, rows, s)
	fmt.Fprintln(b, ProtectionWords(p))
	loudest(b, p, s)
	if err := woofer(b, p, s); err != nil {
		return err
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// loudest writes what the array can have at most at the spot in each octave, and what
// limits it.
func loudest(b *strings.Builder, p *timing.Plan, s style) {
	all := p.Maximum.Levels
	if len(all) == 0 {
		return
	}
	row := func(name string, value func(h timing.MaxLevel) string) {
		fmt.Fprintf(b, "%-10s", name)
		for _, h := range all {
			fmt.Fprintf(b, "%10s", value(h))
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, "\n"+s.faint("loudest tone of the array at the spot, per octave"))
	row("", func(h timing.MaxLevel) string { return band.Name(h.Band) })
	if p.IsAbsolute() {
		row("dB SPL", func(h timing.MaxLevel) string { return fixed(h.Level, 1) })
	}
	if other := slices.ContainsFunc(all, func(h timing.MaxLevel) bool { return h.By != all[0].By }); other {
		row("limited by", func(h timing.MaxLevel) string { return h.By.String() })
	} else {
		by := all[0].By.String()
		if all[0].By == excursion.ByAmplifier {
			by = words.Volt(p) + " of the amplifier"
		}
		fmt.Fprintf(b, "limited by %s throughout\n", by)
	}
	if p.Array.Woofer.Present {
		fmt.Fprintln(b)
	}
}

// WiringScreen writes for people how each channel is strung, what the amplifier
// sees and gives, and what a dead driver does. Where each driver has a channel of its
// own one line stands for all.
func WiringScreen(w io.Writer, p *timing.Plan, deaths []timing.Death, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	alone := isAlone(p)
	banks(b, p, s, alone)
	runs := timing.Harness(p)
	if !alone {
		fmt.Fprintln(b, s.faint("channel  string  drivers in the order of their joints"))
		for _, r := range runs {
			fmt.Fprintf(b, "%7d %7d  %s\n", p.Channels[r.Channel].ID, r.String+1, numbers(p.Array, r.Order))
		}
	}
	fmt.Fprintf(b, "%.1f m of wire in straight lines; leave slack at every joint.\n\n", timing.HarnessLength(runs))
	failures(b, p, deaths, s, alone)
	_, err := io.WriteString(w, b.String())
	return err
}

// isAlone tells whether every driver has a channel of its own that the design does not
// lay out by hand: then the channels differ in nothing but place.
func isAlone(p *timing.Plan) bool {
	return len(p.Array.Channels) == 0 && len(p.Channels) > 1 && len(p.Channels) == len(p.Arrivals)
}

// banks writes what each channel's amplifier sees and gives.
func banks(b *strings.Builder, p *timing.Plan, s style, alone bool) {
	fmt.Fprintln(b, s.faint("channel  strings   dc ohm  least ohm  at Hz   amp V   amp A   amp W  W each"))
	for i, c := range p.Channels {
		k, name := p.Banks[i], strconv.Itoa(c.ID)
		if alone {
			name = "each"
		}
		under := ""
		if p.Under(i) {
			under = " " + s.alert("under the minimum")
		}
		fmt.Fprintf(b, "%7s %3d of %-3d %6.2f %10s %6s %7.2f %7.3f %7.2f %7.3f%s\n", name, c.Parallel, c.Series, c.DCOhm,
			dash(k.LowestOhm, 2), dash(k.LowestHz, 0), k.Volt, k.Ampere, k.Watt, k.DriverWatt, under)
		if alone {
			fmt.Fprintf(b, "%s a channel of its own, in the drivers' order.\n", eachHas(len(p.Arrivals)))
			break
		}
	}
	prose.Fprintf(b, "The amplifier allows %g ohm or more per channel; measure before you switch on.\n\n", p.Array.Wiring.MinimumLoad)
	front(b, p, s)
}

// failures writes what a dead driver does: in each channel, or the worst of all where
// each driver is alone.
func failures(b *strings.Builder, p *timing.Plan, deaths []timing.Death, s style, alone bool) {
	if alone {
		deaths = worstDeaths(deaths)
	}
	deathScreen(b, p, deaths, s)
	if alone {
		fmt.Fprintln(b, s.faint("  the channels that lose most; the others lose less"))
	}
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

// lost writes a loss in dB; all, where nothing is left.
func lost(db float64) string {
	if db >= timing.SilenceLoss {
		return "all"
	}
	return dash(db, 1)
}

// decibels writes a loss with its unit.
func decibels(db float64) string {
	if text := lost(db); text != "all" {
		return text + " dB"
	}
	return "all of it"
}

// dash writes a number, a dash where it is not known.
func dash(v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "-"
	}
	return fixed(v, places)
}

// wrap breaks a sentence into lines of at most 80 letters.
func wrap(text string) string { return wrapAfter(0, text) }

// Wrap breaks text into lines of at most 80 letters.
func Wrap(text string) string { return wrap(text) }

// wrapAfter breaks text into lines of at most 80 columns, the first of which already
// has so many taken.
func wrapAfter(taken int, text string) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && taken+len(line)+1+len(word) > 80 {
			lines, line, taken = append(lines, line), "", 0
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return strings.Join(append(lines, line), "\n")
}

// Highest writes one row for each octave: the loudest tone that nothing limits
// yet, and what does.
func Highest(w io.Writer, p *timing.Plan) error {
	rows := [][]string{{"octave_hz", "octave", "highest_db", "limited_by"}}
	for _, h := range p.Maximum.Levels {
		rows = append(rows, []string{fixed(h.Band, 1), band.Name(h.Band), finite(h.Level, 1), h.By.String()})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// eachHas begins a sentence on what each of some drivers has.
func eachHas(n int) string {
	if n == 1 {
		return "The driver has"
	}
	return fmt.Sprintf("Each of the %d drivers has", n)
}
