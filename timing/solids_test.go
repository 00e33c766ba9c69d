package timing

import (
	"math"
	"sort"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	try "pappus/testdata/thorough"
	"pappus/timing/air"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// The regular solids as Leishman, Rollins and Smith have them, see omni.Spatial: all of one
// midradius, with a driver on each face, all in parallel. The cones, all alike, are as large as
// makes the ball's mean for the tetrahedron and the dodecahedron what it is known for, 3.4 and
// 1.9 dB; on the icosahedron they stand 4 mm over the edges (46 mm would fit; by the body 1.8 dB
// and 1800 Hz).
const (
	midradius = 0.13  // m
	solidCone = 0.05  // m
	evenUpTo  = 1     // dB, where a solid ends to be even
	solidLow  = 100.0 // Hz
	solidHigh = 4000.0
)

// solid is a regular solid, with the figures that each model gives it.
type solid struct {
	name  string
	ratio float64 // midradius over the radius of the vertices
	told  map[string]told
}

// told is what a model tells of a solid.
type told struct {
	mean  float64 // dB, of all lines from solidLow to solidHigh
	upper float64 // dB, of those in the upper octave
	limit float64 // Hz, the lowest line above evenUpTo
}

var solids = []solid{
	{"tetrahedron", math.Sqrt(1.0 / 3), map[string]told{"sphere": {3.36, 4.01, 840}, "body": {1.94, 2.30, 880}}},
	{"cube", math.Sqrt(2.0 / 3), map[string]told{"sphere": {2.29, 3.33, 1480}, "body": {2.11, 3.00, 1465}}},
	{"octahedron", math.Sqrt(0.5), map[string]told{"sphere": {3.19, 4.21, 1340}, "body": {2.45, 3.64, 1300}}},
	{"dodecahedron", (math.Sqrt(5) + 3) / (math.Sqrt(3) * (1 + math.Sqrt(5))), map[string]told{"sphere": {1.95, 3.61, 1880}, "body": {1.72, 3.18, 1890}}},
	{"icosahedron", math.Sqrt((5 + math.Sqrt(5)) / 10), map[string]told{"sphere": {1.78, 3.27, 1840}, "body": {1.56, 2.83, 1835}}},
}

// array lays a driver on each face.
func (s solid) array(t *testing.T, model string) *layout.Array {
	t.Helper()
	b, err := body.Platonic(s.name, midradius/s.ratio)
	if err != nil {
		t.Fatal(err)
	}
	a := &layout.Array{Body: b, Timing: layout.Timing{Model: model, SolveTo: 1.45 * solidHigh}, Driver: layout.Driver{ConeRadius: solidCone},
		Air: layout.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}}
	for f := range b.Faces {
		a.Mounts = append(a.Mounts, layout.Mount{ID: f + 1, Point: b.Centroid(f), Normal: b.Normal(f), Face: f})
	}
	return a
}

// lines returns how much an array, all in parallel, deviates at single frequencies in Hz.
func lines(t *testing.T, a *layout.Array, frequency []float64) []float64 {
	t.Helper()
	s, err := radiate.NewScene(a, radiate.NewMedium(air.Air(a.Air), frequency).WithoutLoss())
	if err != nil {
		t.Fatal(err)
	}
	one := make([]complex128, len(frequency))
	for f := range one {
		one[f] = 1
	}
	around := radiate.NewAround(spatialAxis(a), false, spatialDegree)
	fed := radiate.Feed{Group: make([]int, len(a.Mounts)), Weight: [][]complex128{one}}
	return spatialOf(around.Share, s.Energy([]radiate.Feed{fed}, around)[0], 1)
}

// TestSolids holds what a model makes of the five solids: how uneven each is on the mean of
// every hertz from 100 Hz to 4 kHz, and where it ends to be even.
//
// The measurements (from memory) have the tetrahedron's limit lowest and the dodecahedron's
// among the highest, near 1 kHz, and the tetrahedron the evenest on the mean. Both models have
// the order of the limits so, the tetrahedron's near 0.9 kHz, the dodecahedron's at 1.9 kHz. By
// the ball the tetrahedron is the least even on the mean: its four caps are as far apart as can
// be on a small ball, without the faces and edges of the body. By the body it is evener than
// cube and octahedron, and the evenest from 2 to 4 kHz; dodecahedron and icosahedron stay a little
// evener on the whole mean, for up to 2 kHz they deviate by 0.2 dB only, with drivers that
// are all alike and walls that stand still. Cones of other sizes change the mean by more
// than the solids differ: by the body, of 35 and 60 mm, 2.4 and 2.4 dB on the tetrahedron, 2.0
// and 1.3 on the dodecahedron; the size and the drivers of the bodies measured are not known here.
func TestSolids(t *testing.T) {
	step, models := 20.0, []string{radiate.SphereModel}
	if try.Set {
		step, models = 5, append(models, radiate.BodyModel)
	}
	var frequency []float64
	for hz := solidLow; hz <= solidHigh; hz += step {
		frequency = append(frequency, hz)
	}
	for _, model := range models {
		for _, s := range solids {
			level := lines(t, s.array(t, model), frequency)
			mean, upper := stat.Mean(level, nil), stat.Mean(level[sort.SearchFloat64s(frequency, solidHigh/2):], nil)
			first := 0
			for first < len(level)-1 && !(level[first] > evenUpTo) {
				first++
			}
			t.Logf("%s, %-12s  mean %.2f dB, upper octave %.2f dB, most %.1f dB, above %d dB from %.0f Hz", model, s.name, mean, upper, floats.Max(level), evenUpTo, frequency[first])
			if want := s.told[model]; math.Abs(mean-want.mean) > 0.02 || math.Abs(upper-want.upper) > 0.03 || math.Abs(frequency[first]-want.limit) > 20 {
				t.Errorf("%s by %s: mean %.2f dB, %.2f dB in the upper octave, above %d dB from %.0f Hz, want %.2f, %.2f and %.0f", s.name, model, mean, upper, evenUpTo, frequency[first], want.mean, want.upper, want.limit)
			}
		}
	}
}
