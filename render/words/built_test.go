package words

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pappus/layout/impedance"
	"pappus/timing"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
	"pappus/timing/recording"
	"pappus/timing/seats"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
)

// TestLevelled says what is left alone, and how far it came.
func TestLevelled(t *testing.T) {
	l := timing.Levelling{Frequency: []float64{100, 10000}, UnevenBefore: 0.44, UnevenAfter: 0.12}
	says(t, Levelled(l), []string{"100 Hz to 10 kHz, sixth-octave smoothed: uneven by 0.4 dB, and no section is worth setting."}, []string{"left alone"})
	l.Nulls, l.Sections = []timing.Null{{Low: 2500, High: 10000, Loss: 15}}, append(l.Sections, l.Sections...)
	says(t, Levelled(l), []string{"but for what is left alone: uneven by 0.4 dB"}, nil)
}

// TestModelError is told from half a tenth of a dB on, at the last frequency and at 1 kHz.
func TestModelError(t *testing.T) {
	l := timing.Levelling{Frequency: []float64{500, 900, 4000}, Error: []float64{0.01, 0.02, 0.045}}
	if got := ModelError(l) + ModelError(timing.Levelling{}); got != "" {
		t.Errorf("hardly off, and says %q", got)
	}
	l.Error[2] = 0.055
	says(t, ModelError(l), []string{"0.0 dB at 1 kHz, 0.1 dB at 4 kHz"}, nil)
}

// TestWooferWords: who waits, what is lost, and how the levels stand.
func TestWooferWords(t *testing.T) {
	w := timing.Woofer{Delay: 1.5e-3, Meets: 300, Loss: -1e-9, OtherLoss: 12.34}
	says(t, WooferSet(w), []string{"delay 1.5000 ms; polarity +."}, []string{"waits"})
	w.ArrayDelay, w.Invert = 2e-3, true
	says(t, WooferSet(w), []string{"; every channel of the array waits for it, with 2.000 ms that are in its delay already; polarity -."}, nil)
	for _, test := range []struct {
		name          string
		louder, other float64
		matched       bool
		says          string
	}{
		{"alike", 0.045, 12.34, false, "Both meet at 300 Hz; the sum there is 0.0 dB short of both in step, with the other polarity 12.3 dB. Both are as loud at the crossover."},
		{"louder", 0.055, timing.SilenceLoss, false, "with the other polarity all of it. The woofer is 0.1 dB louder than the array at the crossover; gain_db = -2.1 makes both alike."},
		{"weaker", -3, 1, false, "The woofer is 3.0 dB weaker than the array at the crossover; gain_db = 1.0 makes both alike, if its maker allows that."},
		{"not known", math.NaN(), math.NaN(), true, "with the other polarity - dB. For want of a sensitivity"},
	} {
		t.Run(test.name, func(t *testing.T) {
			w.Louder, w.OtherLoss, w.Matched = test.louder, test.other, test.matched
			says(t, WooferMeets(w, -2), []string{test.says}, nil)
		})
	}
	w.Loss = math.NaN()
	says(t, WooferMeets(w, -2), []string{"The array is not heard at the spot: there the woofer plays alone"}, []string{"NaN", "Both meet"})
}

// TestImpedanceWords: what was fitted, and how it stands to the design.
func TestImpedanceWords(t *testing.T) {
	m := impedancefit.Study{Points: []impedance.Point{{Frequency: 20}, {Frequency: 20000}}, Fit: impedancefit.Fit{Coil: impedancefit.Ideal, Misfit: 0.00123}}
	says(t, Impedance(m), []string{"2 points from 20 Hz to 20 kHz. A driver with an i", "follows them within 0.12 percent."}, []string{"left over", "stand out"})
	m.Fit.Systematic, m.Fit.Coil, m.Fit.LeftOut = true, impedancefit.Semi, []float64{50, 100, 150, 200, 250, 300, 350}
	says(t, Impedance(m), []string{"A driver with a s", "the errors stated are wider for it.", "7 stand out and were left out (hum, perhaps): 50 Hz, 100 Hz, 150 Hz, 200 Hz, 250 Hz, 300 Hz, and so on."}, nil)
	m.Fit.Misfit = 1
	says(t, Impedance(m), []string{"only roughly such a circuit"}, nil)
	if got := AgainstDesign(m); got != "" {
		t.Error(got)
	}
	m.PlannedOhm, m.Fit.DCOhm.Value = 7.1, 6
	says(t, AgainstDesign(m), []string{"Re is 6 ohm, the design's dc_ohm 7.1. Measure it with a meter"}, []string{"--series-ohm"})
	m.Recorded = true
	says(t, AgainstDesign(m), []string{"--series-ohm is wrong"}, nil)
}

// TestLoadWords: what a channel's load means.
func TestLoadWords(t *testing.T) {
	open := impedancefit.Cause{State: impedance.Open, Strings: 1, Length: 2, Ratio: 1.5}
	for _, test := range []struct {
		name     string
		load     impedancefit.Load
		has, not []string
	}{
		{"as planned", impedancefit.Load{Ratio: 1, Sure: true}, []string{"Channel 3: 1.00 times the planned load", "So all strings play."}, []string{"Which one"}},
		{"open", impedancefit.Load{Ratio: 1.5, Sure: true, Cause: open}, []string{"So a string of 2 is open. Which one cannot be told from here"}, []string{"But"}},
		{"alike", impedancefit.Load{Ratio: 1.5, Sure: true, Cause: open, Alike: []impedancefit.Mistake{impedancefit.OneDriver, impedancefit.OneTooMany}},
			[]string{"But a single driver alone, or the channel with one string too many would measure the same: see what is connected."}, nil},
		{"not sure", impedancefit.Load{Ratio: 21, Cause: open, Others: []impedancefit.Cause{{}, {}, {}, {}}},
			[]string{"Channel 3: over 20 times", "Not sure: perhaps a string of 2 is open, perhaps all strings play or all strings play or all strings play; drivers differ"}, nil},
		{"flat", impedancefit.Load{Ratio: 0.04, Flat: true}, []string{"Channel 3: under 0.05 times", "No resonance is to be seen"}, nil},
		{"nothing", impedancefit.Load{Ratio: 0.06}, []string{"0.06 times", "Nothing that is thought of here explains it"}, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			says(t, LoadTitle(3, test.load)+"\n"+Load(test.load), test.has, test.not)
		})
	}
}

// trial has openings, stuffing and a Q.
func trialOf(vents int, grams, q float64) damping.Trial {
	t := damping.Trial{Q: impedancefit.Estimate{Value: q, Error: 0.01}}
	t.Vents, t.VentMM, t.StuffingG, t.DepthMM = vents, 5, grams, 20
	return t
}

// TestChange says which change did what.
func TestChange(t *testing.T) {
	trials := []damping.Trial{trialOf(0, 10, 0.8), trialOf(4, 20, 0.7)}
	trials[1].DepthMM, trials[1].FillG = 30, 4.5
	e := func(v float64) impedancefit.Estimate { return impedancefit.Estimate{Value: v, Error: 0.02} }
	for _, test := range []struct {
		name  string
		thing damping.Thing
		clear bool
		a, b  bool // flat
		ends  string
	}{
		{"openings", damping.Openings, true, false, false, "openings 4 x 5, were closed; Q -0.100 +- 0.020, peak +0.20 +- 0.02, resonance -3.0 +- 0.0 Hz."},
		{"stuffing", damping.Stuffing, false, false, false, "stuffing 20 g, was 10 g; Q -0.100 +- 0.020, peak +0.20 +- 0.02, resonance -3.0 +- 0.0 Hz: no more than trials scatter."},
		{"depth", damping.Depth, true, false, true, "packed 30 mm deep, was 20 mm; no resonance is to be seen any more."},
		{"filling", damping.Filling, true, false, true, "4.5 g in each vent, was 0 g; no resonance is to be seen any more."},
		{"several", damping.Several, true, false, false, "Which of them did it cannot be told: change one at a time."},
		{"nothing", damping.Nothing, true, true, false, "the same again; the resonance is back."},
	} {
		t.Run(test.name, func(t *testing.T) {
			trials[0].Flat, trials[1].Flat = test.a, test.b
			got := Change(trials, damping.Change{From: 0, To: 1, Thing: test.thing, Clear: test.clear, Q: e(-0.1), PeakOver: e(0.2), Resonance: impedancefit.Estimate{Value: -3, Error: 0.04}})
			if !strings.HasPrefix(got, "Trial 2 against 1: ") || !strings.HasSuffix(got, test.ends) {
				t.Errorf("says %q", got)
			}
		})
	}
}

// TestFilling: too high a Q wants less in the vents, too low a one more; unfilled vents nothing.
func TestFilling(t *testing.T) {
	for _, c := range []struct {
		grams, q float64
		says     string
	}{{0, 0.9, ""}, {4, 0.9, "to 3 g each: less of it lowers Q"}, {4, 0.6, "to 5 g each: more of it raises Q"}} {
		trial := trialOf(4, 10, c.q)
		trial.FillG = c.grams
		got := filling(damping.Study{Trials: []damping.Trial{trial}, Goal: damping.Goal{Q: 0.7}})
		if !strings.Contains(got, c.says) || (got == "") != (c.says == "") {
			t.Errorf("%g g at Q %g: %q", c.grams, c.q, got)
		}
	}
}

// TestFibreTold: grams with their range and what they are argued by; where none help, that; where nothing
// tells, what would.
func TestFibreTold(t *testing.T) {
	told := damping.Fibre{Trials: []int{1, 2}, Resists: damping.Bounds{Least: 0.9, Likely: 1.3, Most: 1.62}, Q: impedancefit.Estimate{Value: 0.81, Error: 0.06}}
	grams := told
	grams.Grams = damping.Bounds{Least: 3.3, Likely: 4.1, Most: 5.2}
	by := "by the impedance of trials 2 and 3 it resists 1.3 times what is published for such fibre, 0.9 to 1.6 (after Garai and Pompoli 2005). "
	for _, c := range []struct {
		fibre *damping.Fibre
		says  string
	}{
		{&grams, "Or change the vents' filling alone, to 4.1 g each, 3.3 to 5.2 g in 95 of 100 cases: " + by + "Expect a Q of 0.81, give or take 0.06. "},
		{&told, "No other filling of these vents brings Q clearly nearer: " + by},
		{nil, "Or change the vents' filling alone, to 3 g each: less of it lowers Q, until they are too open, and Q rises again. A trial with the vents closed off and the same stuffing would tell what a gram of it does. "},
	} {
		trial := trialOf(4, 10, 0.9)
		trial.FillG = 4
		if got := filling(damping.Study{Trials: []damping.Trial{trial}, Goal: damping.Goal{Q: 0.7}, Fibre: c.fibre}); got != c.says {
			t.Errorf("%q, want %q", got, c.says)
		}
	}
}

// TestNext says what to try next.
func TestNext(t *testing.T) {
	trials := []damping.Trial{trialOf(0, 10, 0.8), trialOf(0, 20, 0.85)}
	goal := damping.Goal{Q: 0.7, MostG: 40, MostVents: 8, MostDepthMM: 35, Said: true, SaidVents: true}
	study := func(change func(*damping.Study)) damping.Study {
		s := damping.Study{Design: "mine.toml", Trials: trials, Goal: goal, Next: damping.Next{Thing: damping.Stuffing, Trial: trialOf(0, 15, 0).Trial, Q: impedancefit.Estimate{Value: 0.72, Error: 0.03}}}
		change(&s)
		return s
	}
	for _, test := range []struct {
		name     string
		with     func(*damping.Study)
		has, not []string
	}{
		{"none yet", func(s *damping.Study) { s.Why = damping.ErrNoTrials }, []string{"box bare and closed, and add that: pappus tune add mine.toml --impedance FILE."}, nil},
		{"out of reach", func(s *damping.Study) { s.Why = errors.New("too far") }, []string{"Too far."}, nil},
		{"there", func(s *damping.Study) { s.Next.Reached, s.Next.Base = true, 1 }, []string{"Trial 2 is there: its Q is 0.720, within 5 percent of the target."}, []string{"open vents"}},
		{"there by its reading", func(s *damping.Study) {
			s.Next.Reached, s.Next.Base, s.Sounds = true, 1, &damping.Sounding{Q: 0.912, Best: 0.707, Read: 0.608}
		}, []string{"what sounds has a Q of about 0.91, a hump of up to 0.8 dB", "these come to 0.71, where about 0.61 is read"}, nil},
		{"there, and as open as can be", func(s *damping.Study) {
			s.Next.Reached, s.Next.Base, s.Sounds = true, 1, &damping.Sounding{Q: 0.72, Best: 0.707, Read: 0.608}
		}, nil, []string{"open vents"}},
		{"as before", func(s *damping.Study) {}, []string{"Begin from trial 1 and change the stuffing alone: 15 g, packed 20 mm deep as before. Expect a Q of 0.72, give or take 0.03. There is room for 40 g and 8 openings."}, nil},
		{"loose", func(s *damping.Study) { s.Next.Trial.DepthMM, s.Next.Bracketed = 0, true }, []string{", packed no deeper than 35 mm", "; the target lies between two trials. There"}, nil},
		{"none", func(s *damping.Study) { s.Next.Trial.StuffingG, s.Next.Q.Value = 0, math.NaN() }, []string{"alone: 0 g. How much that does cannot be told yet."}, nil},
		{"openings", func(s *damping.Study) {
			s.Next.Thing, s.Next.Trial, s.Goal.Said, s.Goal.SaidVents = damping.Openings, trialOf(3, 0, 0).Trial, false, false
		},
			[]string{"change the openings alone: 3 of 5 mm.", "going by the design and the trials. If more fits, say so with the next trial: --most-stuffing-g and --most-vents."}, nil},
		{"spent", func(s *damping.Study) { s.Next.Spent = []damping.Spent{{Thing: damping.Stuffing, Better: 0, Worse: 1}} },
			[]string{"More stuffing no longer lowers Q: it is 0.800 in trial 1 (10 g) and 0.850 in trial 2 (20 g)."}, nil},
		{"too few openings", func(s *damping.Study) {
			s.Goal.Q, s.Next.Spent = 0.9, []damping.Spent{{Thing: damping.Openings, Better: 0, Worse: 1}}
		},
			[]string{"Fewer openings no longer raise Q: it is 0.800 in trial 1 (closed)"}, nil},
	} {
		t.Run(test.name, func(t *testing.T) { says(t, Next(study(test.with)), test.has, test.not) })
	}
}

// TestLevelMeasured: how the whole array measured, and what to mind.
func TestLevelMeasured(t *testing.T) {
	v := verdict.Level{Low: 500, High: 4000, Uneven: 1.23}
	m := recording.Measured{}
	says(t, LevelMeasured(v, m), []string{"From 500 Hz to 4.0 kHz the thirds of octaves differ from the plan by 1.2 dB (RMS)."}, []string{"furthest", "gate", "clock"})
	v.Bands = []verdict.Band{{Centre: 1000, Difference: -0.04, Error: 0.5}, {Centre: 2000, Difference: -3, Error: 1}, {Centre: 4000, Difference: 2, Error: 0.5}}
	v.OtherCase, v.OtherUneven, v.Gated, m.Gated.To, m.Gated.Lowest, m.Drift = true, 0.4, true, 0.01, 312, -42
	says(t, LevelMeasured(v, m), []string{"The furthest off is 2 kHz, by -3.0 dB, give or take 2.0 dB; 2 of 3 differ by more than their errors.", "would differ by 0.4 dB only",
		"The gate of 10.0 ms tells nothing below 312 Hz.", "The recorder's clock runs -42 parts per million"}, nil)
	v.Bands = v.Bands[:1]
	says(t, LevelMeasured(v, m), []string{"by +0.0 dB, give or take 1.0 dB; none differs by more than its error"}, nil)
	v.Bands[0].Error = 0.01
	says(t, LevelMeasured(v, m), []string{"give or take <0.1 dB; one of 1 differs by more than its error"}, nil)
	f := verdict.Found{Level: &v, Whole: &m, Notes: []verdict.Fact{{Code: verdict.NoWire}}}
	if got := MeasuredSentences(f); len(got) != 2 || !strings.HasPrefix(got[1], "Mind: without a wire") {
		t.Errorf("%q", got)
	}
	if got := MeasuredSentences(verdict.Found{Notes: f.Notes}); len(got) != 1 {
		t.Errorf("%q", got)
	}
}

// TestGive writes errors no finer than they tell, and none as 0.
func TestGive(t *testing.T) {
	for v, want := range map[float64]string{0: "<0.1", 0.049: "<0.1", 0.051: "0.1", 3.14: "3.1", 9.9: "9.9", 10.4: "10"} {
		if got := Give(v, 1); got != want {
			t.Errorf("%g is %q, want %q", v, got, want)
		}
	}
	if got := Give(math.NaN(), 1); got != "-" {
		t.Error(got)
	}
}

// TestSeatsMeasured: one seat, several, and with the mean measured; each caution names its seat.
func TestSeatsMeasured(t *testing.T) {
	noisy := &recording.Measured{Cautions: []recording.Caution{{Code: recording.BelowGate, Hz: 120}}}
	heard := []verdict.Seat{{Name: "door", Error: 0.5, Whole: noisy}, {Name: "mat", Error: 0.3, Whole: &recording.Measured{}}}
	planned := seats.Figures{Worst: 7.1, Mean: 7.5, Between: 0.9, Seat: []float64{7.1, 6.5}}
	measured := seats.Figures{Worst: 7.4, Mean: 7.6, Between: 1.2, Seat: []float64{7.4, 5.7}}
	for _, test := range []struct {
		name string
		of   verdict.Seats
		want string
	}{
		{"one", verdict.Seats{Heard: heard[1:], Planned: seats.Figures{Worst: 6.5, Seat: []float64{6.5}}, Measured: seats.Figures{Worst: 5.7, Seat: []float64{5.7}}},
			`At "mat" 5.7 dB are lost against all drivers in step; planned were 6.5 dB.`},
		{"several", verdict.Seats{Heard: heard, Planned: planned, Measured: measured},
			`Of the 2 seats that were recorded "door" loses most against all drivers in step, 7.4 dB; planned were 7.1 dB. From seat to seat the loss differs by 1.2 dB, planned 0.9 dB. ` +
				`The mean is taken to be as planned: to measure it, too, record the channels one by one at the spot, with the same gains and the wire. ` +
				`The furthest off its plan is "mat", where 0.8 dB less are lost, give or take 0.6 dB; one of 2 differs by more than its error.`},
		{"with the mean", verdict.Seats{Heard: heard, Planned: planned, Measured: planned, OwnMean: true},
			`Of the 2 seats that were recorded "door" loses most against all drivers in step, 7.1 dB; planned were 7.1 dB. From seat to seat the loss differs by 0.9 dB, planned 0.9 dB; ` +
				`over seats and thirds it is 7.5 dB on the mean, planned 7.5 dB. The furthest off its plan is "door", where 0.0 dB more are lost, give or take 1.0 dB; none differs by more than its error.`},
	} {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, SeatsMeasured(test.of)); diff != "" {
				t.Error(diff)
			}
		})
	}
	got := MeasuredSentences(verdict.Found{Seats: &verdict.Seats{Heard: heard, Planned: planned, Measured: measured}})
	if len(got) != 2 || got[1] != `Mind at "door": the gate leaves nothing honest below 120 Hz.` {
		t.Errorf("%q", got)
	}
}

// TestSilentSpot: where no driver is heard, that is all there is to say of delays.
func TestSilentSpot(t *testing.T) {
	p := planned()
	p.Arrivals = []timing.Arrival{{Level: math.Inf(-1)}, {Level: math.Inf(-1)}}
	if got := Found(p); got != "No sound of the drivers comes to the spot: all face away from it." {
		t.Error(got)
	}
	if p.Arrivals[1].Level = -80; p.Silent() {
		t.Error("one is heard, if softly")
	}
}
