package table_test

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"strings"
	"testing"

	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// TestMeasuredTables: what is not known is left empty, never written as a number.
func TestMeasuredTables(t *testing.T) {
	p := demo(t)
	nan := math.NaN()
	m := recording.Measured{
		Frequency: []float64{100, 1000}, Low: 100, High: 1000, Drift: 40,
		Gated:     recording.Response{Level: []float64{nan, 1}, Error: []float64{nan, 0.1}, Lowest: 200},
		Whole:     recording.Response{Level: []float64{2, 3}, Error: []float64{0.1, 0.1}},
		Harmonics: []recording.Harmonic{{Order: 2, Level: []float64{-40, nan}, Floor: []float64{-80, nan}}},
		Bands:     []recording.Band{{Centre: 1000, Level: 1, Noise: -59}},
	}
	// A harmonic that stands out, from the third frequency on.
	for i := range 20 {
		m.Frequency = append(m.Frequency, 2000*math.Exp2(float64(i)/48))
		for _, to := range []*[]float64{&m.Gated.Level, &m.Gated.Error, &m.Whole.Level, &m.Whole.Error, &m.Harmonics[0].Level, &m.Harmonics[0].Floor} {
			*to = append(*to, -80)
		}
		m.Harmonics[0].Level[i+2] = -40 - float64(i)
	}
	level := verdict.Level{Gated: true, Low: 500, High: 4000, Uneven: 1.25, Bands: []verdict.Band{{Centre: 1000, Measured: 1, Planned: 3, Difference: -2, Error: 0.1}}}
	var channels verdict.Channels
	for i, c := range p.Channels {
		one := verdict.Channel{ID: c.ID, Planned: 0.006, Arrival: 0.0061, Late: 1e-6, Error: 1e-7, Delay: c.Delay, LevelError: 0.3, Beside: nan, DeadString: -1}
		if i == 1 {
			one.Arrival, one.Late, one.Error, one.Level, one.LevelError, one.Silent = nan, nan, nan, math.Inf(-1), nan, true
		}
		if i == 2 {
			one.Late, one.Error, one.Level = 21.4e-6, 8.2e-6, -0.74
		}
		if i == 3 {
			one.Error = 1e-8
		}
		channels.Channels = append(channels.Channels, one)
	}
	for _, test := range []struct {
		name  string
		write func(io.Writer) error
		rows  int
		has   string
	}{
		{"bands", func(w io.Writer) error { return table.MeasuredBands(w, level, m) }, 2, "-2.00,0.10,60.0"},
		{"response", func(w io.Writer) error { return table.MeasuredResponse(w, m) }, 23, "100.00,,,2.000"},
		{"channels", func(w io.Writer) error { return table.MeasuredChannels(w, p, channels) }, 1 + len(p.Channels), "2,6000.00,,,"},
	} {
		t.Run(test.name, func(t *testing.T) {
			var b bytes.Buffer
			if err := test.write(&b); err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(b.String(), test.has) {
				t.Errorf("no %q in\n%s", test.has, b.String())
			}
			rows, err := csv.NewReader(&b).ReadAll()
			if err != nil || len(rows) != test.rows {
				t.Errorf("%d rows, %v", len(rows), err)
			}
			for _, row := range rows {
				for _, cell := range row {
					if strings.Contains(cell, "NaN") || strings.Contains(cell, "Inf") {
						t.Errorf("a number is none: %v", row)
					}
				}
			}
		})
	}
	var b bytes.Buffer
	if err := table.MeasuredScreen(&b, p, verdict.Found{Channels: &channels, Faults: []verdict.Fact{{Code: verdict.Silent, Channels: []int{2}}}}, false); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Look out: channel 2 is silent", "proposed us", "      21     16", "     -0.7    0.6\n", "<0.1"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	said := words.LevelMeasured(level, m)
	for _, want := range []string{"by 1.2 dB", "1 kHz, by -2.0 dB, give or take 0.2 dB; one of 1 differs by more than its error", "nothing below 200 Hz", "+40 parts", "the second rises to 40 dB under it (2 kHz)"} {
		if !strings.Contains(strings.Join(strings.Fields(said), " "), want) {
			t.Errorf("no %q in %q", want, said)
		}
	}
}
