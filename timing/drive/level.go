package drive

import "math"

// SensitivityVolts is the voltage that a driver's sensitivity is stated for.
const SensitivityVolts = 2.83

// Offset returns what must be added to the relative level of one driver to
// make it absolute, in dB SPL (20 uPa): the level at 1 m in free air of a point
// source with the volume velocity that the driver has in its passband.
//
// sensitivity is in dB SPL at 1 m on the axis for 2.83 V. It is commonly
// measured in a large baffle, into half space, where the pressure is twice that
// of the same volume velocity in free air: 20 log10 2 = 6.02 dB are taken off
// (common practice; Beranek and Mellow, Acoustics: Sound Fields, Transducers
// and Vibration, chapter 4, simple source near a rigid wall).
//
// volts is the RMS voltage over one driver, 0 or above: the amplifier's voltage
// over the number of drivers in series. 0 V gives -Inf.
//
// The figure takes no account of heat, excursion or the amplifier's limits, which
// make the real level lower; it is no licence to try. Begin low: loud sound
// harms hearing before it hurts, and small drivers burn without warning.
func Offset(sensitivity, volts float64) float64 {
	return sensitivity - 20*math.Log10(2) + 20*math.Log10(volts/SensitivityVolts)
}
