package kit

import (
	"testing"

	"pappus/layout"
	"pappus/layout/design"
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
		work, err := Plan(m.array, m.plan, m.plain, 2)
		if err != nil {
			b.Fatal(err)
		}
		for _, j := range work.Jobs {
			if _, err := j(); err != nil {
				b.Fatal(err)
			}
		}
	}
}
