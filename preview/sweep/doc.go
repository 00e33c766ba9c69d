// Package sweep makes the sweep that an array is measured with as sound: quiet, from the
// high-pass's corner upwards, with silence round it, faded in and out, between the markers by
// which a recording of it is found again (package timing/sweep).
//
// A small cone moves four times as far for every octave downwards; below the corner a sweep can
// tear it. A sweep is louder to ear and amplifier than music of the same peak, since it never
// rests: it begins at 20 dB below full scale (common practice).
package sweep
