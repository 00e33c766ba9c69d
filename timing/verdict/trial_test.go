package verdict_test

import (
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"

	"pappus/testdata/trialtable"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/cores"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"
	"pappus/timing/trial"
	"pappus/timing/verdict"

	"gonum.org/v1/gonum/spatial/r3"
)

var (
	cases = flag.Int("cases", 0, "how many made-up cases to look at; 0: some of the table's are made again")
	kind  = flag.String("kind", "", "only cases with this fault")
	each  = flag.Bool("each", false, "print what each case came to")
)

// allCases is how many cases the table beside the package counts.
const allCases = 500

// trialDesign is a small array to rehearse with.
type trialDesign struct {
	name   string
	text   string
	isTrue bool // its body is heard as it is, not as a ball with a random shape
	high   float64
}

const trialText = `
name = "Trial"
[body]
%s
radius_mm = 150
wall_mm = 3
[mounts]
%s
[driver]
diameter_mm = 32
flange_mm = 40
nominal_ohm = 8
dc_ohm = 7.1
sensitivity_db = 82
power_w = 2
resonance_hz = 200
resonance_q = 0.707
[timing]
field_low_hz = 500
field_high_hz = %.0f
[wiring]
channels = %d
minimum_load_ohm = 2
longest_string = %d
[protection]
corner_hz = 150
[spot]
x_m = %.2f
y_m = %.2f
z_m = %.2f
%s
`

// trialDesigns are few drivers on bodies that are far from balls, which are solved for, and more on those
// that are nearer to one; some on a table; in few channels and in many.
var trialDesigns = []trialDesign{
	on("dodecahedron", "faces", 4, 1, r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, ""),
	on("icosahedron", "faces", 8, 1, r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, ""),
	on("cube", "faces", 3, 1, r3.Vec{X: 1.6, Y: 0.7, Z: 0.5}, ""),
	on("ball", "even\"\ncount = 24 #", 6, 2, r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, table),
	on("dodecahedron", "faces", 6, 1, r3.Vec{X: 1.2, Y: -1.1, Z: 0.3}, ""),
	on("ball", "even\"\ncount = 32 #", 8, 2, r3.Vec{X: 2.5, Y: -0.5, Z: 0.2}, ""),
	on("icosahedron", "faces", 5, 2, r3.Vec{X: -1.3, Y: 1.5, Z: 0.4}, table),
	on("dodecahedron", "faces", 2, 1, r3.Vec{X: 1.5, Y: 0.8, Z: -0.4}, ""),
	on("truncated icosahedron", "faces", 6, 2, r3.Vec{X: 1.5, Y: 0, Z: 0.8}, table),
}

const table = "[surface]\nabsorption = 0.1"

// on returns a design with drivers on a body, in channels with strings of so many at most.
func on(shape, mounts string, channels, longest int, spot r3.Vec, surface string) trialDesign {
	d := trialDesign{name: fmt.Sprintf("%s, %d channels", shape, channels), high: 8000, isTrue: shape == "dodecahedron" || shape == "cube"}
	if d.isTrue {
		d.high = 4000 // which fields are solved up to
	}
	body := fmt.Sprintf("shape = %q", shape)
	if surface != "" {
		body += "\nstand_height_mm = 25"
	}
	d.text = fmt.Sprintf(trialText, body, fmt.Sprintf("on = \"%s\"", mounts), d.high, channels, longest, spot.X, spot.Y, spot.Z, surface)
	return d
}

// one is one case, and what became of it.
type one struct {
	index  int
	design trialDesign
	plan   *timing.Plan
	sweep  sweep.Sweep
	rate   float64
	vary   rehearsal.Variation
	fault  rehearsal.Fault

	recorded takes
	found    verdict.Found
	err      error
}

// trialCase returns the case of a number: a third have no fault.
func trialCase(plans []*timing.Plan, i int) *one {
	kind := rehearsal.Sound
	if i%3 != 0 {
		kind = rehearsal.Kinds[1+(2*(i/3)+i%3-1)%(len(rehearsal.Kinds)-1)]
	}
	seed := uint64(i + 1)
	for try := range plans {
		d := (i + i/len(plans) + try) % len(plans) // no design goes with one kind
		fault, possible := rehearsal.DrawFault(plans[d], kind, seed)
		if !possible {
			continue
		}
		c := &one{index: i, design: trialDesigns[d], plan: plans[d], fault: fault, vary: rehearsal.Draw(plans[d], seed)}
		if c.design.isTrue {
			c.vary.True, c.vary.Shape = true, rehearsal.Shape{}
		}
		c.rate = 2.4 * c.design.high * 1.4
		c.sweep = sweep.Sweep{Start: 150, Stop: 1.4 * c.design.high, Length: 0.8, Rise: 0.02, Fall: 0.005, Lead: 0.3, Gap: 0.2, Tail: 0.3}
		return c
	}
	panic("no design has room for " + string(kind))
}

// record makes a case's recordings.
func (c *one) record() error {
	s := rehearsal.NewSession(c.plan, c.vary, c.fault, rehearsal.Setting{Rate: c.rate, SNR: 80, Latency: 0.011, Seed: uint64(c.index) << 16})
	c.recorded = takes{}
	for i := rehearsal.All; i < len(c.plan.Channels); i++ {
		name := sweep.RecordedName
		if i >= 0 {
			name = sweep.RecordedChannelName(c.plan.Channels[i].ID, 1)
		}
		take, err := s.Record(c.sweep, i)
		if err != nil {
			return fmt.Errorf("case %d, %s: %w", c.index, name, err)
		}
		c.recorded[name+".wav"] = take
	}
	return nil
}

// judge holds its recordings against its plan.
func (c *one) judge() error {
	c.found, c.err = verdict.Takes{Sweep: c.sweep, Read: c.recorded.read, Level: verdict.LevelSetting{Case: timing.Aligned}}.Judge(c.plan)
	if errors.Is(c.err, fs.ErrNotExist) {
		return c.err
	}
	return nil
}

// run records a case and judges it; what was recorded is not kept.
func (c *one) run() error {
	if err := c.record(); err != nil {
		return err
	}
	defer func() { c.recorded = nil }()
	return c.judge()
}

// facts are what was said, each of one channel, by its index; -1: of all.
func (c *one) facts() (codes []verdict.Code, channels []int) {
	for _, f := range c.found.Faults {
		ids := f.Channels
		if f.Code == verdict.Halves {
			ids = append(slices.Clone(ids), f.Others...)
		}
		if len(ids) == 0 {
			codes, channels = append(codes, f.Code), append(channels, -1)
		}
		for _, id := range ids {
			codes = append(codes, f.Code)
			channels = append(channels, slices.IndexFunc(c.plan.Channels, func(x timing.Channel) bool { return x.ID == id }))
		}
	}
	return codes, channels
}

// names are the words that name a fault rightly.
var names = map[rehearsal.Kind][]verdict.Code{
	rehearsal.ReversedChannel: {verdict.Reversed, verdict.Halves},
	rehearsal.DeadString:      {verdict.DeadString, verdict.Quiet},
	rehearsal.DeadChannel:     {verdict.Silent},
	rehearsal.LateChannel:     {verdict.Late},
	rehearsal.QuietChannel:    {verdict.Quiet},
	rehearsal.LoudChannel:     {verdict.Loud},
	rehearsal.ReversedDriver:  {verdict.Unlike, verdict.Vague, verdict.Quiet, verdict.DeadString},
	rehearsal.Exchanged:       {verdict.Exchanged},
	rehearsal.SameFile:        {verdict.Alike},
	rehearsal.NoDelays:        {verdict.NoDelaysSet},
	rehearsal.WireInverted:    {verdict.WireInverted},
	rehearsal.WireLevel:       {verdict.WireLevel},
	rehearsal.WrongFile:       {verdict.Unusable},
	rehearsal.Clipped:         {verdict.Unusable},
	rehearsal.GainChanged:     {verdict.Unusable},
	rehearsal.Stopped:         {verdict.Unusable},
	rehearsal.OtherRate:       {verdict.Unusable},
}

// concerns tells whether a fault is of a channel; -1: of all of them.
func concerns(f rehearsal.Fault, channel int) bool {
	switch f.Kind {
	case rehearsal.Sound:
		return false
	case rehearsal.NoDelays, rehearsal.OtherRate:
		return true
	case rehearsal.Exchanged, rehearsal.SameFile:
		return channel == f.Channel || channel == f.Other
	}
	return channel == f.Channel
}

// score counts what a case came to.
func (c *one) score(t *trialtable.Tally) (said string) {
	codes, channels := c.facts()
	right, noticed := c.err != nil && c.fault.Kind == rehearsal.OtherRate, false
	wrong := map[verdict.Code]bool{}
	for i, code := range codes {
		switch {
		case code == verdict.Uncompared && c.fault.Kind != rehearsal.Sound: // follows from the fault
		case !concerns(c.fault, channels[i]):
			wrong[code] = true
		case slices.Contains(names[c.fault.Kind], code):
			right = true
		default:
			noticed = true
		}
	}
	of := string(c.fault.Kind)
	if c.fault.Kind != rehearsal.Sound {
		t.Add(of, trial.Missed, !right && !noticed)
		t.Add(of, verdict.Misnamed, !right && noticed)
	}
	if c.fault.Kind == rehearsal.Sound {
		t.Add(of, trial.FalseAlarm, len(wrong) > 0)
	}
	for _, code := range words {
		t.Add(string(code), trial.FalseAlarm, wrong[code])
	}
	switch {
	case c.fault.Kind != rehearsal.Sound && !right && !noticed:
		said = "MISSED "
	case c.fault.Kind != rehearsal.Sound && !right:
		said = "named otherwise "
	}
	if len(wrong) > 0 {
		said += "FALSE "
	}
	return said
}

// words are those of which false ones are counted.
var words = []verdict.Code{verdict.Reversed, verdict.Halves, verdict.DeadString, verdict.Silent, verdict.Late, verdict.Quiet, verdict.Loud, verdict.Unlike, verdict.Vague,
	verdict.Exchanged, verdict.Alike, verdict.NoDelaysSet, verdict.WireInverted, verdict.WireLevel, verdict.Unusable, verdict.WholeUnusable}

// cover counts which intervals held the truth: of what drivers and faults do, as the plan's own
// model has it at the spot.
func (c *one) cover(t *trialtable.Tally) (off []float64) {
	if c.err != nil || c.found.Channels != nil && c.found.Channels.OtherCase {
		return nil
	}
	s := rehearsal.NewSession(c.plan, rehearsal.Variation{Drivers: c.vary.Drivers}, c.fault, rehearsal.Setting{})
	if v := c.found.Channels; v != nil {
		off = c.coverChannels(t, s.Truth(v.Frequency), *v)
	}
	if v := c.found.Level; v != nil && c.fault.Kind == rehearsal.Sound {
		off = append(off, c.coverLevel(t, s.Truth(v.Frequency), *v)...)
	}
	return off
}

// measurable are the faults with which a channel's own level and time are still told.
var measurable = []rehearsal.Kind{rehearsal.ReversedChannel, rehearsal.LateChannel, rehearsal.QuietChannel, rehearsal.LoudChannel}

// coverChannels counts levels and times of channels, each over that of the middle one.
func (c *one) coverChannels(t *trialtable.Tally, is rehearsal.Truth, v verdict.Channels) (off []float64) {
	var levels, times []float64
	known := func(i int) bool {
		return !math.IsNaN(v.Channels[i].LevelError) && v.Channels[i].DeadString < 0
	}
	for i := range v.Channels {
		if known(i) {
			levels, times = append(levels, is.Level[i]), append(times, is.Late[i])
		}
	}
	slices.Sort(levels)
	slices.Sort(times)
	for i, got := range v.Channels {
		if !known(i) || concerns(c.fault, i) && !slices.Contains(measurable, c.fault.Kind) {
			continue
		}
		if level := got.Level - (is.Level[i] - levels[len(levels)/2]); !math.IsNaN(level) {
			t.Add("level of a channel", trial.Covered, math.Abs(level) <= verdict.Expanded*got.LevelError)
			off = append(off, level, got.LevelError)
		}
		if late := got.Late - (is.Late[i] - times[(len(times)-1)/2]); !math.IsNaN(late) {
			t.Add("time of a channel", trial.Covered, math.Abs(late) <= verdict.Expanded*got.Error)
			off = append(off, 1e6*late, 1e6*got.Error)
		}
	}
	return off
}

// coverLevel counts thirds of octaves of all channels together.
func (c *one) coverLevel(t *trialtable.Tally, truth rehearsal.Truth, v verdict.Level) (off []float64) {
	is, was := make([]complex128, len(v.Frequency)), make([]complex128, len(v.Frequency))
	for i := range truth.Built {
		for f := range is {
			is[f], was[f] = is[f]+truth.Built[i][f], was[f]+truth.Planned[i][f]
		}
	}
	var differences []float64
	sum, count := 0.0, 0.0
	for _, b := range v.Bands {
		low, high := band.Edges(b.Centre, 3)
		from, to := band.Range(v.Frequency, low, high)
		difference := 10 * math.Log10(energyOf(is[from:to])/energyOf(was[from:to]))
		differences = append(differences, difference)
		if b.Centre >= v.Low && b.Centre <= v.High {
			sum, count = sum+difference, count+1
		}
	}
	for i, b := range v.Bands {
		wrong := b.Difference - (differences[i] - sum/count)
		t.Add("third of an octave", trial.Covered, math.Abs(wrong) <= verdict.Expanded*b.Error)
		off = append(off, math.Round(b.Centre), wrong, b.Error)
	}
	return off
}

func energyOf(x []complex128) (sum float64) {
	for _, v := range x {
		sum += real(v)*real(v) + imag(v)*imag(v)
	}
	return sum
}

// TestTrial: of made-up cases, those of the table beside the package are missed or false alarms; 95
// percent intervals hold the truth in 90 to 99 of 100. Some cases are made again, of each of which it is known what it
// came to; with -cases so many of them are, and their own table is printed or held.
func TestTrial(t *testing.T) {
	if *cases > 0 {
		look(t)
		return
	}
	plans := trialPlans(t)
	holds(t, trialtable.Trial{File: "trial.csv", Remark: remark, Cases: allCases, Few: 5, Many: 12, Sorted: byWhat, One: func(i int) (of trialtable.Tally) {
		c := trialCase(plans, i)
		if err := c.run(); err != nil {
			t.Error(err)
		}
		c.score(&of)
		c.cover(&of)
		return of
	}}.Hold(t))
}

// byWhat sorts rows by what they count.
func byWhat(a, b trial.Row) int { return strings.Compare(a.What, b.What) }

// look makes some cases, and prints what they come to.
func look(t *testing.T) {
	all := trialCases(t, *first, *first+*cases)
	do(t, all, (*one).run)
	var tally trialtable.Tally
	for _, c := range all {
		said := c.score(&tally)
		off := c.cover(&tally)
		if *each {
			fmt.Printf("%d %s%s: %v, told %q, %v; off %.2f\n", c.index, said, c.design.name, c.fault, told(c.found.Faults), c.err, off)
		}
	}
	slices.SortStableFunc(tally.Table, byWhat)
	fmt.Println(trialtable.CSV(tally.Table))
	holds(t, tally.Table)
}

// trialPlans are those of the trial's designs.
func trialPlans(t *testing.T) (plans []*timing.Plan) {
	t.Helper()
	for _, d := range trialDesigns {
		plans = append(plans, planOf(t, d.text))
	}
	return plans
}

// trialCases returns cases from one number to before another.
func trialCases(t *testing.T, from, to int) (all []*one) {
	t.Helper()
	plans := trialPlans(t)
	for i := from; i < to; i++ {
		if c := trialCase(plans, i); *kind == "" || string(c.fault.Kind) == *kind {
			all = append(all, c)
		}
	}
	return all
}

// do does something with all cases, on all cores.
func do(t *testing.T, all []*one, what func(*one) error) {
	t.Helper()
	failed := make([]error, len(all))
	cores.Each(len(all), func(_, i int) { failed[i] = what(all[i]) })
	if err := errors.Join(failed...); err != nil {
		t.Fatal(err)
	}
}

// remark says what the table is.
const remark = `What measure makes of 500 made-up loudspeakers with a fault or none: go test ./timing/verdict -run TestTrial -write
Nine designs with 2 to 8 channels; drivers, microphone, air, body, echoes, noise, hum, clock, woofer and thumps as rehearsal.Draw has them.
missed: nothing was said of the fault; named otherwise: something else was said of what has it; false alarm: the word was said of what has no fault.
Each fault that is missed or not is one case, and each word that may be false, too. The last two columns are Wilson's 95 percent interval.`

// holds checks what must hold of a table of any number of cases: of errors, that 95 percent
// intervals hold the truth in 90 to 99 of 100, and of faults, that few are missed and few are said that are
// not there, as far as so many cases can tell.
func holds(t *testing.T, table trial.Table) {
	t.Helper()
	for _, what := range []string{"level of a channel", "time of a channel", "third of an octave"} {
		if low, high := table.Of(what, trial.Covered).Interval(); high < 0.9 || low > 0.99 {
			t.Errorf("%s: %.1f to %.1f percent of intervals hold the truth", what, 100*low, 100*high)
		}
	}
	var missed, wrong trial.Count
	for _, r := range table {
		switch {
		case r.What == trial.Missed:
			missed.Cases, missed.Times = missed.Cases+r.Cases, missed.Times+r.Times
		case r.What == trial.FalseAlarm && r.Of == string(rehearsal.Sound):
			wrong = r.Count
		}
	}
	if low, _ := missed.Interval(); low > mostMissed {
		t.Errorf("%d of %d faults are missed", missed.Times, missed.Cases)
	}
	if low, _ := wrong.Interval(); low > mostWrong {
		t.Errorf("of %d loudspeakers without a fault %d are called faulty", wrong.Cases, wrong.Times)
	}
}

// What cases must hold.
const (
	mostMissed = 0.1 // of all kinds of faults
	mostWrong  = 0.05
)
