package verdict

// Code says what a Fact is.
type Code string

// Facts about recordings.
const (
	WholeUnusable Code = "whole unusable"  // the one of all channels, for Err
	Uncompared    Code = "uncompared"      // the channels, for Err
	NoRecording   Code = "no recording"    // of a channel, which would be File
	Unusable      Code = "unusable"        // that of a channel, for Err
	TakeUnusable  Code = "take unusable"   // a further one, Take, of a channel or of all, for Err
	WireInverted  Code = "wire inverted"   // of a channel, and not the channel
	WireLevel     Code = "wire level"      // of a channel, Value dB over the others
	DelaysSet     Code = "delays set"      // though it was said that none were
	NoDelaysSet   Code = "no delays set"   // though it was said that they were
	Alike         Code = "alike"           // those of Channels, which should not be
	Exchanged     Code = "exchanged"       // those of two Channels, or their wires
	SeatUnusable  Code = "seat unusable"   // the one at Seat, for Err
	SeatWireLevel Code = "seat wire level" // at Seat, Value dB over the others

	SeatsOtherCase Code = "seats other case" // most at seats look as if delays were set where it was said that they were not, or the other way round
)

// Facts about channels.
const (
	Silent     Code = "silent"
	DeadString Code = "dead string" // String of Strings, with Drivers
	Unlike     Code = "unlike"      // the plan, by Value of the energy: nothing is told
	Vague      Code = "vague"       // the same, but something is told
	Quiet      Code = "quiet"       // Value dB over the siblings, give or take Error; as if one of Strings were dead, if that is not 0
	Loud       Code = "loud"
	Reversed   Code = "reversed"
	Halves     Code = "halves" // Channels are in reverse polarity to Others, and as many
	Late       Code = "late"   // Channels, by Times

	SeemsReversed Code = "seems reversed" // by all seats together: the plan is off by Value dB, and by Error if it is so
	SeemsSilent   Code = "seems silent"   // the same
)

// Facts to know, of which none is a fault.
const (
	NoWire        Code = "no wire"        // beside the microphone: no times are told
	AllInverted   Code = "all inverted"   // against the wire
	LevelUnjudged Code = "level unjudged" // before it is known whether delays were set
	SeatAlone     Code = "seat alone"     // only Seat was recorded, and channels were not: nothing is told of what is lost
	SeatsNoWire   Code = "seats no wire"  // beside the microphone at seats: each is matched to its own plan
)

// Fact is one thing that measurements tell. Which fields count depends on the Code.
type Fact struct {
	Code             Code
	Channels, Others []int     // by their numbers
	Times            []float64 // s, of Channels
	Value, Error     float64
	Beside           bool // Value is over the siblings of like arrival only
	String, Strings  int  // from 1
	Drivers          []int
	Take             int
	File             string
	Seat             string // where it was found; empty: at the spot
	Err              error
}
