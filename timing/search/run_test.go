package search_test

import (
	"context"
	"testing"

	"pappus/layout/design"
	"pappus/timing/search"
)

// TestRun: what is found is on the front of all that were tried, and plans as told.
func TestRun(t *testing.T) {
	text := design.DefaultTOML()
	d, err := design.Parse("x", text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := search.Run(context.Background(), search.Job{Design: d, Text: text, Seed: 1}, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Found) == 0 || len(r.Found) > 10 || r.Full*20 > r.Space {
		t.Fatalf("%d found, %d of %d in full", len(r.Found), r.Full, r.Space)
	}
	for _, f := range r.Found {
		if f.Loss != f.Plan.Aligned.Loss || f.Level != f.Plan.Loudest || len(f.Why) == 0 {
			t.Errorf("%s: %v dB and %v dB, planned %v and %v", f.Name, f.Loss, f.Level, f.Plan.Aligned.Loss, f.Plan.Loudest)
		}
	}
}
