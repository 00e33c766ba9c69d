// Package excursion is how far a driver's cone moves, what high-pass keeps it
// from moving too far, and what voltage the driver bears.
//
// A driver in a closed box, with time factor exp(+i omega t) and V the voltage
// over it:
//
//	x = V Bl / (Re Mms wc^2) / (1 - u^2 + i u/Qtc),  u = f/fc
//
// (R. H. Small, "Closed-box loudspeaker systems, part 1: analysis", J. Audio Eng.
// Soc. 20 (1972) 798). The inductance of the coil is left out, which is on the
// safe side; so is that a spring stiffens as it is stretched. Resonance and Q in the
// box are layout's; drivers that share a box and move alike have an equal part of its
// net volume each. With different delays or levels they do not move quite alike, and
// one can move further than computed here: two that move against each other do not feel
// the box at all, so for these take the resonance and Q of free air.
//
// Heat: no more than V^2/Re can turn into heat in the coil, since the impedance
// is hardly ever below Re (common practice); that V is the sound's RMS over some
// seconds, so the power rating is one for long-term noise. A small coil burns
// within seconds of too much.
package excursion
