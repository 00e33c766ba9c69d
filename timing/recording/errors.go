package recording

import "errors"

// Errors of Analyse, for errors.Is. None of them comes with a response.
var (
	ErrTake      = errors.New("unusable recording") // no rate, samples that are not finite, channels of unequal length
	ErrClipped   = errors.New("the recording is clipped")
	ErrQuiet     = errors.New("the recording is too quiet")
	ErrNoSweep   = errors.New("the sweep is not in the recording")
	ErrTruncated = errors.New("the recording does not hold all of the sweep")
	ErrOther     = errors.New("the recording is of another sweep")
	ErrUnsteady  = errors.New("the recording is not steady")
	ErrSwapped   = errors.New("the microphone and the wire look swapped")
	ErrGate      = errors.New("unusable gate")
)
