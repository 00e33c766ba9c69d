package timing

import (
	"pappus/layout"
	"pappus/timing/drive"
)

// driverResponse returns the response of one driver over frequency: as measured
// where the design has a table, else a high-pass at its resonance, else none.
func driverResponse(d layout.Driver) drive.Response {
	switch {
	case len(d.Response) > 0:
		return drive.Measured(d.Response)
	case d.Resonance > 0:
		return drive.HighPass(d.Resonance, d.ResonanceQ)
	}
	return drive.Response{}
}

// IsAbsolute tells whether levels are dB SPL; else they are over a point source
// of one driver's volume velocity from 1 m.
func (p *Spot) IsAbsolute() bool { return p.Array.Driver.Sensitivity > 0 }
