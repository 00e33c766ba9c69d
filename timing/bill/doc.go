// Package bill finds what building an array takes: each part with how many, how heavy, how dear
// and how long, for all bodies together; and where a body's middle of mass is, for how it hangs.
//
// Print times and masses are of solid plastic at the printer's flow (layout/space says the same
// of a search); prices are in any money, that of the design. What the design does not tell is NaN
// and counts nothing; Bill.Unknown names it. A spare is bought, but neither weighs nor takes work.
//
// Work: a joint is a wire's end on a terminal. A string of n drivers has 2n of them on drivers and
// two where it begins and ends. The minutes for each are the design's; 4 for a joint and 6 for a
// driver with its four screws are common practice of who has done some.
//
// Mass: wire is that of its copper; a driver's middle is taken 0.6 of its depth behind its flange,
// since its magnet is the most of it (common practice). Screws, glue and insulation are not in it
// unless they are parts of the design: weigh the finished thing.
package bill
