package wiring

import (
	"math"
	"slices"
)

// copper is the resistivity of annealed copper at 20 C in ohm m, 1/58 ohm mm2/m (IEC 60028,
// the International Annealed Copper Standard).
const copper = 1e-6 / 58

// sections are the nominal sections of IEC 60228 in mm2, up to 16.
var sections = []float64{0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16}

// thinnestGauge is the thinnest of ASTM B258.
const thinnestGauge = 40

// gaugeSection returns the section in m2 of a solid wire of an American Wire Gauge, ASTM
// B258: its diameter is 0.127 mm times 92^((36-gauge)/39), 0.005 inch for gauge 36.
func gaugeSection(gauge int) float64 {
	diameter := 0.127e-3 * math.Pow(92, float64(36-gauge)/39)
	return math.Pi / 4 * diameter * diameter
}

// Gauge returns the thinnest American Wire Gauge (ASTM B258), 0 to 40, whose solid wire is no
// than a section in m2; 0 for all that is thicker.
func Gauge(section float64) int {
	gauge := thinnestGauge
	for gauge > 0 && gaugeSection(gauge) < section*(1-rounding) {
		gauge--
	}
	return gauge
}

// WireOhm returns the resistance in ohm, out and back, of a pair of copper conductors at 20
// C: length in m, one way, and section in m2 of one conductor.
func WireOhm(length, section float64) float64 { return 2 * length / section * copper }

// WireLoss returns by how many dB a wire of wireOhm, out and back, lowers the
// voltage over a load of loadOhm.
func WireLoss(wireOhm, loadOhm float64) float64 { return 20 * math.Log10(1+wireOhm/loadOhm) }

// LeastSection returns the smallest of the nominal sections of IEC 60228 up to 16 mm2, in
// m2, and the thinnest wire gauge, that lose no more than a number of dB into a load over a
// length in m one way. ok is false where none is thick enough.
func LeastSection(length, loadOhm, loss float64) (section float64, gauge int, ok bool) {
	least := WireOhm(length, 1) / (loadOhm * (math.Pow(10, loss/20) - 1)) * (1 - rounding)
	at := slices.IndexFunc(sections, func(mm2 float64) bool { return mm2*1e-6 >= least })
	if at < 0 {
		return 0, 0, false
	}
	for gauge = thinnestGauge; gaugeSection(gauge) < least; gauge-- {
	}
	return sections[at] * 1e-6, gauge, true
}
