package recording

// What tests ask errors for.
var (
	IsOneRate    = isOneRate
	ErrTake      = errTake
	ErrClipped   = errClipped
	ErrNoSweep   = errNoSweep
	ErrTruncated = errTruncated
	ErrOther     = errOther
	ErrUnsteady  = errUnsteady
	ErrSwapped   = errSwapped
	ErrLate      = errLate
	ErrGate      = errGate
)
