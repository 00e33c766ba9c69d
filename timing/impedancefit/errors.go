package impedancefit

import "errors"

// What can be wrong with a measurement.
var (
	ErrValue   = errors.New("no number that can be")
	ErrFew     = errors.New("too few points")
	ErrNoPeak  = errors.New("no resonance to be seen")
	ErrEdge    = errors.New("the resonance is at the edge of the measurement")
	ErrVague   = errors.New("the measurement does not tell")
	ErrShift   = errors.New("the second measurement does not fit the first")
	ErrClipped = errors.New("clipped")
	ErrQuiet   = errors.New("too quiet")
	ErrGain    = errors.New("the two inputs are not alike")
	ErrSwept   = errors.New("the sweep is not all there")
	ErrPhase   = errors.New("magnitudes and phases do not belong together")
	ErrShape   = errors.New("no driver with one resonance looks like this")
	ErrSwapped = errors.New("the two sides of the recording look swapped")
)
