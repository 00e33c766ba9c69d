package biquad

import (
	"math"
	"math/cmplx"
)

// Section is a second-order section with a0 = 1; see the package comment for the
// signs. The zero Section is silent; Through passes everything.
type Section struct{ B0, B1, B2, A1, A2 float64 }

// Through is the section that changes nothing.
var Through = Section{B0: 1}

// At returns the complex response at a frequency at a sampling rate, both in
// Hz, with time factor exp(+i omega t).
func (s Section) At(hz, rate float64) complex128 {
	z := cmplx.Rect(1, -2*math.Pi*hz/rate)
	top := complex(s.B0, 0) + z*(complex(s.B1, 0)+z*complex(s.B2, 0))
	low := 1 + z*(complex(s.A1, 0)+z*complex(s.A2, 0))
	return top / low
}

// IsStable tells whether what the section is fed dies away again.
func (s Section) IsStable() bool { return math.Abs(s.A2) < 1 && math.Abs(s.A1) < 1+s.A2 }

// Chain is sections one after the other. An empty one changes nothing.
type Chain []Section

// Fill fills dst with the complex response at frequencies in Hz at a sampling
// rate in Hz. It panics where the lengths differ and allocates nothing.
func (c Chain) Fill(dst []complex128, frequency []float64, rate float64) {
	if len(dst) != len(frequency) {
		panic("biquad: lengths differ")
	}
	for f, hz := range frequency {
		dst[f] = 1
		for _, s := range c {
			dst[f] *= s.At(hz, rate)
		}
	}
}

// Next returns what the chain makes of the next sample, in the transposed direct form. memory has
// an entry for each section, 0 at rest. It allocates nothing.
func (c Chain) Next(memory [][2]float64, x float64) float64 {
	for i := range c {
		s, m := &c[i], &memory[i]
		y := s.B0*x + m[0]
		m[0] = s.B1*x - s.A1*y + m[1]
		m[1] = s.B2*x - s.A2*y
		x = y
	}
	return x
}

// Filter fills dst with what the chain makes of samples, from rest; dst and
// samples may be the same. It panics where the lengths differ.
func (c Chain) Filter(dst, samples []float64) {
	if len(dst) != len(samples) {
		panic("biquad: lengths differ")
	}
	memory := make([][2]float64, len(c))
	for i, x := range samples {
		dst[i] = c.Next(memory, x)
	}
}
