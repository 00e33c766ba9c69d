package timing

import (
	"fmt"

	"pappus/layout"
	"pappus/timing/drive"
)

// driverResponse returns the response of one driver over frequency: as measured
// where the design has a table, else a high-pass at its resonance, else none.
// The error tells of a table that cannot be used.
func driverResponse(d layout.Driver) (drive.Response, error) {
	switch {
	case len(d.Response) > 0:
		points := make([]drive.Point, len(d.Response))
		for i, p := range d.Response {
			points[i] = drive.Point(p)
		}
		r, err := drive.Measured(points)
		if err != nil {
			return r, fmt.Errorf("driver.response: %w", err)
		}
		return r, nil
	case d.Resonance > 0:
		r, err := drive.HighPass(d.Resonance, d.ResonanceQ)
		if err != nil {
			return r, fmt.Errorf("driver.resonance_hz: %w", err)
		}
		return r, nil
	}
	return drive.Response{}, nil
}

// IsAbsolute tells whether levels are dB SPL; else they are over a point source
// of one driver's volume velocity from 1 m.
func (p *Plan) IsAbsolute() bool { return p.Array.Driver.Sensitivity > 0 }
