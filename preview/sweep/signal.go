package sweep

import (
	"cmp"
	"math"

	"pappus/layout/prose"
	"pappus/preview"
	"pappus/timing"
	"pappus/timing/sweep"

	"github.com/gopxl/beep/v2"
)

// What a signal is like where nothing else is asked for.
const (
	UsualLevel  = -20.0 // dB, full scale 0
	UsualLength = 10.0  // s
	UsualRate   = 48000 // Hz

	usualStart = 20.0    // Hz, where there is no high-pass
	usualStop  = 20000.0 // Hz, or mostOfRate
	mostOfRate = 0.45
	mostLevel  = -1.0  // dB
	leastLevel = -80.0 // dB
	lead       = 2.5   // s of silence: what plays may fade in over 2 s
	loudLevel  = -12.0 // dB from which on a caution is given
	soon       = 0.25  // s within which sound comes that the usual silence after a sweep is for: half of what it may come late, and 86 m
)

// Options say what is wanted; the zero value is the usual signal.
type Options struct {
	Start, Stop float64 // Hz; 0: the design's high-pass corner, or 20 Hz without; 20 kHz
	Length      float64 // s; 0: UsualLength
	Level       float64 // dB of the peaks, full scale 0; 0: UsualLevel
	Rate        int     // Hz; 0: UsualRate
	// Below lets the sweep begin below the high-pass's corner.
	Below bool
}

// Signal is a sweep between its markers, ready to be written or played.
type Signal struct {
	Sweep    sweep.Sweep
	Rate     int     // Hz
	Level    float64 // dB of the peaks, full scale 0
	Cautions []string
}

// New returns the signal for a plan. Errors of its sweep wrap those of package timing/sweep.
func New(p *timing.Plan, o Options) (Signal, error) {
	o = o.filled(p)
	corner := p.Protection.Corner
	if o.Start < corner && !o.Below {
		return Signal{}, prose.Errorf("below the high-pass: it would begin at %g Hz, the high-pass stands at %.4g Hz; a cone can move too far below it", o.Start, corner)
	}
	if err := checkLevel(o.Level); err != nil {
		return Signal{}, err
	}
	s, err := sweep.New(o.Start, o.Stop, o.Length)
	if err != nil {
		return Signal{}, err
	}
	s.Lead = lead
	// Delays that wait for something far away, such as a woofer, need silence that is as much longer. Whole seconds are
	// the same by a plan that changed a little between playing and measuring.
	if _, last := p.Span(timing.Aligned, true, p.Array.Spot); last > soon {
		s.Tail = min(s.Tail+2*math.Ceil(last), sweep.MostSilence)
	}
	if err := s.CheckRate(float64(o.Rate)); err != nil {
		return Signal{}, err
	}
	said := cautions(o, corner)
	if p.Array.Woofer.Present {
		said = append(said, "switch the woofer off, and its filters on the array out: the array alone is held against the plan")
	}
	return Signal{Sweep: s, Rate: o.Rate, Level: o.Level, Cautions: said}, nil
}

// checkLevel refuses a level in dB that cannot be.
func checkLevel(db float64) error {
	if !(db >= leastLevel && db <= mostLevel) {
		return prose.Errorf("impossible level: %g dB; must be from %g to %g dB, where full scale is 0", db, leastLevel, mostLevel)
	}
	return nil
}

// filled returns options with what is left out.
func (o Options) filled(p *timing.Plan) Options {
	o.Rate = cmp.Or(o.Rate, UsualRate)
	o.Start = cmp.Or(o.Start, p.Protection.Corner, usualStart)
	o.Stop = cmp.Or(o.Stop, min(usualStop, mostOfRate*float64(o.Rate)))
	o.Length = cmp.Or(o.Length, UsualLength)
	o.Level = cmp.Or(o.Level, UsualLevel)
	return o
}

// cautions returns what to mind.
func cautions(o Options, corner float64) []string {
	out := []string{
		"turn the amplifier down before the first sweep and up in small steps; stop at once if anything buzzes or smells",
		"a sweep is piercing in its upper half: do not stay near the drivers, and protect your ears where it is loud",
	}
	if o.Start < corner {
		out = append(out, prose.Sprintf("this sweep begins at %g Hz, below the high-pass at %.4g Hz: cones can move beyond their reach; keep it very quiet", o.Start, corner))
	}
	if corner == 0 {
		out = append(out, "the design has no high-pass: low tones can move the cones beyond their reach")
	}
	if o.Level > loudLevel {
		out = append(out, prose.Sprintf("%g dB below full scale is loud for a sweep: the amplifier gives nearly all that it has, and coils heat up", -o.Level))
	}
	return out
}

// Samples returns the signal's samples, mono.
func (s Signal) Samples() []float64 {
	x := s.Sweep.Samples(float64(s.Rate))
	factor := math.Pow(10, s.Level/20)
	for i := range x {
		x[i] *= factor
	}
	return x
}

// Streamer streams the signal once, the same left and right. Its level is in it: play it at 0
// dB.
func (s Signal) Streamer() beep.Streamer { return preview.Sound{Samples: s.Samples()}.Streamer() }
