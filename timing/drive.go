package timing

import "math"

// drive is what each driver is fed: gain with polarity, and delay.
type drive struct {
	gain  []float64 // as a factor, negative where inverted
	delay []float64 // s
}

// newDrive reads the drive of each mount from a plan's channels.
func newDrive(p *Plan) drive {
	d := drive{make([]float64, len(p.Arrivals)), make([]float64, len(p.Arrivals))}
	for m, r := range p.Arrivals {
		d.gain[m] = p.Channels[r.Channel].factor()
		d.delay[m] = r.Delay
	}
	return d
}

// factor returns a channel's gain as a factor of pressure, with its polarity.
func (c Channel) factor() float64 {
	g := math.Pow(10, c.Gain/20)
	if c.Invert {
		return -g
	}
	return g
}

// weights fills dst with the weight of one mount at each frequency in Hz:
// gain, polarity and, if delayed is true, delay.
func (d drive) weights(dst []complex128, mount int, delayed bool, frequency []float64) {
	for f, hz := range frequency {
		dst[f] = complex(d.gain[mount], 0)
		if delayed {
			dst[f] *= turn(hz, d.delay[mount])
		}
	}
}
