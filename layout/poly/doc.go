// Package poly holds convex polyhedra and closed meshes of triangles: what a half-space
// leaves of them, their measures, the order of their corners, and the files they come from
// and go to. Lengths are in m, faces counter-clockwise seen from outside.
//
// Half-spaces are cut off face by face (I. E. Sutherland and G. W. Hodgman, Reentrant Polygon
// Clipping, Comm. ACM 17 (1974) 32). Volumes: the divergence theorem, as a sum of tetrahedra.
// Faces with holes are cut into triangles ear by ear after each hole is joined to the outline
// by a bridge (D. Eberly, Triangulation by Ear Clipping, 2002; G. H. Meisters, Polygons Have
// Ears, American Mathematical Monthly 82, 1975). Binary STL: 80 bytes of header, a count, then
// 50 bytes for each triangle, little-endian (StereoLithography Interface Specification, 3D
// Systems, 1989); common practice is to count in mm.
package poly
