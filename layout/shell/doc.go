// Package shell turns a body into the solid that a printer makes: a wall of one
// thickness with a round cut-out at each mount, as a closed mesh of triangles.
//
// # The wall
//
// The inside is where all the planes of the body's faces, each moved inward by
// the wall, leave room: the wall is as thick as asked for square to every face,
// at edges and corners thicker. Where more than three faces meet in a corner
// their inner planes need not meet in one point; the corner then becomes a short
// edge or a small face inside. Points nearer than a hundred-thousandth of the
// radius become one, so that a plane is off by no more than that.
//
// Each cut-out is a prism square to its face, through to the inner plane. Where
// its round lies inside the face outside and inside of the wall alike, no prism
// meets another face's: a point of it is nearer to its own face's plane than to
// any other's. A cut-out that does not lie inside is an error.
//
// A prism has so many sides that its corners stand out of the circle by no more
// than [ChordError]; its sides touch the circle, so that the driver goes in.
//
// # Cut bodies
//
// A cut body is open below: its base is no wall but a flat ring, from the
// outline outside to the outline inside.
//
// # Balls
//
// A ball is made of many flat facets that touch it, evenly spread, so that it
// stands out of the true ball by at most 0.0012 of the radius. Each
// mount gets a flat seat as wide as the flange: a plane that cuts the ball in
// a circle of the flange's radius. The driver so sits a little deeper than the
// ball's surface (on a ball of 150 mm with flanges of 40 mm by 1.3 mm).
//
// # Segments
//
// [Mesh.Part] cuts a mesh by planes and closes what it cut. Vertices nearer to a
// plane than half a hundred-thousandth of the mesh's size count as on it, so that
// no slivers arise; a cut face is flat to that.
//
// # Sources
//
// Half-spaces are cut off one after the other (Sutherland and Hodgman, Reentrant
// Polygon Clipping, Communications of the ACM 17, 1974, for each face). Faces
// with holes are cut into triangles ear by ear after each hole is joined to the
// outline by a bridge (D. Eberly, Triangulation by Ear Clipping, 2002; G. H.
// Meisters, Polygons Have Ears, American Mathematical Monthly 82, 1975). No
// vertex is left out or added, so that faces meet edge to edge. Volumes: the
// divergence theorem. Binary STL: 80 bytes of header, a count, then 50 bytes for
// each triangle, little-endian; common practice is to count in mm.
package shell
