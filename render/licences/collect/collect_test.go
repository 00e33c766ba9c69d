package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"pappus/render/licences"

	"github.com/google/go-cmp/cmp"
)

// TestNothingIsStale: what is kept is what is carried now; and no module is there without a text.
func TestNothingIsStale(t *testing.T) {
	const root = "../../.."
	want, err := collect(root)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string][]byte{}
	folder := filepath.Join(root, "render", "licences", "carried")
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if got[e.Name()], err = os.ReadFile(filepath.Join(folder, e.Name())); err != nil {
			t.Fatal(err)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("run go generate ./render/licences: (-) is carried, (+) is kept\n%s", diff)
	}
	parts, texts, err := licences.Carried()
	if err != nil || len(parts) < 30 || len(texts) < 20 {
		t.Errorf("%d parts, %d texts, %v", len(parts), len(texts), err)
	}
}

// TestRefuses: a text that is not known, a licence that asks for more, one that was granted to
// another module, and none at all.
func TestRefuses(t *testing.T) {
	mit := "Permission is hereby granted, free of charge, to any person\nobtaining a copy ... The above copyright notice and this permission notice shall be included in"
	ccby := "Creative Commons Attribution 4.0 International Public License"
	for _, c := range []struct {
		name string
		part part
		want string // the licence; empty: it is refused
	}{
		{"MIT", part{"a", "v1", "library", []string{mit}}, "MIT"},
		{"two", part{"a", "v1", "library", []string{mit, "SIL OPEN FONT LICENSE Version 1.1: this license is SIL Open Font License, Version 1.1 ... Reserved Font Name"}}, "MIT AND OFL-1.1"},
		{"granted", part{"github.com/ajstarks/svgo", "v1", "library", []string{ccby}}, "CC-BY-4.0"},
		{"granted to another", part{"a", "v1", "library", []string{ccby}}, ""},
		{"GPL", part{"a", "v1", "library", []string{"GNU GENERAL PUBLIC LICENSE Version 3, 29 June 2007"}}, ""},
		{"MIT and one unknown", part{"a", "v1", "library", []string{mit, "All rights reserved."}}, ""},
		{"BSD with advertising", part{"a", "v1", "library", []string{"Redistributions of source code must retain. Redistributions in binary form must reproduce. All advertising materials mentioning"}}, ""},
		{"none", part{"a", "v1", "library", nil}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			row, err := c.part.row(map[string][]byte{})
			if (err != nil) != (c.want == "") || err == nil && row.Licence != c.want {
				t.Errorf("%+v, %v", row, err)
			}
		})
	}
}

// TestTextsAreKeptOnce: two parts of one text share it, and another has its own.
func TestTextsAreKeptOnce(t *testing.T) {
	files := map[string][]byte{}
	one, again, other := keep(files, "MIT", "a\n"), keep(files, "MIT", "a\n"), keep(files, "MIT", "b\n")
	if one != "MIT-01" || again != one || other != "MIT-02" || len(files) != 2 {
		t.Errorf("%s, %s, %s, %v", one, again, other, files)
	}
	if got := trimmed("\n\xa9 a \r\nb\n\n"); got != "© a\nb\n" {
		t.Errorf("%q", got)
	}
}

// TestRead: a list whose text is not there is an error.
func TestRead(t *testing.T) {
	list := "name,version,kind,licence,texts\na,v1,library,MIT,MIT-01\n"
	whole := fstest.MapFS{"carried/list.csv": {Data: []byte(list)}, "carried/MIT-01.txt": {Data: []byte("text\n")}}
	parts, texts, err := licences.Read(whole)
	if diff := cmp.Diff([]licences.Part{{Name: "a", Version: "v1", Kind: "library", Licence: "MIT", Texts: []string{"MIT-01"}}}, parts); diff != "" || err != nil || len(texts) != 1 {
		t.Errorf("%v, %v, %s", texts, err, diff)
	}
	delete(whole, "carried/MIT-01.txt")
	if _, _, err := licences.Read(whole); err == nil || !strings.Contains(err.Error(), "MIT-01") {
		t.Errorf("%v", err)
	}
	if _, _, err := licences.Read(fstest.MapFS{}); !os.IsNotExist(err) {
		t.Errorf("%v", err)
	}
}
