package recording_test

import (
	"errors"
	"flag"
	"math"
	"slices"
	"testing"

	"pappus/testdata/trialtable"
	"pappus/timing/cores"
	"pappus/timing/recording"
	"pappus/timing/sweep"
	"pappus/timing/trial"
)

// said are the errors, or the cautions, that name a fault rightly.
var said = map[fault]struct {
	errors  []error
	caution recording.Code
}{
	clipped:     {[]error{recording.ErrClipped}, ""},
	gainChanged: {[]error{recording.ErrUnsteady}, recording.GainChanged},
	stopped:     {[]error{recording.ErrUnsteady}, ""},
	otherBand:   {[]error{recording.ErrOther, recording.ErrNoSweep}, ""},
	otherLength: {[]error{recording.ErrNoSweep, recording.ErrTruncated, recording.ErrOther}, ""},
	otherRate:   {[]error{recording.ErrNoSweep, recording.ErrTruncated, recording.ErrOther, sweep.ErrRate}, ""},
	cutShort:    {[]error{recording.ErrTruncated}, ""},
	swapped:     {[]error{recording.ErrSwapped}, ""},
	nothing:     {[]error{recording.ErrNoSweep, recording.ErrQuiet}, ""},
	overdriven:  {nil, recording.Overloaded},
}

// close is how far off a level may be in dB that is of use: a third of what an ear can just tell (common practice).
const close = 0.3

// score counts what becomes of a made-up recording.
func (m *madeUp) score(t *trialtable.Tally) {
	got, err := recording.Analyse(m.take(), m.sweep, recording.Options{})
	is := said[m.fault]
	cautioned := func(code recording.Code) bool {
		return slices.ContainsFunc(got.Cautions, func(c recording.Caution) bool { return c.Code == code })
	}
	right := is.caution != "" && cautioned(is.caution) || err != nil && slices.ContainsFunc(is.errors, func(e error) bool { return errors.Is(err, e) })
	of := string(m.fault)
	if m.fault == none {
		t.Add(of, trial.FalseAlarm, err != nil)
	} else {
		t.Add(of, trial.Missed, !right && err == nil)
		t.Add(of, misnamed, !right && err != nil)
	}
	for _, code := range []recording.Code{recording.Overloaded, recording.GainChanged} {
		if code != is.caution {
			t.Add(string(code), trial.FalseAlarm, cautioned(code))
		}
	}
	if m.fault == none && err == nil {
		m.cover(t, got)
	}
}

// misnamed is what a row counts of faults of which something else was said.
const misnamed = "named otherwise"

// cover counts which 95 percent intervals hold the truth, and which levels are of use.
func (m *madeUp) cover(t *trialtable.Tally, got recording.Measured) {
	const ninetyFive = 1.96
	for _, c := range []struct {
		of string
		recording.Response
		within float64
	}{{"gated level", got.Gated, 0.75 * recording.UsualGate}, {"whole level", got.Whole, math.Inf(1)}} {
		truth := m.truth(got.Frequency, c.within)
		for f, level := range c.Level {
			off := math.Abs(level - truth[f])
			if !math.IsNaN(off) {
				t.Add(c.of, trial.Covered, off <= ninetyFive*c.Error[f])
			}
			t.Add(c.of, trial.Useful, off <= close)
		}
	}
}

// trials counts made-up recordings.
func trials(all []*madeUp) (out trialtable.Tally) {
	each := make([]trialtable.Tally, len(all))
	cores.Each(len(all), func(_, i int) { all[i].score(&each[i]) })
	for _, of := range each {
		out.Join(of)
	}
	return out
}

// madeUps makes recordings.
func madeUps(from, to int) []*madeUp {
	out := make([]*madeUp, to-from)
	cores.Each(len(out), func(_, i int) { out[i] = newMadeUp(uint64(from + i)) })
	return out
}

// TestTrials makes some recordings of trials.csv again, of each of which it is known what it came to.
func TestTrials(t *testing.T) {
	trialtable.Trial{File: "trials.csv", Cases: 240, Few: 12, Many: 30, Remark: "What Analyse makes of 240 made-up recordings with a fault or none (madeup_test.go), by\ngo test ./timing/recording -run TestTrials -write\nLevels are counted by frequencies.",
		One: func(i int) (of trialtable.Tally) {
			newMadeUp(uint64(i)).score(&of)
			return of
		}}.Hold(t)
}

var (
	tried   = flag.String("try", "", "constants to multiply, with commas between: by testdata/thresholds")
	factors = flag.String("by", "", "by what")
	first   = flag.Int("first", 0, "the first recording")
	cases   = flag.Int("cases", 0, "how many recordings")
)

// TestTried counts the same recordings with constants at other places, for testdata/thresholds.
func TestTried(t *testing.T) {
	if *tried == "" {
		t.Skip("is run by testdata/thresholds")
	}
	all := madeUps(*first, *first+*cases)
	judged := func() string { return trialtable.CSV(trials(all).Table) }
	if err := trialtable.Each(*tried, *factors, judged); err != nil {
		t.Fatal(err)
	}
}
