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
	ErrSwapped = errSwapped
)

// Make fits one coil, with errors by noise alone, and Define reads values off a curve, as Best does.
func Make(points []impedance.Point, coil Coil) (Fit, error) {
	d, kept, out, err := ready(points)
	if err != nil {
		return Fit{}, err
	}
	f, err := fitted(kept, out, d, coil, 0)
	if err != nil {
		return Fit{}, err
	}
	f = f.Noise()
	return f, f.judge()
}

var Define = define

// BestOf is Best for points of a recording through a resistor in ohm; 0: of a table.
var BestOf = best

// Again takes the cause of a load again, within another tolerance.
func (l Load) Again(bank impedance.Bank, driver impedance.Curve, hz, tolerance float64) Load {
	l.Others = nil
	l.choose(bounded(l.Ratio), causes(bank, driver.At(hz)), tolerance)
	return l
}

// Loose tells whether a circuit is off by more than a misfit, and not for noise.
func Loose(f Fit, misfit float64) bool { return f.loose(misfit) }
