package limiter

import (
	"math"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/excursion"
	"pappus/timing/exposure"
)

// Crests are the crest factors in dB that music is told for where none is asked for: a test
// noise, dense popular music, most music, and acoustic music or speech.
var Crests = []float64{6, 10, 14, 20}

// alike is within what share two channels' limits are the same but for rounding.
const alike = 1e-9 // free: far more than rounding, far less than a meter sees

// Music is the loudest that music of a crest factor may be.
type Music struct {
	Crest   float64         // dB
	Volt    float64         // RMS at the terminals of the channel that limits; +Inf where nothing known does
	By      excursion.Cause // what limits it
	Channel int             // whose limiter is reached first, by its ID
	Level   float64         // dBA at the spot; NaN where levels are relative or nothing limits
	drive   float64         // V RMS, at a channel of 0 dB
}

// Place is how long one may listen somewhere.
type Place struct {
	Name  string  // empty: the spot
	Level float64 // dBA
	// AtWork is for how many hours a day NIOSH lets grown-ups work in it, Adult and Child how
	// many hours a week ITU-T H.870 lets each listen.
	AtWork, Adult, Child float64
}

// Loudest returns the loudest music of a crest factor in dB.
func Loudest(p *timing.Plan, channels []Channel, crest float64) Music {
	m := Music{Crest: crest, Volt: math.Inf(1), drive: math.Inf(1), Level: math.NaN()}
	for _, c := range channels {
		if volt, by := c.bound(crest); volt/c.gain < m.drive*(1-alike) {
			m.Volt, m.By, m.Channel, m.drive = volt, by, c.ID, volt/c.gain
		}
	}
	if !math.IsInf(m.drive, 1) {
		m.Level = p.Maximum.Noise + m.louder(p)
	}
	return m
}

// louder returns by how many dB the music is louder than pink noise of the wiring's voltage. That
// noise is told ahead of the high-pass, which takes a part of it; music's voltage behind it.
func (m Music) louder(p *timing.Plan) float64 {
	return decibel(m.drive/p.Array.Wiring.Voltage) - 10*math.Log10(passed(p))
}

// passed returns which share of the energy of pink noise from 20 Hz to 20 kHz the high-pass lets
// through: the mean of its squared magnitude over the logarithm of frequency.
func passed(p *timing.Plan) float64 {
	const count = 481 // free: 48 to an octave: far below a hundredth of a dB
	frequency := make([]float64, count)
	band.Log(frequency, 20, 20000)
	high, sum := p.Protection.HighPass(), 0.0
	for i, hz := range frequency {
		h := high.Response(hz)
		part := real(h)*real(h) + imag(h)*imag(h)
		if i == 0 || i == count-1 { // the trapezoid's ends
			part /= 2
		}
		sum += part
	}
	return sum / (count - 1)
}

// Places returns how long one may listen to the music at the spot and at each seat; nothing
// where its level is not known. Errors are those of timing.Plan.Noise.
func (m Music) Places(p *timing.Plan) ([]Place, error) {
	if math.IsNaN(m.Level) {
		return nil, nil
	}
	seats := p.Array.Seats
	if len(seats) < 2 {
		return []Place{placeOf("", m.Level)}, nil
	}
	out := make([]Place, len(seats))
	for i, s := range seats {
		noise, err := p.Noise(s.At)
		if err != nil {
			return nil, err
		}
		out[i] = placeOf(s.Name, noise+m.louder(p))
	}
	return out, nil
}

func placeOf(name string, level float64) Place {
	return Place{name, level, exposure.Allowed(level), exposure.Adult.Weekly(level), exposure.Child.Weekly(level)}
}
