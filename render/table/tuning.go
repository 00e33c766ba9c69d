package table

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

// Trials writes one row for each trial.
func Trials(w io.Writer, trials []damping.Trial) error {
	rows := [][]string{{"trial", "date", "vents", "vent_mm", "stuffing_g", "depth_mm", "resonance_hz", "resonance_error_hz",
		"peak_over_re", "peak_over_re_error", "q", "q_error", "uneven_db", "remark"}}
	for i, t := range trials {
		rows = append(rows, []string{strconv.Itoa(i + 1), t.Date, strconv.Itoa(t.Vents), fixed(t.VentMM, 2), fixed(t.StuffingG, 1), fixed(t.DepthMM, 1),
			fixed(t.Resonance.Value, 2), fixed(t.Resonance.Error, 2), fixed(t.PeakOver.Value, 4), fixed(t.PeakOver.Error, 4),
			fixed(t.Q.Value, 4), fixed(t.Q.Error, 4), fixed(t.Uneven, 2), t.Remark})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// TuningScreen writes for people the trials side by side, which change did what, and
// what to try next.
func TuningScreen(w io.Writer, t damping.Study, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	fmt.Fprintln(b, s.strong(t.Name+": damping the shared box"))
	prose.Fprintf(b, "target Q %.3g; log %s\n\n", t.Goal.Q, t.Log)
	if len(t.Trials) > 0 {
		trials(b, t, s)
	}
	if changes := damping.Changes(t.Trials); len(changes) > 0 {
		fmt.Fprintln(b, s.faint("which change did what"))
		for _, c := range changes {
			fmt.Fprintln(b, wrap(ChangeWords(t.Trials, c)))
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, s.faint("next"))
	fmt.Fprintln(b, wrap(NextWords(t)))
	fmt.Fprintln(b)
	for _, text := range tuningCautions {
		fmt.Fprintln(b, wrap(s.alert("Look out:")+" "+text))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// trials lists trials side by side.
func trials(b *strings.Builder, t damping.Study, s style) {
	fmt.Fprintln(b, s.faint("trial  vents      stuffing   depth  resonance peak/Re              Q  uneven"))
	for i, r := range t.Trials {
		fmt.Fprintf(b, "%5d  %-9s %7.1f g %s %10s %7s %14s %7s", i+1, ventText(r), r.StuffingG, depthText(r.DepthMM),
			unit(dash(r.Resonance.Value, 1), "Hz"), dash(r.PeakOver.Value, 2), within(r.Q, 3), unit(dash(r.Uneven, 1), "dB"))
		if i == t.Next.Base && t.Next.Reached {
			fmt.Fprint(b, " *")
		}
		fmt.Fprintln(b)
		rough := ""
		if r.Fit.Rough() {
			rough = prose.Sprintf("a circuit follows it only within %.2g percent: Q is rough", 100*r.Fit.Misfit)
		}
		for _, note := range []string{r.Date, r.Remark, rough} {
			if note != "" {
				fmt.Fprintln(b, s.faint("       "+note))
			}
		}
	}
	fmt.Fprintln(b, s.faint(fmt.Sprintf("  Q +- what noise leaves open; trials alike differ by about %.0f percent more", 100*damping.Scatter)))
	fmt.Fprintln(b, s.faint("  uneven: of the response from 500 Hz to 4 kHz, third-octave smoothed"))
	fmt.Fprintln(b)
}

// within writes a value with its standard error; a dash where there is none.
func within(e impedancefit.Estimate, places int) string {
	if math.IsNaN(e.Value) {
		return "-"
	}
	return fixed(e.Value, places) + " +- " + fixed(e.Error, places)
}

func unit(v, name string) string {
	if v == "-" {
		return v
	}
	return v + " " + name
}

func ventText(t damping.Trial) string {
	if t.Vents == 0 {
		return "closed"
	}
	return prose.Sprintf("%d x %.3g", t.Vents, t.VentMM)
}

func depthText(mm float64) string {
	if mm == 0 {
		return "     - "
	}
	return fmt.Sprintf("%4.0f mm", mm)
}

// ChangeWords says in plain words what a change did.
func ChangeWords(trials []damping.Trial, c damping.Change) string {
	a, b := trials[c.From], trials[c.To]
	text := fmt.Sprintf("Trial %d against %d: ", c.To+1, c.From+1)
	switch c.Thing {
	case damping.Nothing:
		text += "the same again; "
	case damping.Openings:
		text += fmt.Sprintf("openings %s, were %s; ", ventText(b), ventText(a))
	case damping.Stuffing:
		text += prose.Sprintf("stuffing %.4g g, was %.4g g; ", b.StuffingG, a.StuffingG)
	case damping.Depth:
		text += prose.Sprintf("packed %.4g mm deep, was %.4g mm; ", b.DepthMM, a.DepthMM)
	case damping.Several:
		text += "several things changed at once; "
	}
	switch {
	case b.Flat:
		return text + "no resonance is to be seen any more."
	case a.Flat:
		return text + "the resonance is back."
	}
	text += fmt.Sprintf("Q %s, peak %s, resonance %s Hz", signed(c.Q, 3), signed(c.PeakOver, 2), signed(c.Resonance, 1))
	switch {
	case c.Thing == damping.Several:
		return text + ". Which of them did it cannot be told: change one at a time."
	case !c.Clear:
		return text + ": no more than trials scatter."
	}
	return text + "."
}

// signed writes a difference with its sign and its error.
func signed(e impedancefit.Estimate, places int) string {
	sign := "+"
	if e.Value < 0 {
		sign = ""
	}
	return sign + fixed(e.Value, places) + " +- " + fixed(e.Error, places)
}

// NextWords says in plain words what to try next.
func NextWords(t damping.Study) string {
	n := t.Next
	switch {
	case errors.Is(t.Why, damping.ErrNoTrials):
		return "Measure the impedance of a channel with the box bare and closed, and add that: " +
			prose.Command("pappus tune add", t.Design) + " --impedance FILE."
	case t.Why != nil:
		text := t.Why.Error()
		return spentText(t) + strings.ToUpper(text[:1]) + text[1:] + "."
	case n.Reached:
		return fmt.Sprintf("Trial %d is there: its Q is %.3f, within %.0f percent of the target. Leave it so, and listen.", n.Base+1, n.Q.Value, 100*damping.Within)
	}
	text := spentText(t) + fmt.Sprintf("Begin from trial %d and change the %v alone: ", n.Base+1, n.Thing)
	if n.Thing == damping.Openings {
		text += prose.Sprintf("%d of %.3g mm", n.Trial.Vents, n.Trial.VentMM)
	} else {
		text += prose.Sprintf("%.4g g", n.Trial.StuffingG)
		switch {
		case n.Trial.StuffingG == 0:
		case n.Trial.DepthMM > 0:
			text += prose.Sprintf(", packed %.4g mm deep as before", n.Trial.DepthMM)
		case !math.IsNaN(t.Goal.MostDepthMM):
			text += prose.Sprintf(", packed no deeper than %.4g mm", t.Goal.MostDepthMM)
		}
	}
	if math.IsNaN(n.Q.Value) {
		text += ". How much that does cannot be told yet"
	} else {
		text += fmt.Sprintf(". Expect a Q of %.2f, give or take %.2f", n.Q.Value, n.Q.Error)
	}
	if n.Bracketed {
		text += "; the target lies between two trials"
	}
	return text + ". " + fitsText(t.Goal)
}

// spentText says what does harm, and by which trials.
func spentText(t damping.Study) string {
	var text strings.Builder
	for _, one := range t.Next.Spent {
		better, worse := t.Trials[one.Better], t.Trials[one.Worse]
		dose := func(r damping.Trial) string {
			if one.Thing == damping.Openings {
				return ventText(r)
			}
			return prose.Sprintf("%.4g g", r.StuffingG)
		}
		change, does := "More", "lowers"
		if better.Q.Value < t.Goal.Q {
			change, does = "Less", "raises"
		}
		if one.Thing == damping.Openings {
			change, does = strings.ReplaceAll(change, "Less", "Fewer"), strings.TrimSuffix(does, "s")
		}
		fmt.Fprintf(&text, "%s %v no longer %s Q: it is %.3f in trial %d (%s) and %.3f in trial %d (%s). If that surprises you, see whether each file belongs to its trial. ",
			change, one.Thing, does, better.Q.Value, one.Better+1, dose(better), worse.Q.Value, one.Worse+1, dose(worse))
	}
	return text.String()
}

// fitsText says what there is room for, and who says so.
func fitsText(g damping.Goal) string {
	text := prose.Sprintf("There is room for %.4g g and %s", g.MostG, prose.Count(g.MostVents, "opening", "openings"))
	var unsaid []string
	if !g.Said {
		unsaid = append(unsaid, "--most-stuffing-g")
	}
	if !g.SaidVents {
		unsaid = append(unsaid, "--most-vents")
	}
	if len(unsaid) == 0 {
		return text + "."
	}
	return text + ", going by the design and the trials. If more fits, say so with the next trial: " + strings.Join(unsaid, " and ") + "."
}

// tuningCautions are what to mind when a box is stuffed and measured.
var tuningCautions = []string{
	lower(words.Stuffing) + " Keep it off the resistors of crossovers too.",
	"switch off before you open the body. Measure with a low voltage, and on one channel at a time.",
}

// lower writes the first letter small.
func lower(text string) string { return strings.ToLower(text[:1]) + text[1:] }
