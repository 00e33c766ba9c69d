package kit

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestFloorSeal measures the groove under a strip of the floor: as wide and as deep as those of
// laps, 2 mm past the joint.
func TestFloorSeal(t *testing.T) {
	m := builtIn(t)
	jobs, err := m.floors()
	if err != nil {
		t.Fatal(err)
	}
	p, err := jobs[0]()
	if err != nil || !strings.HasPrefix(p.Name, "floor-1") {
		t.Fatal(p.Name, err)
	}
	testkit.Printable(t, p.Mesh, 1)
	azimuth := 2 * math.Pi / float64(m.sectors)
	at := r3.Add(r3.Scale(31e-3, direction(azimuth)), r3.Vec{Z: -m.wall.floor.Offset + floorThick + m.Gap + 0.37e-3})
	hits := crossings(p.Mesh, at, direction(azimuth+math.Pi/2))
	if len(hits) < 2 || math.Abs(hits[0]-2e-3) > 1e-8 || math.Abs(hits[1]-2e-3-1.2e-3) > 1e-8 {
		t.Errorf("across the joint the strip has its sides at %v m", hits)
	}
	over := r3.Add(at, r3.Scale(2.6e-3, direction(azimuth+math.Pi/2)))
	if up := crossings(p.Mesh, over, r3.Vec{Z: 1}); len(up) == 0 || math.Abs(up[0]+0.37e-3-0.8e-3) > 1e-8 {
		t.Errorf("over the groove the strip begins at %v m", up)
	}
}

// TestBareLedge: of the built-in design the five lowest drivers, whose cut-outs come within 5 mm of the
// cut, are where the ledge would be; the next ring, whose cut-outs end 9 mm above it, is not.
func TestBareLedge(t *testing.T) {
	m := builtIn(t)
	if _, err := m.floors(); err != nil {
		t.Fatal(err)
	}
	if got := m.ground().Bare; !slices.Equal(got, []int{36, 37, 38, 39, 40}) {
		t.Errorf("the ledge is left out behind drivers %v", got)
	}
}
