package layout

import (
	"math"
	"sort"

	"pappus/layout/csvtable"
	"pappus/layout/design"
)

// impedanceColumns are those of a driver's measured impedance.
var impedanceColumns = []csvtable.Column{
	{Name: "frequency_hz", Low: 1, High: 100000}, {Name: "ohm", Low: 0.001, High: 1e9}, {Name: "degrees", Low: -90, High: 90},
}

// impedances gives the measured impedance that the design names, or nil.
func impedances(d *design.Design) ([]ImpedancePoint, error) {
	return measured(d, d.Driver.Impedance, parseImpedance)
}

// parseImpedance reads a measured impedance: a CSV table of frequency in Hz,
// magnitude in ohm and phase in degrees. Any error is a *design.Error that names
// the file, and the line where one is to blame.
func parseImpedance(path string, data []byte) ([]ImpedancePoint, error) {
	return rising(csvtable.Table{File: path, Columns: impedanceColumns}, data, func(v []float64) ImpedancePoint {
		return ImpedancePoint{Frequency: v[0], Ohm: v[1], Degrees: v[2]}
	})
}

// The band of hearing in Hz, in which an amplifier must bear the load.
const hearingLow, hearingHigh = 20.0, 20000.0

// LeastOhm returns the lowest load in ohm that one driver makes of itself: the
// direct current resistance, or the lowest magnitude of its measured impedance
// from 20 Hz to 20 kHz where that is lower. That of a driver without a filter is
// never below its resistance; one with parts across its terminals may dip.
//
// Equal strings of s drivers, p of them, make s/p of it. Between the points of a
// table the logarithm of the magnitude runs straight over log frequency, as in
// impedance.Measured, so the lowest is at one of them or at the end of the band.
func (d Driver) LeastOhm() float64 {
	if len(d.Impedance) == 0 {
		return d.DCOhm
	}
	least := min(d.DCOhm, ohmAt(d.Impedance, hearingLow), ohmAt(d.Impedance, hearingHigh))
	for _, p := range d.Impedance {
		if p.Frequency > hearingLow && p.Frequency < hearingHigh {
			least = min(least, p.Ohm)
		}
	}
	return least
}

// ohmAt returns the magnitude in ohm that a table has at a frequency in Hz; beyond
// its ends that of the end.
func ohmAt(table []ImpedancePoint, hz float64) float64 {
	i := sort.Search(len(table), func(i int) bool { return table[i].Frequency >= hz })
	switch i {
	case 0:
		return table[0].Ohm
	case len(table):
		return table[i-1].Ohm
	}
	a, b := table[i-1], table[i]
	return a.Ohm * math.Pow(b.Ohm/a.Ohm, math.Log(hz/a.Frequency)/math.Log(b.Frequency/a.Frequency))
}
