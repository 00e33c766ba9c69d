package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"pappus/preview/wave"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/dsp/fourier"
)

// TestImpedanceFromRecording: a sweep through 10 ohm into an invented driver, its
// voltages by multiplying spectra, written as a stereo WAV with noise 70 dB below it,
// gives the driver's values within 0.5 percent.
func TestImpedanceFromRecording(t *testing.T) {
	const rate, count, series = 44100, 1 << 18, 10.0
	const fs, qms, qes, re, le = 150.0, 3.2, 1.14, 7.1, 5e-5
	whole := make([]float64, count)
	const seconds, low, high = 5.0, 20.0, 20000.0
	for i := range int(seconds * rate) {
		at := float64(i) / rate
		ease := min(1, at/0.05, (seconds-at)/0.01)
		whole[i+rate/4] = 0.3 * ease * math.Sin(2*math.Pi*low*seconds/math.Log(high/low)*(math.Pow(high/low, at/seconds)-1))
	}
	fft := fourier.NewFFT(count)
	spectrum := fft.Coefficients(nil, whole)
	for k := range spectrum {
		hz := float64(k) * rate / count
		z := complex(re, 2*math.Pi*hz*le)
		if hz > 0 {
			z += complex(re*qms/qes, 0) / complex(1, qms*(hz/fs-fs/hz))
		}
		spectrum[k] *= z / (z + series) / count
	}
	driver := fft.Sequence(nil, spectrum)
	random := rand.New(rand.NewPCG(1, 12))
	at := 0
	stream := beep.StreamerFunc(func(s [][2]float64) (int, bool) {
		n := min(len(s), count-at)
		for i := range n {
			s[i] = [2]float64{whole[at+i] + 7e-5*random.NormFloat64(), driver[at+i] + 7e-5*random.NormFloat64()}
		}
		at += n
		return n, n > 0
	})
	folder := t.TempDir()
	path := filepath.Join(folder, "sweep.wav")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(wave.Write(f, stream, wave.Format{Rate: rate, Channels: 2, Depth: wave.PCM24}), f.Close()); err != nil {
		t.Fatal(err)
	}
	root := newRoot()
	var out bytes.Buffer
	root.SetOut(&out)
	root.SetArgs([]string{"impedance", path, "--series-ohm", "10", "--json", "-o", filepath.Join(folder, "out")})
	if err := root.Execute(); err != nil {
		t.Fatal(err)
	}
	type estimate struct{ Value, Error float64 }
	var got struct {
		Resonance estimate `json:"resonance_hz"`
		Qms, Qes  estimate
		Re        estimate `json:"re_ohm"`
		Le        estimate `json:"inductance_1k_mh"`
	}
	if err := json.Unmarshal(out.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	for _, v := range []struct {
		name string
		estimate
		want float64
	}{{"fs", got.Resonance, fs}, {"Qms", got.Qms, qms}, {"Qes", got.Qes, qes}, {"Re", got.Re, re}, {"Le", got.Le, 1000 * le}} {
		if math.Abs(v.Value/v.want-1) > 5e-3 {
			t.Errorf("%s %g +- %g, want %g", v.name, v.Value, v.Error, v.want)
		}
	}
}
