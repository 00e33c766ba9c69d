package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/drive"
	"pappus/timing/radiate"
)

// feed is what each driver is fed: gain with polarity, and delay.
type feed struct {
	gain  []float64 // as a factor, negative where inverted; absolute where levels are
	delay []float64 // s
}

// newFeed reads the feed of each mount from a spot's channels.
func newFeed(s *Spot) feed {
	d := feed{make([]float64, len(s.Arrivals)), make([]float64, len(s.Arrivals))}
	gain := gains(s.Array, s.Channels)
	for m, r := range s.Arrivals {
		d.gain[m], d.delay[m] = gain[r.Channel], r.Delay
	}
	return d
}

// gains returns what each channel feeds its drivers with: see feed.gain.
func gains(a *layout.Array, channels []Channel) []float64 {
	longest := longestString(channels)
	gain := make([]float64, len(channels))
	for i, c := range channels {
		gain[i] = unit(a, longest) * c.factor() * float64(longest) / c.series()
	}
	return gain
}

// unit returns the pressure, in units of 20 uPa, that a driver in the longest
// string gives at 1 m as a point source; 1 where no sensitivity is given.
func unit(a *layout.Array, longest int) float64 {
	if !(a.Driver.Sensitivity > 0) {
		return 1
	}
	volts := a.Wiring.Voltage / float64(longest)
	return math.Pow(10, drive.Offset(a.Driver.Sensitivity, volts)/20)
}

// longestString returns the most drivers that any channel has in a string. A
// driver in a string of that many, on a channel with a gain of 0 dB, is what
// all levels are relative to.
func longestString(channels []Channel) int {
	longest := 1
	for _, c := range channels {
		longest = max(longest, c.Series)
	}
	return longest
}

// series is how many drivers are in each of a channel's strings, 1 or more.
func (c Channel) series() float64 { return float64(max(c.Series, 1)) }

// factor returns a channel's gain as a factor of voltage, with its polarity.
func (c Channel) factor() float64 {
	g := math.Pow(10, c.Gain/20)
	if c.Invert {
		return -g
	}
	return g
}

// trim turns down the channels with shorter strings, so that every driver gets
// the same voltage as those in the longest string. Voltage divides evenly over
// equal drivers in series (Ohm's law).
func trim(channels []Channel) {
	longest := longestString(channels)
	for i := range channels {
		channels[i].Gain = 20 * math.Log10(channels[i].series()/float64(longest))
	}
}

// feed returns the weight of each channel at each frequency in Hz: gain, polarity, the
// driver's own response and, if delayed is true, delay.
func (p *Spot) feed(delayed bool, frequency []float64, response []complex128) radiate.Feed {
	fed := radiate.Feed{Group: make([]int, len(p.Arrivals)), Weight: make([][]complex128, len(p.Channels))}
	for m, r := range p.Arrivals {
		fed.Group[m] = r.Channel
	}
	for i, g := range gains(p.Array, p.Channels) {
		fed.Weight[i] = make([]complex128, len(frequency))
		for f, hz := range frequency {
			fed.Weight[i][f] = complex(g, 0) * response[f]
			if delayed {
				fed.Weight[i][f] *= turn(hz, p.Channels[i].Delay)
			}
		}
	}
	return fed
}

// response returns the driver's own response at frequencies in Hz, behind the
// high-pass that protects it. All drivers have the same one, so it changes
// neither arrivals nor summing loss.
func (p *Spot) response(frequency []float64) []complex128 {
	dst := make([]complex128, len(frequency))
	driverResponse(p.Array.Driver).Fill(dst, frequency)
	high := p.Protection.HighPass()
	for i, hz := range frequency {
		dst[i] *= high.Response(hz)
	}
	return dst
}
