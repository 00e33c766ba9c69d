package box

import "math"

// Stuffing of loose polyester fibre, as cushions are filled with. Its flow resistivity is
//
//	sigma = 25.989 rho^1.404
//
// in Pa s/m2 for a density rho in kg/m3 (M. Garai and F. Pompoli, A simple empirical model of
// polyester fibre materials for acoustical applications, Applied Acoustics 66 (2005) 1383; from
// memory), and goes as one over the square of the fibre's diameter (D. A. Bies and C. H. Hansen,
// Flow resistance information for acoustical design, Applied Acoustics 13 (1980) 357). The model
// is of fibres of 33 um; those of cushions are from 6 to 15 denier, 25 to 40 um.
const (
	fibreFactor, fibrePower = 25.989, 1.404
	fibreWide               = 33e-6 // m across
	FinestFibre             = 25e-6
	CoarsestFibre           = 40e-6
	// DensestFibre is the density in kg/m3 up to which the model was fitted; by hand hardly more
	// goes in.
	DensestFibre = 60
)

// FibreDensity returns the density in kg/m3 at which polyester fibre of a diameter in m has a
// flow resistivity in Pa s/m2; of the model's own where the diameter is 0.
func FibreDensity(resistivity, diameter float64) float64 {
	if diameter > 0 {
		finer := fibreWide / diameter
		resistivity /= finer * finer
	}
	return math.Pow(resistivity/fibreFactor, 1/fibrePower)
}

// FibreFlow returns the flow resistance in Pa s/m3 of so many kg of polyester fibre of the model's
// own diameter, spread evenly in a tube of a cross-section in m2 and a length in m.
func FibreFlow(mass, area, long float64) float64 {
	return fibreFactor * math.Pow(mass/(area*long), fibrePower) * long / area
}

// FibreFor returns the mass in kg at which FibreFlow is a flow resistance in Pa s/m3.
func FibreFor(resistance, area, long float64) float64 {
	return area * long * FibreDensity(resistance*area/long, 0)
}
