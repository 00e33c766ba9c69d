//go:build !race

package timing_test

import (
	"testing"

	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestEarsAllocateNothing once there is a table; the race detector throws away
// what is kept for reuse, and so cannot tell.
func TestEarsAllocateNothing(t *testing.T) {
	p := plan(t, demo(t))
	at, far := r3.Vec{X: 0.8, Y: 0.4, Z: 0.5}, r3.Vec{X: 3, Y: -1, Z: 0.7}
	e, err := timing.NewEars(&p.Spot, timing.Listening{Cases: []timing.Case{timing.AsBuilt}}, []r3.Vec{at, far}, few)
	if err != nil {
		t.Fatal(err)
	}
	left, right := [][]complex128{make([]complex128, len(few))}, [][]complex128{make([]complex128, len(few))}
	if n := testing.AllocsPerRun(10, func() { e.At(left, right, far, r3.Vec{X: -1}) }); n > 0 {
		t.Errorf("%g allocations", n)
	}
}
