package layout

import (
	"fmt"
	"math"

	"pappus/layout/design"
)

// responseColumns are those of a driver's measured response. Phase may be
// wrapped or not.
var responseColumns = []column{{"frequency_hz", 1, 100000}, {"level_db", -500, 500}, {"phase_deg", -1e6, 1e6}}

const (
	leastMeasured     = 2      // lines
	mostMeasured      = 100000 // lines
	mostMeasuredBytes = 8 << 20

	// What a response must cover some of, in Hz: its level is taken from there.
	// Drivers are compared in this band, and the ear is keen in it.
	coveredLow, coveredHigh = 500, 4000
)

// response gives the measured response that the design names, or nil.
func response(d *design.Design) ([]ResponsePoint, error) {
	if d.Driver.Response == "" {
		return nil, nil
	}
	path := beside(d, d.Driver.Response)
	data, err := design.ReadFile(path, mostMeasuredBytes)
	if err != nil {
		return nil, err
	}
	return parseResponse(path, data)
}

// parseResponse reads a measured response: a CSV table of frequency in Hz,
// level in dB and phase in degrees. Any error is a *design.Error that names the
// file, and the line where one is to blame.
func parseResponse(path string, data []byte) ([]ResponsePoint, error) {
	var out []ResponsePoint
	t := table{path, responseColumns}
	err := t.read(data, func(line int, v []float64) error {
		p := ResponsePoint{Frequency: v[0], Level: v[1], Phase: v[2] * math.Pi / 180}
		if n := len(out); n == mostMeasured {
			return t.fault(line, "", fmt.Sprintf("too many lines; must be at most %d", mostMeasured), ErrBadResponse)
		} else if n > 0 && p.Frequency <= out[n-1].Frequency {
			e := t.fault(line, responseColumns[0].name, fmt.Sprintf("must be above the one before, %.10g", out[n-1].Frequency), ErrBadResponse)
			e.Value = fmt.Sprintf("%.10g", p.Frequency)
			return e
		}
		out = append(out, p)
		return nil
	})
	switch n := len(out); {
	case err != nil:
		return nil, err
	case n < leastMeasured:
		return nil, t.fault(0, "", fmt.Sprintf("%s; must be at least %d", count(n, "line of numbers", "lines of numbers"), leastMeasured), ErrBadResponse)
	case out[n-1].Frequency <= coveredLow || out[0].Frequency >= coveredHigh:
		return nil, t.fault(0, "", fmt.Sprintf("from %.10g to %.10g Hz; must cover some of %d to %d Hz",
			out[0].Frequency, out[n-1].Frequency, coveredLow, coveredHigh), ErrBadResponse)
	}
	return out, nil
}
