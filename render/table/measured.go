package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// MeasuredBands writes one row for each third of an octave: measured, planned, how
// they differ once matched, one standard error of that, and how far above the noise.
func MeasuredBands(w io.Writer, v verdict.Level, m recording.Measured) error {
	rows := [][]string{{"band_hz", "band", "measured_db", "planned_db", "difference_db", "error_db", "signal_to_noise_db"}}
	for _, b := range v.Bands {
		rows = append(rows, []string{fixed(b.Centre, 1), band.Name(b.Centre), fixed(b.Measured, 2), fixed(b.Planned, 2),
			fixed(b.Difference, 2), honest(b.Error, 2), honest(m.SNR(b.Centre), 1)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// MeasuredResponse writes what a recording tells, one row for each frequency; what it
// cannot honestly tell is left empty.
func MeasuredResponse(w io.Writer, m recording.Measured) error {
	head := []string{"frequency_hz", "gated_db", "gated_error_db", "whole_db", "whole_error_db"}
	for _, h := range m.Harmonics {
		head = append(head, fmt.Sprintf("harmonic_%d_db", h.Order), fmt.Sprintf("harmonic_%d_floor_db", h.Order))
	}
	rows := [][]string{head}
	for i, hz := range m.Frequency {
		row := []string{fixed(hz, 2), honest(m.Gated.Level[i], 3), honest(m.Gated.Error[i], 4), honest(m.Whole.Level[i], 3), honest(m.Whole.Error[i], 4)}
		for _, h := range m.Harmonics {
			row = append(row, honest(h.Level[i], 2), honest(h.Floor[i], 2))
		}
		rows = append(rows, row)
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// honest writes a number, nothing where there is none.
func honest(v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return fixed(v, places)
}

// MeasuredChannels writes one row for each channel: when it was heard against when it
// should be, the delay that follows from it, its level over its siblings' middle and over
// those of like arrival, and its faults. Errors are one standard error.
func MeasuredChannels(w io.Writer, p *timing.Plan, v verdict.Channels) error {
	rows := [][]string{{"channel", "planned_us", "measured_us", "late_us", "error_us", "set_delay_us", "proposed_delay_us", "level_db", "level_error_db", "beside_db", "unlike", "missing", "reversed", "silent", "quiet", "loud", "dead_string"}}
	for i, c := range v.Channels {
		dead := ""
		if c.DeadString >= 0 {
			dead = strconv.Itoa(c.DeadString + 1)
		}
		rows = append(rows, []string{strconv.Itoa(c.ID), fixed(1e6*c.Planned, 2), honest(1e6*c.Arrival, 2), honest(1e6*c.Late, 2), honest(1e6*c.Error, 2),
			fixed(1e6*p.Channels[i].Delay, 2), honest(1e6*c.Delay, 2), honest(c.Level, 2), honest(c.LevelError, 2), honest(c.Beside, 2), fixed(c.Unlike, 3),
			strconv.FormatBool(c.Missing), strconv.FormatBool(c.Reversed), strconv.FormatBool(c.Silent), strconv.FormatBool(c.Quiet), strconv.FormatBool(c.Loud), dead})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// LevelMeasuredWords says in plain words how the level measures.
func LevelMeasuredWords(v verdict.Level, m recording.Measured) string {
	b := &strings.Builder{}
	fmt.Fprintf(b, "From %.0f Hz to %.1f kHz the thirds of octaves differ from the plan by %.1f dB (RMS).", v.Low, v.High/1000, v.Uneven)
	worst, beyond := -1, 0
	for i, x := range v.Bands {
		if worst < 0 || math.Abs(x.Difference) > math.Abs(v.Bands[worst].Difference) {
			worst = i
		}
		if math.Abs(x.Difference) > verdict.Expanded*x.Error {
			beyond++
		}
	}
	if v.OtherCase {
		fmt.Fprintf(b, " With the delays the other way, set or not set, they would differ by %.1f dB only: was --as-built given as it was?", v.OtherUneven)
	}
	if worst >= 0 {
		x := v.Bands[worst]
		fmt.Fprintf(b, " The furthest off is %s, by %+.1f dB, give or take %s dB; %s.",
			band.Hertz(x.Centre), math.Round(10*x.Difference)/10+0, give(verdict.Expanded*x.Error, 1), beyondWords(beyond, len(v.Bands))) // no zero is negative
	}
	if v.Gated {
		fmt.Fprintf(b, " The gate of %.1f ms tells nothing below %.0f Hz.", 1000*(m.Gated.To-m.At), m.Gated.Lowest)
	}
	b.WriteString(harmonicWords(m))
	if drift := m.Drift; math.Abs(drift) > 1 {
		fmt.Fprintf(b, " The recorder's clock runs %+.0f parts per million; that is taken out.", drift)
	}
	return wrap(b.String())
}

// ordinals name the harmonics.
var ordinals = map[int]string{2: "second", 3: "third", 4: "fourth", 5: "fifth"}

// harmonicWords says how high the harmonics reach that stand out of the noise.
func harmonicWords(m recording.Measured) string {
	var found []string
	for _, h := range m.Harmonics {
		most, level := -1, band.SmoothGaps(nil, m.Frequency, h.Clear(), 6)
		for i, v := range level {
			if !math.IsNaN(v) && (most < 0 || v > level[most]) {
				most = i
			}
		}
		if most >= 0 {
			found = append(found, fmt.Sprintf("the %s rises to %.0f dB under it (%s)", ordinals[h.Order], -level[most], band.Hertz(m.Frequency[most])))
		}
	}
	if len(found) == 0 {
		return ""
	}
	return " Of the harmonics that a tone gets, " + strings.Join(found, ", ") + "."
}

// beyondWords says how many of some bands differ by more than their error.
func beyondWords(beyond, all int) string {
	switch beyond {
	case 0:
		return "none differs by more than its error"
	case 1:
		return fmt.Sprintf("one of %d differs by more than its error", all)
	}
	return fmt.Sprintf("%d of %d differ by more than their errors", beyond, all)
}

// give writes an expanded error, never as 0: to so many places at most, and to none from 10 on,
// where the first two digits are all that an error tells (JCGM 100:2008, 7.2.6).
func give(v float64, places int) string {
	least := math.Pow(10, -float64(places))
	switch {
	case v < least/2:
		return "<" + fixed(least, places)
	case v >= 10:
		places = 0
	}
	return dash(v, places)
}

// sure writes a value no finer than its expanded error.
func sure(v, expanded float64, places int) string {
	if expanded >= 10 {
		places = 0
	}
	return dash(math.Round(v*math.Pow(10, float64(places)))/math.Pow(10, float64(places))+0, places)
}

// MeasuredSentences says how the whole array measured, and what else to know.
func MeasuredSentences(f verdict.Found) []string {
	var out []string
	if f.Level != nil {
		out = append(out, LevelMeasuredWords(*f.Level, *f.Whole))
	}
	for _, note := range f.Notes {
		out = append(out, "Mind: "+words.Measured(note)+".")
	}
	if f.Level != nil {
		for _, caution := range f.Whole.Cautions {
			out = append(out, "Mind: "+words.Recording(caution)+".")
		}
	}
	return out
}

// MeasuredScreen writes what recordings came to: the channels as they were measured, what is
// wrong, how the whole array measured.
func MeasuredScreen(w io.Writer, p *timing.Plan, f verdict.Found, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	if f.Channels != nil {
		measuredChannels(b, s, p, *f.Channels)
		if len(f.Faults) == 0 {
			fmt.Fprintln(b, "No channel is silent, weak or reversed.")
		}
	}
	for _, fault := range f.Faults {
		fmt.Fprintln(b, wrap(s.alert("Look out:")+" "+words.Measured(fault)))
	}
	if f.Channels != nil && len(f.Faults) > 0 {
		fmt.Fprintln(b, wrap("Mend that and measure again: until then levels and proposed delays are of a loudspeaker with these faults."))
	}
	for _, sentence := range MeasuredSentences(f) {
		fmt.Fprintln(b, sentence)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// measuredChannels writes one row for each channel.
func measuredChannels(w io.Writer, s style, p *timing.Plan, v verdict.Channels) {
	fmt.Fprintln(w, s.faint("channel  measured us  late us  +- us  delay us  proposed us  level dB  +- dB"))
	for i, c := range v.Channels {
		late, level := verdict.Expanded*1e6*c.Error, verdict.Expanded*c.LevelError
		fmt.Fprintf(w, "%7d %12s %8s %6s %9.1f %12s %9s %6s\n", c.ID, sure(1e6*c.Arrival, late, 1), sure(1e6*c.Late, late, 1), give(late, 1),
			1e6*p.Channels[i].Delay, dash(1e6*c.Delay, 1), sure(c.Level, level, 1), give(level, 1))
	}
	fmt.Fprintln(w, s.faint("  late, level: against the middle channel; proposed: the delay that follows from this;"))
	fmt.Fprintln(w, s.faint("  +-: 95 of 100 lie within, by bands, echoes, noise and the model of the body"))
}
