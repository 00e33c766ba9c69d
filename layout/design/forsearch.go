package design

import (
	"math"

	"github.com/pelletier/go-toml/v2"
)

// ReadForSearch reads a design file as Read does, and one with [driver] alone, or without
// some of the rest that a design needs: what is missing is the starter's, and a body that the
// driver fits on. It returns the text that such a design would have, too. Any error is an
// *Error.
func ReadForSearch(path string) (*Design, []byte, error) {
	data, err := ReadFile(path, maxSize)
	if err != nil {
		return nil, nil, err
	}
	return ParseForSearch(path, data)
}

// ParseForSearch is ReadForSearch for a text that has been read already.
func ParseForSearch(name string, data []byte) (*Design, []byte, error) {
	text, err := completed(data)
	if err != nil { // which Parse says better
		text = data
	}
	d, err := Parse(name, text)
	return d, text, err
}

// completed is a text with what a search needs no word about: a body with its places, the
// surface, the channels and the spot of the starter.
func completed(data []byte) ([]byte, error) {
	held, err := flat(data)
	if err != nil {
		return nil, err
	}
	text := data
	for _, s := range lacking(held) {
		if text, err = Set(text, s.Key, s.Value); err != nil {
			return nil, err
		}
	}
	return text, nil
}

// lacking lists what a text lacks, of which it is known what it holds.
func lacking(held map[string]string) []Setting {
	has := func(tables ...string) bool {
		for _, t := range tables {
			for _, path := range []string{t + ".", nth(t, 1) + "."} {
				if _, there := held[path]; there {
					return true
				}
			}
		}
		return false
	}
	starter := Default()
	var out []Setting
	take := func(keys ...string) {
		for _, k := range keys {
			out = append(out, Setting{k, starter.Get(k)})
		}
	}
	alone := !has("body") // else it is for the file to say how the body stands
	if alone {
		take("body.shape", "body.base", "body.subdivision")
		out = append(out, Setting{"body.radius_mm", bodyFor(held["driver.flange_mm"], held["driver.cutout_mm"], held["driver.diameter_mm"])})
		take("body.cut_height_mm", "body.stand_height_mm")
	}
	if alone && !has("surface", "room") {
		take("surface.absorption")
	}
	if alone && !has("wiring", "channel") {
		take("wiring.channels")
	}
	if !has("spot", "seat", "area") {
		take("spot.x_m", "spot.y_m", "spot.z_m")
	}
	return out
}

// A body of a driver alone has the starter's measure of it: 7.5 flanges across, but not
// beyond where people sit.
const flangesAcross, mostAlone = 7.5, 1000.0

// bodyFor is the radius in mm of a body for a driver, by the first of its widths that is
// there.
func bodyFor(widths ...string) float64 {
	for _, w := range widths {
		var in struct{ V float64 }
		if toml.Unmarshal([]byte("V = "+w), &in) == nil && in.V > 0 {
			return min(math.Round(flangesAcross*in.V/2), mostAlone)
		}
	}
	return Default().Number("body.radius_mm")
}
