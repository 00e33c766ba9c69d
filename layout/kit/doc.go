// Package kit makes the parts that a loudspeaker is put together from: the shell's segments with
// joints, the floor of a cut body, the cartridges of its vents, and jigs; and lays them on the
// printer's bed. Each part is one closed surface, carved by package carve.
//
// # Joints
//
// In a lap the segment of the lower number has a tongue, as thick as the wall, that lies under
// its neighbour's edge: 10 mm to either side of the seam, a gap below the wall, with a groove
// for glue or a seal; it takes little room, and is what walls of a few millimetres want. Screws
// of 2.2 mm from inside hold it while the glue sets, and pieces of filament are its dowels. In a
// flange both edges have a rib of 12 mm inward, screwed across by M3. At every seam both edges
// stand back by half of the gap. What drivers take inside of their cut-outs is kept clear; a bit
// of a joint that hangs on nothing then is left out.
//
// Segments are put together in the order of their numbers: each goes in one straight line from outside onto
// the tongues of those before it ([Part.Off]), and the last one of a closed body has none of its own; its
// screws are reached through the cut-outs. Where a segment lay on the bed without its joints and
// does not with them, the shell is cut smaller than for sheets ([Segments]). Joints end above the
// floor. Where drivers leave no room for a fastener between two segments that is told ([Meeting]); a
// segment that loses a piece of its wall to cut-outs and seats cannot be made.
//
// Numbers and arrows are cut into the wall's inside by a font of lines: the segment with an
// arrow that points up, the neighbour's number at each joint, that of each mount, F in front.
//
// # Floor and vents
//
// The floor lies inside of the wall, against a ledge with a strip of foam between; the ledge is
// left out where a driver reaches down to it. Vents are cartridges that are filled with weighed
// stuffing: a body with an ISO metric trapezoidal thread, screwed into the floor from outside, and
// a lid on its inner end, each with a grid. Without a floor they are in bare flat faces.
//
// Air that moves in a vent has a mass: that in the stuffing and the grids, at both ends of the bore,
// and under the stand. With all places taken that there are, each size of thread comes to a mass,
// and package box tells whether a resistance brings the Q down to the design's target with it. The
// fewest cartridges that do are made, or, where none do, the fewest that come near to the least Q.
// The design's own vent, holes in a thin wall under cloth, says whether there are to be vents, not
// how large: [layout.Hollow.LeastHoles] is of its air, not of a cartridge's.
//
// # Printing
//
// Of the directions that a part may lie in, the one is taken with the least area that leans out
// by more than 45 degrees from upright (common practice); a plate is filled in rows.
//
// Measures of joints, screws and clearances are common practice for melted filament and a nozzle
// of 0.4 mm; print the seat's test piece first.
package kit
