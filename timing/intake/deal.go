package intake

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"pappus/timing"
	"pappus/timing/cores"
	"pappus/timing/sorting"
	"pappus/timing/tolerance"
	"pappus/timing/unlike"
)

// Deal is which driver goes where in a plan, and what that brings.
type Deal struct {
	Plan    *timing.Plan
	Places  []Place // in the order of channels, strings and joints; nil where too few drivers are good
	Spares  []int   // good drivers that are not needed, as indices into Lot.Drivers
	Lacking int     // drivers

	Twins  timing.UnlikeHeard // all as designed
	Middle timing.UnlikeHeard // all as the middle of the lot
	AsCome Dealt              // in the order of their names
	Chance [6]tolerance.Range // dealt by chance: of each figure as Figures has them
	Sorted Dealt
}

// Dealt is drivers in their places, and how far what they give scatters: the root of the cost that
// package sorting has, an RMS of relative errors.
type Dealt struct {
	timing.UnlikeHeard
	Scatter float64
}

// Place is a driver's place.
type Place struct {
	Channel       int // index into Plan.Channels
	String, Joint int // from 0
	Mount         int // index into Array.Mounts
	Driver        int // index into Lot.Drivers
}

// InString are the drivers of one string, in the order of its joints.
type InString struct {
	Channel, String int
	Mounts, Drivers []int // as indices
}

// Strings returns the places string by string.
func (d *Deal) Strings() (all []InString) {
	for _, at := range d.Places {
		if at.Joint == 0 {
			all = append(all, InString{Channel: at.Channel, String: at.String})
		}
		s := &all[len(all)-1]
		s.Mounts, s.Drivers = append(s.Mounts, at.Mount), append(s.Drivers, at.Driver)
	}
	return all
}

// chances is how often drivers are dealt by chance: enough for a 95th percentile.
const chances = tolerance.LeastRuns // free: argued there

// Figures returns what is told of a deal: mean level in dB, loss in dB, smear in s, least load in
// ohm, most power in W and most travel in m.
func Figures(h timing.UnlikeHeard) [6]float64 {
	return [6]float64{h.Mean, h.Loss, h.Smear, h.LeastOhm, h.Watt, h.Travel}
}

// Deal deals the good drivers of a lot that was judged out to a plan's strings. Errors tell of
// values that cannot be, and that ctx has ended.
func (l *Lot) Deal(ctx context.Context, p *timing.Plan) (*Deal, error) {
	var good []int
	for i, d := range l.Drivers {
		if d.Good() {
			good = append(good, i)
		}
	}
	out := &Deal{Plan: p, Lacking: max(0, len(p.Arrivals)-len(good))}
	middle := l.middleDriver(p.Array.Driver.DCOhm)
	nominal := timing.NominalDriver(p.Array.Driver)
	if !nominal.Moves() || !middle.Moves() {
		nominal = middle // what the design does not tell of its driver, or the lot of its own
	}
	u, err := timing.NewUnlike(p, nominal)
	if err != nil || out.Lacking > 0 {
		return out, err
	}
	t := table{u: u, drivers: make([]unlike.Driver, len(good))}
	for i, d := range good {
		t.drivers[i] = l.Drivers[d].unlike(middle)
	}
	if err := t.curves(ctx); err != nil {
		return out, err
	}
	return out, out.deal(ctx, t, good, nominal, middle)
}

// table is good drivers with their curves, in places that are mounts.
type table struct {
	u       *timing.Unlike
	drivers []unlike.Driver
	problem sorting.Problem
}

// curves fills in what is sorted.
func (t *table) curves(ctx context.Context) error {
	n := len(t.drivers)
	t.problem = sorting.Problem{Ohm: make([][]complex128, n), Velocity: make([][]complex128, n), Weight: t.u.Weights()}
	for _, s := range t.u.Places() {
		t.problem.Strings = append(t.problem.Strings, s.Places)
	}
	errs := make([]error, n)
	cores.Each(n, func(_, i int) {
		if errs[i] = ctx.Err(); errs[i] == nil {
			t.problem.Ohm[i], t.problem.Velocity[i], errs[i] = t.u.Curves(t.drivers[i])
		}
	})
	return cmp.Or(errs...)
}

// deal sorts and hears.
func (d *Deal) deal(ctx context.Context, t table, good []int, nominal, middle unlike.Driver) error {
	ear, err := t.u.Ear()
	if err != nil {
		return err
	}
	all := func(one unlike.Driver) []unlike.Driver {
		return slices.Repeat([]unlike.Driver{one}, len(t.problem.Weight))
	}
	if d.Twins, err = ear.Hear(all(nominal)); err != nil {
		return err
	}
	if d.Middle, err = ear.Hear(all(middle)); err != nil {
		return err
	}
	asCome := t.asCome()
	if d.AsCome, err = t.dealt(ear, asCome); err != nil {
		return err
	}
	if err := d.byChance(ctx, t, asCome); err != nil {
		return err
	}
	order, spare := t.problem.Sort(ctx)
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if d.Sorted, err = t.dealt(ear, order); err != nil {
		return err
	}
	d.place(t.u.Places(), order, good)
	for _, s := range spare {
		d.Spares = append(d.Spares, good[s])
	}
	return nil
}

// asCome puts drivers into places string by string, in the order in which they are, the spares
// last.
func (t table) asCome() []int {
	out, next := make([]int, len(t.drivers)), 0
	for _, s := range t.problem.Strings {
		for _, place := range s {
			out[place] = next
			next++
		}
	}
	for i := next; i < len(out); i++ {
		out[i] = i
	}
	return out
}

// dealt hears drivers in their places.
func (t table) dealt(ear *timing.UnlikeEar, order []int) (h Dealt, err error) {
	n := len(t.problem.Weight)
	drivers := make([]unlike.Driver, n)
	for place, d := range order[:n] {
		drivers[place] = t.drivers[d]
	}
	h.UnlikeHeard, err = ear.Hear(drivers)
	h.Scatter = math.Sqrt(t.problem.Cost(order))
	return h, err
}

// byChance hears drivers dealt by chance, seeded.
func (d *Deal) byChance(ctx context.Context, t table, order []int) error {
	ears, errs := make([]*timing.UnlikeEar, cores.Count()), make([]error, chances)
	for w := range ears {
		var err error
		if ears[w], err = t.u.Ear(); err != nil {
			return err
		}
	}
	var figures [6][chances]float64
	cores.Each(chances, func(worker, i int) {
		if errs[i] = ctx.Err(); errs[i] != nil {
			return
		}
		mixed, random := slices.Clone(order), rand.New(rand.NewPCG(1, uint64(i)))
		random.Shuffle(len(mixed), func(a, b int) { mixed[a], mixed[b] = mixed[b], mixed[a] })
		h, err := t.dealt(ears[worker], mixed)
		errs[i] = err
		for k, v := range Figures(h.UnlikeHeard) {
			figures[k][i] = v
		}
	})
	if err := cmp.Or(errs...); err != nil {
		return err
	}
	for k := range figures {
		d.Chance[k] = tolerance.RangeOf(figures[k][:])
	}
	return nil
}

// place lists which driver is where.
func (d *Deal) place(strings []unlike.String, order, good []int) {
	in := map[int]int{} // strings of each channel so far
	for _, s := range strings {
		for joint, mount := range s.Places {
			d.Places = append(d.Places, Place{s.Channel, in[s.Channel], joint, mount, good[order[mount]]})
		}
		in[s.Channel]++
	}
}
