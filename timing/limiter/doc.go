// Package limiter finds where the limiters of each channel are set, how loud music may be for how
// long, and what an amplifier must give for it.
//
// A limiter stands behind all filters and the gain of its channel; its voltages are those at the
// amplifier's terminals. Two are told, as processors have them: one for the RMS voltage over some
// seconds, for heat, and one for the peak voltage, for the cones. Each driver gets a part of the
// terminals' voltage, the most of them DriverVolt/Volt of timing.Bank, wire included.
//
// Heat: the RMS at which the driver that gets most takes the power that it stands long
// (timing.Spot.RatedVolt). A small coil is hot within seconds, so that limiter answers within
// one (common practice: a third of a second to one).
//
// Travel: the peak that moves no cone past its reach whatever plays
// (excursion.Driver.Bounded). It does not count on the high-pass: behind it music may be as strong
// near the resonance as the limiter lets it. What tones alone allow behind the high-pass is told
// beside it; sounds that begin and end can move a cone further than a tone does.
//
// Music is taken for pink noise of a crest factor, its peak over its RMS at the terminals in dB:
// IEC 60268-1 tests with 6 dB; dense popular music has about 10, most music 14, speech and
// acoustic music 18 to 20 (common practice). Its level at a place is that of the plan's pink noise.
package limiter
