package layout

import "pappus/layout/design"

// impedanceColumns are those of a driver's measured impedance.
var impedanceColumns = []column{{"frequency_hz", 1, 100000}, {"ohm", 0.01, 100000}, {"degrees", -90, 90}}

// impedances gives the measured impedance that the design names, or nil.
func impedances(d *design.Design) ([]ImpedancePoint, error) {
	return measured(d, d.Driver.Impedance, parseImpedance)
}

// parseImpedance reads a measured impedance: a CSV table of frequency in Hz,
// magnitude in ohm and phase in degrees. Any error is a *design.Error that names
// the file, and the line where one is to blame.
func parseImpedance(path string, data []byte) ([]ImpedancePoint, error) {
	return rising(table{path, impedanceColumns}, data, func(v []float64) ImpedancePoint {
		return ImpedancePoint{v[0], v[1], v[2]}
	})
}
