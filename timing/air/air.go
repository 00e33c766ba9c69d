// Package air says how fast sound travels in air and how much of it the air
// takes away.
//
// Speed: O. Cramer, "The variation of the specific heat ratio and the speed of
// sound in air with temperature, pressure, humidity, and CO2 concentration",
// J. Acoust. Soc. Am. 93 (1993) 2510, equation 15. Loss: ISO
// 9613-1:1993, clause 6.2, equations 3 to 5, and annex B for the humidity.
package air

import "math"

// Reference values of ISO 9613-1:1993, clause 4.2 and annex B.
const (
	zeroCelsius       = 273.15  // K
	referenceTemp     = 293.15  // K
	triplePoint       = 273.16  // K
	referencePressure = 101325  // Pa
	carbonDioxide     = 0.00042 // mole fraction, today's outdoor air (common practice)
)

// Air is still air of one state.
type Air struct {
	Temperature float64 // K
	Humidity    float64 // relative, 0 to 1
	Pressure    float64 // Pa
}

// SpeedOfSound returns the speed of sound in m/s by Cramer's equation 15.
//
// Cramer states it for 0 to 30 degrees Celsius, 75 to 102 kPa and a water
// vapour fraction up to 0.06, with an uncertainty below 0.03 percent. Outside
// of that, down to -20 and up to 50 degrees, dry air by this formula stays
// within 0.1 percent of an ideal gas, which the tests hold.
func (a Air) SpeedOfSound() float64 {
	t := a.Temperature - zeroCelsius
	p := a.Pressure
	w := a.waterFraction()
	c := carbonDioxide
	return 331.5024 + t*(0.603055-t*0.000528) +
		w*(51.471935+t*(0.1495874-t*0.000782)) +
		p*(-1.82e-7+t*(3.73e-8-t*2.93e-10)) +
		c*(-85.20931+t*(-0.228525+t*5.91e-5)) -
		w*w*2.835149 - p*p*2.15e-13 + c*c*29.179762 + w*p*c*0.000486
}

// DrySpeedOfSound returns 343.2 sqrt(T/293.15) m/s, ISO 9613-1:1993 equation
// A.5: the speed in dry air, without Cramer's corrections.
func (a Air) DrySpeedOfSound() float64 {
	return 343.2 * math.Sqrt(a.Temperature/referenceTemp)
}

// waterFraction returns the mole fraction of water vapour, by the saturation
// pressure and enhancement factor of Giacomo, Metrologia 18 (1982) 33, which
// Cramer uses.
func (a Air) waterFraction() float64 {
	T := a.Temperature
	t := T - zeroCelsius
	saturation := math.Exp(1.2811805e-5*T*T - 1.9509874e-2*T + 34.04926034 - 6.3536311e3/T)
	enhancement := 1.00062 + 3.14e-8*a.Pressure + 5.6e-7*t*t
	return a.Humidity * enhancement * saturation / a.Pressure
}

// Density returns the density of moist air in kg/m3: ideal gases of dry air
// and water vapour (common practice; within 0.1 percent of Giacomo's formula).
func (a Air) Density() float64 {
	const gas, dry, water = 8.314462618, 0.0289652, 0.01801528
	w := a.waterFraction()
	return a.Pressure * (dry*(1-w) + water*w) / (gas * a.Temperature)
}

// Loss returns the pure-tone loss at a frequency in Hz, in nepers per metre:
// a plane wave's pressure falls as exp(-Loss*distance). ISO 9613-1:1993,
// equation 5, in nepers instead of decibels (1 Np is 8.686 dB). The standard
// gives it 10 percent for 0.05 to 5 percent of water, 253 to 323 K and
// frequency over pressure from 0.4 to 10 Hz/Pa.
func (a Air) Loss(frequency float64) float64 {
	pressure := a.Pressure / referencePressure
	temp := a.Temperature / referenceTemp
	h := a.waterPercent()
	oxygen := pressure * (24 + 4.04e4*h*(0.02+h)/(0.391+h))
	nitrogen := pressure / math.Sqrt(temp) *
		(9 + 280*h*math.Exp(-4.170*(1/math.Cbrt(temp)-1)))
	f2 := frequency * frequency
	return f2 * (1.84e-11*math.Sqrt(temp)/pressure +
		math.Pow(temp, -2.5)*
			(0.01275*math.Exp(-2239.1/a.Temperature)/(oxygen+f2/oxygen)+
				0.1068*math.Exp(-3352.0/a.Temperature)/(nitrogen+f2/nitrogen)))
}

// waterPercent returns the molar concentration of water vapour in percent as
// ISO 9613-1:1993, annex B, equations B.1 to B.3, computes it.
func (a Air) waterPercent() float64 {
	exponent := -6.8346*math.Pow(triplePoint/a.Temperature, 1.261) + 4.6151
	return 100 * a.Humidity * math.Pow(10, exponent) * referencePressure / a.Pressure
}
