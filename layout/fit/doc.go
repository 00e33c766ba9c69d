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
// the next flange touches nothing; [Overhang] tells of it.
//
// A flange has a thickness, a screw a head, and a printed part is off by some
// tenths of a millimetre: leave some room (common practice: a millimetre or
// more between flanges).
//
// Plane and solid geometry; no source is needed beyond Euclid.
package fit
