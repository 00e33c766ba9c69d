// Package sheets draws what a builder takes to the workshop: drilling templates
// at 1:1, a paper net to fold, tables of edges and faces, maps of the mounts, a
// picture of the whole, a bill of parts, and the printed shell as STL.
//
// A sheet is a list of lines, circles and words in mm on a page, written as SVG
// (with the size of the page in mm) and as PDF. What is at 1:1 stays so where
// the printer is told not to fit the page; a bar of 100 mm on the sheet shows
// whether it did.
//
// The net is unfolded over a spanning tree of the faces, breadth first from the
// first face that is left; a face that would overlap others or leave the page
// starts another piece. Every edge that is not a fold has its number on both
// sides, and a tab to glue on one of them.
//
// Views are orthographic. The picture is isometric: seen from
// arctan(1/sqrt 2) = 35.26 degrees above the horizon (ISO 5456-3), from the side
// of the listening spot.
//
// Page sizes: ISO 216. Colours: Okabe and Ito, Color Universal Design (2008).
// Four screws to a driver and a template stuck on and drilled through are common
// practice.
package sheets
