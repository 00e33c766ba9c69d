package design

// Design is one design file, checked and with its defaults filled in. Field
// names carry the unit that the file uses; package layout turns them into SI.
type Design struct {
	// Path is where the design was read from, for messages. Files that the
	// design names are looked for beside it.
	Path string

	Name     string
	Air      Air
	Body     Body
	Mounts   Mounts
	Driver   Driver
	Timing   Timing
	Wiring   Wiring
	Channels []Channel
	Spot     Spot
	Coverage Coverage
}

// Air is the state of the air in the room.
type Air struct {
	TemperatureC    float64 // -20 to 50, default 20
	HumidityPercent float64 // relative, 0 to 100, default 50
	PressureKPa     float64 // 50 to 110, default 101.325
}

// Body is the closed surface that carries the drivers.
type Body struct {
	Shape       string  // tetrahedron, cube, octahedron, dodecahedron, icosahedron, geodesic or ball
	Base        string  // for a geodesic: icosahedron (default), octahedron or tetrahedron
	Subdivision int     // for a geodesic: 1 to 16, default 2; class I
	RadiusMM    float64 // centre to vertex (for a ball: its radius), 20 to 5000
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
	Count             int      // for even: 1 to 2000, over the whole ball before the cut
	List              string   // for list: path of a CSV of points and normals, beside the design
	KeepClearBelowDeg *float64 // no mount below this elevation seen from the centre, -90 to 90; nil: none
	Skip              []int    // mount numbers, counted before skipping, that stay empty
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
}

// Timing says how sound is reckoned.
type Timing struct {
	Model    string // point or baffle
	DelaysBy string // path: the way that the sound takes round the body; straight: the straight line (default for point)
}

// Wiring says how many amplifier channels there are.
type Wiring struct {
	Channels       int     // 0: each driver has its own delay (as if it had its own channel)
	MinimumLoadOhm float64 // the least that the amplifier may see, 0.5 to 100, default 4
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

// Coverage is the size of the slices that are drawn.
type Coverage struct {
	HalfWidthM float64 // half the side of the horizontal slice, 0.2 to 100; default: 1.5 times the spot's distance
	Cells      int     // along each side, 8 to 512, default 64
}
