package rehearsal

import (
	"errors"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"sync"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
)

// errSetting is for settings that cannot be.
var errSetting = errors.New("impossible rehearsal")

// All stands for all channels.
const All = -1

// Setting says what is recorded.
type Setting struct {
	Case    timing.Case // AsBuilt: no delays set; Aligned: the plan's
	Channel int         // index into Plan.Channels, played alone; All: all of them
	Rate    float64     // Hz, as the recorder has it
	Drift   float64     // parts per million by which the recorder's clock is fast
	SNR     float64     // dB, of what the microphone hears of all channels over its noise, RMS
	Latency float64     // s, of player and recorder together
	Seed    uint64
	// DeadStrings are silent: pairs of channel and string, as indices. Reversed channels
	// have their wires swapped.
	DeadStrings [][2]int
	Reversed    []int
}

// Example is a setting with two faults to find, at a recorder's rate in Hz: in the first
// channel with several strings one is dead, and the last channel's wires are swapped.
func Example(p *timing.Plan, rate float64) Setting {
	set := Setting{Case: timing.Aligned, Channel: All, Rate: rate, Drift: 40, SNR: 60, Latency: 0.02, Seed: 1, Reversed: []int{len(p.Channels) - 1}}
	if c := slices.IndexFunc(p.Banks, func(b timing.Bank) bool { return len(b.Strings) > 1 }); c >= 0 {
		set.DeadStrings = [][2]int{{c, len(p.Banks[c].Strings) - 1}}
	}
	return set
}

// What recordings are made with.
const (
	full    = 0.1  // amplitude that the level of a whole array is brought to
	rings   = 0.15 // s that an impulse response lasts after the last echo's beginning
	before  = 0.01 // s that it begins before time 0
	wireSNR = 90.0 // dB, of the reference
)

// Stage records a plan many times. What its strings give at the spot, which takes long, is
// computed once for settings of one case and rate in a row. Several goroutines may record.
type Stage struct {
	mu        sync.Mutex
	plan      *timing.Plan
	as        *Stage // whose level is brought to full; nil: its own
	played    timing.Case
	rate      float64   // Hz
	frequency []float64 // Hz, of a transform; nil: nothing is computed yet
	strings   [][][]complex128
}

// NewStage returns one for a plan.
func NewStage(p *timing.Plan) *Stage { return &Stage{plan: p} }

// At returns a stage with the microphone at another place in m and all gains as they are.
func (g *Stage) At(place r3.Vec) (*Stage, error) {
	p, err := g.plan.At(place)
	return &Stage{plan: p, as: g}, err
}

// Record returns what is recorded, with the player's signal beside it. A channel alone is as
// loud as it is within the whole. The same
// setting gives the same recording.
func (g *Stage) Record(s sweep.Sweep, set Setting) (recording.Take, error) {
	if err := set.check(g.plan, s); err != nil {
		return recording.Take{}, err
	}
	rate := set.Rate * (1 + set.Drift/1e6)
	x := s.Samples(rate)
	taps := g.impulse(set, rate)
	n := recording.Length(len(x) + len(taps))
	fft := fourier.NewFFT(n)
	sent := recording.Spectrum(x, n)
	through := recording.Spectrum(taps, n)
	late := -2 * math.Pi * set.Latency * rate / float64(n)
	early := 2 * math.Pi * math.Round(before*rate) / float64(n)
	for k, v := range sent {
		v *= complex(1/float64(n), 0)
		through[k] *= v * cmplx.Rect(1, float64(k)*(late+early))
		sent[k] = v * cmplx.Rect(full, float64(k)*late)
	}
	heard, wire := fft.Sequence(nil, through), fft.Sequence(nil, sent)
	random := rand.New(rand.NewPCG(set.Seed, 2000))
	hiss, hum := full/math.Sqrt2*math.Pow(10, -set.SNR/20), full/math.Sqrt2*math.Pow(10, -wireSNR/20)
	for i := range x {
		heard[i] += hiss * random.NormFloat64()
		wire[i] += hum * random.NormFloat64()
	}
	return recording.Take{Rate: set.Rate, Samples: heard[:len(x)], Reference: wire[:len(x)]}, nil
}

// check returns why a setting cannot be.
func (set Setting) check(p *timing.Plan, s sweep.Sweep) error {
	if err := s.Check(); err != nil {
		return err
	}
	if err := s.CheckRate(set.Rate); err != nil {
		return err
	}
	if set.Case == timing.IdealPoint || set.Channel < All || set.Channel >= len(p.Channels) ||
		!(math.Abs(set.Drift) <= 1000) || math.IsNaN(set.SNR) || !(set.Latency >= 0 && set.Latency < s.Gap/2) {
		return prose.Errorf("%w: channel %d, drift %g ppm, noise %g dB, latency %g s", errSetting, set.Channel, set.Drift, set.SNR, set.Latency)
	}
	return nil
}

// give returns what the strings give at frequencies in Hz, for a rate in Hz.
func (g *Stage) give(c timing.Case, rate float64) ([]float64, [][][]complex128) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.frequency != nil && g.played == c && g.rate == rate {
		return g.frequency, g.strings
	}
	_, last := g.plan.Span(c, false, g.plan.Array.Spot)
	n := 2
	for float64(n) < (before+last+rings)*rate {
		n *= 2
	}
	g.played, g.rate, g.frequency = c, rate, make([]float64, n/2+1)
	for k := range g.frequency {
		g.frequency[k] = float64(k) * rate / float64(n)
	}
	g.strings = g.plan.StringTransfers(c, g.frequency)
	return g.frequency, g.strings
}

// impulse returns the impulse response of what plays, for a rate in Hz, with time 0 before
// into it: brought to full for all channels without faults, in the band of the weights.
func (g *Stage) impulse(set Setting, rate float64) []float64 {
	frequency, given := g.give(set.Case, rate)
	n := 2 * (len(frequency) - 1)
	played := make([]complex128, len(frequency))
	for c, strings := range given {
		for i, one := range strings {
			gain := set.gain(c, i)
			for k, v := range one {
				played[k] += gain * v
			}
		}
	}
	scale := full / g.level(set.Case, rate) / float64(n)
	for k := range played {
		turn := -2 * math.Pi * float64(k) * math.Round(before*rate) / float64(n)
		played[k] *= cmplx.Rect(scale, turn)
	}
	return fourier.NewFFT(n).Sequence(nil, played)
}

// level returns the RMS pressure of all channels without faults in the band of the weights,
// for a rate in Hz.
func (g *Stage) level(c timing.Case, rate float64) float64 {
	if g.as != nil {
		return g.as.level(c, rate)
	}
	frequency, given := g.give(c, rate)
	from, to := band.Range(frequency, layout.WeightLowHz, layout.WeightHighHz)
	whole := make([]complex128, to-from)
	for _, strings := range given {
		for _, one := range strings {
			for k, v := range one[from:to] {
				whole[k] += v
			}
		}
	}
	energy := 0.0
	for _, v := range whole {
		energy += real(v)*real(v) + imag(v)*imag(v)
	}
	return math.Sqrt(energy / float64(to-from))
}

// gain returns what a string is fed.
func (set Setting) gain(channel, str int) complex128 {
	switch {
	case set.Channel != All && set.Channel != channel, slices.Contains(set.DeadStrings, [2]int{channel, str}):
		return 0
	case slices.Contains(set.Reversed, channel):
		return -1
	}
	return 1
}
