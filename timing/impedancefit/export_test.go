package impedancefit

import "pappus/layout/impedance"

// What tests ask errors for.
var (
	ErrValue   = errValue
	ErrFew     = errFew
	ErrEdge    = errEdge
	ErrVague   = errVague
	ErrShift   = errShift
	ErrClipped = errClipped
	ErrQuiet   = errQuiet
	ErrGain    = errGain
	ErrSwept   = errSwept
	ErrPhase   = errPhase
	ErrShape   = errShape
	ErrSwapped = errSwapped
)

// Make fits one coil, and Define reads values off a curve, as Best does.
func Make(points []impedance.Point, coil Coil) (Fit, error) {
	d, kept, out, err := ready(points)
	if err != nil {
		return Fit{}, err
	}
	f, err := fitted(kept, out, d, coil)
	if err != nil {
		return Fit{}, err
	}
	return f, f.judge()
}

var Define = define
