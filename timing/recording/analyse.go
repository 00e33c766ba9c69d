package recording

import (
	"errors"
	"fmt"
	"math"
	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing/band"
	"pappus/timing/sweep"
	"slices"
	"sort"
)

// Of the band and the impulse response.
const (
	bandLow    = 1.4  // of Start: the sweep is whole above it: an octave above edgeLow, so that the edge rings briefly
	bandHigh   = 0.9  // of Stop: above it are the fade-out and recorders filters
	edgeLow    = 0.7  // of Start: nothing is taken from below: only the fade-in is there
	edgeHigh   = 1.0  // of Stop: nor from above
	early      = 0.1  // free: s before a sweep that are looked at: silence, as sweep.Check allows none that is shorter
	late       = 0.02 // free: s before a marker that are not, so that nothing of it leaks in; what was heard has died away by then
	wholeShare = 0.2  // of the energy that must be near the strongest sound: even where noise is 6 dB over it
	lateShare  = 0.5  // of the energy that must be near what is heard too late: most of it
	near       = 0.2  // s after it: a room of half a second is 24 dB down
	usableSNR  = 10.0 // dB that half of the response must reach: one standard error is 1.9 dB there
	honestSNR  = 6.0  // dB that each frequency must: one standard error is 3.1 dB there
	distinct   = 10.0 // times the background: what is too loud to be lost in it: no room is 20 dB louder within a sweep only (common practice)
	ahead      = 1e-4 // s before the reference that no sound comes: 34 mm of way, and five samples; channels of one recorder are one apart at most (common practice)
	leadWaves  = 3.0  // periods of Start before the strongest sound: of a band of five octaves -64 dB ring beyond that on both sides, -53 beyond two
	leadMost   = 0.2  // of the way to the second harmonic, which has the rest of it and the noise
)

// Analyse finds a sweep in a recording and tells what it went through. Errors wrap
// those of this package and of package sweep. Results are the same to the bit each time.
func Analyse(t Take, s sweep.Sweep, o Options) (Measured, error) {
	l, err := listen(t, s, o)
	if err != nil {
		return Measured{}, err
	}
	return l.tell(l.impulse)
}

// listened is a recording in which the sweep was found.
type listened struct {
	*impulse
	take       Take
	sweep      sweep.Sweep
	options    Options
	gate, span float64 // s
	where      found
	change     float64 // dB, between the markers
	gain       float64 // of what was sent, over a sweep of amplitude 1
	inverted   bool    // what was sent is upside down
}

// listen finds a sweep in a recording, and the impulse response that it went through.
func listen(t Take, s sweep.Sweep, o Options) (l listened, err error) {
	if err := s.Check(); err != nil {
		return l, err
	}
	l.take, l.sweep, l.options, l.span = t, s, o, s.Tail-late
	if l.gate, err = o.gate(s, l.span); err != nil {
		return l, err
	}
	for _, check := range []func() error{o.checkMicrophone, t.check, func() error { return s.CheckRate(t.Rate) }} {
		if err := check(); err != nil {
			return l, err
		}
	}
	player := t.Samples
	if t.Reference != nil {
		player = t.Reference
	}
	if l.where, err = find(player, t.Rate, s); err != nil {
		return l, err
	}
	d := newDivision(t, s, l.where)
	if t.Reference != nil && d.reference() < wholeShare {
		return l, fmt.Errorf("%w: the markers are there, but between them the reference has something else", errOther)
	}
	l.impulse, l.gain, l.inverted = d.impulse(), d.gain, d.inverted
	if err := l.locate(); err != nil {
		return l, err
	}
	l.change, err = l.where.steady(t.Samples, s)
	return l, err
}

// locate finds the strongest sound, or tells why it cannot be the sweep's.
func (l *listened) locate() error {
	h, s, referred := l.impulse, l.sweep, l.take.Reference != nil
	lead := min(leadWaves/s.Start, leadMost*s.Ahead(2))
	h.lead = int(lead * h.rate)
	h.findPeak(int(early*h.rate), int(l.span*h.rate/2))
	if at := h.beyond(int(l.span * h.rate / 2)); at > 0 {
		return fmt.Errorf("%w: the sweep is heard %.2f s after it was sent, and %.2f s are the most, half of the silence after it: take as much off the delays of all channels alike, or come nearer", errLate, float64(at)/h.rate, l.span/2)
	}
	if at := h.at / h.rate; referred && at < -ahead {
		return fmt.Errorf("%w: the microphone would hear the sweep %.1f ms before the wire has it", errSwapped, -1000*at)
	}
	if h.share() < wholeShare {
		return strange(l.take, l.where, s)
	}
	if !referred && math.Abs(h.drift(s)) > driftMost {
		return prose.Errorf("%w: high tones come ever further from low ones: the sweep that was played begins or ends elsewhere than at %g and %g Hz", errOther, s.Start, s.Stop)
	}
	return nil
}

// tell says what an impulse response tells: that of the recording, or of it and its repeats.
func (l listened) tell(h *impulse) (Measured, error) {
	m, err := measure(h, l.take, l.sweep, l.options, l.gate, l.span)
	if math.Abs(l.change) > levelTold && err == nil {
		m.Cautions = append(m.Cautions, Caution{Code: GainChanged, DB: l.change})
	}
	m.Wire, m.WireInverted = 20*math.Log10(l.gain), l.inverted
	if errors.Is(err, ErrQuiet) && l.where.above(l.take.Samples, l.sweep) > distinct {
		return Measured{}, strange(l.take, l.where, l.sweep)
	}
	return m, err
}

// strange says what is wrong where no impulse response comes out.
func strange(t Take, where found, s sweep.Sweep) error {
	if t.Reference != nil && !(where.above(t.Samples, s) > distinct) {
		return fmt.Errorf("%w: the reference has the sweep, the microphone hears no more of it than noise", ErrQuiet)
	}
	return fmt.Errorf("%w: the markers are there, but between them is something else than this sweep", errOther)
}

// measure fills in what an impulse response tells.
func measure(h *impulse, t Take, s sweep.Sweep, o Options, gate, span float64) (Measured, error) {
	m := Measured{
		Rate: h.rate, Drift: 1e6 * (h.rate/t.Rate - 1),
		Absolute: t.Reference != nil, At: h.at / h.rate, Inverted: h.value(h.at) < 0,
		Low: bandLow * s.Start, High: bandHigh * s.Stop,
	}
	m.Frequency = make([]float64, 2+int(math.Log2(m.High/m.Low)*perOctave))
	band.Log(m.Frequency, m.Low, m.High)
	heard := hearing{h, h.noise(s), h.ringing(s)}
	m.AtError = heard.noise.late(h)

	end := int(span * h.rate)
	from := h.peak() - h.lead
	m.Begin, m.Impulse = float64(from)/h.rate, h.part(from, end)
	var square float64
	m.Whole, _ = heard.respond(m.Frequency, window{from, end}, m.Low)
	sooner, _ := heard.respond(m.Frequency, window{from, end - int(faded*float64(end-h.peak()))}, m.Low)
	m.Whole.unsure(sooner)
	m.Gated, square = heard.respond(m.Frequency, window{from, h.peak() + int(gate*h.rate)}, m.Low)
	shorter, _ := heard.respond(m.Frequency, window{from, h.peak() + int((1-faded)*gate*h.rate)}, m.Low)
	m.Gated.unsure(shorter)
	m.Bands = bands(m, heard.noise, square, o)
	if err := loud(m.Bands); err != nil {
		return Measured{}, err
	}
	m.Harmonics = harmonics(heard, m, s, o)
	for _, r := range []*Response{&m.Gated, &m.Whole} {
		r.correct(m.Frequency, o)
	}
	m.Cautions = append(m.cautions(o), m.overloaded()...)
	return m, nil
}

// loud returns an error where half of the bands are hardly above the noise.
func loud(bands []Band) error {
	snr := make([]float64, len(bands))
	for i, b := range bands {
		snr[i] = b.SNR()
	}
	if len(snr) == 0 {
		return nil
	}
	slices.Sort(snr)
	if mid := snr[len(snr)/2]; !(mid >= usableSNR) {
		return fmt.Errorf("%w: half of the bands are less than %.0f dB above the noise; must be %.0f: turn up, come nearer, or make the sweep longer", ErrQuiet, math.Ceil(mid), usableSNR)
	}
	return nil
}

// cautions tells where the response is not to be trusted.
func (m *Measured) cautions(o Options) []Caution {
	var out []Caution
	for _, b := range m.Bands {
		if b.SNR() < usableSNR {
			out = append(out, Caution{Code: Noisy, Hz: b.Centre, DB: b.SNR()})
		}
	}
	if c := o.Microphone; len(c) > 0 && (c[0].Frequency > m.Low || c[len(c)-1].Frequency < m.High) {
		out = append(out, Caution{Code: BeyondTable, Hz: c[0].Frequency, HighHz: c[len(c)-1].Frequency})
	}
	if m.Gated.Lowest > m.Low {
		out = append(out, Caution{Code: BelowGate, Hz: m.Gated.Lowest})
	}
	return out
}

// What Options may be, and what it is where it is left out.
const (
	UsualGate = 0.01 // s, or a period of Start: echoes that go 3.4 m further are out, and tones from 100 Hz on are in (common practice)
	perOctave = 48   // frequencies of a response: 16 in a third of an octave
)

// Options says how a recording is looked at. The zero value is the usual way.
type Options struct {
	// Gate is for how long in s after the strongest sound the gated response listens, so
	// that echoes are left out; 0: UsualGate.
	Gate float64
	// Microphone is by how much the microphone reads too high, frequencies rising; empty:
	// nothing. It is taken straight over log frequency and held outside.
	Microphone []layout.MicrophonePoint
}

// gate returns the gate in s for a sweep whose silences leave so much.
func (o Options) gate(s sweep.Sweep, span float64) (float64, error) {
	gate := o.Gate
	if gate == 0 {
		gate = min(max(UsualGate, 1/s.Start), span/2)
	}
	if !(gate >= 1/s.Stop && gate <= span/2) {
		return 0, prose.Errorf("%w: %g s; must be from %.3g to %.3g s, half of the silence after the sweep", errGate, gate, 1/s.Stop, span/2)
	}
	return gate, nil
}

// reads returns by how much the microphone reads too high at a frequency in Hz, in dB.
func (o Options) reads(hz float64) float64 {
	c := o.Microphone
	if len(c) == 0 {
		return 0
	}
	i := sort.Search(len(c), func(i int) bool { return c[i].Frequency >= hz })
	switch i {
	case 0:
		return c[0].Level
	case len(c):
		return c[len(c)-1].Level
	}
	share := math.Log(hz/c[i-1].Frequency) / math.Log(c[i].Frequency/c[i-1].Frequency)
	return c[i-1].Level + share*(c[i].Level-c[i-1].Level)
}

// checkMicrophone returns why a correction cannot be used.
func (o Options) checkMicrophone() error {
	for i, c := range o.Microphone {
		if !(c.Frequency > 0) || math.IsInf(c.Frequency, 0) || !(math.Abs(c.Level) <= 200) || i > 0 && !(c.Frequency > o.Microphone[i-1].Frequency) {
			return prose.Errorf("%w: line %d of the microphone's correction: %g Hz, %g dB", errTake, i+1, c.Frequency, c.Level)
		}
	}
	return nil
}
