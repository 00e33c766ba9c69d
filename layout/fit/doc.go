// Package fit says where drivers get in each other's way or reach over the edge
// of their face. A flange is a flat round disc in the plane of its mount.
//
// How near two flanges are is told by their diameter: [Gap] is by how much the
// diameter of both may still grow until they touch, or, below 0, must shrink
// until they no longer overlap. For two in one plane that is the distance
// between their rims. For two in planes that lean from each other it is exact
// too: two discs of one radius touch when both reach the same point of the line
// in which their planes meet.
//
// Mounts from a list are rounded, so that two meant for one plane lie a little
// over one another, where thin discs would not touch but real ones do. Two that
// lie off each other's planes by less than a fiftieth of their distance count
// as in one plane. For neighbours alike on both sides of an edge the radius at
// which they touch so comes out smaller by less than a thousandth.
//
// A flange that reaches over the edge of its face and hangs in the air above
// the next flange touches nothing; Flange of a [Report] tells of it.
//
// [Check] reports on every mount: the flange and the cut-out in their face, where
// the walls of the neighbouring faces, which lean inward, take some of the inner
// side away; screws between the two; and what is behind the flange. Two drivers
// are as far apart as the cone frustums that they are made of, exactly within a
// billionth of their size; where they meet the report is below 0, and at least
// as far as one must be moved, but for a search that may miss the shortest way.
// To a wall they are as near as to its inner plane, from where that meets the inner
// side of their own face on. A terminal is taken for the
// ring that it sweeps, since nothing says which way it will stand: what clears
// so clears however the driver is turned.
//
// [All] asks no more than whether all fit. [OffBase] and [LeastAngle] say where a
// driver may be placed on a body that is cut, and how near two on a ball.
//
// [LargestDriver] and [SmallestBody] halve a range of sizes until it is as narrow
// as a millionth; each size is tried in full.
//
// A flange has a thickness, a screw a head, and a printed part is off by some
// tenths of a millimetre: leave some room (common practice: a millimetre or
// more between flanges).
//
// Plane and solid geometry beyond Euclid: distances of convex bodies, E. G.
// Gilbert, D. W. Johnson, S. S. Keerthi, IEEE J. Robotics and Automation 4 (1988)
// 193.
package fit
