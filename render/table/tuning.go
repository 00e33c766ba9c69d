package table

import (
	"fmt"
	"io"
	"math"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

// Trials writes one row for each trial.
func Trials(w io.Writer, trials []damping.Trial) error {
	t := newSheet("trial", "date", "vents", "vent_mm:2", "stuffing_g:1", "depth_mm:1", "resonance_hz:2", "resonance_error_hz:2",
		"peak_over_re:4", "peak_over_re_error:4", "q:4", "q_error:4", "uneven_db:2", "remark", "fill_g:2")
	for i, r := range trials {
		t.add(i+1, r.Date, r.Vents, r.VentMM, r.StuffingG, r.DepthMM, r.Resonance.Value, r.Resonance.Error,
			r.PeakOver.Value, r.PeakOver.Error, r.Q.Value, r.Q.Error, r.Uneven, r.Remark, r.FillG)
	}
	return t.write(w)
}

// TuningScreen writes for people the trials side by side, which change did what, and
// what to try next.
func TuningScreen(w io.Writer, t damping.Study, colour bool) error {
	s := &screen{style: style(colour)}
	fmt.Fprintln(s, s.strong(t.Name+": damping the shared box"))
	prose.Fprintf(s, "target Q %.3g; log %s\n\n", t.Goal.Q, t.Log)
	if len(t.Trials) > 0 {
		s.trials(t)
	}
	if changes := damping.Changes(t.Trials); len(changes) > 0 {
		s.note("which change did what")
		for _, c := range changes {
			s.say(words.Change(t.Trials, c))
		}
		s.note(Wrap(words.ChangeTrials()))
		fmt.Fprintln(s)
	}
	s.note("next")
	s.say(words.Next(t))
	if t.Why == nil && !t.Next.Reached {
		s.note(Wrap(words.NextTrials()))
	}
	fmt.Fprintln(s)
	for _, text := range words.TuningCautions {
		s.lookOut(text)
	}
	return s.to(w)
}

// trials lists trials side by side.
func (s *screen) trials(t damping.Study) {
	row := s.list("trial  vents      stuffing   depth  resonance peak/Re              Q  uneven", "%5d  %-9s %7.1f g %s %10s %7.2f %14s %7s%s")
	for i, r := range t.Trials {
		reached := ""
		if i == t.Next.Base && t.Next.Reached {
			reached = " *"
		}
		row(i+1, words.Vents(r), r.StuffingG, depth(r.DepthMM), unit(dash(r.Resonance.Value, 1), "Hz"), r.PeakOver.Value, within(r.Q), unit(dash(r.Uneven, 1), "dB"), reached)
		rough := ""
		if r.Fit.Rough() {
			rough = prose.Sprintf("a circuit follows it only within %.2g percent: Q is rough", 100*r.Fit.Misfit)
		}
		filled := ""
		if r.FillG > 0 {
			filled = prose.Sprintf("%.3g g in each vent", r.FillG)
		}
		for _, note := range []string{filled, r.Date, r.Remark, rough} {
			if note != "" {
				s.note("       " + note)
			}
		}
	}
	s.note(fmt.Sprintf("  Q +- what noise leaves open; trials alike differ by about %.0f percent more", 100*damping.Scatter))
	s.note("  uneven: of the response from 500 Hz to 4 kHz, third-octave smoothed")
	fmt.Fprintln(s)
}

// within writes a Q with its standard error; a dash where there is none.
func within(e impedancefit.Estimate) string {
	if math.IsNaN(e.Value) {
		return "-"
	}
	return fmt.Sprintf("%.3f +- %.3f", e.Value, e.Error)
}

func unit(v, name string) string {
	if v == "-" {
		return v
	}
	return v + " " + name
}

func depth(mm float64) string {
	if mm == 0 {
		return "     - "
	}
	return fmt.Sprintf("%4.0f mm", mm)
}
