package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
)

// Level writes one row for each frequency: the level at the spot before and after,
// what it is to be, and what the sections add.
func Level(w io.Writer, l timing.Levelling) error {
	rows := [][]string{{"frequency_hz", "before_db", "after_db", "target_db", "correction_db", "model_error_db"}}
	for f, hz := range l.Frequency {
		rows = append(rows, []string{fixed(hz, 2), fixed(l.Before[f], 3), fixed(l.After[f], 3), fixed(l.Target, 3),
			fixed(l.After[f]-l.Before[f], 3), fixed(l.Error[f], 3)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// Sections writes one row for each section of a correction, the same on every
// channel. The coefficients are for words.Signs, at the correction's rate.
func Sections(w io.Writer, c timing.Correction) error {
	rows := [][]string{{"type", "frequency_hz", "q", "gain_db", "b0", "b1", "b2", "a1", "a2", "rate_hz"}}
	for _, s := range c.Sections {
		k := s.Coefficients
		rows = append(rows, []string{s.Name, fixed(s.Frequency, 3), fixed(s.Q, 5), fixed(s.Gain, 3),
			exact(k.B0), exact(k.B1), exact(k.B2), exact(k.A1), exact(k.A2), exact(c.Rate)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// LevelScreen writes for people what levels the spot and what is left alone.
func LevelScreen(w io.Writer, p *timing.Plan, l timing.Levelling, c timing.Correction, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	fmt.Fprintln(b, s.strong(p.Array.Name))
	fmt.Fprintln(b, wrap(LevelWords(l)))
	if text := ErrorWords(l); text != "" {
		fmt.Fprintln(b, s.faint(wrap(text)))
	}
	if p.Array.Woofer.Present {
		fmt.Fprintln(b, s.faint(wrap("It is the array's level alone. Below, the woofer is heard too: set the levels of both by a measurement.")))
	}
	if len(l.Nulls) > 0 {
		fmt.Fprintln(b, "\n"+s.faint("left alone, and not boosted within half an octave"))
		fmt.Fprintln(b, wrap(words.Nulls(l.Nulls)+"."))
	}
	if text := words.NotBoosted(l.Echoes); text != "" {
		fmt.Fprintln(b, "\n"+wrap(strings.ToUpper(text[:1])+text[1:]+"."))
	}
	if len(l.Sections) > 0 {
		settings(b, l, c, s)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// settings writes what is to be set, and what to mind.
func settings(b *strings.Builder, l timing.Levelling, c timing.Correction, s style) {
	fmt.Fprintln(b, "\n"+s.faint("section          Hz      Q  gain dB"))
	for _, k := range c.Sections {
		fmt.Fprintf(b, "%-11s %7.0f %6.2f %8.1f\n", k.Name, k.Frequency, k.Q, k.Gain)
	}
	fmt.Fprintf(b, "%s\n", s.faint("  coefficients in sections.csv, with the delays in processor.csv"))
	fmt.Fprintln(b, "\n"+s.faint("as one FIR filter    taps  latency ms  off by, dB"))
	for _, r := range []struct {
		name string
		taps timing.Taps
	}{{"minimum phase", c.Minimum}, {"linear phase", c.Linear}} {
		fmt.Fprintf(b, "%-17s %7d %11.1f %11.3f\n", r.name, len(r.taps.Samples), 1000*r.taps.Latency, r.taps.Off)
	}
	fmt.Fprintf(b, "%s\n\n", s.faint(fmt.Sprintf("  at %.0f Hz; off by: at most, from the sections, above 100 Hz", c.Rate)))
	for _, text := range levelCautions(l, c) {
		fmt.Fprintf(b, "%s\n", wrap(s.alert("Look out:")+" "+text))
	}
}

// LevelWords says in plain words what was levelled, and how far.
func LevelWords(l timing.Levelling) string {
	last, without := len(l.Frequency)-1, ""
	if len(l.Nulls) > 0 {
		without = ", but for what is left alone"
	}
	text := fmt.Sprintf("Level at the spot and 0.1 m round it, %s to %s, sixth-octave smoothed%s: ", band.Hertz(l.Frequency[0]), band.Hertz(l.Frequency[last]), without)
	if len(l.Sections) == 0 {
		return text + fmt.Sprintf("uneven by %.1f dB, and no section is worth setting.", l.UnevenBefore)
	}
	return text + fmt.Sprintf("uneven by %.1f dB before, %.1f dB after.", l.UnevenBefore, l.UnevenAfter)
}

// hardlyOff is the model's error in dB below which it would be shown as 0.0.
const hardlyOff = 0.05

// ErrorWords says that the model's own error is left alone; nothing where it hardly has
// one.
func ErrorWords(l timing.Levelling) string {
	last := len(l.Error) - 1
	if last < 0 || slices.Max(l.Error) < hardlyOff {
		return ""
	}
	at := last
	for l.Frequency[at] > 1000 && at > 0 {
		at--
	}
	return fmt.Sprintf("What is within the model's own error of the mean is left alone, since the body is not a ball: %.1f dB at %s, %.1f dB at %s. Only what is beyond it is evened out; a measurement knows more.",
		l.Error[at], band.Hertz(l.Frequency[at]), l.Error[last], band.Hertz(l.Frequency[last]))
}

// levelCautions says what to mind when a correction is set.
func levelCautions(l timing.Levelling, c timing.Correction) []string {
	out := []string{"use the sections or one of the filters, never both; set the high-pass first, which the filters do not hold."}
	if boost := l.Boost(); boost > 0 {
		out = append(out, fmt.Sprintf("a boost heats the drivers and moves their cones further: %.1f dB take %.1f times the power there. Leave as much room below full scale, and begin quietly.",
			boost, math.Pow(10, boost/10)))
	}
	return append(out, fmt.Sprintf("with linear phase all is heard %.1f ms late: mind that with pictures or a microphone, and give every channel the same filter, a woofer that delay.", 1000*c.Linear.Latency))
}
