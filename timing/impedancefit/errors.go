package impedancefit

import "errors"

// What can be wrong with a measurement.
var (
	errValue   = errors.New("no number that can be")
	errFew     = errors.New("too few points")
	ErrNoPeak  = errors.New("no resonance to be seen")
	errEdge    = errors.New("the resonance is at the edge of the measurement")
	errVague   = errors.New("the measurement does not tell")
	errShift   = errors.New("the second measurement does not fit the first")
	errClipped = errors.New("clipped")
	errQuiet   = errors.New("too quiet")
	errGain    = errors.New("the two inputs are not alike")
	errSwept   = errors.New("the sweep is not all there")
	errPhase   = errors.New("magnitudes and phases do not belong together")
	errShape   = errors.New("no driver with one resonance looks like this")
	errSwapped = errors.New("the two sides of the recording look swapped")
)
