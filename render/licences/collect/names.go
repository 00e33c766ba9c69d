package main

import (
	"slices"
	"strings"
)

// known are the licences that what is carried may have, by sentences that are in each text of one,
// and in none of another (SPDX License List 3.27, whose names they have).
var known = []struct {
	name string
	says []string
}{
	{"MIT", []string{"permission is hereby granted, free of charge, to any person obtaining a copy", "the above copyright notice and this permission notice shall be included"}},
	{"ISC", []string{"permission to use, copy, modify, and", "distribute this software for any purpose with or without fee is hereby granted, provided that the above copyright notice"}},
	{"0BSD", []string{"distribute this software for any purpose with or without fee is hereby granted. the software is provided"}},
	{"BSD-3-Clause", []string{"redistributions of source code must retain", "redistributions in binary form must reproduce", "neither the name"}},
	{"BSD-2-Clause", []string{"redistributions of source code must retain", "redistributions in binary form must reproduce", "!neither the name", "!advertising materials"}},
	{"Apache-2.0", []string{"apache license version 2.0, january 2004"}},
	{"MPL-2.0", []string{"mozilla public license, version 2.0", "1.1. \"contributor\""}},
	{"OFL-1.1", []string{"sil open font license, version 1.1", "reserved font name"}},
	{"Zlib", []string{"altered source versions must be plainly marked", "this notice may not be removed or altered from any source distribution"}},
	{"Unlicense", []string{"this is free and unencumbered software released into the public domain"}},
	{"CC0-1.0", []string{"creative commons", "cc0 1.0 universal"}},
}

// granted are licences that one module alone may have, since it asks for no more than to be named,
// which the list does.
var granted = []struct {
	module, name string
	says         []string
}{
	{"github.com/ajstarks/svgo", "CC-BY-4.0", []string{"creative commons attribution 4.0 international"}},
	{"github.com/golang/freetype", "FTL", []string{"freetype license, which is similar to the original bsd license"}}, // of the two that it offers
	{"github.com/golang/freetype", "FTL", []string{"the freetype project license", "irrevocable right and license to use, execute, perform"}},
}

// licencesIn names the licences that a text of a module has; none: none that is known.
func licencesIn(module, text string) (names []string) {
	plain := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	for _, g := range granted {
		if g.module == module && says(plain, g.says) {
			return []string{g.name}
		}
	}
	for _, k := range known {
		if says(plain, k.says) && !slices.Contains(names, k.name) {
			names = append(names, k.name)
		}
	}
	return names
}

// says tells whether a text has all sentences, and none of those that begin with a mark.
func says(text string, sentences []string) bool {
	return !slices.ContainsFunc(sentences, func(s string) bool {
		not, forbidden := strings.CutPrefix(s, "!")
		return strings.Contains(text, not) == forbidden
	})
}
