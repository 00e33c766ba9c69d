package design

import (
	"bytes"
	"slices"
	"strings"
)

// Begin returns the text that a search begins from, of the design file at a path or of the
// starter where that is empty, as Begun makes it, what the file is called in messages, and
// whether it is of a driver alone. Errors are those of Read for a file that cannot be read.
func Begin(path string) (name string, text []byte, alone bool, err error) {
	if path == "" {
		return "lantern.toml", DefaultTOML(), false, nil
	}
	own, err := ReadFile(path, maxSize)
	if err != nil {
		return "", nil, false, err
	}
	text, err = Begun(own)
	return path, text, !bytes.Equal(own, text), err
}

// Begun returns the text of a design that a search may begin from. A text without a [body] is
// of a driver alone: it gets the starter's body, places, spot and wiring, and its surface where
// it has no room, but for keys that it has itself; not the place that the starter leaves empty.
// A text that is no TOML stays as it is. Errors are those of Set.
func Begun(text []byte) ([]byte, error) {
	has, err := flat(text)
	if err != nil || inTables(has, "body") {
		return text, nil
	}
	starter := Default().Values()
	tables := []string{"body", "mounts", "wiring"}
	if !inTables(has, "spot", "seat", "area") {
		tables = append(tables, "spot")
	}
	if !inTables(has, "surface", "room") {
		tables = append(tables, "surface")
	}
	for _, key := range Given(DefaultTOML()) {
		table, _, _ := cutLast(key)
		if _, own := has[key]; own || key == "mounts.skip" || !slices.Contains(tables, table) {
			continue
		}
		if text, err = Set(text, key, starter[key]); err != nil {
			return nil, err
		}
	}
	return text, nil
}

// inTables tells whether a text that holds so much has any of some tables.
func inTables(has map[string]string, names ...string) bool {
	for path := range has {
		for _, name := range names {
			if strings.HasPrefix(path, name+".") || strings.HasPrefix(path, name+"[") {
				return true
			}
		}
	}
	return false
}

// fileKeys are the keys that name files beside a design.
var fileKeys = []string{"body.file", "mounts.list", "driver.response", "driver.impedance"}

// Moved returns the text of a design that is to lie elsewhere: the paths of files that it names
// are what moved makes of them. The text must be a good design.
func Moved(text []byte, moved func(path string) string) ([]byte, error) {
	d, err := Parse("design", text)
	if err != nil {
		return nil, err
	}
	values := d.Values()
	for _, key := range Given(text) {
		path, isText := values[key].(string)
		if !slices.Contains(fileKeys, key) || !isText {
			continue
		}
		if text, err = Set(text, key, moved(path)); err != nil {
			return nil, err
		}
	}
	return text, nil
}
