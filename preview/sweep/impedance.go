package sweep

import (
	"cmp"
	"io"
	"math"

	"pappus/layout/prose"
	"pappus/preview"
	"pappus/preview/wave"
	"pappus/timing/impedancefit"
	"pappus/timing/sweep"
)

// The tone that sets the voltage for impedances: where simple multimeters are right, for so long.
const (
	ToneHz      = 100.0
	toneSeconds = 30.0
)

// ForImpedance returns the sweep that impedances are measured with, of which options say level
// and rate alone.
func ForImpedance(o Options) (Signal, error) {
	o.Rate, o.Level = cmp.Or(o.Rate, UsualRate), cmp.Or(o.Level, UsualLevel)
	if err := checkLevel(o.Level); err != nil {
		return Signal{}, err
	}
	s, err := sweep.New(impedancefit.SweepLow, min(impedancefit.SweepHigh, mostOfRate*float64(o.Rate)), impedancefit.SweepLength)
	if err != nil {
		return Signal{}, err
	}
	s.Lead = lead
	return Signal{Sweep: s, Rate: o.Rate, Level: o.Level}, s.CheckRate(float64(o.Rate))
}

// ImpedanceFiles returns the sweep, and a tone of its level to set a voltage by.
func (s Signal) ImpedanceFiles() []preview.File {
	file := func(name, words string, samples func() []float64) preview.File {
		format := wave.Format{Rate: s.Rate, Channels: 1, Depth: wave.PCM24, Title: name, Comment: words}
		return preview.File{Name: name + ".wav", Write: func(w io.Writer) error {
			return wave.Write(w, preview.Sound{Samples: samples()}.Streamer(), format)
		}}
	}
	w := s.Sweep
	return []preview.File{
		file("impedance_sweep", prose.Sprintf("sine sweep from %g to %g Hz in %g s, peaks %g dB below full scale; play it through a resistor into a driver", w.Start, w.Stop, w.Length, -s.Level), s.Samples),
		file("impedance_tone", prose.Sprintf("%g Hz as loud as the sweep; set the amplifier's voltage by it, with nothing connected", ToneHz), s.tone),
	}
}

// tone returns the samples of the tone.
func (s Signal) tone() []float64 {
	out := make([]float64, int(toneSeconds*float64(s.Rate)))
	for i := range out {
		out[i] = math.Pow(10, s.Level/20) * math.Sin(2*math.Pi*ToneHz*float64(i)/float64(s.Rate))
	}
	return out
}
