// Package channelcount says what more channels buy: the smear that is left when
// the drivers are split among 1, 2, 3 … channels in the best way, and where more
// stop paying.
//
// The splits are those of package split, exact for squared residuals. The smear
// left is the energy-weighted RMS of what remains once each channel's delay
// brings the mean arrival of its drivers into step (see package measure for
// smear). Where more channels stop paying is a rule of this program, not of the
// trade: for the smear, from where on no further channel lowers it by as much as a
// tenth of what the best one does, nearly always the second; for the comb onset,
// from where on none raises it by a tenth, as pitch is heard in ratios. The two
// differ: a few channels take most of the smear away, and more go on to move the
// comb up.
package channelcount
