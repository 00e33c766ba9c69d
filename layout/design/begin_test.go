package design_test

import (
	"strings"
	"testing"

	"pappus/layout/design"
)

// TestBegun: a driver alone becomes a whole design; what a text has itself stays, and one that
// is whole stays as it is.
func TestBegun(t *testing.T) {
	const driver = "[driver]\ndiameter_mm = 32 # as sold\nflange_mm = 40\n"
	cases := []struct{ name, text, has, lacks string }{
		{"a driver alone", driver, "# as sold|[body]|[mounts]|[spot]|[surface]|channels = 8", "skip|corner_hz"},
		{"a large driver", "[driver]\ndiameter_mm = 50\ncutout_mm = 55\nflange_mm = 60\n", "radius_mm = 225", "radius_mm = 150"},
		{"a huge driver", "[driver]\ndiameter_mm = 400\n", "radius_mm = 1000", "radius_mm = 150"},
		{"with channels", driver + "[wiring]\nchannels = 6\n", "channels = 6|[body]", "channels = 8"},
		{"with a seat", driver + "[[seat]]\nx_m = 2\ny_m = 0\nz_m = 0.5\n", "[body]", "[spot]"},
		{"with a room", driver + "[room]\nsize_m = [5, 4, 2.7]\nbody_at_m = [2, 2, 1]\nabsorption = 0.2\n", "[body]|[spot]", "[surface]"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			text, err := design.Begun([]byte(c.text))
			if err != nil {
				t.Fatal(err)
			}
			if _, err := design.Parse("driver.toml", text); err != nil {
				t.Errorf("%v in\n%s", err, text)
			}
			for word := range strings.SplitSeq(c.has, "|") {
				if !strings.Contains(string(text), word) {
					t.Errorf("no %s in\n%s", word, text)
				}
			}
			for word := range strings.SplitSeq(c.lacks, "|") {
				if strings.Contains(string(text), word) {
					t.Errorf("%s in\n%s", word, text)
				}
			}
		})
	}
	for _, text := range []string{string(design.DefaultTOML()), "[body]\nshape = 3\n", "no [ toml"} {
		if got, err := design.Begun([]byte(text)); err != nil || string(got) != text {
			t.Errorf("%v: changed to\n%s", err, got)
		}
	}
}

// TestMoved: what a design names is found from elsewhere, and nothing else changes.
func TestMoved(t *testing.T) {
	const text = "[driver]\ndiameter_mm = 32\nimpedance = \"ohm.csv\" # as measured\n[body]\nshape = \"cube\"\nradius_mm = 90\n[spot]\nx_m = 2\ny_m = 0\nz_m = 0\n"
	got, err := design.Moved([]byte(text), func(path string) string { return "../" + path })
	if want := strings.Replace(text, "ohm.csv", "../ohm.csv", 1); err != nil || string(got) != want {
		t.Errorf("%v\n%s", err, got)
	}
}
