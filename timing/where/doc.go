// Package where looks for a better place: for the chair, so that it is heard best from there, or
// for the body, which in a room can be moved and anywhere be turned.
//
// A place is worth, in dB and less being better,
//
//	Loss + Ripple
//
// of a plan of its own: what drivers lose against all in step, from 500 Hz to 8 kHz, and how
// uneven what a surface or a room sends back makes the level (timing.Spot). A decibel of the one
// counts as one of the other, as level and evenness do in the aim of seats. Both are figures that
// the plan tells, so that who does not like the answer sees what another would cost.
//
// Nearer is always better in both, and nobody wants to sit on the loudspeaker: the chair stays
// from Nearest to Furthest times as far as it is, and ClearOfWalls off walls; where a body may
// stand in a room, its chair stays so far from it too.
package where
