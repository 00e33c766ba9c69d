// Package sweep is the signal that an array is measured with: an exponential sine
// sweep between two markers.
//
// The sweep is that of A. Farina, "Simultaneous measurement of impulse response and
// distortion with a swept-sine technique", AES 108th Convention, 2000, preprint 5093:
//
//	x(t) = sin(2 pi f1 L (exp(t/L) - 1)),  L = T / ln(f2/f1)
//
// so that it passes frequency f at L ln(f/f1), its spectrum falls by 3 dB an octave,
// and what a weak nonlinearity makes of it at k times the frequency stands, once the
// sweep is taken out, L ln k ahead of the linear response.
//
// The markers are short linear chirps that fall, so that the rising sweep hardly
// resembles them. The same one stands before and after the sweep: whatever is between
// the player and the recorder does the same to both, so that the time between them
// tells how the two clocks differ (common practice).
//
// All is a function of time, not of samples: it can be had at any rate, also at one
// that is a few millionths off.
package sweep
