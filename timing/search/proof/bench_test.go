package proof

import (
	"bytes"
	"context"
	"runtime"
	"strconv"
	"testing"
	"time"

	"pappus/layout/design"
	"pappus/timing/search"
)

// BenchmarkStages searches a quarter of the bodies, and tells how many designs a second each
// stage looks at: those that cannot be built are among the screened.
func BenchmarkStages(b *testing.B) {
	job := readSpace(b, "bodies").only("placing.yaw_deg", 0).only("body.radius_mm", 80, 100, 120).job(b, 1)
	done, took := map[search.Stage]int{}, map[search.Stage]time.Duration{}
	for b.Loop() {
		last := time.Now()
		_, err := search.Run(context.Background(), job, nil, func(p search.Progress) {
			took[p.Stage] += time.Since(last)
			last = time.Now()
			if p.Done == p.Of {
				done[p.Stage] += p.Of
			}
		})
		if err != nil {
			b.Fatal(err)
		}
	}
	for stage, n := range done {
		b.ReportMetric(float64(n)/took[stage].Seconds(), string(stage)+"/s")
	}
}

// BenchmarkUsual searches the usual space for the demo's driver, 120 in stock and six channels.
func BenchmarkUsual(b *testing.B) {
	text := design.DefaultTOML()
	for _, kv := range []struct {
		key   string
		value any
	}{{"search.drivers", 120}, {"search.channels", 6}} {
		var err error
		if text, err = design.Set(text, kv.key, kv.value); err != nil {
			b.Fatal(err)
		}
	}
	d, err := design.Parse("usual.toml", text)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		r, err := search.Run(context.Background(), search.Job{Design: d, Text: text, Seed: 1}, nil, nil)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(r.Space), "designs")
		b.ReportMetric(float64(r.Full+r.Polished), "full")
	}
}

// BenchmarkMemory goes on from a journal in which a hundred thousand designs are screened, all
// fit, and tells what is held at most until the first of them have full figures.
func BenchmarkMemory(b *testing.B) {
	s := readSpace(b, "bodies").only("body.shape", "truncated icosahedron").only("mounts.on", "vertices").only("body.cut_height_mm", -30)
	var yaw, radius []any
	for i := range 320 {
		yaw = append(yaw, float64(i)/4)
	}
	for i := range 104 {
		radius = append(radius, 100+float64(i)/4)
	}
	s = s.only("placing.yaw_deg", yaw...).only("body.radius_mm", radius...)
	job, j := s.job(b, 1), &memory{}
	ended, end := context.WithCancel(context.Background())
	begin := &memory{}
	if _, err := search.Run(context.Background(), s.only("placing.yaw_deg", 0.0).only("body.radius_mm", 100.0).job(b, 1), begin, nil); err != nil {
		b.Fatal(err)
	}
	end()
	if _, err := search.Run(ended, job, j, nil); err != nil {
		b.Fatal(err)
	}
	var fit []byte // what stands behind the number of a design that breaks nothing
	for line := range bytes.Lines(begin.lines()) {
		if field := bytes.SplitN(line, []byte(","), 3); bytes.HasPrefix(field[2], []byte(",")) {
			fit = field[2]
		}
	}
	if fit == nil {
		b.Fatal("no design can be built")
	}
	for i := range s.len() {
		j.data = append(j.data, "screened,"+strconv.Itoa(i)+","...)
		j.data = append(j.data, fit...)
	}
	for b.Loop() {
		var before, now runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		most := uint64(0)
		ctx, stop := context.WithCancel(context.Background())
		r, err := search.Run(ctx, job, &memory{data: bytes.Clone(j.data)}, func(search.Progress) {
			stop()
			runtime.GC()
			runtime.ReadMemStats(&now)
			most = max(most, now.HeapAlloc)
		})
		stop()
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(r.Space), "designs")
		b.ReportMetric(float64(r.Fit), "fit")
		b.ReportMetric((float64(most)-float64(before.HeapAlloc)-float64(len(j.data)))/(1<<20), "MB")
	}
}
