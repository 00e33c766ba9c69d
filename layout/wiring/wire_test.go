package wiring

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The diameters are those printed in ASTM B258, the resistances those of the
// usual tables for solid annealed copper at 20 C (National Bureau of Standards,
// Handbook 100, Copper Wire Tables, 1966); both quoted from memory.
func TestGauge(t *testing.T) {
	tests := []struct {
		gauge              int
		inch, ohmPerFoot1k float64
	}{
		{-3, 0.4600, 0.04901}, {0, 0.3249, 0.09827}, {10, 0.1019, 0.9989}, {12, 0.0808, 1.588},
		{18, 0.0403, 6.385}, {24, 0.0201, 25.67}, {30, 0.0100, 103.2}, {36, 0.0050, 414.8}, {40, 0.0031, 1049},
	}
	for _, test := range tests {
		t.Run(fmt.Sprint(test.gauge), func(t *testing.T) {
			section := gaugeSection(test.gauge)
			d := math.Sqrt(4 / math.Pi * section)
			if off := d/0.0254 - test.inch; math.Abs(off) > 5.01e-5 {
				t.Errorf("%.5f inch, want %.4f", d/0.0254, test.inch)
			}
			// Both ways, so half of a thousand feet each.
			ohm := WireOhm(500*0.3048, section)
			if math.Abs(ohm/test.ohmPerFoot1k-1) > 6e-4 { // the tables round the diameter first
				t.Errorf("%.5g ohm for 1000 feet, want %.5g", ohm, test.ohmPerFoot1k)
			}
		})
	}
}

// The standard allows a conductor of class 2 somewhat more than pure copper of
// its nominal section would have (IEC 60228:2004, table 2, plain copper, ohm/km
// at 20 C, quoted from memory): never less, and never 10 percent more.
func TestSections(t *testing.T) {
	most := []float64{36.0, 24.5, 18.1, 12.1, 7.41, 4.61, 3.08, 1.83, 1.15}
	for i, mm2 := range sections {
		ohm := WireOhm(500, mm2*1e-6)
		if ratio := most[i] / ohm; ratio < 1 || ratio > 1.1 {
			t.Errorf("%g mm2: %.4g ohm/km, the standard's most is %.4g", mm2, ohm, most[i])
		}
	}
}

func TestWireLoss(t *testing.T) {
	for _, c := range []struct{ wire, load, want float64 }{
		{0, 4, 0}, {4, 4, 6.0206}, {0.2, 4, 0.42379}, {0.5, 8, 0.52657},
	} {
		if got := WireLoss(c.wire, c.load); math.Abs(got-c.want) > 5e-5 {
			t.Errorf("%g into %g ohm: %.5f dB, want %.5f", c.wire, c.load, got, c.want)
		}
	}
}

// TestLeastSection: what is returned keeps the loss, and the next thinner does not.
func TestLeastSection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(0.1, 20).Draw(t, "length")
		load := rapid.Float64Range(3, 30).Draw(t, "load")
		loss := rapid.Float64Range(0.2, 2).Draw(t, "loss")
		keeps := func(section float64) bool { return WireLoss(WireOhm(length, section), load) <= loss*(1+1e-9) }
		section, gauge, ok := LeastSection(length, load, loss)
		if !ok {
			if keeps(16e-6) {
				t.Fatal("16 mm2 would do")
			}
			return
		}
		if !keeps(section) || !keeps(gaugeSection(gauge)) {
			t.Fatalf("%g m2 or gauge %d is too thin", section, gauge)
		}
		for _, mm2 := range sections {
			if mm2*1e-6 < section && keeps(mm2*1e-6) {
				t.Fatalf("%g mm2 would do, got %g", mm2, section*1e6)
			}
		}
		if gauge < thinnestGauge && keeps(gaugeSection(gauge+1)) {
			t.Fatalf("gauge %d would do, got %d", gauge+1, gauge)
		}
	})
}

func TestThinnestWireWillDo(t *testing.T) {
	if section, gauge, ok := LeastSection(0.01, 1000, 1); section != 0.5e-6 || gauge != 40 || !ok {
		t.Errorf("%g m2, gauge %d, %v", section, gauge, ok)
	}
}

func TestNoSectionWillDo(t *testing.T) {
	for name, c := range map[string]struct{ length, load, loss float64 }{
		"a long wire": {500, 4, 0.1}, "no loss allowed": {5, 4, 0}, "no load": {5, 0, 0.3}, "not known": {5, math.NaN(), 0.3},
	} {
		t.Run(name, func(t *testing.T) {
			if section, gauge, ok := LeastSection(c.length, c.load, c.loss); ok {
				t.Errorf("%g m2, gauge %d", section, gauge)
			}
		})
	}
}

func ExampleLeastSection() {
	section, gauge, ok := LeastSection(6, 4, 0.5) // m, ohm, dB
	fmt.Printf("%.2g mm2 or gauge %d, %v\n", section*1e6, gauge, ok)
	// Output: 1 mm2 or gauge 17, true
}

// TestGaugeOf: the gauges of ASTM B258 nearest above the sections of IEC 60228.
func TestGaugeOf(t *testing.T) {
	for _, c := range []struct {
		mm2  float64
		want int
	}{{0.0032, 40}, {0.5, 20}, {0.517, 20}, {0.75, 18}, {2.08, 14}, {200, 0}} {
		if got := Gauge(c.mm2 * 1e-6); got != c.want {
			t.Errorf("%g mm2: gauge %d, want %d", c.mm2, got, c.want)
		}
	}
}
