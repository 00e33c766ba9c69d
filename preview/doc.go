// Package preview lets an array be heard before it is built: a programme,
// convolved with the impulse response from the array to the listening spot, as
// built, aligned, and from one ideal point; with one ear or two, at rest or
// walking.
//
// The impulse response is the inverse transform of the complex pressure on an
// even grid of frequencies (A. V. Oppenheim and R. W. Schafer, Discrete-Time
// Signal Processing, chapter 8), so that an arrival between two samples stays
// where it is. The cases of one programme are made equally loud (ITU-R BS.1770-5),
// so that the ear judges timing and not level (the louder of two is liked better,
// common practice).
//
// Sub-packages: programme makes the sounds, decode reads the listener's own at any
// rate (resample), through convolves, loudness measures, limit keeps the level
// safe, wave writes files, play reaches the loudspeaker, blind asks which is which, and
// console does what single keys say. An [Audition] is who listens to what; [Kept] keeps
// what was made for a page.
package preview
