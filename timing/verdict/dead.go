package verdict

import "math"

const (
	better   = 0.5 // share of what does not fit that is left once the right string is taken for dead: noise, which is the same before and after, cannot do it
	likeRest = 1.0 // dB, how near the gain then must be to its siblings': two standard deviations of a driver (rehearsal.Draw)

	// few is how many channels at most leave it open which of them does what it should: what
	// they have alike then takes much of what one of them does not.
	few = 3 // free: in sweeps.csv two and four miss and invent as little; with four the middle is of two that are right though one is not
	// fewLooks are the rounds for each string that may be dead, from what is settled but for that.
	fewLooks = 8 // free: a round leaves less than foreign of what is off, six 1/64 at worst (see rounds)
)

// bury takes one string for dead where the channel is too weak and the rest fits much
// better.
func (f *fit) bury(o *channel, middle float64) {
	if o.dead >= 0 || len(o.strings) == 1 || o.level()-middle > quiet/2 {
		return
	}
	best := o
	for s := range o.strings {
		try := *o
		try.leave(s)
		if f.estimate(&try); try.residual < best.residual {
			best = &try
		}
	}
	if best.residual < better*o.residual && math.Abs(best.level()-middle) < likeRest {
		*o = *best
	}
}

// buryFew takes one string for dead, of any of a few channels, where without it all of them
// together fit the plan much better and are of one level.
func (f *fit) buryFew() {
	best, least := f, better*f.misfit()
	for c, o := range f.channels {
		if o.dead >= 0 || len(o.strings) == 1 {
			continue
		}
		for s := range o.strings {
			try := f.copy()
			try.channels[c].leave(s)
			for range fewLooks {
				try.share()
				for _, o := range try.channels {
					try.estimate(o)
				}
			}
			if m := try.misfit(); m < least && try.levels() < likeRest {
				best, least = try, m
			}
		}
	}
	*f = *best
}

// misfit returns the share of the energy that does not fit, over the channels.
func (f *fit) misfit() float64 {
	sum := 0.0
	for _, o := range f.channels {
		sum += o.residual
	}
	return sum
}

// levels returns how far apart the channels are in level, in dB.
func (f *fit) levels() float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, o := range f.channels {
		low, high = min(low, o.level()), max(high, o.level())
	}
	return high - low
}
