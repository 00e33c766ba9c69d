package layout

import (
	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/layout/fit"
	"pappus/layout/impedance"

	"gonum.org/v1/gonum/spatial/r3"
)

// Array is a design laid out: where each driver sits and which channel it
// belongs to. It is the one value that leaves this room. All is SI: metres,
// kelvin, pascals, watts. The origin is the centre of the uncut body; x points
// forward, y left, z up.
type Array struct {
	Name       string
	Air        Air
	Body       *body.Body
	Stand      float64 // gap in m between the body's lowest point and the surface below
	Wall       float64 // m
	Surface    Surface // below the body; none where there is a room
	Room       Room
	Woofer     Woofer
	Mounts     []Mount
	Driver     Driver
	Box        Box
	Print      Print
	Outline    fit.Driver // of the driver, for what must be kept clear
	Limits     fit.Limits
	Fits       []fit.Report // how each mount's driver fits: the one verdict
	Timing     Timing
	Wiring     Wiring
	Protection Protection
	Processor  Processor
	Channels   []Channel // laid out by hand; empty: timing works them out
	Spot       r3.Vec    // m
	Coverage   Coverage
	Warnings   []advice.Finding // what the builder should know of fit, wiring and woofer, in the order in which it was found
}

// Air is the state of the air.
type Air struct {
	Temperature float64 // K
	Humidity    float64 // relative, 0 to 1
	Pressure    float64 // Pa
}

// Mount is a place on the body for one driver.
type Mount struct {
	ID     int    // its number on the body, from 1; skipped places leave gaps
	Point  r3.Vec // m
	Normal r3.Vec // unit length, outward
	Face   int    // index into Body.Faces; -1 where it sits on none
}

// Driver is one loudspeaker unit.
type Driver struct {
	ConeRadius    float64 // m
	CutoutRadius  float64 // m
	FlangeRadius  float64 // m
	Depth         float64 // m; 0: not known
	NominalOhm    float64
	DCOhm         float64
	Sensitivity   float64 // dB SPL at 1 m for 2.83 V; NaN or 0: not given
	PowerHandling float64 // W

	Small     Small
	Impedance []ImpedancePoint // measured, frequencies rising; empty: none

	Response   []ResponsePoint // measured, frequencies rising; empty: none
	Resonance  float64         // Hz, in the body; 0: not known
	ResonanceQ float64         // of the driver in the body
}

// Small are a driver's small-signal values in free air; 0 where not known.
type Small struct {
	Fs         float64 // Hz
	Qms, Qes   float64
	Vas        float64 // m3
	BL         float64 // T m
	Mass       float64 // kg
	Area       float64 // m2
	Inductance float64 // H
	Reach      float64 // m, Xmax: the furthest that the cone may move from rest
}

// ImpedancePoint is one line of a driver's measured impedance.
type ImpedancePoint = impedance.Point

// ResponsePoint is one line of a driver's measured response.
type ResponsePoint struct {
	Frequency float64 // Hz
	Level     float64 // dB; differences alone count
	Phase     float64 // rad, time factor exp(+i omega t): a delay makes it fall
}

// Timing names the ways of computing that the design chose.
type Timing struct {
	Model    string // sphere, point, baffle
	DelaysBy string // path, field, straight
	// The band in Hz of the arrival by field; FieldHigh is at least 1.5 times FieldLow.
	FieldLow, FieldHigh float64
}

// Wiring is the amplifier's side of the design.
type Wiring struct {
	Channels    int     // 0: one delay for each driver
	MinimumLoad float64 // ohm
	Voltage     float64 // V, RMS, at each channel's output
	// HasAmplifier tells that Voltage is what the amplifier gives at most; else it is a
	// voltage to quote levels for. Watt is its power as it is sold, 0 where not given,
	// IntoOhm the load in ohm that this is for.
	HasAmplifier  bool
	Watt, IntoOhm float64
	Split         string // arrival, neighbours, height
	// LongestString is the most drivers in a string; 0: the best of level and smear.
	LongestString int
	WireLength    float64 // m, from the amplifier to the body, one way
	WireSection   float64 // m2 of copper
}

// Box is what the design says of the hollow.
type Box struct {
	Braces     float64 // m3
	TargetQ    float64
	VentRadius float64 // m, of one hole
	VentHoles  int
	Stuffing   float64 // kg/m3
}

// Print is what the shell is printed with.
type Print struct {
	Bed     r3.Vec  // m
	Margin  float64 // m, least from a seam to a cut-out
	Density float64 // kg/m3
}

// Protection is the high-pass that keeps cones from moving too far.
type Protection struct {
	Family string  // butterworth, linkwitz-riley, bessel
	Order  int     // 1 to 8
	Corner float64 // Hz; 0: the least that keeps the cones within their reach
}

// Processor is what gives the channels their delays.
type Processor struct {
	Rate float64 // samples per second
	Step float64 // s between the delays that can be set
}

// Channel is one amplifier output, driving one bank.
type Channel struct {
	ID     int     // from 1
	Mounts []int   // indices into Array.Mounts
	Gain   float64 // dB
	Invert bool
	// Delay in s; NaN: to be worked out.
	Delay            float64
	Series, Parallel int // drivers in a string, strings in the bank
	NominalOhm       float64
	DCOhm            float64
}

// Woofer is one larger loudspeaker that takes the low tones over from the array.
type Woofer struct {
	Present     bool
	At          r3.Vec  // m
	Crossover   float64 // Hz
	Order       int     // of the Linkwitz-Riley filters: 2, 4 or 8
	Sensitivity float64 // dB SPL at 1 m for 2.83 V; NaN or 0: not given
	Gain        float64 // dB
	Invert      bool    // its wires are swapped
}

// Coverage is the size of the slices that are drawn.
type Coverage struct {
	HalfWidth float64 // m
	Cells     int     // along each side
	// SmearLimit is the most smear in s that counts as good.
	SmearLimit float64
}
