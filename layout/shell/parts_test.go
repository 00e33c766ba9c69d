package shell_test

import (
	"math"
	"testing"

	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestParts: the segments of a plan, cut out of the mesh, have the volumes that the plan
// computes; along steps too.
func TestParts(t *testing.T) {
	b := lantern(t, 0)
	holes := onFaces(b, 0.0165)
	whole, err := shell.Make(b, 0.003, holes)
	if err != nil {
		t.Fatal(err)
	}
	flat, err := shell.Cut(b, holes, shell.Job{Bed: shell.Size{X: 0.2, Y: 0.2, Z: 0.18}, Wall: 0.003, Margin: 0.001, Density: 1240})
	if err != nil || len(flat.Segments) < 2 {
		t.Fatalf("%d segments, %v", len(flat.Segments), err)
	}
	halves := shell.Plan{
		Cells: []shell.Cell{
			{Sides: []shell.Side{{Normal: r3.Vec{X: -1}, Beyond: 1}}},
			{Sides: []shell.Side{{Normal: r3.Vec{X: 1}, Beyond: 0}}},
		},
		Segments: []shell.Segment{{Cells: []int{0}}, {Cells: []int{1}}},
	}
	for name, p := range map[string]shell.Plan{"flat": flat, "cells": halves, "whole": {}} {
		t.Run(name, func(t *testing.T) {
			parts, err := p.Parts(whole)
			if err != nil || len(parts) != max(1, len(p.Segments)) {
				t.Fatalf("%d parts, %v", len(parts), err)
			}
			sum := 0.0
			for i, m := range parts {
				sum += m.Volume()
				if err := m.Check(); err != nil {
					t.Errorf("part %d: %v", i, err)
				}
				if name == "flat" && math.Abs(m.Volume()/p.Segments[i].Volume-1) > 0.01 {
					t.Errorf("part %d has %g m3, the plan %g", i, m.Volume(), p.Segments[i].Volume)
				}
			}
			if math.Abs(sum/whole.Volume()-1) > 1e-6 {
				t.Errorf("parts have %g m3, the whole %g", sum, whole.Volume())
			}
		})
	}
	halves.Cells[1].Sides[0].Beyond, halves.Segments = 1, []shell.Segment{{Cells: []int{1}}, {Cells: []int{0}}}
	if _, err := halves.Parts(whole); !testkit.Says(err, shell.ErrSegment) {
		t.Errorf("a cell beside itself: %v", err)
	}
}
