// Package box computes what drivers do that share one closed body: what room they
// have, where they resonate and how much, and how a resistive vent and stuffing
// change that.
//
// Sources. R. H. Small, Closed-Box Loudspeaker Systems, J. Audio Eng. Soc. 20
// (1972) 798 and 21 (1973) 11; R. H. Small, Direct-Radiator Loudspeaker System
// Analysis, J. Audio Eng. Soc. 20 (1972) 383, for the driver; L. L. Beranek and
// T. J. Mellow, Acoustics: Sound Fields and Transducers, 2012, chapter 7. All
// are quoted from memory.
//
// # The circuit
//
// In the impedance analogy pressure is the voltage and volume velocity the
// current. A driver is a pressure e BL/(Re Sd) behind a resistance
// (BL)2/(Re Sd2) + 1/(omega_s Qms Cas), a mass Mms/Sd2 and a compliance Cas =
// Cms Sd2 in series. All N drivers, alike and in step, put their current through
// the box: a compliance Cab = V/(rho c2), across which a vent adds a resistance
// R. To each driver that looks like N times the box's impedance.
//
// With s in units of omega_s, alpha = N Cas/Cab and tau = omega_s R Cab the
// poles of the closed box are those of
//
//	s2 + s/Qts + 1 + alpha = 0
//
// so that its resonance is fs sqrt(1+alpha) and its Q is Qts sqrt(1+alpha); and
// with a vent those of
//
//	tau s3 + (1 + tau/Qts) s2 + (1/Qts + tau (1+alpha)) s + 1 = 0
//
// which is the closed box for tau without end, and the driver in open air for
// tau = 0. Its Q is that of the pair of complex poles. To take the vent for a
// resistance alone, and its Q for the system's, is common practice; losses of the box are left
// out. With a mass M of the vent's air in series with R, and mu = omega_s2 M Cab, they are those of
//
//	mu s4 + (tau + mu/Qts) s3 + (1 + tau/Qts + mu (1+alpha)) s2 + (1/Qts + tau (1+alpha)) s + 1 = 0
//
// ([DampHeavy]; [Vent.MassRatio] says whether M matters). What sounds far away is the flow of cones
// and vent together, which is what goes into Cab (R. H. Small, Vented-Box Loudspeaker Systems, J.
// Audio Eng. Soc. 21 (1973) 363, from memory): over that of high tones it is
//
//	s3 (tau + mu s) over the same polynomial
//
// A vent with a mass is a port, and may sound most where the cones do least. Of the Q of the poles and
// that of a closed box with as high a hump the greater is therefore taken: the 39 drivers of the
// built-in design with 12 kg/m4 and the resistance of the least Q of the poles, 1.02 in place of 1.18,
// have a hump of 2.7 dB, closed 2.3 dB.
//
// # Limits
//
// Published values of small cheap drivers are off by a fifth and more from one
// to the next (common practice: measure some). The loss of the box itself and
// the coil's inductance are left out. Above the frequency where the body is a
// sixth of a wavelength wide it is no longer a simple compliance.
package box
