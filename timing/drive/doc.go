// Package drive is the driver's own response: what it makes of a flat signal
// before the body and the room have their say.
//
// A driver is controlled by its mass above its resonance: its acceleration, and
// so the pressure of its volume velocity in free air, follows the voltage with a
// flat response; below, it falls by 12 dB per octave. In a closed box this is a
// second-order high-pass:
//
//	H = -x^2 / (1 - x^2 + i x/q),  x = f/resonance
//
// with time factor exp(+i omega t), and H -> 1 far above the resonance (R. H.
// Small, "Closed-box loudspeaker systems, part 1", J. Audio Eng. Soc. 20 (1972)
// 798; Beranek and Mellow, Acoustics: Sound Fields, Transducers and Vibration,
// chapters 6 and 7). Resonance and q are those of the driver in its box, not in
// free air.
//
// A measured response replaces it; a sensitivity makes levels absolute.
package drive
