package tolerance

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/cores"
	"pappus/timing/unlike"
)

// Spread is how far values may be off on either side.
type Spread struct {
	Share float64 // of fs, Qms, Qes and Re
	Level float64 // dB, of the sensitivity
	Place float64 // m by which a driver's sound has further to go or less far
	Time  float64 // s by which it comes late or early by itself
}

// Usual is the spread that is taken where none is given.
var Usual = Spread{Share: 0.10, Level: 1, Place: 0.001, Time: 20e-6}

// Setting is how a study is made.
type Setting struct {
	Spread
	Runs int // lots
	Seed uint64
}

// With LeastRuns lots the greatest of all is beyond the 95th percentile, with 95 percent
// certainty: 0.95^59 is below 0.05 (S. S. Wilks, Determination of Sample Sizes for Setting
// Tolerance Limits, Ann. Math. Statist. 12 (1941) 91).
const (
	LeastRuns = 59
	UsualRuns = 200
	MostRuns  = 10000
)

// Cause is what is off.
type Cause int

// The causes, each by itself, and all together.
const (
	Resonance Cause = iota
	Q
	Resistance
	Level
	Place
	Time
	All
)

// takes tells whether a cause has another one in it.
func (c Cause) takes(one Cause) bool { return c == one || c == All }

// of returns how far a cause may be off, in its own unit; of all, something.
func (s Spread) of(c Cause) float64 {
	return [...]float64{s.Share, s.Share, s.Share, s.Level, s.Place, s.Time, 1}[c]
}

// Outcome is what a cause comes to over all lots.
type Outcome struct {
	Cause
	Level           Range // dB, mean from 500 Hz to 4 kHz, over that of twins
	Loss            Range // dB, of the direct sound from 500 Hz to 8 kHz
	Smear           Range // s
	LeastOhm        Range // of any channel at any tone
	Watt            Range // most in any driver
	Travel          Range // m, most of any cone; NaN: not known
	Under, Hot, Far int   // lots that load below the amplifier's minimum, overheat a driver, or move one too far
}

// Study is what lots of drivers come to.
type Study struct {
	Setting
	Plan   *timing.Plan
	Twins  timing.UnlikeHeard
	Causes []Outcome // each that is off by itself, then all
	// Low, Middle and High are the 5th, 50th and 95th percentile of the level with the delays at
	// Frequency, in dB, smoothed to thirds of an octave, of all causes together; Alike is that of
	// twins.
	Frequency, Low, Middle, High, Alike []float64
}

var (
	errSetting = errors.New("impossible tolerance")
	errSilent  = errors.New("no sound comes to the spot")
)

// check returns what cannot be.
func (s Setting) check() error {
	if s.Runs < LeastRuns || s.Runs > MostRuns {
		return fmt.Errorf("%w: %s; must be from %d to %d", errSetting, prose.Count(s.Runs, "run", "runs"), LeastRuns, MostRuns)
	}
	for _, v := range []struct {
		name        string
		value, most float64
		per         float64
	}{{"percent", s.Share, mostShare, 100}, {"dB", s.Spread.Level, mostLevel, 1}, {"mm", s.Spread.Place, mostPlace, 1000}, {"us", s.Spread.Time, mostTime, 1e6}} {
		if !(v.value >= 0 && v.value <= v.most) {
			return prose.Errorf("%w: %g %s; must be from 0 to %g", errSetting, v.value*v.per, v.name, v.most*v.per)
		}
	}
	return nil
}

// The most that values may be spread: beyond, no data sheet stands for a driver.
const (
	mostShare = 0.5
	mostLevel = 12    // dB
	mostPlace = 0.1   // m
	mostTime  = 0.001 // s
)

// Run makes a study of a plan. Errors tell of settings that cannot be, of a plan without
// sound, and that ctx has ended.
func Run(ctx context.Context, p *timing.Plan, s Setting) (*Study, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	if p.Silent() {
		return nil, p.Unheard("nothing is there to be off", errSilent)
	}
	u, err := timing.NewUnlike(p, timing.NominalDriver(p.Array.Driver))
	if err != nil {
		return nil, err
	}
	r := runner{ctx, u, s, p, make([]*timing.UnlikeEar, cores.Count())}
	for w := range r.ears {
		if r.ears[w], err = u.Ear(); err != nil {
			return nil, err
		}
	}
	return r.run()
}

// runner makes the lots of a study.
type runner struct {
	ctx     context.Context
	unlike  *timing.Unlike
	setting Setting
	plan    *timing.Plan
	ears    []*timing.UnlikeEar
}

func (r runner) run() (*Study, error) {
	twins := make([]unlike.Driver, len(r.plan.Arrivals))
	for m := range twins {
		twins[m] = r.unlike.Nominal
	}
	out := &Study{Setting: r.setting, Plan: r.plan, Frequency: r.plan.Response.Frequency}
	var err error
	if out.Twins, err = r.ears[0].Hear(twins); err != nil {
		return nil, err
	}
	out.Alike = band.Smooth(nil, out.Frequency, out.Twins.Response.Aligned, smoothing)
	for c := Resonance; c <= All; c++ {
		if r.setting.of(c) == 0 || c <= Q && !r.unlike.Nominal.Moves() {
			continue // nothing is off, or it is not known how cones move
		}
		lots, err := r.lots(c)
		if err != nil {
			return nil, err
		}
		out.Causes = append(out.Causes, outcome(c, lots, out.Twins, r.plan))
		if c == All {
			out.curves(lots)
		}
	}
	return out, nil
}

// smoothing is the part of an octave that curves are smoothed to.
const smoothing = 3

// lots hears all lots with one cause.
func (r runner) lots(c Cause) ([]timing.UnlikeHeard, error) {
	out, errs := make([]timing.UnlikeHeard, r.setting.Runs), make([]error, r.setting.Runs)
	cores.Each(r.setting.Runs, func(worker, run int) {
		if errs[run] = r.ctx.Err(); errs[run] == nil {
			out[run], errs[run] = r.ears[worker].Hear(r.draw(run, c))
		}
	})
	return out, cmp.Or(errs...)
}

// draw draws a lot. Numbers are drawn alike whatever the cause.
func (r runner) draw(run int, c Cause) []unlike.Driver {
	random := rand.New(rand.NewPCG(r.setting.Seed, uint64(run)))
	out := make([]unlike.Driver, len(r.plan.Arrivals))
	s := r.setting.Spread
	for m := range out {
		var off [7]float64
		for i := range off {
			off[i] = 2*random.Float64() - 1
		}
		d := r.unlike.Nominal
		d.Level = 1
		if c.takes(Resonance) {
			d.Resonance *= 1 + s.Share*off[0]
		}
		if c.takes(Q) {
			d.Qms, d.Qes = d.Qms*(1+s.Share*off[1]), d.Qes*(1+s.Share*off[2])
		}
		if c.takes(Resistance) {
			d.DCOhm *= 1 + s.Share*off[3]
		}
		if c.takes(Level) {
			d.Level = math.Pow(10, s.Level*off[4]/20)
		}
		if c.takes(Place) {
			d.Late += s.Place * off[5] / r.plan.SpeedOfSound
		}
		if c.takes(Time) {
			d.Late += s.Time * off[6]
		}
		out[m] = d
	}
	return out
}
