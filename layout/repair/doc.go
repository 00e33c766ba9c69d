// Package repair mends what a change to a design breaks elsewhere in it, so that a
// change of one value never leads into a design that is refused for others: a place
// that is to stay empty and that the new body does not have, a number of drivers that
// is asked for now, a hole that a wider driver does not go through.
//
// Three things are never mended for anyone, and stay faults with their reason. What the
// person has set just now is theirs. What stands in a data sheet or on an amplifier,
// such as its least load, is no matter of taste: of the driver only what follows from
// the hole and the meter is touched. And what one would have to make up stays missing.
package repair
