package kit

import (
	"errors"
	"math"
	"testing"

	"pappus/layout/carve"
	"pappus/testdata/testkit"
)

// TestBuiltIn makes the whole kit of the built-in design: segments, floor and all that they are
// held by go together without touching, one after the other.
func TestBuiltIn(t *testing.T) {
	if !*slow {
		t.Skip("few cases every day")
	}
	m := builtIn(t)
	work, err := Plan(m.array, m.plan, m.plain, 2)
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	for _, j := range work.Jobs {
		p, err := j()
		if err != nil {
			t.Fatal(err)
		}
		testkit.Printable(t, p.Mesh, 1)
		for _, q := range m.parts {
			if p.Loose || q.Loose || !near(p.Mesh, q.Mesh) {
				continue
			}
			if both, err := carve.Combine(func(in []bool) bool { return in[0] && in[1] }, p.Mesh, q.Mesh); !errors.Is(err, carve.ErrEmpty) {
				t.Errorf("%s and %s have %g mm3 in common (%v)", q.Name, p.Name, 1e9*both.Volume(), err)
			}
			least = min(least, m.checkApart(t, p, q), m.checkApart(t, q, p))
		}
		m.parts = append(m.parts, p)
	}
	checkOrder(t, m)
	if least > 1.01*m.Gap {
		t.Errorf("parts are %g m from each other and nowhere nearer, want %g", least, m.Gap)
	}
}
