package intake

import (
	"encoding/binary"
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pappus/layout/impedance"
	"pappus/timing/impedancefit"
	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// made is a made-up driver.
type made struct {
	fs, qms, qes, re float64
	level, late      float64 // dB, s
	reversed, wavy   bool
}

// designed is the built-in design's driver.
var designed = made{fs: 150, qms: 3.2, qes: 1.14, re: 7.1}

// drawn draws a driver whose values scatter by so much, as standard deviations.
func drawn(random *rand.Rand, scatter float64) made {
	m := designed
	spring := math.Exp(scatter * random.NormFloat64())
	m.fs, m.qms, m.qes = m.fs*spring, m.qms*spring, m.qes*spring*math.Exp(scatter*random.NormFloat64())
	m.re *= math.Exp(scatter / 2 * random.NormFloat64())
	return m
}

// table writes what a meter would read of a driver.
func (m made) table(t testing.TB, folder, name string, random *rand.Rand) {
	t.Helper()
	c, err := impedance.New(impedance.Driver{Resonance: m.fs, QMS: m.qms, QES: m.qes, DCOhm: m.re, Inductance: 0.05e-3})
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString("frequency_hz,ohm,degrees\n")
	for i := range 10*24 + 1 {
		hz := 20 * math.Exp2(float64(i)/24)
		z := c.At(hz) * complex(1+0.002*random.NormFloat64(), 0.002*random.NormFloat64())
		for _, v := range []float64{hz, cmplx.Abs(z), cmplx.Phase(z) * 180 / math.Pi} {
			b.WriteString(strconv.FormatFloat(v, 'g', 8, 64))
			b.WriteByte(",\n"[btoi(v == cmplx.Phase(z)*180/math.Pi)])
		}
	}
	write(t, filepath.Join(folder, name), b.String())
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

func write(t testing.TB, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

const rate = 48000

// short is a sweep for tests.
func short(t testing.TB) sweep.Sweep {
	t.Helper()
	s, err := sweep.New(150, 20000, 1)
	if err != nil {
		t.Fatal(err)
	}
	s.Lead = 0.1
	return s
}

// record writes what a microphone, left, and a wire, right, would give of a driver, as raw
// doubles that decode reads.
func (m made) record(t testing.TB, s sweep.Sweep, folder, name string, random *rand.Rand) {
	t.Helper()
	signal := s.Samples(rate)
	n := 1
	for n < len(signal)+rate {
		n *= 2
	}
	padded := make([]float64, n)
	copy(padded, signal)
	fft := fourier.NewFFT(n)
	spectrum := fft.Coefficients(nil, padded)
	for k := range spectrum {
		hz := float64(k) * rate / float64(n)
		u := hz / m.fs
		gain := 0.05 * math.Pow(10, m.level/20)
		if m.reversed {
			gain = -gain
		}
		if m.wavy {
			gain *= 1 + 0.5*math.Sin(8*math.Log(1+hz))
		}
		h := complex(-u*u*gain, 0) / complex(1-u*u, u*1.2)
		spectrum[k] *= h * cmplx.Rect(1/float64(n), -2*math.Pi*hz*(0.003+m.late))
	}
	fft.Sequence(padded, spectrum)
	data := make([]byte, 0, 16*len(signal))
	for i, v := range signal {
		data = binary.LittleEndian.AppendUint64(data, math.Float64bits(padded[i]+1e-5*random.NormFloat64()))
		data = binary.LittleEndian.AppendUint64(data, math.Float64bits(0.1*v))
	}
	if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// decode reads raw doubles of two channels.
func decode(path string) (int, [][]float64, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return 0, nil, err
	}
	if len(data) < 16 {
		return 0, nil, fmt.Errorf("%s: no sound", path)
	}
	out := [][]float64{nil, nil}
	for i := 0; i+8 <= len(data); i += 8 {
		out[i/8%2] = append(out[i/8%2], math.Float64frombits(binary.LittleEndian.Uint64(data[i:])))
	}
	return rate, out, nil
}

func source(t testing.TB, folder string) Source {
	return Source{Folder: folder, Impedance: impedancefit.Reader{Decode: decode}, Sweep: short(t), Reference: 1}
}

// read reads and judges a folder.
func read(t testing.TB, folder string) *Lot {
	t.Helper()
	l, err := source(t, folder).Read(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	l.Judge(nil)
	return l
}

type band = recording.Band

func abs(v complex128) float64 { return cmplx.Abs(v) }

// fitOf is a fit of values as they are judged, that are known to a thousandth.
func fitOf(v [values]float64) *impedancefit.Fit {
	of := func(x float64) impedancefit.Estimate { return impedancefit.Estimate{Value: x, Error: x / 1000} }
	q := math.Exp(v[Q])
	qms := 3.2
	return &impedancefit.Fit{Resonance: of(math.Exp(v[Resonance])), Qts: of(q), Qms: of(qms), Qes: of(1 / (1/q - 1/qms)), DCOhm: of(math.Exp(v[Ohm]))}
}
