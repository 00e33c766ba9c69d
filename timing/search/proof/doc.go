// Package proof has no code of its own: its tests hold the search against all designs of small
// spaces, each planned in full.
//
// testdata has the spaces as design files, NAME.toml, and what brute force made of them, NAME.csv:
// one row for each design, by its number. Designs are numbered with the keys of [search.X] in
// the order of the alphabet, the last of them turning fastest. A design that cannot be built as
// it is has the code or the error's key that says why, and no figures. "bodies", "even" and
// "seats" were there while the search was made, "held" was tried when it stood. The tables are
// made anew, in two to ten minutes each on two cores, by
//
//	go test ./timing/search/proof -run TestAnew -timeout 2h -write
//
// The ordinary test plans some rows anew, with THOROUGH=1 one in fifty, and searches a quarter of
// one space, with THOROUGH=1 all of each (with as many seeds as -seeds says).
package proof
