package damping

import (
	"math"

	"pappus/layout/dampinglog"
	"pappus/timing/impedancefit"
)

// Thing is what may differ between two trials.
type Thing int8

// The things there are. Several stands for more than one at once.
const (
	Nothing Thing = iota
	Openings
	Stuffing
	Depth
	Filling
	Several
)

// String names the thing.
func (t Thing) String() string {
	return [...]string{"nothing", "openings", "stuffing", "packed depth", "filling of vents", "several things at once"}[t]
}

// Change is a trial set against an earlier one.
type Change struct {
	From, To int // indices of trials
	Thing    Thing
	// What became of it, with standard errors that have the scatter of trials in them.
	Resonance, PeakOver, Q impedancefit.Estimate
	// Clear says that Q differs by more than twice its error; never so where a trial is
	// flat.
	Clear bool
}

// Scatter is by how much, as a factor less 1, the Q of trials alike is taken to
// differ.
const Scatter = 0.03

// clearSigmas is how many standard errors a difference must have.
const clearSigmas = 2

// Changes sets each trial but the first against the latest earlier one that differs in
// one thing; where there is none, against the latest that differs in nothing, or else
// in Several: then nothing tells which of them did it.
func Changes(trials []Trial) []Change {
	scatter := scatterOf(trials)
	var out []Change
	for to := 1; to < len(trials); to++ {
		from, thing := to-1, Several
		for _, wanted := range []func(Thing) bool{func(t Thing) bool { return t != Nothing && t != Several }, func(t Thing) bool { return t == Nothing }} {
			if i := latest(trials, to, wanted); i >= 0 {
				from, thing = i, difference(trials[i].Trial, trials[to].Trial)
				break
			}
		}
		a, b := trials[from], trials[to]
		c := Change{From: from, To: to, Thing: thing,
			Resonance: less(b.Resonance, a.Resonance, 0), PeakOver: less(b.PeakOver, a.PeakOver, scatter), Q: less(b.Q, a.Q, scatter)}
		c.Clear = math.Abs(c.Q.Value) > clearSigmas*c.Q.Error
		out = append(out, c)
	}
	return out
}

func latest(trials []Trial, before int, wanted func(Thing) bool) int {
	for i := before - 1; i >= 0; i-- {
		if wanted(difference(trials[i].Trial, trials[before].Trial)) {
			return i
		}
	}
	return -1
}

// difference returns what differs between two states of the box. A depth that is not
// known, or of no stuffing, does not count.
func difference(a, b dampinglog.Trial) Thing {
	out := Nothing
	note := func(differs bool, t Thing) {
		switch {
		case !differs:
		case out == Nothing:
			out = t
		default:
			out = Several
		}
	}
	note(a.Vents != b.Vents || a.Vents > 0 && a.VentMM != b.VentMM, Openings)
	note(a.FillG != b.FillG && a.Vents > 0 && b.Vents > 0, Filling)
	note(a.StuffingG != b.StuffingG, Stuffing)
	note(a.DepthMM != b.DepthMM && a.DepthMM > 0 && b.DepthMM > 0, Depth)
	return out
}

// less returns a difference, with a relative scatter of both added to their errors.
func less(a, b impedancefit.Estimate, scatter float64) impedancefit.Estimate {
	return impedancefit.Estimate{Value: a.Value - b.Value, Error: math.Hypot(math.Hypot(a.Error, scatter*a.Value), math.Hypot(b.Error, scatter*b.Value))}
}

// scatterOf returns how much Q scatters between trials alike, as a factor less 1:
// that of the trials and, as if two more had been, Scatter.
func scatterOf(trials []Trial) float64 {
	square, count := 2*Scatter*Scatter, 2.0
	for to := range trials {
		if i := latest(trials, to, func(t Thing) bool { return t == Nothing }); i >= 0 && !trials[i].Flat && !trials[to].Flat {
			d := math.Log(trials[to].Q.Value / trials[i].Q.Value)
			square += d * d / 2
			count++
		}
	}
	return math.Sqrt(square / count)
}
