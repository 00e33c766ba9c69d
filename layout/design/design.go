package design

// Design is one design file, checked and with its defaults filled in. Field
// names carry the unit that the file uses; package layout turns them into SI.
type Design struct {
	// Path is where the design was read from, for messages. Files that the
	// design names are looked for beside it.
	Path string

	Name       string
	Air        Air
	Body       Body
	Mounts     Mounts
	Driver     Driver
	Fit        Fit
	Box        Box
	Print      Print
	Timing     Timing
	Wiring     Wiring
	Channels   []Channel
	Protection Protection
	Processor  Processor
	Spot       Spot
	Surface    Surface
	Room       Room
	Woofer     Woofer
	Coverage   Coverage
}

// Air is the state of the air in the room.
type Air struct {
	TemperatureC    float64 // -20 to 50, default 20
	HumidityPercent float64 // relative, 0 to 100, default 50
	PressureKPa     float64 // 50 to 110, default 101.325
}

// Body is the closed surface that carries the drivers.
type Body struct {
	Shape       string  // a regular or half-regular solid, geodesic, prism, antiprism, ball or file
	Base        string  // for a geodesic: icosahedron (default), octahedron or tetrahedron
	Subdivision int     // for a geodesic of class I: 1 to 16, default 2; 0 where M is given
	M, N        int     // for a geodesic of any class, in place of Subdivision: M 1 to 16, N 0 to 16
	Sides       int     // for a prism or antiprism: 3 to 64
	HeightMM    float64 // for a prism or antiprism: 10 to 10000; 0: edges of one length
	File        string  // for file: path of an OFF or STL, beside the design
	Dual        bool    // the body's dual: faces for vertices, vertices for faces
	RadiusMM    float64 // centre to the furthest vertex (a ball: its radius; a prism: axis to corner), 20 to 5000
	// CutHeightMM is the height above the body's centre of the plane below
	// which the body is cut away. HasCut is false where the file has none:
	// the body is whole.
	CutHeightMM   float64
	HasCut        bool
	StandHeightMM float64 // gap between the body's lowest point and the surface below it, 0 to 3000, default 0
	WallMM        float64 // 0.4 to 100, default 3
}

// Mounts says where on the body the drivers sit.
type Mounts struct {
	On                string   // faces (default; for a ball: even), vertices, edges, even or list
	Count             int      // for even: 1 to 2000
	Over              string   // for even: ball (default: cut afterwards) or dome (all above the cut)
	Symmetry          int      // for even: how many turns about z leave the places as they are, 1 to 72, default 1
	KeepClear         []Zone   // no mount's flange in these
	List              string   // for list: path of a CSV of points and normals, beside the design
	KeepClearBelowDeg *float64 // no mount below this elevation seen from the centre, -90 to 90; nil: none
	Skip              []int    // mount numbers, counted before skipping, that stay empty
}

// Zone is a round place on the body, seen from the centre, in degrees.
type Zone struct {
	AzimuthDeg, ElevationDeg, HalfAngleDeg float64
}

// Driver is one loudspeaker unit; all mounts carry the same.
type Driver struct {
	DiameterMM    float64  // of the cone that radiates, 5 to 500
	CutoutMM      float64  // default: diameter
	FlangeMM      float64  // outer diameter of the flange, default: cut-out
	DepthMM       float64  // behind the flange, 0 to 500, default 0: not known
	NominalOhm    float64  // 1 to 1000, default 8
	DCOhm         float64  // default 0.85 of nominal (common practice)
	SensitivityDB *float64 // dB SPL at 1 m for 2.83 V, 50 to 120; nil: levels are relative
	PowerW        float64  // long-term rating, 0.05 to 2000, default 1
	Response      string   // path of a CSV of frequency, level and phase, beside the design; empty: none
	ResonanceHz   float64  // in the body, 20 to 20000, default 0: not known
	ResonanceQ    float64  // of the driver in the body, 0.2 to 10, default 0.707: the flattest

	// The outline behind the flange; 0 where not known.
	MagnetMM, MagnetHeightMM                           float64 // across, 1 to 500; of its straight part, 0 to 500
	TerminalReachMM, TerminalFrontMM, TerminalLengthMM float64 // from the axis; behind the body's face; along the axis
	ScrewMM                                            float64 // of a screw hole, 0.5 to 20

	// Small-signal values, in free air; 0 where not known (Small, JAES 20 (1972)
	// 798; IEC 60268-5).
	FsHz      float64 // resonance
	Qms, Qes  float64 // mechanical and electrical Q
	VasL      float64 // air as springy as the suspension
	BLTM      float64 // force factor
	MmsG      float64 // moving mass, its air included
	SdCM2     float64 // area of the cone
	LeMH      float64 // inductance of the voice coil
	XmaxMM    float64 // the furthest that the cone may move from rest
	Impedance string  // path of a CSV of frequency, ohm and degrees, beside the design; empty: none
}

// Fit is what must be kept clear.
type Fit struct {
	ApartMM float64 // least between things of neighbours, 0 to 100, default 1
	EdgeMM  float64 // least from a flange, a cut-out or a screw to a face's edge, 0 to 100, default 0
}

// Box is the hollow that all drivers share.
type Box struct {
	BracesL      float64 // what braces take up, 0 to 1000, default 0
	TargetQ      float64 // what the system's Q should be, 0.5 to 3, default 0.707
	VentHoleMM   float64 // across one hole of a resistive vent, 0.5 to 200, default 8
	VentHoles    int     // 1 to 1000, default 6
	StuffingKgM3 float64 // 0 to 50, default 10
}

// Print is what the shell is printed with.
type Print struct {
	BedMM       [3]float64 // the printer's, 10 to 5000 each, default 220, 220, 250
	MarginMM    float64    // least from a seam to a cut-out, 0 to 100, default 1
	DensityKgM3 float64    // of the material, 50 to 20000, default 1240 (PLA, common practice)
}

// Timing says how sound is reckoned.
type Timing struct {
	Model string // sphere (default), point or baffle
	// DelaysBy is field (what best fits the model's phase; default for sphere), path
	// (the shortest way round the body) or straight (the straight line; default for
	// point and baffle, where nothing is gone round and all three are one).
	DelaysBy string
	// The band of the arrival by field, 50 to 20000 each, default 500 and 8000;
	// low is at most two thirds of high.
	FieldLowHz, FieldHighHz float64
}

// Wiring says how many amplifier channels there are.
type Wiring struct {
	Channels       int     // 0: each driver has its own delay (as if it had its own channel)
	MinimumLoadOhm float64 // the least that the amplifier may see, 0.5 to 100, default 4
	AmplifierVolt  float64 // RMS, at each channel's output, 0.1 to 200, default 2.83
	// Split is how drivers are sorted into channels: by arrival (the least smear),
	// into neighbours, or into bands of height.
	Split string
	// LongestString is the most drivers in a string, 1 to 2000, for splits by arrival
	// and by height; 0: as many as it takes.
	LongestString int
	WireM         float64 // from the amplifier to the body, one way, 0 to 1000, default 0
	WireMM2       float64 // of copper, 0.05 to 50, default 0.75
}

// Protection is the high-pass that keeps cones from moving too far.
type Protection struct {
	Family   string  // butterworth (default), linkwitz-riley or bessel
	Order    int     // 1 to 8, for linkwitz-riley 2, 4, 6 or 8, default 4
	CornerHz float64 // 10 to 5000, below half of the processor's rate; 0: the least that keeps the cones within their reach
}

// Processor is what gives the channels their delays.
type Processor struct {
	RateHz float64 // samples per second, 8000 to 384000, default 48000
	StepUS float64 // between the delays that can be set, 0.1 to 10000; 0: one sample
}

// Channel is a channel laid out by hand.
type Channel struct {
	Drivers []int    // mount numbers
	GainDB  float64  // -60 to 12, default 0
	Invert  bool     // polarity
	DelayUS *float64 // 0 to 1e6; nil: worked out
}

// Spot is the listening spot, from the body's centre: x forward, y left, z up.
type Spot struct {
	XM, YM, ZM float64 // -100 to 100 each, outside the body
}

// Octaves holds one value for each octave band from 125 Hz to 8 kHz.
type Octaves [7]float64

// Surface is the large level surface that the body stands on or hangs above, a
// table or a floor: body.stand_height_mm below the body's lowest point.
type Surface struct {
	Present    bool    // the file has the table
	Absorption Octaves // 0 (rigid) to 1, default 0
}

// Room is the box that the body is in, in place of a surface. Its corner is at
// the back, right, on the floor: x runs forward, y left and z up, as the body's do.
type Room struct {
	Present    bool // the file has the table
	SizeM      [3]float64
	BodyAtM    [3]float64 // the body's centre from the corner
	Absorption [6]Octaves // 0 (rigid) to 1; back, front, right, left, floor, ceiling
	Order      int        // the most walls that a sound is followed over, 0 to 10, default 3
}

// Woofer is one larger loudspeaker that takes the low tones over from the array.
// Its place is counted as the spot's: from the body's centre.
type Woofer struct {
	Present       bool     // the file has the table
	XM, YM, ZM    float64  // -100 to 100 each, at least 0.1 m from the spot
	CrossoverHz   float64  // 40 to 2000
	Order         int      // of the Linkwitz-Riley filters, 2, 4 (default) or 8
	SensitivityDB *float64 // dB SPL at 1 m for 2.83 V, 50 to 120; nil: as loud as the array at the crossover
	GainDB        float64  // -40 to 20, default 0
	Invert        bool     // its wires are swapped
}

// Coverage is the size of the slices that are drawn.
type Coverage struct {
	HalfWidthM float64 // half the side of the horizontal slice, 0.2 to 100; default: 1.5 times the spot's distance
	Cells      int     // along each side, 8 to 512, default 64
	// SmearLimitUS is the most smear that counts as good, 1 to 10000, default 100.
	SmearLimitUS float64
}
