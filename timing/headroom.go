package timing

import (
	"math"

	"pappus/timing/excursion"

	"gonum.org/v1/gonum/spatial/r3"
)

// Cone returns the driver in the body that it shares with others, as far as the design tells.
func (s *Spot) Cone() excursion.Driver { return coneOf(s.Array.Driver) }

// RatedVolt returns the RMS voltage over a driver at which it takes, at the frequency where it
// takes most, the power that it stands long; +Inf where that is not known.
func (s *Spot) RatedVolt() float64 { return ratedVolt(s.Array.Driver) }

// Noise returns the level in dBA that pink noise of the wiring's voltage has at a place in m,
// the woofer with it; NaN where levels are relative. Errors are those of At and WithWoofer.
func (p *Plan) Noise(place r3.Vec) (level float64, err error) {
	there, err := p.At(place)
	if err != nil {
		return math.NaN(), err
	}
	x := Maximum{Noise: math.NaN()}
	_, err = x.caution(&there.Spot)
	return x.Noise, err
}
