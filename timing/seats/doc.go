// Package seats sorts drivers into channels and delays them so that one set serves several
// seats.
//
// A [Field] is what each seat hears of each driver, at the places that a head reaches
// ([Around]). [Field.Judge] tells by how many dB a set of groups and delays falls short of
// all drivers in step; [Field.Plan] finds groups and delays for an [Aim], [Field.Quick] a
// first answer; [Field.Bound] and [Field.Together] tell what no delays and no filters of the
// same groups can beat.
//
// The search: starts are the exact one-dimensional splits of the arrivals at each seat and
// of their mean (package split), clusters of arrivals at all seats (k-means), and the answer
// for one channel fewer with one of its groups split, so that more channels are never worse.
// From each, every channel's delay in turn is set to the best of all that can be set, until
// none gets better: exact coordinate descent of the aim itself, a channel's part of the sum
// at all places and frequencies being apart from the others', so that a delay costs as much
// as a place has frequencies. The best few go on with moves and swaps of drivers between
// channels, and moves of several where sizes allow no fewer, and with kicks: iterated local
// search. The best of each round go on, the last at all places of the heads.
//
// Nothing hangs on the clock, on how many cores there are, or on the order of seats and
// drivers.
package seats
