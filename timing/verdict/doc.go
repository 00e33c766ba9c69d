// Package verdict holds measurements against a plan: what each channel does that it should
// not, which delays the measurement asks for, and where the level is not what was planned.
//
// A channel's measured response M is held against what the plan says that its strings give,
// P, over a band:
//
//	M(f) = g C(f) P(f) exp(-i 2 pi f tau)
//
// where the gain g and the time tau are the channel's own, and C is what all channels have
// alike and the plan may not know: the drivers' own response and phase, the microphone, the
// converters. Least squares give g and tau with C held, and C with those held, in turn; a
// sign below that of the others is a channel in reverse. Where a channel is too weak and
// without one of its strings the rest of it fits the measurement much better, that string
// is named. Only differences between channels follow from this; so do delays.
//
// Both are looked at through the same window of time, from a millisecond before a channel's
// first driver to 6 ms or three periods of the lowest frequency after its last, so that
// echoes of a room that come later do not count, whether the plan knows of the room or not.
//
// Each level and time has a standard error, combined as JCGM 100:2008 (GUM) has it from the
// disagreement between bands, the window, the siblings' middle, repeats and the model. A channel is called
// quiet, loud or late only beyond twice that, the drivers' tolerance and the scatter of its
// siblings; against those of like arrival, too, since what a model does not know of a shadow
// is smooth over the way round the body.
//
// Recordings of all channels at several seats tell what is lost at each against all drivers in
// step, and between them (Seats), and may name a channel that is silent or turned round.
//
// Levels of bands are energy means over thirds of octaves (IEC 61260-1) on an even
// logarithmic axis, after the mean difference over a stated band is taken out.
package verdict
