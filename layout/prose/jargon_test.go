package prose_test

import (
	"testing"

	"pappus/testdata/jargon"
)

// Each was on a screen once.
func TestJargonIsFound(t *testing.T) {
	for _, text := range []string{
		"pappus: sweep: impossible sweep: from 150 to 1e+09 Hz", "from 1e3 Hz on", "turned by NaN degrees",
		"writing a.wav: context canceled", "pappus: --file: stat nope.wav: no such file or directory",
		"pappus: outdir: mkdir bin: not a directory", "timing: no such design", "a.toml: cannot be read: is a directory",
		`invalid argument "x" for "--rounds" flag: strconv.ParseInt: parsing "x": invalid syntax`, "accepts at most 1 arg(s), received 2",
		"1 drivers on a body of 100 mm", "expected newline but got U+002C", `bare " in non-quoted-field`, "loads it with %!g(int=3) ohm", "as reckoned",
	} {
		if jargon.In(text) == "" {
			t.Errorf("not found: %s", text)
		}
	}
	for _, text := range []string{
		"a.toml:3: body.radius_mm = 1e12: must be from 20 to 5000", "11 drivers, 2.1 strings and 1 channel", "0.5 to 1000000 Hz", "channel[1].delay_us = 1e9: must be",
		"it is open: the folder", "the design's drivers", "",
	} {
		if found := jargon.In(text); found != "" {
			t.Errorf("%q holds %s", text, found)
		}
	}
}
