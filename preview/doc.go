// Package preview lets an array be heard before it is built: a programme,
// convolved with the impulse response from the array to the listening spot, as
// built, aligned, and from one ideal point.
//
// The impulse response is the inverse transform of the complex pressure on an
// even grid of frequencies (A. V. Oppenheim and R. W. Schafer, Discrete-Time
// Signal Processing, chapter 8), so that an arrival between two samples stays
// where it is. The cases of one programme are brought to the same RMS, so that
// the ear judges timing and not level (the louder of two is liked better, common
// practice).
//
// Sub-packages: programme makes the sounds, through convolves, limit keeps the
// level safe, wave writes files, play reaches the loudspeaker.
package preview
