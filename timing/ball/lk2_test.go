package ball

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"
	"fmt"
	"sync"
	gonum "gonum.org/v1/gonum/blas/gonum"
)

type eight struct{ w [8]float32 }

func (s *slab) place(at Distance, gamma, scale float64) (lo, hi int, w [8]float32) {
	width := 2 * (s.to - s.from)
	x := dense * (s.perV*at.horizon + s.perR*at.r - s.first)
	j := min(max(int(x), 0), s.along-2)
	f := x - float64(j)
	y := s.acrossIndex(gamma)
	i := min(max(int(y), 0), s.across-4)
	c := cubic(y - float64(i))
	for m, c := range c {
		w[m] = float32(c * (1 - f) * scale)
		w[m+4] = float32(c * f * scale)
	}
	lo = (j*s.across + i) * width
	return lo, lo + s.across*width, w
}

func fusedRow(dst, weight []complex128, arcs []float64, a, b []float32, w *[8]float32, path float64) {
	n := len(dst)
	weight, arcs = weight[:n], arcs[:n]
	a0, a1, a2, a3 := a[:2*n], a[2*n:][:2*n], a[4*n:][:2*n], a[6*n:][:2*n]
	b0, b1, b2, b3 := b[:2*n], b[2*n:][:2*n], b[4*n:][:2*n], b[6*n:][:2*n]
	w0, w1, w2, w3, w4, w5, w6, w7 := w[0], w[1], w[2], w[3], w[4], w[5], w[6], w[7]
	for f := range dst {
		i := 2 * f
		re32 := (a0[i]*w0 + a1[i]*w1) + (a2[i]*w2 + a3[i]*w3) + ((b0[i]*w4 + b1[i]*w5) + (b2[i]*w6 + b3[i]*w7))
		i++
		im32 := (a0[i]*w0 + a1[i]*w1) + (a2[i]*w2 + a3[i]*w3) + ((b0[i]*w4 + b1[i]*w5) + (b2[i]*w6 + b3[i]*w7))
		re, im := float64(re32), float64(im32)
		c, s := turn(arcs[f] * path)
		re, im = re*c-im*s, re*s+im*c
		wr, wi := real(weight[f]), imag(weight[f])
		dst[f] += complex(re*wr-im*wi, re*wi+im*wr)
	}
}

func (t *Table) AddFused(dst, weight []complex128, at Distance, gamma, path float64) {
	for i := range t.slabs {
		s := &t.slabs[i]
		width := 2 * (s.to - s.from)
		lo, hi, w := s.place(at, gamma, 1/path)
		fusedRow(dst[s.from:s.to], weight[s.from:s.to], s.arcs, s.rows[lo:lo+4*width], s.rows[hi:hi+4*width], &w, path)
	}
}

func blend8(dst, a, b []float32, w *[8]float32) {
	n := len(dst)
	a0, a1, a2, a3 := a[:n], a[n:][:n], a[2*n:][:n], a[3*n:][:n]
	b0, b1, b2, b3 := b[:n], b[n:][:n], b[2*n:][:n], b[3*n:][:n]
	w0, w1, w2, w3, w4, w5, w6, w7 := w[0], w[1], w[2], w[3], w[4], w[5], w[6], w[7]
	for i := range dst {
		dst[i] = (a0[i]*w0 + a1[i]*w1) + (a2[i]*w2 + a3[i]*w3) + ((b0[i]*w4 + b1[i]*w5) + (b2[i]*w6 + b3[i]*w7))
	}
}
func (t *Table) AddTwo(dst, weight []complex128, at Distance, gamma, path float64) {
	var row [2 * slabMost]float32
	for i := range t.slabs {
		s := &t.slabs[i]
		width := 2 * (s.to - s.from)
		lo, hi, w := s.place(at, gamma, 1/path)
		blend8(row[:width], s.rows[lo:lo+4*width], s.rows[hi:hi+4*width], &w)
		addRow(dst[s.from:s.to], weight[s.from:s.to], s.arcs, &row, path)
	}
}

var pool = sync.Pool{New: func() any { return new([2 * slabMost]float32) }}

func (t *Table) AddPool(dst, weight []complex128, at Distance, gamma, path float64) {
	row := pool.Get().(*[2 * slabMost]float32)
	var k gonum.Implementation
	for i := range t.slabs {
		s := &t.slabs[i]
		width := 2 * (s.to - s.from)
		lo, hi, w := s.place(at, gamma, 1/path)
		d := row[:width]
		clear(d)
		a, b := s.rows[lo:lo+4*width], s.rows[hi:hi+4*width]
		for m := 0; m < 4; m++ {
			k.Saxpy(width, w[m], a[m*width:(m+1)*width], 1, d, 1)
			k.Saxpy(width, w[m+4], b[m*width:(m+1)*width], 1, d, 1)
		}
		addRow(dst[s.from:s.to], weight[s.from:s.to], s.arcs, row, path)
	}
	pool.Put(row)
}

func TestSpeed(t *testing.T) {
	for _, k := range [][]float64{octaves(7, 1), octaves(21, 3)} {
		tb, _ := NewTable(driver, k, .17, 6, nil)
		dst, weight := make([]complex128, len(k)), make([]complex128, len(k))
		for f := range weight {
			weight[f] = complex(1, 0.5)
		}
		rnd := rand.New(rand.NewPCG(3, 4))
		type point struct{ r, gamma, path float64 }
		points := make([]point, 60*64)
		for i := range points {
			if i%60 == 0 {
				points[i].r = 0.3 + 4*rnd.Float64()
			} else {
				points[i].r = points[i-1].r
			}
			points[i].gamma = math.Acos(2*rnd.Float64() - 1)
			points[i].path = driver.Path(points[i].r, points[i].gamma)
		}
		for name, fn := range map[string]func(dst, weight []complex128, at Distance, gamma, path float64){"fused": tb.AddFused, "two": tb.AddTwo, "pool": tb.AddPool} {
			best := math.Inf(1)
			clear(dst)
			for range 100 {
				t0 := time.Now()
				for _, p := range points {
					at, _ := tb.At(p.r)
					fn(dst, weight, at, p.gamma, p.path)
				}
				best = min(best, float64(time.Since(t0).Nanoseconds())/float64(len(points)*len(k)))
			}
			fmt.Println(len(k), name, best, dst[3], tb.Bytes())
		}
	}
}
