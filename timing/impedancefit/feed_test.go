package impedancefit_test

import (
	"math"
	"testing"

	"pappus/layout/design"
	"pappus/timing/impedancefit"
)

// TestFeed: a voltage by which a driver moves a tenth of its reach at most, never above what
// spares one that is not known; a resistor between Re and the peak.
func TestFeed(t *testing.T) {
	known := design.Driver{NominalOhm: 8, DCOhm: 7.1, Small: design.Small{Fs: 150, Qms: 3.2, Qes: 1.14, BL: 2.1, Mass: 0.75e-3, Reach: 1.5e-3}}
	tender := known
	tender.Small.Reach = 0.1e-3
	stiff := known
	stiff.Small.Reach = 0.5e-6
	for name, c := range map[string]struct {
		driver    design.Driver
		volt, ohm float64
	}{
		"not known":        {design.Driver{NominalOhm: 8}, 0.3, 15},
		"by its meter":     {design.Driver{NominalOhm: 4, DCOhm: 3.3}, 0.3, 6.8},
		"known":            {known, 0.22, 15}, // 0.67 mm for each V, 0.15 mm at most; 7.1 sqrt(1 + 3.2/1.14) = 13.9
		"of little reach":  {tender, 0.02, 15},
		"of next to none":  {stiff, 0.02, 15},
		"a hundred of ohm": {design.Driver{DCOhm: 46}, 0.3, 100},
	} {
		volt, ohm := impedancefit.Feed(c.driver)
		if math.Abs(volt-c.volt) > 1e-9 || math.Abs(ohm/c.ohm-1) > 1e-9 {
			t.Errorf("%s: %.3g V, %.3g ohm, want %.3g V, %.3g ohm", name, volt, ohm, c.volt, c.ohm)
		}
	}
}

// TestResistors: every value of E12 (IEC 60063) is taken for what is nearest to it, also across a decade.
func TestResistors(t *testing.T) {
	for _, want := range []float64{10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100} {
		for _, off := range []float64{0.96, 1, 1.04} {
			// Of a driver of which no more is known it is twice the resistance.
			if _, ohm := impedancefit.Feed(design.Driver{DCOhm: want * off / 2}); math.Abs(ohm/want-1) > 1e-9 {
				t.Errorf("for %.4g ohm: %.4g ohm, want %.4g", want*off, ohm, want)
			}
		}
	}
}

// TestSweep: it goes over all that is heard and an octave below, so slowly that a cone of 20 Hz and a
// Q of 10, which falls by the factor exp(-pi f/Q) in a second, has died away by 140 dB within a factor e.
func TestSweep(t *testing.T) {
	if impedancefit.SweepLow != 10 || impedancefit.SweepHigh != 20000 {
		t.Errorf("from %g to %g Hz", impedancefit.SweepLow, impedancefit.SweepHigh)
	}
	second := impedancefit.SweepLength / math.Log(impedancefit.SweepHigh/impedancefit.SweepLow)
	if died := 20 * math.Log10(math.E) * math.Pi * 20 / 10 * second; died < 140 || died > 150 {
		t.Errorf("%.1f dB", died)
	}
}
