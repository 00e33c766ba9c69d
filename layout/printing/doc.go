// Package printing says whether the shell of a body fits a printer's bed, and
// cuts one that does not into the fewest equal segments: sectors, by planes
// through the z axis, and levels, by planes square to it; or along steps. No cut runs
// through a cut-out, or nearer to one than a margin.
//
// Segments are printed as they stand and may be turned about z. A segment is
// tried as it stands and in steps of a whole degree from one of its flat sides;
// the turn that leaves the least box is taken. Its size is that of the shell
// alone, without the hollow, and exact for a body with faces. That of a ball is
// too large by up to a part in 25,000, since its round is taken for a polygon
// of whole degrees that lies about it.
//
// Sectors are all of one angle. Those of each level are turned so that their
// planes stand in the middle of the widest range of azimuth that is free there;
// joints need not run on from level to level. Levels are as equal as the cut-outs
// allow: the tallest is as low as can be. A level with a cut-out across the
// axis, which every plane through the axis would cut, stays whole, and is as
// tall as still fits.
//
// The shell is what is left between the body and the planes of its faces moved
// in by the wall. The base of a cut body has a thickness of its own, 0 where it
// is open. Cut-outs are taken off as straight holes through a flat wall: exact
// on faces that are wider than the hole, a little off on a ball and across an
// edge. A print also has infill, supports and a brim: weigh it.
//
// Where no flat seams will do, seams go in steps. Evenly spread mounts leave room for a seam
// between any two of them, but no plane keeps to it. Each site's cell is what is nearer to
// its direction than to any other's, bounded by planes through the centre; segments are
// groups of whole cells. Sites are the mounts; where a mount's cell is larger than the bed,
// also directions between the mounts. Numbers of segments are tried from two to 144, each
// with the cells grouped by equal sectors and levels, in eight turns, and round centres that
// move to the middle of their group; the first is taken of which all fit, hang together and
// keep off the cut-outs. Searching takes under a second for 300 mounts and some for 1000. Of
// a ball such segments are measured on flat pieces about it and are told up to 0.3 percent
// too large.
//
// Segments need a way to be joined; leave that much of the wall's edge, and
// take a bed somewhat smaller than the printer's. Common practice: 5 mm at every
// side.
//
// Volumes are sums of tetrahedra by the divergence theorem; of a ball, zones of
// a sphere (Archimedes, On the Sphere and Cylinder). Clipping is that of I. E.
// Sutherland and G. W. Hodgman, Comm. ACM 17 (1974) 32, face by face.
package printing
