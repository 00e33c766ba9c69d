package recording

// What tests ask errors for.
var (
	ErrTake      = errTake
	ErrClipped   = errClipped
	ErrNoSweep   = errNoSweep
	ErrTruncated = errTruncated
	ErrOther     = errOther
	ErrUnsteady  = errUnsteady
	ErrSwapped   = errSwapped
	ErrGate      = errGate
)
