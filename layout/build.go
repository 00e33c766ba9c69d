package layout

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"slices"

	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/prose"
	"pappus/layout/wiring"

	lru "github.com/hashicorp/golang-lru/v2"
)

const mm = 1e-3 // m

// Build lays a design out. The design is one that package design has read: its
// values are in range and its defaults filled in.
//
// What cannot be laid out is a *design.Error that wraps one of this package's
// errors, one of package body's, or for a list of mounts one of package
// design's. What can but should not be is in Array.Warnings.
func Build(d *design.Design) (*Array, error) { return build(d, cure) }

// Screen is Build for one of very many designs: the finding that drivers do not fit has no
// cure, which is slow to find. All else is the same.
func Screen(d *design.Design) (*Array, error) {
	return build(d, func(*Array, *design.Design, *body.Body) string { return "" })
}

// build lays a design out; heal says what would make drivers fit that do not.
func build(d *design.Design, heal healer) (*Array, error) {
	whole, err := wholeBody(d)
	if err != nil {
		return nil, err
	}
	shell, err := cutBody(d, whole)
	if err != nil {
		return nil, err
	}
	a := described(d, shell)
	if a.Driver.Response, err = named(d, "driver.response", d.Driver.ResponseFile, ReadResponse); err != nil {
		return nil, err
	}
	if a.Driver.Impedance, err = named(d, "driver.impedance", d.Driver.ImpedanceFile, ReadImpedance); err != nil {
		return nil, err
	}
	if err := a.checkListeners(d); err != nil {
		return nil, err
	}
	places, err := place(d, whole, shell)
	if err != nil {
		return nil, err
	}
	a.Mounts, a.Empty = places.mounts, places.empty
	if err := a.checkPlaces(d); err != nil {
		return nil, err
	}
	if err := a.checkCopies(d); err != nil {
		return nil, err
	}
	if a.Driver.Resonance, a.Driver.ResonanceQ, err = a.inBody(); err != nil {
		return nil, a.noRoom(err)
	}
	if err := a.checkWoofer(d); err != nil {
		return nil, err
	}
	if err := checkLoad(d, a.Driver.LeastOhm(), a.LeastLoad(), len(a.Mounts)); err != nil {
		return nil, err
	}
	if a.Fits, err = fit.Check(shell, fitMounts(a.Mounts), a.Driver.Outline, a.Limits); err != nil {
		return nil, fault(d, "driver", "", err.Error(), err)
	}
	if a.Channels, err = channels(d, a.Driver, a.LeastLoad(), a.Mounts); err != nil {
		return nil, err
	}
	fits := slices.Concat(verdict(a, d, whole, heal), leftOut(d, places), offBody(d, whole, a))
	if n := len(a.Mounts); len(a.Bodies()) > 1 {
		a.Mounts, a.Channels = a.copied(a.Mounts), a.copiedChannels(a.Channels, n)
	}
	a.Warnings = slices.Concat(fits, wiringWarnings(a), wooferWarnings(a), overhead(a))
	return a, nil
}

// described is an array of what needs no places for drivers.
func described(d *design.Design, shell *body.Body) *Array {
	a := &Array{
		File: d.Path, Lines: d.Lines, Name: d.Name, Air: d.Air, Body: shell, Stand: d.Body.Stand, Wall: d.Body.Wall,
		Driver: d.Driver, Limits: limitsOf(d), Box: d.Box, Print: d.Print, Kit: d.Kit, Build: d.Build, Parts: d.Parts,
		Placings: placings(d), On: d.Placing.On, Room: d.Room, Woofer: d.Woofer, Timing: d.Timing, Wiring: d.Wiring,
		Protection: d.Protection, Processor: d.Processor, Spot: d.Spot, Seats: d.AllSeats(), Seating: d.Seating, Coverage: d.Coverage,
	}
	if !a.Room.Present {
		a.Room = Room{}
	}
	a.Driver.Sensitivity = cmp.Or(a.Driver.Sensitivity, math.NaN())
	a.Woofer.Sensitivity = cmp.Or(a.Woofer.Sensitivity, math.NaN())
	if !a.Woofer.Present {
		a.Woofer = Woofer{}
	}
	a.Processor.Step = cmp.Or(a.Processor.Step, 1/a.Processor.Rate)
	a.Surface = a.surface(d)
	if !a.halved() {
		a.Body = shell.InOpenAir()
	}
	return a
}

func limitsOf(d *design.Design) fit.Limits {
	return fit.Limits{Wall: d.Body.Wall, Apart: d.Fit.Apart, Edge: d.Fit.Edge}
}

func fitMounts(m []Mount) []fit.Mount {
	out := make([]fit.Mount, len(m))
	for i, m := range m {
		out[i] = fit.Mount{Point: m.Point, Normal: m.Normal, Face: m.Face}
	}
	return out
}

// cutBody cuts the body where the design asks for it.
func cutBody(d *design.Design, whole *body.Body) (*body.Body, error) {
	if !d.Body.HasCut {
		return whole, nil
	}
	shell, err := whole.CutAt(d.Body.Cut)
	if err == nil {
		return shell, nil
	}
	reason := err.Error()
	if errors.Is(err, body.ErrNothingLeft) {
		reason = "nothing of the body is left above this height; must be lower"
	}
	return nil, fault(d, "body.cut_height_mm", d.Shown("body.cut_height_mm"), reason, err)
}

// checkLoad returns an error where the amplifier may not even drive all drivers in
// one string, so that no channel can be wired. Channels laid out by hand, and the
// counting on a channel for each driver, are warned of instead.
func checkLoad(d *design.Design, least, minimum float64, drivers int) error {
	one := wiring.Arrangement{{Series: drivers, Parallel: 1}}
	if d.Wiring.Channels == 0 || len(d.Channels) > 0 || one.Check(least, minimum) == nil {
		return nil
	}
	return fault(d, "wiring.minimum_load_ohm", d.Shown("wiring.minimum_load_ohm"), prose.Sprintf(
		"%s of %.3g ohm in one string load the amplifier with %.3g ohm, and no other way with more; must be at most that, and only if the amplifier allows it: else take more drivers, or some of more ohm",
		prose.Count(drivers, "driver", "drivers"), least, one.Load(least)*d.Wiring.MinimumLoad/minimum), wiring.ErrLoad)
}

// channels gives the channels that the design lays out by hand, each wired as
// well as it can be. Every driver must be in one of them.
func channels(d *design.Design, driver Driver, minimum float64, mounts []Mount) ([]Channel, error) {
	if len(d.Channels) == 0 {
		return nil, nil
	}
	index := make(map[int]int, len(mounts))
	for i, m := range mounts {
		index[m.ID] = i
	}
	taken := make([]bool, len(mounts))
	out := make([]Channel, len(d.Channels))
	for i, c := range d.Channels {
		out[i] = channel(i+1, c, driver, minimum)
		for j, id := range c.Drivers {
			m, ok := index[id]
			if !ok {
				return nil, fault(d, fmt.Sprintf("channel[%d].drivers", i+1), "", fmt.Sprintf(
					"there is no driver %d; must be a mount number from 1 to %d that is not skipped", id, mounts[len(mounts)-1].ID), ErrNoSuchMount)
			}
			out[i].Mounts[j], taken[m] = m, true
		}
	}
	if i := slices.Index(taken, false); i >= 0 {
		return nil, fault(d, "channel", "", fmt.Sprintf(
			"driver %d is in no channel; must be in one, or its place in mounts.skip", mounts[i].ID), design.ErrConflict)
	}
	return out, nil
}

// channel is one of them, wired, without its mounts.
func channel(id int, c design.Channel, driver Driver, minimum float64) Channel {
	n := len(c.Drivers)
	series, parallel, load, _ := wiring.Best(n, driver.NominalOhm, driver.LeastOhm(), minimum)
	out := Channel{
		ID: id, Mounts: make([]int, n), Gain: c.Gain, Invert: c.Invert, Delay: math.NaN(),
		Series: series, Parallel: parallel, NominalOhm: load, DCOhm: wiring.Load(series, parallel, driver.DCOhm),
	}
	if c.Delay != nil {
		out.Delay = *c.Delay
	}
	return out
}

// wiringWarnings says what the amplifier will not like.
func wiringWarnings(a *Array) []advice.Finding {
	var out []advice.Finding
	if k, n := a.Wiring.Channels, len(a.Own()); k > n {
		out = append(out, advice.Finding{Code: "channels_unused", Rank: advice.Cost,
			What: fmt.Sprintf("%d of %d channels stay unused, for there are %s", k-n, k, prose.Count(n, "driver", "drivers")),
			Cure: fmt.Sprintf("set channels = %d", n)})
	}
	n, worst, least := 0, 0, math.Inf(1)
	for _, c := range a.Channels {
		load := wiring.Load(c.Series, c.Parallel, a.Driver.LeastOhm())
		if load >= a.Wiring.MinimumLoad {
			continue
		}
		if n++; load < least {
			worst, least = c.ID, load
		}
	}
	if n > 0 {
		out = append(out, advice.Finding{Code: "load_too_low", Rank: advice.Danger,
			What: fmt.Sprintf("%s under the amplifier's minimum of %.1f ohm; channel %d is at %.1f ohm, and the amplifier can overheat",
				prose.Count(n, "channel is", "channels are"), a.Wiring.MinimumLoad, worst, least),
			Cure: "do not connect it so; put more drivers in series"})
	}
	return out
}

// wooferWarnings says where the crossover asks more of the small drivers than the
// design itself lets them give. What has to be worked out, timing warns of.
func wooferWarnings(a *Array) []advice.Finding {
	var out []advice.Finding
	for _, c := range []struct {
		hz   float64
		what string
	}{{a.Driver.Resonance, "the drivers' resonance in the body"}, {a.Protection.Corner, "the high-pass that protects the drivers"}} {
		if f, found := CrossoverWarning(a.Woofer, c.hz, c.what); found {
			out = append(out, f)
		}
	}
	return out
}

// CrossoverWarning says that a woofer's crossover is below something of the drivers,
// at a frequency in Hz, and what to do; nothing where it is not, or where the
// frequency is 0 or NaN.
func CrossoverWarning(w Woofer, hz float64, what string) (f advice.Finding, found bool) {
	if !w.Present || !(hz > w.Crossover) {
		return f, false
	}
	return advice.Finding{Code: "crossover_low", Rank: advice.Cost,
		What: prose.Sprintf("the crossover at %.4g Hz is below %s at %.4g Hz, where the array is weak and out of step with the woofer", w.Crossover, what, hz),
		Cure: prose.Sprintf("set it to %.3g Hz or above, an octave higher", 2*hz)}, true
}

// beside gives the path of a file that the design names: beside the design,
// unless it says where.
func beside(d *design.Design, path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(filepath.Dir(d.Path), path)
}

// fault is the error for a key of the design.
func fault(d *design.Design, key, value, reason string, err error) *design.Error {
	return &design.Error{File: d.Path, Line: d.Lines.Of(key), Key: key, Value: value, Reason: reason, Err: err}
}

// memory keeps what a slow function without side effects came to for the last few
// keys: a page builds its design anew at every press, and most presses leave the
// places as they are. What it keeps is shared and must not be changed.
type memory[T any] struct{ *lru.Cache[string, T] }

// mostKept is how many answers are kept: those of the designs that a builder goes
// back and forth between.
const mostKept = 16

func newMemory[T any](most int) memory[T] {
	c, err := lru.New[string, T](most)
	if err != nil {
		panic(err) // only for a size below 1
	}
	return memory[T]{c}
}

// get returns what is kept for a key, or else keeps what compute returns.
func (m memory[T]) get(key string, compute func() T) T {
	v, found := m.Get(key)
	if !found {
		v = compute()
		m.Add(key, v)
	}
	return v
}
