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
	// Gain in dB and Late in s are what each channel has too much; nil: nothing.
	Gain, Late []float64
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
	vary      Variation
	as        *Stage // whose level is brought to full; nil: its own
	played    timing.Case
	rate      float64   // Hz
	frequency []float64 // Hz, of a transform; nil: nothing is computed yet
	strings   [][][]complex128
}

// NewStage returns one for a plan.
func NewStage(p *timing.Plan) *Stage { return &Stage{plan: p} }

// NewVaried returns one for what is built by a plan.
func NewVaried(p *timing.Plan, v Variation) *Stage { return &Stage{plan: p, vary: v} }

// At returns a stage with the microphone at another place in m and all gains as they are.
func (g *Stage) At(place r3.Vec) (*Stage, error) {
	p, err := g.plan.At(place)
	return &Stage{plan: p, vary: g.vary, as: g}, err
}

// Record returns what is recorded, with the player's signal beside it. A channel alone is as
// loud as it is within the whole. The same
// setting gives the same recording.
func (g *Stage) Record(s sweep.Sweep, set Setting) (recording.Take, error) {
	if err := set.check(g.plan, s); err != nil {
		return recording.Take{}, err
	}
	rate := set.Rate * (1 + (set.Drift+g.vary.Drift)/1e6)
	x := s.Samples(rate)
	taps, err := g.impulse(set, rate)
	if err != nil {
		return recording.Take{}, err
	}
	n := recording.Length(len(x) + len(taps))
	fft := fourier.NewFFT(n)
	sent := recording.Spectrum(x, n)
	through := recording.Spectrum(taps, n)
	late := -2 * math.Pi * set.Latency * rate / float64(n)
	early := 2 * math.Pi * math.Round(before*rate) / float64(n)
	for k, v := range sent {
		v *= complex(1/float64(n), 0)
		v *= cmplx.Rect(1, float64(k)*late)
		through[k] *= v * cmplx.Rect(1, float64(k)*early)
		sent[k] = v
	}
	g.vary.Woofer.add(through, sent, n, rate)
	for k := range sent {
		sent[k] *= full
	}
	heard, wire := fft.Sequence(nil, through), fft.Sequence(nil, sent)
	random := rand.New(rand.NewPCG(set.Seed, 2000))
	hiss, hum := full/math.Sqrt2*math.Pow(10, -set.SNR/20), full/math.Sqrt2*math.Pow(10, -wireSNR/20)
	for i := range x {
		heard[i] += hiss * random.NormFloat64()
		wire[i] += hum * random.NormFloat64()
	}
	g.vary.disturb(heard[:len(x)], wire[:len(x)], rate, random)
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
func (g *Stage) give(c timing.Case, rate float64) ([]float64, [][][]complex128, error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.frequency != nil && g.played == c && g.rate == rate {
		return g.frequency, g.strings, nil
	}
	_, last := g.plan.Span(c, false, g.plan.Array.Spot)
	n := 2
	for float64(n) < (before+last+rings)*rate {
		n *= 2
	}
	frequency := make([]float64, n/2+1)
	for k := range frequency {
		frequency[k] = float64(k) * rate / float64(n)
	}
	given, err := g.hear(c, frequency)
	if err == nil {
		g.played, g.rate, g.frequency, g.strings = c, rate, frequency, given
	}
	return frequency, given, err
}

// impulse returns the impulse response of what plays, for a rate in Hz, with time 0 before
// into it: brought to full for all channels without faults, in the band of the weights.
func (g *Stage) impulse(set Setting, rate float64) ([]float64, error) {
	frequency, given, err := g.give(set.Case, rate)
	if err != nil {
		return nil, err
	}
	level, err := g.level(set.Case, rate)
	if err != nil {
		return nil, err
	}
	n := 2 * (len(frequency) - 1)
	played := make([]complex128, len(frequency))
	set.sum(played, given, frequency)
	scale := full / level / float64(n)
	for k := range played {
		turn := -2 * math.Pi * float64(k) * math.Round(before*rate) / float64(n)
		played[k] *= cmplx.Rect(scale, turn)
	}
	return fourier.NewFFT(n).Sequence(nil, played), nil
}

// sum adds to dst what a setting's channels give at frequencies in Hz.
func (set Setting) sum(dst []complex128, given [][][]complex128, frequency []float64) {
	for c, strings := range given {
		late := 0.0
		if set.Late != nil {
			late = set.Late[c]
		}
		for i, one := range strings {
			gain := set.gain(c, i)
			if gain == 0 {
				continue
			}
			for k, v := range one {
				if late != 0 {
					v *= cmplx.Rect(1, -2*math.Pi*frequency[k]*late)
				}
				dst[k] += gain * v
			}
		}
	}
}

// level returns the RMS pressure of all channels without faults in the band of the weights,
// for a rate in Hz.
func (g *Stage) level(c timing.Case, rate float64) (float64, error) {
	if g.as != nil {
		return g.as.level(c, rate)
	}
	frequency, given, err := g.give(c, rate)
	if err != nil {
		return 0, err
	}
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
	return math.Sqrt(energy / float64(to-from)), nil
}

// gain returns what a string is fed.
func (set Setting) gain(channel, str int) complex128 {
	if set.Channel != All && set.Channel != channel || slices.Contains(set.DeadStrings, [2]int{channel, str}) {
		return 0
	}
	gain := complex(1, 0)
	if set.Gain != nil {
		gain = complex(math.Pow(10, set.Gain[channel]/20), 0)
	}
	if slices.Contains(set.Reversed, channel) {
		gain = -gain
	}
	return gain
}
