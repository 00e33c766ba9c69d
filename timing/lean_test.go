package timing_test

import (
	"math"
	"testing"

	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestEdges: in a row of cells 0.1 m apart whose values rise by 0.05 dB each, one may lean
// until 1 dB more is lost, and the level is near until 3 dB; what is as good behind a ridge is not
// counted.
func TestEdges(t *testing.T) {
	const columns = 100
	s := timing.Slice{Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.1, Columns: columns, Rows: 2}
	values := make([]float64, 2*columns)
	for i := range values {
		values[i] = 7 + 0.05*float64(i%columns)
		if i%columns >= 90 {
			values[i] = 7
		}
	}
	for _, test := range []struct {
		name  string
		edge  timing.Edge
		cells int
		at    float64 // column of the line
	}{
		{"lean", s.Lean(values, r3.Vec{}), 42, 20},
		{"level", s.LevelEdge(values, r3.Vec{}), 122, 60},
	} {
		t.Run(test.name, func(t *testing.T) {
			if test.edge.Cells != test.cells || len(test.edge.Lines) != 1 {
				t.Fatalf("%d cells in %d lines, want %d in one", test.edge.Cells, len(test.edge.Lines), test.cells)
			}
			for _, p := range test.edge.Lines[0] {
				if math.Abs(p.Column-test.at) > 0.01 {
					t.Errorf("the edge is at column %g, want %g", p.Column, test.at)
				}
			}
		})
	}
	if out := s.Lean(values, r3.Vec{X: 99}); out.Cells != 0 || out.Lines != nil {
		t.Errorf("outside of the slice: %+v", out)
	}
}
