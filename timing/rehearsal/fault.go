package rehearsal

import (
	"math"
	"math/rand/v2"
	"slices"

	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/spatial/r3"
)

// Kind is what is wrong with a loudspeaker or its recordings.
type Kind string

// The kinds of faults.
const (
	Sound           Kind = "none"
	ReversedChannel Kind = "reversed channel"
	DeadString      Kind = "dead string"
	DeadChannel     Kind = "dead channel"
	LateChannel     Kind = "channel 300 us late"
	QuietChannel    Kind = "channel 3 dB quiet"
	LoudChannel     Kind = "channel 3 dB loud"
	ReversedDriver  Kind = "reversed driver"      // of a channel with several
	Exchanged       Kind = "exchanged channels"   // two, their wires or their recordings
	SameFile        Kind = "one recording twice"  // of a channel, as another's, too
	NoDelays        Kind = "delays not set"       // which it is said that they were
	WireInverted    Kind = "wire upside down"     // in one recording
	WireLevel       Kind = "wire turned by 3 dB"  // in one recording
	WrongFile       Kind = "another sweep"        // in place of one recording
	Clipped         Kind = "clipped recording"    // by 3 dB
	GainChanged     Kind = "gain changed by 5 dB" // within one recording
	Stopped         Kind = "microphone stopped"   // for 0.1 s of one recording
	OtherRate       Kind = "another sample rate"  // is written into all files than they have
)

// Kinds are all faults, the lack of any first.
var Kinds = []Kind{Sound, ReversedChannel, DeadString, DeadChannel, LateChannel, QuietChannel, LoudChannel, ReversedDriver,
	Exchanged, SameFile, NoDelays, WireInverted, WireLevel, WrongFile, Clipped, GainChanged, Stopped, OtherRate}

// How large faults are.
const (
	lateBy    = 300e-6    // s: 100 mm of air, or 15 samples that were forgotten
	levelBy   = 3.0       // dB: half of the power
	turnedBy  = 3.0       // dB: a knob that was touched
	clippedBy = 0.708     // of the peak that is left: 3 dB
	changedBy = 5.0       // dB: what automatic gain does
	stopsFor  = 0.1       // s
	stopsAt   = 0.5       // of the sweep
	otherRate = 44.1 / 48 // of a file that says 44.1 kHz and has 48
	otherBy   = 1.1       // times as long the sweep is of another recording
)

// Fault is one, and where it is.
type Fault struct {
	Kind    Kind
	Channel int // index, of nothing where all are concerned
	Other   int // index of another channel, of Exchanged and SameFile
	String  int // index, of DeadString
	Mount   int // index, of ReversedDriver
}

// DrawFault returns one of a kind, the same for each seed; false where the plan has no room
// for it.
func DrawFault(p *timing.Plan, kind Kind, seed uint64) (f Fault, possible bool) {
	r := rand.New(rand.NewPCG(seed, 7002))
	f = Fault{Kind: kind, Channel: r.IntN(len(p.Channels))}
	switch kind {
	case DeadString:
		some := channelsWith(p, func(c int) bool { return len(p.Banks[c].Strings) > 1 })
		if len(some) == 0 {
			return f, false
		}
		f.Channel = some[r.IntN(len(some))]
		f.String = r.IntN(len(p.Banks[f.Channel].Strings))
	case ReversedDriver:
		some := channelsWith(p, func(c int) bool { return len(p.Channels[c].Mounts) > 1 })
		if len(some) == 0 {
			return f, false
		}
		f.Channel = some[r.IntN(len(some))]
		f.Mount = p.Channels[f.Channel].Mounts[r.IntN(len(p.Channels[f.Channel].Mounts))]
	case Exchanged, SameFile:
		if len(p.Channels) < 2 {
			return f, false
		}
		f.Other = (f.Channel + 1 + r.IntN(len(p.Channels)-1)) % len(p.Channels)
	}
	return f, true
}

// channelsWith returns the indices of channels of which something is true.
func channelsWith(p *timing.Plan, is func(c int) bool) (some []int) {
	for c := range p.Channels {
		if is(c) {
			some = append(some, c)
		}
	}
	return some
}

// DrawAnyFault returns a fault of any kind, or none, the same for each seed.
func DrawAnyFault(p *timing.Plan, seed uint64) Fault {
	r := rand.New(rand.NewPCG(seed, 7003))
	for {
		if f, possible := DrawFault(p, Kinds[r.IntN(len(Kinds))], seed); possible {
			return f
		}
	}
}

// Session makes the recordings of a loudspeaker, with its faults.
type Session struct {
	stage *Stage
	fault Fault
	set   Setting
}

// NewExample returns one of a loudspeaker as planned with two faults to find, at a recorder's
// rate in Hz: in the first channel with several strings one is dead, and the last channel's wires
// are swapped.
func NewExample(p *timing.Plan, rate float64) *Session {
	set := Setting{Case: timing.Aligned, Rate: rate, Drift: 40, SNR: 60, Latency: 0.02, Reversed: []int{len(p.Channels) - 1}}
	if c := slices.IndexFunc(p.Banks, func(b timing.Bank) bool { return len(b.Strings) > 1 }); c >= 0 {
		set.DeadStrings = [][2]int{{c, len(p.Banks[c].Strings) - 1}}
	}
	return &Session{stage: NewStage(p), fault: Fault{Kind: Sound}, set: set}
}

// recorder is the noise in dB and the latency in s of what records a drawn session.
const (
	recorderSNR     = 80.0  // a 16 bit recorder that is set with 18 dB to spare
	recorderLatency = 0.011 // of player and converters
)

// NewDrawn returns one of what is built, and what is wrong with it, as a seed has it, at a
// recorder's rate in Hz.
func NewDrawn(p *timing.Plan, rate float64, seed uint64) *Session {
	return NewSession(p, Draw(p, seed), DrawAnyFault(p, seed), Setting{Rate: rate, SNR: recorderSNR, Latency: recorderLatency, Seed: seed * seedsEach})
}

// seedsEach is how many recordings with noise of their own a session may have.
const seedsEach = 1 << 16

// NewSession returns one for what is built by a plan and recorded in a setting, of which case, channel, gains and
// faults are filled in.
func NewSession(p *timing.Plan, v Variation, f Fault, set Setting) *Session {
	n := len(p.Channels)
	set.Case, set.Gain, set.Late = timing.Aligned, make([]float64, n), make([]float64, n)
	switch f.Kind {
	case ReversedChannel:
		set.Reversed = []int{f.Channel}
	case DeadString:
		set.DeadStrings = [][2]int{{f.Channel, f.String}}
	case DeadChannel:
		set.Gain[f.Channel] = math.Inf(-1)
	case LateChannel:
		set.Late[f.Channel] = lateBy
	case QuietChannel:
		set.Gain[f.Channel] = -levelBy
	case LoudChannel:
		set.Gain[f.Channel] = levelBy
	case ReversedDriver:
		v.Drivers = slices.Clone(v.Drivers)
		if v.Drivers == nil {
			v.Drivers = make([]Driver, len(p.Array.Mounts))
		}
		v.Drivers[f.Mount].Reversed = true
	case NoDelays:
		set.Case = timing.AsBuilt
	}
	return &Session{NewVaried(p, v), f, set}
}

// Setting returns what is played and recorded, all channels.
func (s *Session) Setting() Setting { return s.set }

// Variation returns what else there is.
func (s *Session) Variation() Variation { return s.stage.vary }

// Fault returns what is wrong; the two of an example are in its Setting.
func (s *Session) Fault() Fault { return s.fault }

// At returns the session with the microphone at another place in m; seat is its index, and tells
// its noise from that of others.
func (s *Session) At(place r3.Vec, seat int) (*Session, error) {
	stage, err := s.stage.At(place)
	set := s.set
	set.Seed += uint64(len(s.stage.plan.Channels) + 1 + seat)
	return &Session{stage, s.fault, set}, err
}

// Record returns what is recorded of a channel, as an index, or of All.
func (s *Session) Record(sw sweep.Sweep, channel int) (recording.Take, error) {
	set, f := s.set, s.fault
	set.Channel = channel
	switch {
	case f.Kind == Exchanged && channel == f.Channel:
		set.Channel = f.Other
	case (f.Kind == Exchanged || f.Kind == SameFile) && channel == f.Other:
		set.Channel = f.Channel
	case f.Kind == WrongFile && channel == f.Channel:
		sw.Length *= otherBy
	}
	set.Seed += uint64(channel + 2)
	if f.Kind == SameFile && channel == f.Other {
		set.Seed += uint64(f.Channel - channel)
	}
	take, err := s.stage.Record(sw, set)
	if err != nil {
		return take, err
	}
	if f.Kind == OtherRate {
		take.Rate *= otherRate
	}
	if channel == f.Channel {
		f.spoil(&take, sw)
	}
	return take, nil
}

// spoil does to a recording what a fault of it does.
func (f Fault) spoil(t *recording.Take, sw sweep.Sweep) {
	begin := sw.Begin() * t.Rate
	switch f.Kind {
	case WireInverted:
		for i, v := range t.Reference {
			t.Reference[i] = -v
		}
	case WireLevel:
		gain := math.Pow(10, turnedBy/20)
		for i := range t.Reference {
			t.Reference[i] *= gain
		}
	case Clipped:
		most := clippedBy * max(slices.Max(t.Samples), -slices.Min(t.Samples))
		for i, v := range t.Samples {
			t.Samples[i] = max(-most, min(most, v))
		}
	case GainChanged:
		for i := int(begin + stopsAt*sw.Length*t.Rate); i < len(t.Samples); i++ {
			t.Samples[i] *= math.Pow(10, changedBy/20)
		}
	case Stopped:
		from := int(begin + stopsAt*sw.Length*t.Rate)
		clear(t.Samples[from:min(len(t.Samples), from+int(stopsFor*t.Rate))])
	}
}
