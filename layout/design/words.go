package design

import "slices"

// The words that a design may use.
var (
	solids = []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"}
	halves = []string{
		"truncated tetrahedron", "cuboctahedron", "truncated cube", "truncated octahedron", "rhombicuboctahedron",
		"truncated cuboctahedron", "snub cube", "icosidodecahedron", "truncated dodecahedron", "truncated icosahedron",
		"rhombicosidodecahedron", "truncated icosidodecahedron", "snub dodecahedron",
	}
	bases  = []string{"icosahedron", "octahedron", "tetrahedron"}
	places = []string{"faces", "vertices", "edges", "even", "list"}
	models = []string{sphere, point, "baffle", bodyModel}
	ways   = []string{"path", "field", straight}
	splits = []string{"arrival", "neighbours", "height"}
	held   = []string{OnSurface, OnCeiling, OnWall}
	aims   = []string{"even", "worst", "mean", round}
	areas  = []string{lineShape, arc, rectangle, ring}
	// The families of high-passes, by the names that the trade has for them.
	families = []string{"butterworth", linkwitz, "bessel"}
	walls    = []string{"back", "front", "right", "left", "floor", "ceiling"}
)

const (
	geodesic  = "geodesic"
	ball      = "ball"
	prism     = "prism"
	anti      = "antiprism"
	file      = "file"
	dome      = "dome"
	sphere    = "sphere"
	bodyModel = "body"
	point     = "point"
	straight  = "straight"
	// What seats can be good at for nobody in particular, and the shapes of areas.
	round     = "round"
	lineShape = "line"
	arc       = "arc"
	rectangle = "rectangle"
	ring      = "ring"
	linkwitz  = "linkwitz-riley" // the family that is not there in every order
)

// The orders that Linkwitz-Riley filters have.
var (
	linkwitzOrders = []int{2, 4, 8}    // of the crossover to a woofer
	highPassOrders = []int{2, 4, 6, 8} // of the high-pass
)

// The RMS voltages that an amplifier may have.
const leastVolt, mostVolt = 0.1, 200.0

// Unnamed is what a design without a name is called.
const Unnamed = "Unnamed array"

// MaxDrivers is the most drivers that one design may have.
const MaxDrivers = 2000

// maxNumber is the highest mount number that a design may name: that of the
// finest geodesic's edges.
const maxNumber = 10000

// shapes are too many for a sentence, which names the groups of them.
var shapes = Limits{
	words: slices.Concat([]string{geodesic, ball}, solids, halves, []string{prism, anti, file}),
	Says:  `"geodesic", "ball", "prism", "antiprism", "file" or a solid such as "cube" or "truncated icosahedron"`,
}

// What one of a file's units is in SI.
const (
	mm, milli, litre = 1e-3, 1e-3, 1e-3
	cm2, mm2, us     = 1e-4, 1e-6, 1e-6
	percent          = 0.01
	minute           = 60.0
	zeroCelsius      = 273.15 // K
)
