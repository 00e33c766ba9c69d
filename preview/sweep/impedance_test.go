package sweep_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	sound "pappus/preview/sweep"
	"pappus/timing/impedancefit"
	"pappus/timing/recording"

	"gonum.org/v1/gonum/dsp/fourier"
)

// TestForImpedance: the sweep through a resistor into a driver that is known by its circuit is
// recognised without being told its band, from 10 Hz on, and gives the driver's values; one
// from 20 Hz on is as well.
func TestForImpedance(t *testing.T) {
	const re, fs, qms, qes, series = 6.8, 110.0, 3.5, 0.9, 15.0
	driver := func(hz float64) complex128 {
		u := hz / fs
		return complex(re, 2*math.Pi*hz*5e-5) + complex(re*qms/qes, 0)/(1+complex(0, qms*(u-1/u)))
	}
	s, err := sound.ForImpedance(sound.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if s.Sweep.Start != 10 || s.Sweep.Stop != 20000 || s.Sweep.Length != 20 || s.Level != sound.UsualLevel {
		t.Errorf("%+v", s)
	}
	usual, err := sound.New(demo(t), sound.Options{Start: 20, Below: true})
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		signal sound.Signal
		lowest float64
	}{"for impedances": {s, 10}, "from 20 Hz": {usual, 20}} {
		whole := c.signal.Samples()
		n := recording.Length(len(whole))
		spectrum := recording.Spectrum(whole, n)
		for k := range spectrum {
			z := driver(math.Max(1, float64(k)*float64(c.signal.Rate)/float64(n)))
			spectrum[k] *= z / (z + series) / complex(float64(n), 0)
		}
		over := fourier.NewFFT(n).Sequence(nil, spectrum)[:len(whole)]
		reader := impedancefit.Reader{Series: series, High: 20000, Decode: func(string) (int, [][]float64, error) {
			return c.signal.Rate, [][]float64{whole, over}, nil
		}}
		study, err := impedancefit.NewStudy(reader, "driver.wav")
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if first := study.Points[0].Frequency; math.Abs(first/c.lowest-1) > 0.01 {
			t.Errorf("%s: from %.2f Hz on", name, first)
		}
		for value, want := range map[float64]float64{study.Fit.Resonance.Value: fs, study.Fit.DCOhm.Value: re} {
			if math.Abs(value/want-1) > 0.01 {
				t.Errorf("%s: %.4g, want %.4g", name, value, want)
			}
		}
		for _, p := range study.Points {
			if z := cmplx.Abs(driver(p.Frequency)); math.Abs(p.Ohm/z-1) > 0.02 {
				t.Fatalf("%s: %.3f ohm at %.1f Hz, want %.3f", name, p.Ohm, p.Frequency, z)
			}
		}
	}
	if files := s.ImpedanceFiles(); fmt.Sprint(files[0].Name, files[1].Name, len(files)) != "impedance_sweep.wavimpedance_tone.wav2" {
		t.Errorf("%+v", files)
	}
	for _, o := range []sound.Options{{Level: 3}, {Rate: 20}} {
		if _, err := sound.ForImpedance(o); err == nil {
			t.Errorf("%+v: no error", o)
		}
	}
}
