package main

import (
	"testing"

	"pappus/layout"
	"pappus/render/words"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestWalkSaysWhere: a walk is said as a tape measure finds it, with the loudspeaker's
// own left, which is the right hand of who faces it.
func TestWalkSaysWhere(t *testing.T) {
	a := &layout.Array{Spot: r3.Vec{X: 1.56, Z: 2.32}}
	places, err := hearing{walk: []string{"1.5,0.5,2.32", "-1,0,0"}}.places(a)
	if err != nil {
		t.Fatal(err)
	}
	got := words.Walk(a, places)
	want := "You walk from 1.56 m in front along the floor, ears 2.32 m above its middle\n" +
		"to 1.50 m in front along the floor, 0.50 m to the loudspeaker's left, ears 2.32 m above its middle\n" +
		"then to 1.00 m behind along the floor, ears level with its middle\n"
	if got != want {
		t.Errorf("it says\n%s", got)
	}
}
