// Package truepeak finds the peaks of the sound that samples stand for, which
// lie between the samples as often as on them: the true peak of Recommendation
// ITU-R BS.1770-5 (2023), Annex 2, in dBTP once turned into decibels.
//
// The sound between two samples is a weighted sum of the samples about it, one
// set of weights for each point (a polyphase filter: R. E. Crochiere and L. R.
// Rabiner, Multirate Digital Signal Processing, 1983, chapter 2). The weights are
// the ideal interpolator under a Kaiser window of 24 samples, which a tone of up
// to 0.83 of half the rate, 20 kHz at 48 kHz, passes to within 0.01 dB (J. F.
// Kaiser, in Oppenheim and Schafer, Discrete-Time Signal Processing, chapter 7).
//
// The Annex asks for at least 192000 points a second, four times 48 kHz, and
// says that more are better: a tone of 20 kHz may then read 0.47 dB too low, by
// its appendix. Here there are at least 384000, eight times 48 kHz, which leaves
// 0.12 dB.
package truepeak
