package timing

import (
	"math"
	"testing"
	"sort"
	"fmt"
	"syscall"

	"pappus/layout"
	"pappus/layout/body"
	sp "pappus/layout/spread"
	"pappus/timing/band"
	"pappus/timing/harmonic"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

func evenZ(t testing.TB, drivers int) *layout.Array {
	u, _, err := sp.Even(drivers, 1)
	if err != nil { t.Fatal(err) }
	a := &layout.Array{
		Air:      layout.Air{Temperature: 294.15, Humidity: 0.45, Pressure: 101325},
		Body:     body.Ball(0.15),
		Driver:   layout.Driver{ConeRadius: 0.016, NominalOhm: 8, DCOhm: 7, Sensitivity: math.NaN()},
		Timing:   layout.Timing{Model: "sphere", DelaysBy: "path", FieldLow: 500, FieldHigh: 8000},
		Wiring:   layout.Wiring{MinimumLoad: 4},
		Coverage: layout.Coverage{HalfWidth: 2.8, Cells: 64},
		Spot:     r3.Vec{X: 1.8, Y: 0.4, Z: 0.6},
	}
	for i, p := range u {
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Scale(0.15, p), Normal: p, Face: -1})
	}
	return a
}

type zring struct{ r, cos, sin float64; cell []int; az []float64 }

func BenchmarkProto(b *testing.B) {
	for _, n := range []int{60, 500, 2000} {
	b.Run(fmt.Sprint(n), func(b *testing.B) {
	a := evenZ(b, n)
	p, err := Make(a); if err != nil { b.Fatal(err) }
	s := HorizontalSlice(p)
	frequency := band.Frequencies(band.Thirds(), 3, 5)
	medium := radiate.NewMedium(p.airState(), frequency)
	d := newFeed(p)
	driver := p.response(frequency)
	c := coneCap(a)
	var dirs []r3.Vec
	for _, m := range a.Mounts { dirs = append(dirs, m.Point) }
	fr := harmonic.Frame{X: s.Right, Y: s.Up, Z: r3.Cross(s.Right, s.Up)}
	// rings
	byKey := map[[2]int64]int{}
	var rings []zring
	for cell := range s.Columns*s.Rows {
		at := s.Point(cell%s.Columns, cell/s.Columns)
		r := r3.Norm(at)
		cos, sin, az := fr.Angles(at)
		key := [2]int64{int64(math.Round(r*1e9)), int64(math.Round(cos*1e9))}
		i, ok := byKey[key]
		if !ok { i = len(rings); byKey[key] = i; rings = append(rings, zring{r: r, cos: cos, sin: sin}) }
		rings[i].cell = append(rings[i].cell, cell); rings[i].az = append(rings[i].az, az)
	}
	sort.Slice(rings, func(i, j int) bool { return rings[i].r < rings[j].r })
	b.Log("rings", len(rings), "nearest", rings[0].r)
	nf := len(frequency)
	sum := make([]complex128, s.Columns*s.Rows*nf)
	b.ReportAllocs()
	t0 := cpuNow()
	defer func() { b.ReportMetric((cpuNow()-t0)*1000/float64(b.N), "cpu-ms/op") }()
	for b.Loop() {
		weights := make([][]float64, 2*nf)
		for i := range weights { weights[i] = make([]float64, len(dirs)) }
		w := make([]complex128, nf)
		for m := range dirs { d.weights(w, m, true, frequency, driver); for f := range w { weights[2*f][m]=real(w[f]); weights[2*f+1][m]=imag(w[f]) } }
		clear(sum)
		const slab = 15
		for from := 0; from < nf; from += slab {
			to := min(from+slab, nf)
			top, _ := c.Coefficients(nil, medium.Wavenumber[to-1], rings[0].r, 1e-5)
			mo := harmonic.NewMoments(fr, dirs, weights[2*from:2*to], len(top)-1)
			scratch := make([]*harmonic.Ring, workers())
			zs := make([][][]complex128, workers())
			for i := range scratch { scratch[i] = harmonic.NewRing(mo); zs[i] = make([][]complex128, to-from) }
			spread(len(rings), func(worker, j int) {
				g := rings[j]; z := zs[worker]
				for f := range z { z[f], _ = c.Coefficients(z[f][:0], medium.Wavenumber[from+f], g.r, 1e-5) }
				scratch[worker].Set(g.cos, g.sin, z)
				for i, cell := range g.cell { scratch[worker].At(sum[cell*nf+from:cell*nf+to], g.az[i]) }
			})
		}
	}
	})
	}
}


func cpuNow() float64 { var u syscall.Rusage; syscall.Getrusage(0, &u); return float64(u.Utime.Sec)+float64(u.Utime.Usec)*1e-6 }
func BenchmarkOldLevels(b *testing.B) {
	a := evenZ(b, 60)
	p, err := Make(a); if err != nil { b.Fatal(err) }
	l, err := NewLevels(p, HorizontalSlice(p), band.Thirds(), 3, 5)
	if err != nil { b.Fatal(err) }
	dst := make([][]float64, 21)
	for i := range dst { dst[i] = make([]float64, 4096) }
	t0 := cpuNow()
	for b.Loop() { l.Fill(dst) }
	b.ReportMetric((cpuNow()-t0)*1000/float64(b.N), "cpu-ms/op")
}
