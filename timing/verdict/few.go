package verdict

import "math"

// few is how many channels at most leave it open which of them does what it should: what
// they have alike then takes much of what one of them does not.
const (
	few      = 3
	fewLooks = 8 // rounds for each string that may be dead
)

// buryFew takes one string for dead, of any of a few channels, where without it all of them
// together fit the plan much better and are of one level.
func (f *fit) buryFew() {
	best, least := f, better*f.misfit()
	for c, o := range f.channels {
		if o == nil || o.dead >= 0 || len(o.strings) < 2 {
			continue
		}
		for s := range o.strings {
			try := f.copy()
			try.channels[c].leave(s)
			for range fewLooks {
				try.share()
				for _, o := range try.channels {
					if o != nil {
						try.adjust(o)
					}
				}
			}
			if m := try.misfit(); m < least && try.levels() < likeRest {
				best, least = try, m
			}
		}
	}
	*f = *best
}

// copy returns a fit that can go another way.
func (f *fit) copy() *fit {
	c := *f
	c.common = append([]complex128(nil), f.common...)
	c.channels = make([]*one, len(f.channels))
	for i, o := range f.channels {
		if o != nil {
			c.channels[i] = o.copy()
		}
	}
	return &c
}

// misfit returns the share of the energy that does not fit, over the channels.
func (f *fit) misfit() float64 {
	sum := 0.0
	for _, o := range f.channels {
		if o != nil {
			sum += o.unlike
		}
	}
	return sum
}

// levels returns how far apart the channels are in level, in dB.
func (f *fit) levels() float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, o := range f.channels {
		if o != nil {
			low, high = min(low, math.Abs(o.gain)), max(high, math.Abs(o.gain))
		}
	}
	return 20 * math.Log10(high/low)
}

// heard returns how many channels were.
func (f *fit) heard() int {
	n := 0
	for _, o := range f.channels {
		if o != nil {
			n++
		}
	}
	return n
}
