// Package seats sorts drivers into channels and delays them so that one set serves several
// seats.
//
// A [Field] is what each seat hears of each driver. [Field.Judge] tells by how many dB a
// set of groups and delays falls short of all drivers in step; [Field.Plan] finds groups
// and delays for an [Aim].
//
// The search: starts are the exact one-dimensional splits of the arrivals at each seat and
// of their mean (package split), clusters of arrivals at all seats (k-means) and some drawn
// at random. From each, every channel's delay in turn is set to the best of all that can be
// set, until none gets better (exact coordinate descent of the aim itself); the best few
// go on with moves and swaps of drivers, and with kicks. Each number of channels begins
// with the answer for one fewer, too, one of its groups split, so that more channels are
// never worse.
//
// Nothing hangs on the clock, on how many cores there are, or on the order of the seats.
package seats
