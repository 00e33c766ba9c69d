package design

import (
	"pappus/layout/fit"
	"pappus/layout/impedance"

	"gonum.org/v1/gonum/spatial/r3"
)

// Design is one design file, checked and with its defaults filled in. All is SI, but for
// directions, which are in degrees as their names say. What may stand where, in which
// unit, and what it is where nothing does, is in the table of keys (keys.go).
type Design struct {
	// Path is where the design was read from, for messages. Files that the
	// design names are looked for beside it.
	Path  string
	Lines Lines // where its keys stand in the file; nil: not from one

	Name       string
	Air        Air
	Body       Body
	Placing    Placing
	Copies     []Copy // of the body, at other places
	Mounts     Mounts
	Driver     Driver
	Fit        Fit
	Box        Box
	Print      Print
	Kit        Kit
	Build      Build
	Parts      []Part // of the bill, beside what the design takes anyway
	Timing     Timing
	Wiring     Wiring
	Channels   []Channel
	Protection Protection
	Processor  Processor
	Spot       r3.Vec // m; where the file has none, that of the middle seat
	Seats      []Seat // as they are written; AllSeats has those of areas too
	Areas      []Area
	Seating    Seating
	Surface    Surface
	Room       Room
	Woofer     Woofer
	Coverage   Coverage
	Search     Search
}

// Seat is a place where somebody sits.
type Seat struct {
	Name   string
	At     r3.Vec  // m, of the middle of the head
	Weight float64 // against the other seats
}

// Seating says what one set of delays for all seats is to be good at.
type Seating struct {
	Aim  string  // even, worst, mean, or round: all round, for nobody in particular
	Head float64 // m, how far a head moves from its place
	Loud float64 // of the aim round: from 0, even, to 1, loud
}

// Air is the state of the air in the room.
type Air struct {
	Temperature float64 // K
	Humidity    float64 // relative, 0 to 1
	Pressure    float64 // Pa
}

// Body is the closed surface that carries the drivers.
type Body struct {
	Shape       string  // a regular or half-regular solid, geodesic, prism, antiprism, ball or file
	Base        string  // of a geodesic
	Subdivision int     // of a geodesic of class I; 0 where M is given
	M, N        int     // of a geodesic of any class, in place of Subdivision
	Sides       int     // of a prism or antiprism
	Height      float64 // m, of a prism or antiprism; 0: edges of one length
	File        string  // for file: path of an OFF or STL, beside the design
	Dual        bool    // the body's dual: faces for vertices, vertices for faces
	Radius      float64 // m, centre to the furthest vertex; of a prism axis to corner
	// Cut is the height in m above the body's centre of the plane below which the body is
	// cut away. HasCut is false where the file has none: the body is whole.
	Cut    float64
	HasCut bool
	Stand  float64 // m, gap between the body and the surface, ceiling or wall that it is fixed to
	Wall   float64 // m
}

// Mounts says where on the body the drivers sit.
type Mounts struct {
	On                string   // faces, vertices, edges, even or list
	Count             int      // for even
	Over              string   // for even: ball (cut afterwards) or dome (all above the cut)
	Symmetry          int      // for even: how many turns about z leave the places as they are
	KeepClear         []Zone   // no mount's flange in these
	List              string   // for list: path of a CSV of points and normals, beside the design
	KeepClearBelowDeg *float64 // no mount below this elevation seen from the centre; nil: none
	Skip              []int    // mount numbers, counted before skipping, that stay empty
}

// Zone is a round place on the body, seen from the centre, in degrees.
type Zone struct {
	AzimuthDeg, ElevationDeg, HalfAngleDeg float64
}

// Driver is one loudspeaker unit; all mounts carry the same. What is 0 is not known, but
// for a terminal's front and length.
type Driver struct {
	ConeRadius float64 // m, of the cone that radiates
	fit.Outline

	NominalOhm    float64
	DCOhm         float64
	Sensitivity   float64 // dB SPL at 1 m for 2.83 V; NaN, too: not known
	PowerHandling float64 // W, long-term

	Resonance  float64 // Hz, in the body
	ResonanceQ float64 // of the driver in the body
	Small      Small

	// Tables beside the design, and what stands in them, frequencies rising. Package
	// layout reads them.
	ResponseFile, ImpedanceFile string
	Response                    []ResponsePoint
	Impedance                   []impedance.Point

	Mass  float64  // kg, of a whole driver
	Price *float64 // of one, in any money; nil: not known
}

// Small are a driver's small-signal values in free air; 0 where not known (Small, JAES 20
// (1972) 798; IEC 60268-5).
type Small struct {
	Fs         float64 // Hz
	Qms, Qes   float64
	Vas        float64 // m3
	BL         float64 // T m
	Mass       float64 // kg, its air included
	Area       float64 // m2
	Inductance float64 // H
	Reach      float64 // m, Xmax: the furthest that the cone may move from rest
}

// ResponsePoint is one line of a driver's measured response.
type ResponsePoint struct {
	Frequency float64 // Hz
	Level     float64 // dB; differences alone count
	Phase     float64 // rad, time factor exp(+i omega t): a delay makes it fall
}

// Fit is what must be kept clear.
type Fit struct {
	Apart float64 // m, least between things of neighbours
	Edge  float64 // m, least from a flange, a cut-out or a screw to a face's edge
}

// Box is what the design says of the hollow that all drivers share.
type Box struct {
	Braces     float64 // m3
	TargetQ    float64
	VentRadius float64 // m, of one hole of a resistive vent
	VentHoles  int
	Stuffing   float64 // kg/m3
}

// Print is what the shell is printed with.
type Print struct {
	Bed     r3.Vec   // m
	Margin  float64  // m, least from a seam to a cut-out
	Density float64  // kg/m3
	Price   *float64 // of a kilogram, in the driver's money; nil: not known
	// Flow in m3/s is how much the printer lays down, travel and turns included: by default
	// a line of 0.45 mm in layers of 0.2 mm at 60 mm/s, the usual settings of a 0.4 mm
	// nozzle, make 5.4 mm3/s, less what is lost between lines.
	Flow float64
}

// Kit is how the printed parts go together.
type Kit struct {
	Gap      float64 // m, between parts that go into each other
	Joint    string  // lap or flange
	Mounting string  // front or rear: which side of the wall drivers are put on
	Recess   float64 // m, for a driver's flange; half of the wall at most
}

// Timing names the ways of computing that the design chose.
type Timing struct {
	Model string // sphere, point, baffle or body
	// SolveTo is how far up, in Hz, the field of the body itself is heard alone in the model body.
	SolveTo float64
	// DelaysBy is field (what best fits the model's phase; the default for sphere and body), path
	// (the shortest way round the body) or straight (the straight line; the default for
	// point and baffle, where nothing is gone round and all three are one).
	DelaysBy string
	// The band in Hz of the arrival by field; FieldHigh is at least 1.5 times FieldLow.
	FieldLow, FieldHigh float64
}

// Wiring is the amplifier's side of the design.
type Wiring struct {
	Channels    int     // 0: each driver has its own delay (as if it had its own channel)
	MinimumLoad float64 // ohm; where not given IntoOhm, or else 4
	// Voltage is the RMS voltage at each channel's output: as given, or what the
	// amplifier's watts come to, or 2.83. HasAmplifier tells that it is one of the first
	// two, what the amplifier gives at most; else it is a voltage to quote levels for.
	Voltage      float64
	HasAmplifier bool
	// Watt is its power as it is sold, IntoOhm the load in ohm that this is for; 0 where
	// not given.
	Watt, IntoOhm float64
	Gain          float64 // dB, of voltage, from the processor's output to the amplifier's
	// Split is how drivers are sorted into channels: by arrival (the least smear),
	// into neighbours, or into bands of height.
	Split string
	// LongestString is the most drivers in a string, for splits by arrival and by height;
	// 0: the best of level and smear.
	LongestString int
	WireLength    float64 // m, from the amplifier to the body, one way
	WireSection   float64 // m2 of copper
}

// Channel is a channel laid out by hand.
type Channel struct {
	Drivers []int    // mount numbers
	Gain    float64  // dB
	Invert  bool     // polarity
	Delay   *float64 // s; nil: worked out
}

// Protection is the high-pass that keeps cones from moving too far.
type Protection struct {
	Family string  // butterworth, linkwitz-riley or bessel
	Order  int     // 1 to 8
	Corner float64 // Hz, below half of the processor's rate; 0: the least that keeps the cones within their reach
}

// Processor is what gives the channels their delays.
type Processor struct {
	Rate float64 // samples per second
	Step float64 // s between the delays that can be set; 0 in a design: one sample
	// FullScale is the RMS voltage that a sine of full scale has at its output, or at the
	// amplifier's where the two are one; 0: not known.
	FullScale float64
}

// Surface is the large flat surface that the body is fixed to: a table or a floor below
// it, a ceiling above or a wall behind, Body.Stand from where the body is nearest to it.
type Surface struct {
	Present    bool // the file has the table
	Absorption Absorption
}

// Woofer is one larger loudspeaker that takes the low tones over from the array.
type Woofer struct {
	Present     bool    // the file has the table
	At          r3.Vec  // m, counted as the spot
	Crossover   float64 // Hz
	Order       int     // of the Linkwitz-Riley filters
	Sensitivity float64 // dB SPL at 1 m for 2.83 V; NaN or 0: as loud as the array at the crossover
	Gain        float64 // dB
	Invert      bool    // its wires are swapped
}

// Coverage is the size of the slices that are drawn.
type Coverage struct {
	HalfWidth  float64 // m, half the side; where not given 1.5 times the spot's distance
	Cells      int     // along each side
	SmearLimit float64 // s, the most smear that counts as good
}
