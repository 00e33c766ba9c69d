package preview

import (
	"bytes"
	"encoding/binary"
	"io"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing"

	"gonum.org/v1/gonum/dsp/fourier"
)

// TestFiltersReadBack: the samples in the WAV files, as 32 bit floats by the
// container's own layout (RIFF chunks; Multimedia Programming Interface and Data
// Specifications 1.0, chapter 2), transform to the level of the sections, within 0.1
// dB from 100 Hz on.
func TestFiltersReadBack(t *testing.T) {
	p := lantern(t, same)
	l, err := timing.Level(p)
	if err != nil {
		t.Fatal(err)
	}
	c, err := l.Correction(p.Array.Processor.Rate)
	if err != nil {
		t.Fatal(err)
	}
	files := Filters(c, nil)
	for _, f := range files {
		h := floats32(t, f.Write)
		const n = 1 << 14
		spectrum := fourier.NewFFT(n).Coefficients(nil, append(h, make([]float64, n-len(h))...))
		for k, v := range spectrum {
			hz := c.Rate * float64(k) / n
			if hz < 100 {
				continue
			}
			want := complex(1, 0)
			for _, s := range c.Sections {
				want *= s.Coefficients.At(hz, c.Rate)
			}
			if off := 20 * math.Log10(cmplx.Abs(v)/cmplx.Abs(want)); math.Abs(off) > 0.1 {
				t.Fatalf("%s: %.0f Hz: off by %.3f dB", f.Name, hz, off)
			}
		}
	}
	if len(files) != 2 {
		t.Errorf("%d filters", len(files))
	}
}

// floats reads the samples of a floating point WAV file.
func floats32(t *testing.T, write func(io.Writer) error) []float64 {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	data := b.Bytes()
	for at := 12; at+8 <= len(data); {
		size := int(binary.LittleEndian.Uint32(data[at+4:]))
		if string(data[at:at+4]) != "data" {
			at += 8 + size + size%2
			continue
		}
		samples := make([]float32, size/4)
		if _, err := binary.Decode(data[at+8:], binary.LittleEndian, samples); err != nil {
			t.Fatal(err)
		}
		out := make([]float64, len(samples))
		for i, v := range samples {
			out[i] = float64(v)
		}
		return out
	}
	t.Fatal("no data chunk")
	return nil
}
