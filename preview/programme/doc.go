// Package programme makes the sounds that the array is listened to with: pink
// noise, clicks, plucked strings, a spoken-like phrase, applause and a sine sweep.
// Nothing is recorded; every sample is computed from a fixed seed, so it is the
// same on each run.
//
// Pink noise: a sum of sines of random phase whose power falls by 3 dB an
// octave; one period lasts some seconds and joins on to itself (the periodic
// noise of acoustic measurement, common practice).
//
// Plucked strings: K. Karplus and A. Strong, "Digital synthesis of
// plucked-string and drum timbres", Computer Music Journal 7(2) (1983) 43; the
// all-pass that tunes between samples and the loss that sets the decay are from
// D. A. Jaffe and J. O. Smith, "Extensions of the Karplus-Strong plucked-string
// algorithm", in the same issue, 56. Equal temperament on 440 Hz (ISO 16).
//
// Spoken-like phrase: source and filter (G. Fant, Acoustic Theory of Speech
// Production, 1960), with resonators in cascade as in D. H. Klatt, J. Acoust.
// Soc. Am. 67 (1980) 971; vowel formants from G. E. Peterson and H. L. Barney,
// J. Acoust. Soc. Am. 24 (1952) 175, men, quoted from memory.
//
// Applause: the rate of one pair of hands, about four a second, and the peak of
// their spectrum between 0.5 and 3 kHz are from B. H. Repp, "The sound of two
// hands clapping", J. Acoust. Soc. Am. 81 (1987) 1100, quoted from memory.
//
// Sine sweep: exponential, so that its energy is the same in every octave (A.
// Farina, "Simultaneous measurement of impulse response and distortion with a
// swept-sine technique", AES 108th Convention, 2000, preprint 5093).
package programme
