// Package unlike is drivers that are not twins, in strings on their channels and in the air
// of the box that they share: what flows in each, and how each moves.
//
// One driver in free air, with time factor exp(+i omega t), current I and the pressure p
// behind its cone (R. H. Small, Direct-Radiator Loudspeaker System Analysis, J. Audio Eng.
// Soc. 20 (1972) 383):
//
//	U = (Re + i w Le) I + Bl v
//	M (i w + ws/Qms + ws2/(i w)) v = Bl I - S p,   Bl2/M = ws Re/Qes
//
// Drivers of a string share its current, strings of a channel its voltage behind the wire.
// Drivers of a box share its air, which is a spring: S p = stiff Ms ws2/n (sum of v)/(i w)
// for n drivers, where the stiffness over that of a nominal cone, n together, is what the box
// makes of the resonance, stiff = (fc/fs)2 - 1. So the loose ones move more than their part,
// and the stiff ones less.
//
// What impedance alone does not tell is the moving mass. Where the level of a driver is
// known, it follows: far above the resonance the pressure at one voltage goes as Bl/(Re M).
// Else it is taken as the nominal one, and the level follows from that; suspensions scatter
// most (common practice).
//
// Masses and areas are over the nominal driver's, so that neither need be known. All is
// linear and lumped: frequencies are those at which the box is small.
package unlike
