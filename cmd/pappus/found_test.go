package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"testing"

	"pappus/layout/design"
)

// printed runs a command that prints JSON, with numbers as they are written.
func printed(t *testing.T, into any, args ...string) {
	t.Helper()
	var out bytes.Buffer
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(&out)
	root.SetErr(io.Discard)
	root.SetIn(new(bytes.Buffer))
	if err := root.ExecuteContext(t.Context()); err != nil {
		t.Fatalf("%q: %v", args, err)
	}
	in := json.NewDecoder(&out)
	in.UseNumber()
	if err := in.Decode(into); err != nil {
		t.Fatalf("%q: %v", args, err)
	}
}

// fewSolids is a search that takes a second: solids for the demo's driver.
const fewSolids = `
[search]
least_drivers = 6
channels = 4

[search.body]
shape = ["dodecahedron", "truncated icosahedron"]
radius_mm = [90, 120]

[search.wiring]
channels = [2, 4]
`

// Each design that a search offers passes plan --strict and sheets --strict, and its figures
// are those of plan to the last digit.
func TestOfferedArePlannedAndPrinted(t *testing.T) {
	t.Chdir(t.TempDir())
	text := design.DefaultTOML()
	for _, edit := range [][2]string{{"\nskip = [33]", "\n"}, {"\nsubdivision = 2", "\n"}, {"\nbase = \"icosahedron\"", "\n"}, {"\nshape = \"geodesic\"", "\nshape = \"dodecahedron\""}} {
		if !bytes.Contains(text, []byte(edit[0])) {
			t.Fatalf("the starter has no %q", edit[0])
		}
		text = bytes.Replace(text, []byte(edit[0]), []byte(edit[1]), 1)
	}
	if err := os.WriteFile("begin.toml", append(text, fewSolids...), 0o600); err != nil {
		t.Fatal(err)
	}
	var told struct {
		Found []struct {
			File    string      `json:"file"`
			Drivers json.Number `json:"drivers"`
			Loss    json.Number `json:"lost_db"`
			Level   json.Number `json:"loudest_db"`
		} `json:"found"`
	}
	printed(t, &told, "search", "begin.toml", "--json", "-o", "found")
	if len(told.Found) < 3 {
		t.Fatalf("%d found", len(told.Found))
	}
	for _, f := range told.Found {
		var plan any
		file := filepath.Join("found", f.File)
		printed(t, &plan, "plan", file, "--strict", "--json", "-o", filepath.Join(t.TempDir(), "plan"))
		for _, c := range []struct {
			told json.Number
			path []string
		}{
			{f.Loss, []string{"measures", "aligned", "loss_db"}},
			{f.Level, []string{"protection", "loudest_db"}},
		} {
			if got := under(plan, c.path...); got != c.told {
				t.Errorf("%s: %v is told as %v, and planned as %v", f.File, c.path, c.told, got)
			}
		}
		printed(t, new(any), "sheets", file, "--strict", "--json", "-o", "sheets")
	}
}

// under returns what stands under keys of a JSON object, nil for nothing.
func under(in any, keys ...string) any {
	for _, k := range keys {
		object, _ := in.(map[string]any)
		in = object[k]
	}
	return in
}
