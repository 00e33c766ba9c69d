package search

import (
	"context"
	"testing"

	"pappus/layout/design"
)

// usual is a run over the usual space of the starter's driver.
func usual(b *testing.B) *run {
	b.Helper()
	d := design.Default()
	r, err := newRun(context.Background(), Job{Design: d, Text: design.DefaultTOML(), Seed: 1}, nil)
	if err != nil {
		b.Fatal(err)
	}
	return r
}

// BenchmarkScreen screens candidates of the usual space in order, as a search does.
func BenchmarkScreen(b *testing.B) {
	r := usual(b)
	for i := 0; b.Loop(); i++ {
		r.screen(i % r.Space)
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "designs/s")
}

// BenchmarkFull gives candidates their full figures.
func BenchmarkFull(b *testing.B) {
	r := usual(b)
	for i := 0; b.Loop(); i++ {
		r.fullOfSet(r.space.Variant(i * 71 % r.Space).Settings)
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "designs/s")
}
