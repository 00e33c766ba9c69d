package timing

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing/arrival"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Spot is an array heard at one place of the room: when and how loud each driver is heard
// there, the channels with the delays that bring them into step, and what they sum to. SI
// throughout; levels in dB over a point source of the volume velocity of one driver heard
// from 1 m, or dB SPL where IsAbsolute.
type Spot struct {
	Array        *layout.Array // its Spot is the place
	SpeedOfSound float64       // m/s

	Arrivals []Arrival // one for each of Array.Mounts, in the same order
	Channels []Channel // how the drivers are driven; never empty

	// Wait is by how many s all channels wait for a woofer that is heard later; it is in
	// their delays.
	Wait       float64
	Rounding   Rounding // what the processor's step makes of the delays
	Protection Protection

	Response  Response
	Phase     Phase
	Aligned   Measures // with the delays
	Unaligned Measures // without
	Ripple    float64  // dB, standard deviation over thirds from 200 Hz to 5 kHz of what echoes add to the level, with the delays; 0 without any
	Seating   *Seating // how the delays serve all seats; nil where there are fewer than two
	Echoes    []Echo   // what the surface below or each wall does to the sound at the spot, the deepest dip first

	Warnings []Finding // layout's and timing's own, in the order in which they were found

	late   *arrival.Late     // how much later than by the path the field is heard; nil: not at all
	served served            // the channels as they serve the seats
	solved *radiate.Solution // the true field of the body; nil: the model is another
}

// Plan is all that timing finds for an array: its own listening spot, how the channels are
// wired and what they bear, and what other choices would bring.
type Plan struct {
	Spot

	Peaks      []float64 // s, for each mount: peak of the model's impulse response up to 12 kHz; NaN: no sound comes
	Choices    []Choice  // what each way of taking delays would cost at the spot
	Counts     []Count   // what 1, 2, 3 … channels would leave at the spot; empty where seats are planned for: Seating.Counts
	Front      []Strung  // what shorter strings cost and bring at the spot; empty where the design leaves no choice, and where seats are planned for: Seating.Strings
	Banks      []Bank    // for each channel: its strings, and what they draw
	Maximum    Maximum   // how loud it can be, and what the cones do
	Loudest    float64   // dB, mean of Maximum's octaves from 500 Hz to 4 kHz, at the spot, seats or not; NaN where it has none
	Horizontal Polar     // round the vertical axis at the spot's height and distance
	Vertical   Polar     // over the top in the plane of the vertical axis and the spot
}

// Arrival is when and how one driver is heard at the listening spot.
type Arrival struct {
	Path     float64 // m, the way round the ball that stands for the body, from the mount's place on it; Straight in the other models
	Straight float64 // m, the straight line from the mount itself, through the body if need be
	Time     float64 // s, Path over the speed of sound
	Field    float64 // s, what best fits the model's phase over the field band; NaN: no sound comes
	Delay    float64 // s, never negative, what its channel is set to
	Level    float64 // dB, of the direct sound, energy mean from 500 Hz to 4 kHz
	Seen     bool    // true where the straight line clears the ball, or the baffle
	Channel  int     // index into Channels
}

// Silent tells whether no driver's direct sound comes to the spot.
func (p *Spot) Silent() bool {
	return len(p.Arrivals) > 0 && !slices.ContainsFunc(p.Arrivals, func(a Arrival) bool { return !math.IsInf(a.Level, -1) })
}

// Choice is a way of taking delays, one for each driver, and what it leaves.
type Choice struct {
	By    string    // straight, path, field or peak
	Band  []float64 // Hz, exact octave centres
	Short []float64 // dB by which each octave at the spot falls short of all drivers in step
}

// Channel is one amplifier output with the delay that it was given.
type Channel struct {
	layout.Channel
	Delay float64 // s, what the processor is set to: Exact to the nearest step
	Exact float64 // s, as computed, with what all channels wait for: Spot.Wait and Rounding.Common
}

// Response is the level at the listening spot over frequency.
type Response struct {
	Frequency []float64 // Hz, rising
	InStep    []float64 // dB, sum of the magnitudes: the most that timing can give
	Aligned   []float64 // dB, with the delays
	Unaligned []float64 // dB, without
}

// Measures are the figures of merit at a point, of the direct sound: what comes by the
// body alone, without the surface below it or the room round it. A channel's delay moves
// a driver and its mirror images alike, so no delay and no split mends what an echo does;
// Echo tells of that.
type Measures struct {
	Smear     float64 // s, energy-weighted RMS deviation of the arrivals
	Spread    float64 // s, latest arrival less earliest
	CombOnset float64 // Hz, lowest frequency with a summing loss of 3 dB; +Inf: none up to the highest computed
	Loss      float64 // dB, from 500 Hz to 8 kHz against all drivers in step, as at seats
}

// Polar is the level round a circle through the listening spot, for each
// octave band.
type Polar struct {
	Angle     []float64   // rad: azimuth from x, or elevation; rising
	Band      []float64   // Hz, exact octave centres
	Aligned   [][]float64 // [band][angle] dB; NaN where no sound can be
	Unaligned [][]float64 // [band][angle] dB
}

// Slice is a flat grid of points in the room.
type Slice struct {
	Name          string
	Origin        r3.Vec  // the lower left corner's cell centre, m
	Right, Up     r3.Vec  // unit vectors of the picture's axes
	Step          float64 // m between cell centres
	Columns, Rows int
}

// Coverage is a slice filled in. Every field of values is row-major,
// Columns*Rows long, first row lowest; NaN where no sound comes: inside the body, below the surface,
// outside the room.
type Coverage struct {
	Slice
	Band      []float64   // Hz, exact octave centres
	Level     [][]float64 // [band][cell] dB, with the delays, echoes in it
	Smear     []float64   // s, of the direct sound, with the delays
	CombOnset []float64   // Hz, of the direct sound, +Inf where there is none up to the highest computed
	Loss      []float64   // dB, of the direct sound from 500 Hz to 8 kHz against all drivers in step, as at seats
}
