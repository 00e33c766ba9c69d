package timing

import (
	"pappus/layout/advice"
	"pappus/layout/wiring"
)

// Finding is one thing to know of a plan before it is built or switched on: what kind it
// is, how bad, and the figures. Package render/words says it in a sentence, by its code.
type Finding struct {
	Code string // stable, in lower case with underscores
	Rank advice.Rank
	// Fact holds the figures: one of the types below, Held, or, of what layout has found,
	// an advice.Finding.
	Fact any
}

// findings are found one after another.
type findings []Finding

func (f *findings) warn(code string, rank advice.Rank, fact any) {
	*f = append(*f, Finding{code, rank, fact})
}

// said takes over what layout has found.
func said(found ...advice.Finding) []Finding {
	out := make([]Finding, len(found))
	for i, f := range found {
		out[i] = Finding{f.Code, f.Rank, f}
	}
	return out
}

// HearingRisk (code hearing) is how loud a voltage can be at the spot. ByNoise tells that
// pink noise of it hurts in time; else a tone does.
type HearingRisk struct {
	ByNoise    bool
	WithWoofer bool
	Volt       float64 // RMS
	Noise      float64 // dBA, pink noise
	Tone       float64 // dB, the loudest tone
	Hours      float64 // a day that the noise may last
}

// ChannelDraw (code amplifier_power) is the channel that draws more than the amplifier is
// sold with.
type ChannelDraw struct {
	Channel           int
	Watt, Volt, DCOhm float64
	SoldWatt, SoldOhm float64
}

// DriverHeat (code driver_power) is the channel whose drivers get more than they stand.
type DriverHeat struct {
	Channel      int
	Volt         float64 // at the amplifier
	Watt, Stands float64 // of one driver
}

// DelayShort (code delay_short) is the channel that is heard most before the latest, for
// its delay was set by hand.
type DelayShort struct {
	Channel              int
	Delay, Early, Needed float64 // s
	Count                int     // channels whose delays are too short
}

// PowersUnequal (code powers_unequal) are the channels by hand with the loudest and the
// quietest drivers.
type PowersUnequal struct {
	Loudest, Quietest int
	Apart             float64 // dB
	Even              []SetGain
}

// SetGain is a channel's gain in dB.
type SetGain struct {
	Channel int
	Gain    float64
}

// PolarityOpposed (code polarity_opposed) are the channels by hand that are inverted while
// others are not.
type PolarityOpposed struct{ Inverted []int }

// FarFromBall (code far_from_ball) is a body that the model was not held to.
type FarFromBall struct{ Radius, Off float64 } // m, of the ball, and of a face from it

// ConeTravel (code excursion) is a tone that moves a cone too far.
type ConeTravel struct {
	Volt, Xmax float64 // over a driver, RMS; m
	Corner     float64 // Hz, of the high-pass
	Least      float64 // Hz, the least that would do; +Inf: none
}

// FewerChannels (code channels_fewer) are fewer than the design asks for, for the load.
type FewerChannels struct {
	Channels, Asked       int
	LeastDrivers          int // on a channel
	DriverOhm, MinimumOhm float64
}

// LongStrings (code strings_too_long) are longer than the design allows.
type LongStrings struct{ Longest, Asked, Channels int }

// SharedLate (code bodies_shared_late) are bodies that share channels, by their numbers, and
// are heard one after the other at the spot.
type SharedLate struct {
	First, Last int
	Late        float64 // s
}

// LoadTooLow (code load_too_low) is one driver below the amplifier's minimum.
type LoadTooLow struct{ DriverOhm, MinimumOhm float64 }

// StringsWaste (code strings_waste) is a number of drivers that strings badly.
type StringsWaste struct {
	Channel, Drivers int
	Channels         int                // of the plan
	Strings          wiring.Arrangement // of the channel
	DCOhm            float64
	Volt, Watt       float64 // of the amplifier; of one driver at most
	Empty            *LeftEmpty
	Unequal          *StrungUnequally
}

// LeftEmpty are places that are better left without drivers.
type LeftEmpty struct {
	Places  []int // the mounts' numbers, the quietest at the spot
	Drivers int   // that are left
	Series  int   // drivers in the longest string then
	Gain    float64
}

// StrungUnequally are unequal strings that are better.
type StrungUnequally struct {
	Strings     wiring.Arrangement
	DCOhm       float64
	Gain, Apart float64 // dB, at the spot; between drivers of the shortest and longest strings
}

// CrossoverLoss (code crossover_loss) is what is lost where array and woofer meet.
type CrossoverLoss struct {
	Loss, Meets float64 // dB, Hz
	Finer       *Finer  // what would be much better; nil: nothing
	Other       bool    // with the polarity that the woofer has not
}

// MiddleWorse (code seats_middle_worse) are delays for the middle seat alone that are worse
// for all than none: the losses at the worst seat.
type MiddleWorse struct {
	Seat                   string
	Middle, Without, Their float64 // dB: with these, without delays, with the plan's
}
