package timing

import (
	"math"

	"pappus/timing/drive"
	"pappus/timing/radiate"
)

// feed is what each driver is fed: gain with polarity, and delay.
type feed struct {
	gain  []float64 // as a factor, negative where inverted; absolute where levels are
	delay []float64 // s
}

// newFeed reads the feed of each mount from a plan's channels.
func newFeed(p *Plan) feed {
	d := feed{make([]float64, len(p.Arrivals)), make([]float64, len(p.Arrivals))}
	gain := p.gains()
	for m, r := range p.Arrivals {
		d.gain[m], d.delay[m] = gain[r.Channel], r.Delay
	}
	return d
}

// feedLevels adds to each driver's level what its channel feeds it with.
func (p *Plan) feedLevels() {
	for m, g := range newFeed(p).gain {
		p.Arrivals[m].Level += 20 * math.Log10(math.Abs(g))
	}
}

// unit returns the pressure, in units of 20 uPa, that a driver in the longest
// string gives at 1 m as a point source; 1 where no sensitivity is given.
func (p *Plan) unit(longest int) float64 {
	if !p.IsAbsolute() {
		return 1
	}
	volts := p.Array.Wiring.Voltage / float64(longest)
	return math.Pow(10, drive.Offset(p.Array.Driver.Sensitivity, volts)/20)
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
		channels[i].Gain = 20 * math.Log10(float64(max(channels[i].Series, 1))/float64(longest))
	}
}

// gains returns what each channel feeds its drivers with: see feed.gain.
func (p *Plan) gains() []float64 {
	longest := longestString(p.Channels)
	unit, gain := p.unit(longest), make([]float64, len(p.Channels))
	for i, c := range p.Channels {
		gain[i] = unit * c.factor() * float64(longest) / float64(max(c.Series, 1))
	}
	return gain
}

// feed returns the weight of each channel at each frequency in Hz: gain, polarity, the
// driver's own response and, if delayed is true, delay.
func (p *Plan) feed(delayed bool, frequency []float64, response []complex128) radiate.Feed {
	fed := radiate.Feed{Group: make([]int, len(p.Arrivals)), Weight: make([][]complex128, len(p.Channels))}
	for m, r := range p.Arrivals {
		fed.Group[m] = r.Channel
	}
	for i, g := range p.gains() {
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
func (p *Plan) response(frequency []float64) []complex128 {
	dst := make([]complex128, len(frequency))
	driverResponse(p.Array.Driver).Fill(dst, frequency)
	high := p.Protection.HighPass()
	for i, hz := range frequency {
		dst[i] *= high.Response(hz)
	}
	return dst
}
