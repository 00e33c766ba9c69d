// Package printing says whether the shell of a body fits a printer's bed, and
// cuts one that does not into the fewest equal segments: sectors, by planes
// through the z axis, and levels, by planes square to it. No cut runs through a
// cut-out, or nearer to one than a margin.
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
// Segments need a way to be joined; leave that much of the wall's edge, and
// take a bed somewhat smaller than the printer's. Common practice: 5 mm at every
// side.
//
// Volumes are sums of tetrahedra by the divergence theorem; of a ball, zones of
// a sphere (Archimedes, On the Sphere and Cylinder). Clipping is that of I. E.
// Sutherland and G. W. Hodgman, Comm. ACM 17 (1974) 32, face by face.
package printing
