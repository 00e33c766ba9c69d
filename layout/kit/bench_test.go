package kit

import (
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/shell"
)

// builtIn is the built-in design's shell, and what makes parts of it.
func builtIn(t testing.TB) made {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	return cutUp(t, a)
}

// cutUp cuts an array's shell for the printer's bed.
func cutUp(t testing.TB, a *layout.Array) (m made) {
	t.Helper()
	plan, err := a.Segments()
	if err != nil {
		t.Fatal(err)
	}
	whole, err := shell.Make(a.Body, a.Wall, a.Holes())
	if err != nil {
		t.Fatal(err)
	}
	if m.plain, err = plan.Parts(whole); err != nil {
		t.Fatal(err)
	}
	if m.maker, err = newMaker(a, plan, 2); err != nil {
		t.Fatal(err)
	}
	return m
}

// BenchmarkSegment makes one of the built-in design's segments.
func BenchmarkSegment(b *testing.B) {
	m := builtIn(b)
	for b.Loop() {
		p, err := m.segment(0, m.plain[0], len(m.plain))
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(p.Mesh.Triangles)), "triangles")
	}
}

// BenchmarkKit makes all parts of the built-in design, one after the other.
func BenchmarkKit(b *testing.B) {
	m := builtIn(b)
	for b.Loop() {
		jobs, err := Jobs(m.array, m.plan, m.plain, 2)
		if err != nil {
			b.Fatal(err)
		}
		for _, j := range jobs {
			if _, err := j(); err != nil {
				b.Fatal(err)
			}
		}
	}
}
