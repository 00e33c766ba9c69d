package wiring

import (
	"fmt"
	"math"

	"pappus/layout/prose"
)

// Annealed copper, IEC 60028 (the International Annealed Copper Standard).
const (
	copperOhmMetre  = 1e-6 / 58 // at 20 C
	copperPerKelvin = 0.00393   // at 20 C, of the resistance there
)

// The gauges of ASTM B258 that Gauge knows: 0000, written -3, to 40.
const ThickestGauge, ThinnestGauge = -3, 40

// Sections are the nominal sections of IEC 60228 in mm2, up to 16.
func Sections() []float64 { return []float64{0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16} }

// Gauge returns the diameter in m of a solid wire of an American Wire Gauge,
// ASTM B258: 0.127 mm times 92^((36-gauge)/39). Gauges 00, 000 and 0000 are
// written -1, -2 and -3. A gauge outside -3 to 40 is an error.
func Gauge(gauge int) (diameter float64, err error) {
	if gauge < ThickestGauge || gauge > ThinnestGauge {
		return 0, fmt.Errorf("%w: wire gauge %d, must be from %d (0000) to %d", ErrValue, gauge, ThickestGauge, ThinnestGauge)
	}
	return 0.127e-3 * math.Pow(92, float64(36-gauge)/39), nil
}

// Section returns the section in m2 of a round wire of a diameter in m.
func Section(diameter float64) float64 { return math.Pi / 4 * diameter * diameter }

// Wire is a pair of copper conductors.
type Wire struct {
	Length      float64 // m, one way; the current goes out and back
	Section     float64 // m2, of one conductor
	Temperature float64 // C
}

// Ohm returns the resistance out and back. A length below 0, a section that is
// not above 0 or a temperature outside -100 to 200 C, over which copper's
// resistance is near enough to a straight line (common practice), is an error.
func (w Wire) Ohm() (float64, error) {
	if err := check("length of wire in m", w.Length, 0); err != nil {
		return 0, err
	}
	if err := check("section of wire in m2", w.Section, math.SmallestNonzeroFloat64); err != nil {
		return 0, err
	}
	if !(w.Temperature >= -100 && w.Temperature <= 200) {
		return 0, prose.Errorf("%w: wire at %g C, must be from -100 to 200", ErrValue, w.Temperature)
	}
	return 2 * w.Length / w.Section * copperOhmMetre * (1 + copperPerKelvin*(w.Temperature-20)), nil
}

// WireLoss returns by how many dB a wire of wireOhm, out and back, lowers the
// voltage over a load of loadOhm.
func WireLoss(wireOhm, loadOhm float64) float64 { return 20 * math.Log10(1+wireOhm/loadOhm) }

// LeastSection returns the smallest of the Sections, in m2, and the thinnest
// wire gauge, that lose no more than a number of dB into a load over a length
// in m one way, at a temperature in C. Where none is thick enough the error
// wraps ErrValue.
func LeastSection(length, temperature, loadOhm, loss float64) (section float64, gauge int, err error) {
	if err := check("load in ohm", loadOhm, math.SmallestNonzeroFloat64); err != nil {
		return 0, 0, err
	}
	if err := check("loss in dB", loss, math.SmallestNonzeroFloat64); err != nil {
		return 0, 0, err
	}
	one, err := Wire{length, 1, temperature}.Ohm() // for 1 m2
	if err != nil {
		return 0, 0, err
	}
	least := one / (loadOhm * (math.Pow(10, loss/20) - 1)) * (1 - rounding)
	for _, mm2 := range Sections() {
		if mm2*1e-6 >= least {
			section = mm2 * 1e-6
			break
		}
	}
	thickest, _ := Gauge(ThickestGauge)
	if section == 0 || Section(thickest) < least {
		return 0, 0, prose.Errorf("%w: %g m into %.3g ohm at no more than %.3g dB takes %.3g mm2, more than is to be had; shorten the wire or raise the load",
			ErrValue, length, loadOhm, loss, least*1e6)
	}
	for gauge = ThinnestGauge; ; gauge-- {
		if d, _ := Gauge(gauge); Section(d) >= least {
			return section, gauge, nil
		}
	}
}
