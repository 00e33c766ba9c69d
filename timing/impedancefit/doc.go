// Package impedancefit finds a driver's small-signal values in its measured
// impedance: resonance, Qms, Qes and Qts, the coil's resistance and inductance,
// each with its standard error; and, from a second measurement with an added mass
// or in a known box, Vas, moving mass and force factor. It also tells from a
// channel's impedance whether one of its strings is open or a driver shorted.
//
// # The circuit
//
// With time factor exp(+i omega t)
//
//	Z = Re + Zcoil + Res/(1 + i Qms (f/fs - fs/f)),  Qes = Qms Re/Res,  1/Qts = 1/Qms + 1/Qes
//
// (R. H. Small, Direct-Radiator Loudspeaker System Analysis, J. Audio Eng. Soc.
// 20 (1972) 383; IEC 60268-5 for what is measured). Zcoil is one of
//
//	i omega Le                                   ideal
//	i omega Le + K sqrt(i omega)                 semi-inductance
//	i omega Le + i omega L2 R2/(R2 + i omega L2) shunted inductance
//	P (i omega/omega1)^n                         power-law inductance
//
// The second is that of currents in solid iron (J. Vanderkooy, A Model of
// Loudspeaker Driver Impedance Incorporating Eddy Currents in the Pole Structure,
// J. Audio Eng. Soc. 37 (1989) 119), the third a common stand-in for it; the
// fourth is what coils were found to follow with n from 0.6 to 0.7 (W. M. Leach,
// Loudspeaker Voice-Coil Inductance Losses, J. Audio Eng. Soc. 50 (2002) 442).
//
// # The fit
//
// The search begins at the values of Small's definitions: Rmax at fs, and f1 and
// f2, where the magnitude is sqrt(Re Rmax). It minimises the sum of squares of
// ln(Z/Zmeasured), real part (magnitude) and imaginary part (phase, rad) alike, by
// gonum's Newton method with the Gauss-Newton matrix J'J in place of the Hessian.
// Noise in proportion to the impedance, which is what a voltage divider leaves, is
// then weighed evenly. Points that stand out from their neighbours (hum) are left
// out and named; L. Davies and U. Gather, The Identification of Multiple
// Outliers, J. Am. Stat. Assoc. 88 (1993) 782, for the running median.
//
// Errors are standard errors, one sigma, from s2 (J'J)^-1 at the optimum, with s2
// the residual sum of squares over the degrees of freedom (G. A. F. Seber and C. J.
// Wild, Nonlinear Regression, 1989, chapter 2), carried on by first derivatives.
// Where the residuals of neighbours are alike, the circuit itself does not quite follow the
// driver; [Fit.Systematic] says so, and the errors are wider, as if there were only as many points
// as tell something new. Added in squares is what no residual tells (doubt.go): each of a resistor or
// meter that is off, inputs of other gains, a coil that warms and a suspension that creeps moves
// the values by (J'J)^-1 J'r, with r what it does to ln Z; what residuals show of creep is not noise, too
// (lessCreep). Of made-up drivers that have all this,
// and coils and small resonances that no circuit here has, twice the errors hold 90 to 99 percent of
// the true values (trials.csv). Where the circuit is off by more than 8 percent no values are given.
//
// All sources are quoted from memory.
package impedancefit
