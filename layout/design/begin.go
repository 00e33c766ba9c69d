package design

import (
	"bytes"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Begin returns the text that a search begins from, of the design file at a path or of the
// starter where that is empty, as Begun makes it, what the file is called in messages, and
// whether it is of a driver alone. Errors are those of Read for a file that cannot be read.
func Begin(path string) (name string, text []byte, alone bool, err error) {
	if path == "" {
		return "lantern.toml", DefaultTOML(), false, nil
	}
	own, err := ReadFile(path, MostBytes)
	if err != nil {
		return "", nil, false, err
	}
	text, err = Begun(own)
	return path, text, !bytes.Equal(own, text), err
}

// Begun returns the text of a design that a search may begin from. A text without a [body] is
// of a driver alone: it gets the starter's body, places, spot and wiring, and its surface where
// it has no room, but for keys that it has itself; not the place that the
// starter leaves empty, and a radius by the driver's width.
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
	if _, own := has["body.radius_mm"]; !own {
		return Set(text, "body.radius_mm", bodyFor(has["driver.flange_mm"], has["driver.cutout_mm"], has["driver.diameter_mm"]))
	}
	return text, nil
}

// A body for a driver alone has the starter's measure of it: 7.5 flanges across, but not beyond
// where people sit.
const flangesAcross, mostAlone = 7.5, 1000.0

// bodyFor is the radius in mm of a body for a driver, by the first of its widths in mm that the
// text has.
func bodyFor(widths ...string) float64 {
	for _, w := range widths {
		if n, err := strconv.ParseFloat(w, 64); err == nil && n > 0 {
			return min(math.Round(flangesAcross*n/2), mostAlone)
		}
	}
	return Default().Number("body.radius_mm")
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
