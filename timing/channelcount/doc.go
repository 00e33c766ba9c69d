// Package channelcount says what more channels buy: the smear that is left when
// the drivers are split among 1, 2, 3 … channels in the best way, and where more
// stop paying.
//
// The splits are those of package split, exact for squared residuals. The smear
// left is the energy-weighted RMS of what remains once each channel's delay
// brings the mean arrival of its drivers into step (see package measure for
// smear). Where more channels stop paying is a rule of this program, not of the
// trade: from there on no further channel lowers the smear by as much as a tenth
// of what the second one does.
package channelcount
