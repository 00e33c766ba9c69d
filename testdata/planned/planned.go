// Package planned plans the built-in design with changes, for the tests of what is made of a plan.
package planned

import (
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
)

// Demo plans the built-in design with some changes, none where change is nil.
func Demo(t testing.TB, change func(*design.Design)) *timing.Plan {
	t.Helper()
	d := design.Default()
	if change != nil {
		change(d)
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
