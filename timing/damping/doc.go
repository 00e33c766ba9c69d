// Package damping makes sense of a damping log: what each trial of vent openings and
// stuffing came to, which change did what, and what to try next to bring the Q of the
// drivers in their body to a target.
//
// # What a trial came to
//
// Resonance, peak over Re and Q are those of the circuit fitted to the impedance
// (package impedancefit): Qts as it stands in the body, the Q of the system where a
// channel is driven from an amplifier of next to no resistance (R. H. Small,
// Closed-Box Loudspeaker Systems, J. Audio Eng. Soc. 20 (1972) 798). With a resistive
// vent the circuit has a third pole and the fit is near, not exact. The middle band's
// unevenness is the standard deviation in dB from 500 Hz to 4 kHz, third-octave
// smoothed.
//
// # What to try next
//
// Losses add as 1/Q (Small 1972: 1/Qtc = 1/Qec + 1/Qmc, and 1/Qmc is a sum over what
// takes energy). So with all else left alone 1/Q runs nearly straight against the mass
// of stuffing, or the number of openings, and rises. A straight line is put through
// the trials that differ in that one thing, by least squares; each weighs less the
// further its 1/Q is from the target's, since the straight line holds near by only
// (W. S. Cleveland, Robust Locally Weighted Regression and Smoothing Scatterplots, J.
// Am. Stat. Assoc. 74 (1979) 829). The next trial is where the line reaches the
// target, a little past it while the target is not yet between two trials, and between
// the nearest two once it is. One thing is changed at a time, nothing beyond what was
// said to fit, and nothing that has been tried. Where a trial with more of a thing is
// clearly further off, more of it does harm (fibre packed tight moves as one), or a file
// belongs to another trial: then the crest of a parabola is tried if it promises
// something, else the other thing.
//
// # Fibre in vents
//
// What a gram of fibre in a vent does is known within a factor of some 2.7 either way from what is published
// (layout/box). A trial with filled vents tells more of it where there is one with the vents closed
// and as much stuffing beside: of the closed circuit only the vents' resistance and the weight of their air
// are new, and both are weighed by how well they tell the impedance's curve (Bayes; the prior and
// the errors stand in fibre.go). TestFibreLearns holds how often the truth is within what is told.
//
// How often that is wrong over made-up bodies stands in trials.csv ([Trials]).
//
// Fibre packs a little differently each time: without two trials alike to tell by,
// trials are taken to repeat within [Scatter] (common practice). Sources are quoted
// from memory.
package damping
