// Package omni judges how evenly a source radiates in one plane, by the
// tolerance that ISO 3382-1:2009 (clause 4.2.1, table 1, annex A) sets for
// omnidirectional sources in room acoustics: in octave bands of pink noise in
// free field, the energy mean over any arc of 30 degrees, gliding round the
// source, against that over the full circle:
//
//	125, 250, 500 Hz  +-1 dB
//	1 kHz             +-3 dB
//	2 kHz             +-5 dB
//	4 kHz             +-6 dB
//
// Clause, table and limits are quoted from memory.
package omni
