package space_test

import (
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/space"
)

// TestChannelsAreUsed: a body of few drivers has as many channels as they fill at the load that
// the amplifier bears, not as many as there are; none leaves one unused.
func TestChannelsAreUsed(t *testing.T) {
	cases := []struct {
		name                  string
		channels              int
		dcOhm                 float64
		fewest, most, drivers int // channels that candidates have, and drivers in stock
	}{
		{"more channels than drivers", 40, 7, 12, 16, 16},
		{"two in series", 8, 3, 6, 8, 16},
		{"enough", 6, 7, 6, 6, 16},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			text := prose.Sprintf("[driver]\ndiameter_mm = 32\nflange_mm = 40\nnominal_ohm = 8\ndc_ohm = %g\n[search]\ndrivers = %d\nchannels = %d\n", c.dcOhm, c.drivers, c.channels)
			begun, err := design.Begun([]byte(text))
			if err != nil {
				t.Fatal(err)
			}
			d, err := design.Parse("driver.toml", begun)
			if err != nil {
				t.Fatal(err)
			}
			s, err := space.Of(d)
			if err != nil {
				t.Fatal(err)
			}
			few, many := c.channels, 0
			for i := 0; i < s.Len(); i += 7 {
				e, err := d.With(s.Variant(i).Settings...)
				if err != nil {
					t.Fatal(err)
				}
				a, err := layout.Build(e)
				if err != nil {
					continue
				}
				few, many = min(few, a.Wiring.Channels), max(many, a.Wiring.Channels)
				for _, f := range a.Warnings {
					if f.Code == "channels_unused" || f.Code == "channels_fewer" {
						t.Fatalf("%d drivers on %d channels: %s", len(a.Mounts), a.Wiring.Channels, f.What)
					}
				}
			}
			if few != c.fewest || many != c.most {
				t.Errorf("%d to %d channels, want %d to %d", few, many, c.fewest, c.most)
			}
		})
	}
}
