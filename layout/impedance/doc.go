// Package impedance is the load that an amplifier sees over frequency: one
// driver's impedance, strings of drivers in parallel with their wire, and what
// becomes of them when a driver fails open or shorted.
//
// One driver, with time factor exp(+i omega t):
//
//	Z = Re + i w Le + Res/(1 + i Qms (w/ws - ws/w)),  Res = Re Qms/Qes
//
// (R. H. Small, "Direct-radiator loudspeaker system analysis", J. Audio Eng.
// Soc. 20 (1972) 383). In a box, resonance and the two Q are those in the box.
// The inductance is that of an ideal coil; a real one's grows less steeply
// because of currents in its iron, so high in the band a measured table is
// better (common practice).
//
// Networks: Ohm's law and Kirchhoff's laws with complex amplitudes, values RMS.
// The impedance dips below the nominal one, and in unequal strings or with a
// dead driver nothing divides evenly any more; so currents and voltages are
// solved, not taken from nominal values. A load under the amplifier's minimum
// can overheat and destroy it, and a driver that gets more than its rating can
// burn.
package impedance
