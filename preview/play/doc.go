// Package play sends a stream to the loudspeaker, safely and without hanging.
//
// The sound starts at a low level, rises from silence over 2 s and is limited to
// 1 dB below full scale; before its end, and when it is told to stop, it falls to
// silence within 30 ms, so that nothing clicks (all common practice). What is already on its way to
// the device, about a tenth of a second, is still heard.
//
// The device is opened by oto, which reaches it without cgo and answers through a
// channel and Context.Err; the speaker package of beep hides both, so that it
// would wait for ever where there is no device. Here every wait has a bound: the
// device must take its first samples within 2 s, and must never pause for longer
// than that.
//
// ALSA's library prints its own complaints on standard error; they are turned
// off, since the error returned says as much.
package play
