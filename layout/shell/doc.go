// Package shell turns a body into the solid that a printer makes, a wall of one thickness with
// a round cut-out at each mount, as a closed mesh ([Make]); and cuts one that does not fit a
// printer's bed into the fewest segments ([Cut], [Plan.Parts]).
//
// # The wall
//
// The inside is where all the planes of the body's faces, each moved inward by the wall, leave
// room: the wall is as thick as asked for square to every face, at edges and corners thicker.
// Where more than three faces meet in a corner their inner planes need not meet in one point;
// the corner then becomes a short edge or a small face inside. Points nearer than a
// hundred-thousandth of the radius become one, so that a plane is off by no more than that.
// A cut body is open below: its base is no wall but a flat ring.
//
// Each cut-out is a prism square to its face, through to the inner plane. Where its round lies
// inside the face outside and inside of the wall alike, no prism meets another face's: a point
// of it is nearer to its own face's plane than to any other's. A cut-out that does not lie
// inside is an error. A prism has so many sides that its corners stand out of the circle by no
// more than [ChordError]; its sides touch the circle, so that the driver goes in.
//
// A ball is made of many flat facets that touch it, evenly spread, so that it stands out of
// the true ball by at most 0.0012 of the radius. Each mount gets a flat seat as wide as the
// flange: a plane that cuts the ball in a circle of the flange's radius. The driver so sits a
// little deeper than the ball's surface (on a ball of 150 mm with flanges of 40 mm by 1.3 mm).
//
// # Segments
//
// Segments are sectors, by planes through the z axis, and levels, by planes square to it; or
// groups of cells, along steps. No cut runs through a cut-out, or nearer to one than a margin.
// They are printed as they stand and may be turned about z: each is tried as it stands and in
// steps of a whole degree from one of its flat sides, and the turn that leaves the least box
// is taken. Sizes are exact for a body with faces; those of a ball are too large by up to a
// part in 25,000, since its round is taken for a polygon of whole degrees that lies about it.
//
// Sectors are all of one angle. Those of each level are turned so that their planes stand in
// the middle of the widest range of azimuth that is free there; joints need not run on from
// level to level. Levels are as equal as the cut-outs allow: the tallest is as low as can be.
// A level with a cut-out across the axis, which every plane through the axis would cut, stays
// whole, and is as tall as still fits.
//
// Where no flat seams will do, seams go in steps. Evenly spread mounts leave room for a seam
// between any two of them, but no plane keeps to it. Each site's cell is what is nearer to its
// direction than to any other's, bounded by planes through the centre; segments are groups of
// whole cells. Sites are the mounts; where a mount's cell is larger than the bed, also
// directions between the mounts. Numbers of segments are tried from two to 144, each with the
// cells grouped by equal sectors and levels, in eight turns, and round centres that move to the
// middle of their group; the first is taken of which all fit, hang together and keep off the
// cut-outs. Of a ball such segments are measured on flat pieces about it and are told up to
// 0.3 percent too large.
//
// Volumes take cut-outs off as straight holes through a flat wall: exact on faces that are
// wider than the hole, a little off on a ball and across an edge. A print also has infill,
// supports and a brim: weigh it. Segments need a way to be joined; leave that much of the
// wall's edge, and take a bed somewhat smaller than the printer's (common practice: 5 mm at
// every side).
package shell
