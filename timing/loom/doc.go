// Package loom is the wire inside a body, piece by piece: where each goes, how long it is to be
// cut, and what a meter reads of strings and channels as they grow.
//
// A string begins at the channel's plus terminal, goes from each driver's minus to the next one's
// plus, and ends at the minus terminal; strings of a channel are joined at its terminals. Terminals
// are where timing.Harness has the entry. A piece is as long as the straight line inside the
// (convex) body, with the design's slack at both ends, rounded up to [Step]; the way round magnets
// and braces is in the slack.
//
// A reading is of direct current: a string's is the sum of its drivers' resistances and its
// wire's, a channel's is that of its strings in parallel (Kirchhoff; layout/impedance.Bank). Data
// sheets give a driver's resistance to [Tolerance] (common practice), so readings are told as
// ranges, and whether a range tells a fault from none.
//
// Polarity: a positive voltage on the plus terminal moves the cone outward (IEC 60268-5, polarity
// of the connections). With a cell of [Cell] volts a string of n drivers gets an nth each, and the
// cones move by that times the static excursion of timing/excursion.
package loom
