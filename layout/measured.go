package layout

import "pappus/layout/design"

// ReadImpedance reads a measured impedance from a CSV table of frequency in Hz,
// magnitude in ohm and phase in degrees, frequencies rising. Any error is a
// *design.Error that names the file, and the line where one is to blame.
func ReadImpedance(path string) ([]ImpedancePoint, error) { return readTable(path, parseImpedance) }

// ReadResponse reads a measured response from a CSV table of frequency in Hz, level
// in dB and phase in degrees, frequencies rising, as ReadImpedance does.
func ReadResponse(path string) ([]ResponsePoint, error) { return readTable(path, parseResponse) }

func readTable[T any](path string, parse func(path string, data []byte) ([]T, error)) ([]T, error) {
	data, err := design.ReadFile(path, mostMeasuredBytes)
	if err != nil {
		return nil, err
	}
	return parse(path, data)
}
