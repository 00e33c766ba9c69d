package search

import (
	"context"
	"slices"
	"testing"

	"pappus/layout/design"
)

// TestHeld: what is offered is not planned again, and no plan is held that another beats.
func TestHeld(t *testing.T) {
	text := design.DefaultTOML()
	for _, set := range []design.Setting{{Key: "mounts.skip"}, {Key: "body.base"}, {Key: "body.subdivision"},
		{Key: "body.shape", Value: "ball"}, {Key: "mounts.on", Value: "even"}, {Key: "mounts.count", Value: 40}} {
		var err error
		if text, err = design.Set(text, set.Key, set.Value); err != nil {
			t.Fatal(err)
		}
	}
	text = append(text, "\n[search]\n[search.body]\nradius_mm = [90, 110, 130]\n[search.mounts]\ncount = [24, 32, 40, 48]\n"...)
	d, err := design.Parse("lantern.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := newRun(context.Background(), Job{Design: d, Text: text, Seed: 1}, nil)
	if err != nil {
		t.Fatal(err)
	}
	foreseen := 0
	r.tell = func(p Progress) {
		if p.Stage == Full {
			foreseen = len(r.known)
		}
	}
	r.journal = &journal{}
	if err := r.screenAll(nil); err != nil {
		t.Fatal(err)
	}
	if _, err := r.finish(); err != nil || len(r.Found) < 3 {
		t.Fatalf("%d found, %v", len(r.Found), err)
	}
	if foreseen < 3 {
		t.Errorf("%d are ready to be offered before the search ends", foreseen)
	}
	for _, f := range r.Found {
		if !slices.ContainsFunc(r.held, func(h held) bool { return h.plan == f.Plan }) {
			t.Errorf("%s was planned again", f.Name)
		}
	}
	for _, h := range r.held {
		if slices.ContainsFunc(r.full, func(p Point) bool { return beats(r.aimed(p.Figures), h.aimed) }) {
			t.Errorf("the plan of %s is held, and beaten", h.key)
		}
	}
}
