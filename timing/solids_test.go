package timing

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	try "pappus/testdata/thorough"
	"pappus/timing/air"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// solidsModel is the model that the solids are heard by.
const solidsModel = radiate.SphereModel

// The regular solids as Leishman, Rollins and Smith have them, see omni.Spatial: all of one
// midradius, with a driver on each face, all in parallel. The cones, all alike, are as large as
// makes the ball's mean for the tetrahedron and the dodecahedron what it is known for, 3.4 and
// 1.9 dB; on the icosahedron they would not quite fit.
const (
	midradius = 0.13  // m
	solidCone = 0.05  // m
	evenUpTo  = 1     // dB, where a solid ends to be even
	solidLow  = 100.0 // Hz
	solidHigh = 4000.0
)

// solid is a regular solid, with the figures that a model gives it.
type solid struct {
	name  string
	ratio float64            // midradius over the radius of the vertices
	mean  map[string]float64 // dB, by model, of all lines from solidLow to solidHigh
	limit map[string]float64 // Hz, by model, the lowest line above evenUpTo
}

var solids = []solid{
	{"tetrahedron", math.Sqrt(1.0 / 3), map[string]float64{radiate.SphereModel: 3.36}, map[string]float64{radiate.SphereModel: 840}},
	{"cube", math.Sqrt(2.0 / 3), map[string]float64{radiate.SphereModel: 2.29}, map[string]float64{radiate.SphereModel: 1480}},
	{"octahedron", math.Sqrt(0.5), map[string]float64{radiate.SphereModel: 3.19}, map[string]float64{radiate.SphereModel: 1340}},
	{"dodecahedron", (math.Sqrt(5) + 3) / (math.Sqrt(3) * (1 + math.Sqrt(5))), map[string]float64{radiate.SphereModel: 1.95}, map[string]float64{radiate.SphereModel: 1880}},
	{"icosahedron", math.Sqrt((5 + math.Sqrt(5)) / 10), map[string]float64{radiate.SphereModel: 1.78}, map[string]float64{radiate.SphereModel: 1840}},
}

// array lays a driver on each face.
func (s solid) array(t *testing.T) *layout.Array {
	t.Helper()
	b, err := body.Platonic(s.name, midradius/s.ratio)
	if err != nil {
		t.Fatal(err)
	}
	a := &layout.Array{Body: b, Timing: layout.Timing{Model: solidsModel}, Driver: layout.Driver{ConeRadius: solidCone},
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
// among the highest, near 1 kHz, and the tetrahedron the evenest on the mean. The ball has
// the order of the limits so, though it has the dodecahedron's at 1.9 kHz, but the tetrahedron
// the least even on the mean. A tetrahedron is the body farthest from a ball, and what its faces
// and edges do to sound is not in the model.
func TestSolids(t *testing.T) {
	step := 20.0
	if try.Set {
		step = 5
	}
	var frequency []float64
	for hz := solidLow; hz <= solidHigh; hz += step {
		frequency = append(frequency, hz)
	}
	limit := map[string]float64{}
	for _, s := range solids {
		level := lines(t, s.array(t), frequency)
		mean := stat.Mean(level, nil)
		first := 0
		for first < len(level)-1 && !(level[first] > evenUpTo) {
			first++
		}
		limit[s.name] = frequency[first]
		t.Logf("%-12s  mean %.2f dB, most %.1f dB, above %d dB from %.0f Hz", s.name, mean, floats.Max(level), evenUpTo, frequency[first])
		if want, known := s.mean[solidsModel]; known && math.Abs(mean-want) > 0.02 {
			t.Errorf("%s: mean %.2f dB, want %.2f", s.name, mean, want)
		}
		if want, known := s.limit[solidsModel]; known && math.Abs(frequency[first]-want) > 20 {
			t.Errorf("%s: above %d dB from %.0f Hz, want %.0f", s.name, evenUpTo, frequency[first], want)
		}
	}
	for _, s := range solids[1:] {
		if limit[s.name] <= limit["tetrahedron"] || limit[s.name] > 1.05*limit["dodecahedron"] {
			t.Errorf("%s is even up to %.0f Hz, the tetrahedron up to %.0f and the dodecahedron up to %.0f", s.name, limit[s.name], limit["tetrahedron"], limit["dodecahedron"])
		}
	}
}
