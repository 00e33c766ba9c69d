// Package recording finds a sweep in what a microphone heard of it, and tells what
// the sweep went through: impulse response, level and phase, harmonics, noise.
//
// The two markers are found by correlation; the time between them, by the phase of the
// one over the other, gives the recorder's clock over the player's. The sweep is then
// made anew at the recorder's rate, so that nothing needs resampling, and taken out by
// division of spectra, within its band (A. Farina, "Simultaneous measurement of impulse
// response and distortion with a swept-sine technique", AES 108th Convention, 2000,
// preprint 5093; S. Müller and P. Massarani, "Transfer-function measurement with
// sweeps", J. Audio Eng. Soc. 49 (2001) 443). Where the player's signal was recorded too,
// on a second channel, the microphone's spectrum is divided by that one's, and times
// count from when the sound was sent.
//
// A response that is cut off after a time tells nothing of tones whose period is longer
// than that (common practice). The level of one tone has an error of
//
//	sigma = 20/ln 10 sqrt(V/2) / |H|  dB,   V(f) = D(f) sum of w[n]^2
//
// with D the energy density of the noise ahead of the response, where only noise can be,
// and w the window: of a small error, the half that is in phase changes the level.
//
// Time factor exp(+i omega t). Full scale of a recording is 1.
package recording
