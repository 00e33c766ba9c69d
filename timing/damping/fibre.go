package damping

import (
	"maps"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/layout/box"
	"pappus/layout/impedance"
	"pappus/layout/kit"
	"pappus/timing/impedancefit"
)

// Fibre is what trials tell of the fibre in vents, and how much of it to try.
type Fibre struct {
	Trials []int // that tell
	// Resists is the flow resistance of the fibre over that of the published model (layout/box), and
	// Grams are how much of it in each vent brings Q nearest to the target from the next trial's base.
	// Grams are none, 0, where no filling brings Q clearly nearer.
	Resists, Grams Bounds
	Q              impedancefit.Estimate // to expect of Grams
}

// Bounds are a value as likely as not, and between what it is in 95 of 100 cases.
type Bounds struct{ Least, Likely, Most float64 }

// What is known of a vent before any trial, as natural logarithms.
const (
	// resistsOff is by how much fibre is off the published model: cushions' fibre is from 25 to 40 um
	// thick, which makes the resistance 1.7 to 0.7 times the model's (0.27, were all alike as likely);
	// packed by hand, and more densely than what was published, twice that.
	resistsOff = 0.5
	// The air in a vent weighs more than that in its tube by what is in its grids and below the floor
	// (the built-in design's kit has 1.4 times), so much it is off.
	heavier, heavierOff = 1.4, 0.3
	// shareOff is by how much the box's share of the stiffness is off the design's, which has it of the
	// drivers' sheets: from one to the next they are off by a fifth (layout/box).
	shareOff = 0.1
	// curveOff is how far the curve of a trial is off, as a factor less 1, and ownPoints for how many
	// points that tell something by themselves it counts: what is off at one frequency is off beside.
	// Of the 200 boxes of fibre.csv bounds of 95 percent held in 99.7 with curveOff at 0.05, in 97.0 at
	// 0.035, 94.5 at 0.028, and of 60 in 80 at 0.0175; twice as many points do as much as 0.7 times it.
	curveOff, ownPoints = 0.03, 12
	// readOff is how far a Q that is read is off besides, as a factor less 1: of those boxes the Q to
	// expect held in 92 to 93 of 100 with 0.05, in 96 with 0.07.
	readOff = 0.06
	// curves are looked at from curveFrom to curveTo times the closed box's resonance, where vents show.
	curveFrom, curveTo = 0.3, 2.5
	looked             = 3 * ownPoints // free: at how many points of a curve, so that long logs take no longer
)

// sealed is the closed box that a trial with vents began from, in which only they are new: the
// circuit that was fitted to it, and the share of its stiffness that is the box's.
type sealed struct {
	ohm, henry, resonance, qms, qes, share float64
	volume                                 float64
	air                                    box.Air
}

// fibreOf learns from trials with filled vents that have one without vents and the same stuffing
// beside them: the closed box is then known as it is, and what vents do to it hangs on their flow
// resistance and the weight of the air in them alone. It goes by the impedance's curve, not by Q:
// where the air in a vent is heavy the curve has two humps, and Q is of the one that is fitted. nil
// where there are none.
func fibreOf(trials []Trial, h layout.Hollow, g Goal, base int) *Fibre {
	if h.Vented == nil || base < 0 {
		return nil
	}
	f := Fibre{Q: impedancefit.Estimate{Value: math.NaN(), Error: math.NaN()}}
	learnt := priorOf()
	for i, t := range trials {
		if c, ok := sealedOf(trials, t, h); ok && t.FillG > 0 && len(t.points) > 0 {
			f.Trials = append(f.Trials, i)
			learnt.learn(c, t)
		}
	}
	if len(f.Trials) == 0 {
		return nil
	}
	f.Resists = learnt.bounds(func(s state) float64 { return math.Exp(s.resists) })
	if c, ok := sealedOf(trials, trials[base], h); ok && trials[base].FillG > 0 && !trials[base].Flat {
		f.propose(learnt, c, trials[base], g, scatterOf(trials))
	}
	return &f
}

// sealedOf returns the closed box of a trial: the latest closed trial with as much stuffing.
func sealedOf(trials []Trial, with Trial, h layout.Hollow) (sealed, bool) {
	for _, t := range slices.Backward(trials) {
		if t.Vents > 0 || t.StuffingG != with.StuffingG || t.Flat || len(t.points) == 0 {
			continue
		}
		alpha := float64(h.Vented.Number) * h.Driver.Vas / h.Vented.Volume
		f := t.Fit
		return sealed{f.DCOhm.Value, f.Inductance.Value, f.Resonance.Value, f.Qms.Value, f.Qes.Value, alpha / (1 + alpha), h.Vented.Volume, h.Vented.Air}, true
	}
	return sealed{}, false
}

// at is the impedance with vents of a flow resistance in Pa s/m3 and a mass in kg/m4 at a frequency in
// Hz: of s + w/Qms + w2/s, the closed circuit's, the box's share of w2/s has the vents beside it.
func (c sealed) at(hz, share, flow, mass float64) complex128 {
	w, s := 2*math.Pi*c.resonance, complex(0, 2*math.Pi*hz)
	air := c.volume / c.air.Stiffness() // compliance
	vent := complex(flow*air, 0) + s*complex(mass*air, 0)
	boxed := complex(share*w*w, 0) * vent / (1 + s*vent)
	moving := s + complex(w/c.qms, 0) + complex((1-share)*w*w, 0)/s + boxed
	return complex(c.ohm, 0) + s*complex(c.henry, 0) + complex(c.ohm*w/c.qes, 0)/moving
}

// state is what is not known of a vent: logarithms of how much its fibre resists over the published
// model, of how much its air weighs over that in its tubes, and of the box's share of the stiffness
// over the design's; and how likely that is.
type state struct{ resists, heavy, share, likely float64 }

// belief is all states that are thought of.
type belief []state

// priorOf is what is believed before any trial, to four standard errors of each.
func priorOf() (out belief) {
	const reach, fine, coarse = 4.0, 0.05, 0.8      // free: beyond is 1 in 16,000; finer changes nothing that is told
	for a := -reach; a <= reach+fine/2; a += fine { // free: against rounding
		for b := -reach; b <= reach+coarse/2; b += coarse { // free: so too
			for c := -reach; c <= reach+coarse/2; c += coarse { // free: so too
				out = append(out, state{resistsOff * a, math.Log(heavier) + heavierOff*b, shareOff * c, math.Exp(-(a*a + b*b + c*c) / 2)})
			}
		}
	}
	return out
}

// tubesOf are a trial's vents as holes as long as their stuffing, and the cross-section of one.
func tubesOf(t Trial) (all box.Vent, one float64) {
	all = box.Vent{Radius: t.VentMM / 2e3, Number: t.Vents, Depth: kit.FloorFill}
	return all, all.Area() / float64(t.Vents)
}

// of returns the impedance at a frequency in Hz with a trial's vents and a flow resistance of one of
// them, in a state.
func (s state) of(c sealed, t Trial, hz, flow float64) complex128 {
	all, _ := tubesOf(t)
	return c.at(hz, min(1, c.share*math.Exp(s.share)), flow/float64(t.Vents), all.Mass(c.air)*math.Exp(s.heavy))
}

// learn weighs states by how well they tell the curve of a trial.
func (b belief) learn(c sealed, t Trial) {
	_, one := tubesOf(t)
	near := slices.DeleteFunc(slices.Clone(t.points), func(p impedance.Point) bool {
		return p.Frequency < curveFrom*c.resonance || p.Frequency > curveTo*c.resonance
	})
	for i := range min(len(near), looked) {
		near[i] = near[i*len(near)/min(len(near), looked)]
	}
	near = near[:min(len(near), looked)]
	published := box.FibreFlow(t.FillG/1e3, one, kit.FloorFill)
	least := math.Inf(1)
	off := make([]float64, len(b))
	for i, s := range b {
		for _, p := range near {
			d := math.Log(cmplx.Abs(s.of(c, t, p.Frequency, published*math.Exp(s.resists)))/p.Ohm) / curveOff
			off[i] += d * d
		}
		off[i] *= min(1, ownPoints/float64(len(near))) / 2
		least = min(least, off[i])
	}
	for i := range b {
		b[i].likely *= math.Exp(least - off[i])
	}
}

// bounds returns a value's over all states.
func (b belief) bounds(of func(state) float64) Bounds {
	sum, each := 0.0, make(map[float64]float64)
	for _, s := range b {
		each[of(s)] += s.likely
	}
	values := slices.Sorted(maps.Keys(each))
	for _, v := range values {
		sum += each[v]
	}
	// A value stands for all as near to it as to the next, evenly.
	at := func(share float64) float64 {
		below := 0.0
		for i, v := range values {
			w := each[v] / sum
			if below+w/2 >= share && i > 0 { // free: moves it within a step of the grid
				before := values[i-1]
				half := (each[before]/sum + w) / 2
				return v - (v-before)*(below+w/2-share)/half
			}
			below += w
		}
		return values[len(values)-1]
	}
	return Bounds{at(0.025), at(0.5), at(0.975)}
}

// scale is what a letter scale tells, in g.
const scale = 0.1

// propose finds the filling that brings a trial's Q nearest to the target, where that is clearly
// nearer than the trial is.
func (f *Fibre) propose(b belief, c sealed, base Trial, g Goal, scatter float64) {
	likely := state{resists: math.Log(f.Resists.Likely),
		heavy: b.bounds(func(s state) float64 { return s.heavy }).Likely, share: b.bounds(func(s state) float64 { return s.share }).Likely}
	_, one := tubesOf(base)
	now := box.FibreFlow(base.FillG/1e3, one, kit.FloorFill) * f.Resists.Likely
	best, flow := math.Inf(1), 0.0
	for step := -4; step <= 4; step++ { // free: from a fifth to five times
		times := math.Pow(1.5, float64(step)) // free: closer than two trials can be told apart
		if q, ok := likely.read(c, base, times*now); ok && step != 0 && math.Abs(math.Log(q/g.Q)) < best {
			best, flow = math.Abs(math.Log(q/g.Q)), times*now
		}
	}
	if best > away(base, g)-Within {
		return
	}
	rounded := func(resists float64) float64 {
		return math.Round(1e3*box.FibreFor(flow/resists, one, kit.FloorFill)/scale) * scale
	}
	f.Grams = Bounds{rounded(f.Resists.Most), rounded(f.Resists.Likely), rounded(f.Resists.Least)}
	f.Q.Value, _ = likely.read(c, base, flow)
	spread := 0.0
	for _, resists := range []float64{f.Resists.Least, f.Resists.Most} {
		if q, ok := likely.read(c, base, flow*resists/f.Resists.Likely); ok {
			spread = max(spread, math.Abs(q-f.Q.Value)/1.96)
		}
	}
	f.Q.Error = math.Hypot(spread, f.Q.Value*math.Hypot(scatter, readOff))
}

// read is the Q that the impedance would be read to have with vents of a flow resistance each.
func (s state) read(c sealed, t Trial, flow float64) (float64, bool) {
	return c.read(func(hz float64) complex128 { return s.of(c, t, hz, flow) })
}

// Reading is the Q that the impedance of each driver of a box would be read to have, with vents of so
// many times their resistance. It is not the Q of what sounds, [box.Vented]: vents make two resonances, and
// the reading is of the one that looks most like both. It takes Fs, Qms, Qes, Qts, Vas and Re; false: the
// driver's values do not tell, or there is no resonance to be seen.
func Reading(v box.Vented, times float64) (float64, bool) {
	d := v.Driver
	closed, err := box.Close(d, v.Number, v.Volume)
	if err != nil || d.Qms == 0 || d.Qes == 0 || d.Re == 0 {
		return 0, false
	}
	up := closed.Resonance / d.Fs
	c := sealed{d.Re, 0, closed.Resonance, d.Qms * up, d.Qes * up, closed.Alpha / (1 + closed.Alpha), v.Volume, v.Air}
	return c.read(func(hz float64) complex128 { return c.at(hz, c.share, times*v.Resistance, v.Mass) })
}

// read is the Q that an impedance round the closed box's resonance would be read to have.
func (c sealed) read(of func(hz float64) complex128) (float64, bool) {
	points := make([]impedance.Point, 60) // free: far more than what a fit has unknowns
	for i := range points {
		hz := c.resonance / 5 * math.Pow(50, float64(i)/float64(len(points)-1)) // free: on to where the coil is by itself
		z := of(hz)
		points[i] = impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi}
	}
	f, err := impedancefit.Best(points)
	return f.Qts.Value, err == nil
}
