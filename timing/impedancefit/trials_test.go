package impedancefit_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/layout/box"
	"pappus/layout/impedance"
	"pappus/testdata/trialtable"
	"pappus/timing/cores"
	"pappus/timing/impedancefit"
	"pappus/timing/trial"
)

// happening is one count of a case.
type happening struct {
	of, what string
	happened bool
}

// tally makes so many cases, and counts what happens.
func tally(into *trialtable.Tally, cases int, one func(seed uint64) []happening) {
	all := make([][]happening, cases)
	cores.Each(cases, func(_, i int) { all[i] = one(uint64(i)) })
	for _, happenings := range all {
		for _, h := range happenings {
			into.Add(h.of, h.what, h.happened)
		}
	}
}

// fitted by a meter's table, or by a recording.
func measured(at func(hz float64) complex128, recorded bool, random *rand.Rand) (impedancefit.Fit, error) {
	if !recorded {
		return impedancefit.Best(tabled(at, random))
	}
	r := taken(at, random)
	points, err := r.Impedance()
	if err != nil {
		return impedancefit.Fit{}, err
	}
	return impedancefit.BestOf(points, r.SeriesOhm)
}

const ninetyFive = 1.96 // standard errors on both sides of a value

// covers counts whether the intervals of a fit hold the truth.
func covers(out *[]happening, of string, got impedancefit.Estimate, want float64) {
	*out = append(*out, happening{of, trial.Covered, math.Abs(got.Value-want) < ninetyFive*got.Error})
}

// driverCase measures a driver in free air, and with a mass or in a box.
func driverCase(seed uint64) (out []happening) {
	random := rand.New(rand.NewPCG(seed, 31))
	d := newMadeUp(random)
	recorded := seed%2 == 1
	how := map[bool]string{false: " in a table", true: " in a recording"}[recorded]
	f, err := measured(d.at, recorded, random)
	out = append(out, happening{"a driver" + how, trial.Refused, err != nil})
	if err != nil {
		return out
	}
	w := d.truth()
	for _, v := range []struct {
		name string
		got  impedancefit.Estimate
		want float64
	}{{"fs", f.Resonance, w.fs}, {"Qms", f.Qms, w.qms}, {"Qes", f.Qes, w.qes}, {"Qts", f.Qts, w.qms * w.qes / (w.qms + w.qes)}, {"Re", f.DCOhm, w.re}} {
		covers(&out, v.name+how, v.got, v.want)
	}
	spring := air.Density * air.SoundSpeed * air.SoundSpeed * d.area * d.area
	as := impedancefit.Second{Area: d.area * (1 + 0.015*random.NormFloat64()), Air: box.Air{Density: air.Density * (1 + 0.02*random.NormFloat64()), SoundSpeed: air.SoundSpeed}}
	second, way := d, " by a mass"
	if random.IntN(2) == 0 {
		second.added = d.mass * even(random, 0.3, 1.5)
		second.aside, second.rocks = 4*math.Pow(even(random, 0, 0.1), 2), d.reference*even(random, 1.6, 3)
		as.Mass = second.added * (1 + 0.01*random.NormFloat64())
	} else {
		way = " by a box"
		second.box, second.leak = spring*d.cms/even(random, 0.5, 3), drawn(random, 10, 100)
		as.Volume = second.box * (1 + 0.02*random.NormFloat64())
	}
	again, err := measured(second.at, recorded, random)
	var m impedancefit.Mechanical
	if err == nil {
		m, err = f.Mechanical(again, as)
	}
	out = append(out, happening{"Vas" + way, trial.Refused, err != nil})
	if err == nil {
		covers(&out, "Vas"+way, m.Vas, spring*w.cms)
		covers(&out, "Mms"+way, m.Mass, d.mass)
		covers(&out, "BL"+way, m.BL, d.bl)
	}
	return out
}

// clippedCase records a driver whose loudest samples are cut, or not, on one side or both.
func clippedCase(seed uint64) []happening {
	random := rand.New(rand.NewPCG(seed, 33))
	r := taken(newMadeUp(random).at, random)
	cut := seed%2 == 1
	if cut {
		sides := [][][]float64{{r.Whole}, {r.Driver}, {r.Whole, r.Driver}}[random.IntN(3)]
		share := even(random, 0.5, 0.95)
		for _, side := range sides {
			most := 0.0
			for _, v := range side {
				most = max(most, math.Abs(v))
			}
			for i, v := range side {
				side[i] = max(-share*most, min(share*most, v))
			}
		}
	}
	_, err := r.Impedance()
	if cut {
		return []happening{{"a clipped recording", trial.Missed, err == nil}}
	}
	return []happening{{"a clipped recording", trial.FalseAlarm, err != nil}}
}

// judged is a channel with what was said of it; ok is false where nothing was.
type judged struct {
	wrong int
	channel
	load impedancefit.Load
	fit  impedancefit.Fit
	ok   bool
}

// channelCase measures a channel and compares it.
func channelCase(seed uint64) judged {
	random := rand.New(rand.NewPCG(seed, 32))
	j := judged{wrong: int(seed % makes)}
	j.channel = newChannel(j.wrong, random)
	points, err := tabled(j.at, random), error(nil)
	if random.IntN(2) == 0 {
		points, err = taken(j.at, random).Impedance()
	}
	if err == nil {
		j.load, err = impedancefit.Compare(points, j.planned, j.driver)
	}
	if j.ok = err == nil; j.ok {
		j.fit, _ = impedancefit.Best(points) // none where there is no resonance
	}
	return j
}

// right tells whether a cause is what was made wrong.
func right(wrong int, cause impedancefit.Cause) bool {
	switch wrong {
	case openString:
		return cause.State == impedance.Open && (cause.Strings == 1 || math.IsInf(cause.Ratio, 1))
	case shortedDriver:
		return cause.State == impedance.Shorted && cause.Drivers == 1
	case shortedString:
		return cause.State == impedance.Shorted && cause.Drivers == cause.Length
	}
	return false
}

// said counts what a verdict on a channel is worth.
func said(wrong int, l impedancefit.Load, ok bool, suffix string) (out []happening) {
	if wrong == sound {
		return []happening{{"a sound channel" + suffix, trial.FalseAlarm, ok && (l.Flat || l.Loose || l.Sure && l.Cause.State != impedance.Alive)},
			{"a sound channel" + suffix, "not sure", ok && !l.Sure}, {"a sound channel" + suffix, trial.Refused, !ok}}
	}
	fault := impedancefit.Faults[wrong-1]
	out = append(out, happening{fault + suffix, trial.Missed, ok && l.AsPlanned()})
	if wrong == openString || wrong == shortedDriver || wrong == shortedString {
		out = append(out, happening{fault + suffix, "taken for another", ok && l.Sure && l.Cause.State != impedance.Alive && !right(wrong, l.Cause)})
	}
	return append(out, happening{fault + suffix, "not sure", ok && !l.Sure}, happening{fault + suffix, trial.Refused, !ok})
}

// TestTrials makes some of the cases of trials.csv again, of each of which it is known what it came to: 500 drivers, 200
// recordings, 700 channels.
func TestTrials(t *testing.T) {
	const drivers, recordings = 500, 200
	table := trialtable.Trial{File: "trials.csv", Cases: drivers + recordings + 100*makes, Few: 8, Many: 50, Remark: "Made-up drivers and channels, with what the fit does not know of (madeup_test.go), by\ngo test ./timing/impedancefit -run TestTrials -write",
		One: func(i int) (of trialtable.Tally) {
			var all []happening
			switch {
			case i < drivers:
				all = driverCase(uint64(i))
			case i < drivers+recordings:
				all = clippedCase(uint64(i - drivers))
			default:
				j := channelCase(uint64(i - drivers - recordings))
				all = said(j.wrong, j.load, j.ok, "")
			}
			for _, h := range all {
				of.Add(h.of, h.what, h.happened)
			}
			return of
		}}.Hold(t)
	for _, r := range table {
		if low, high := r.Interval(); r.What == trial.Covered && (high < 0.9 || low > 0.99 || r.Share() < 0.9) {
			t.Errorf("%s: %d of %d intervals hold the truth", r.Of, r.Times, r.Cases)
		}
	}
}

// sweeps has sweeps.csv made again.
var sweeps = flag.Bool("sweeps", false, "make the sweeps of thresholds again")

// TestSweeps makes sweeps.csv again: the same channels, with thresholds at other places.
func TestSweeps(t *testing.T) {
	if !*sweeps {
		t.Skip("takes a minute; -sweeps has it")
	}
	var table trialtable.Tally
	tally(&table, 100*makes, func(seed uint64) (out []happening) {
		j := channelCase(seed)
		for _, tolerance := range []float64{0.02, 0.03, 0.04, impedancefit.Tolerance, 0.06, 0.08, 0.1} {
			if j.wrong != leaking && j.wrong != anotherMake {
				one := j.load
				if j.ok {
					one = one.Again(j.planned, j.driver, 2000, tolerance)
				}
				one.Loose = false
				out = append(out, said(j.wrong, one, j.ok, fmt.Sprintf(", tolerance %g", tolerance))...)
			}
		}
		for _, misfit := range []float64{0.015, 0.02, 0.025, 0.03, 0.04, 0.05} {
			if j.wrong == leaking {
				out = append(out, happening{fmt.Sprintf("a leak, misfit %g", misfit), trial.Missed, j.ok && !impedancefit.Loose(j.fit, misfit)})
			}
			if j.wrong == sound {
				out = append(out, happening{fmt.Sprintf("a leak, misfit %g", misfit), trial.FalseAlarm, j.ok && impedancefit.Loose(j.fit, misfit)})
			}
		}
		return out
	})
	table.Hold(t, "sweeps.csv", "The channels of trials.csv, with thresholds at other places, by\ngo test ./timing/impedancefit -run TestSweeps -sweeps -write")
}
