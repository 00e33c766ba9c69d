package sheets_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/render/sheets"
	"pappus/testdata/planned"
	"pappus/timing"
	"pappus/timing/loom"
)

func wired(t *testing.T, change func(*design.Design)) (*timing.Plan, string, []*sheets.Sheet) {
	t.Helper()
	p := planned.Demo(t, change)
	book := sheets.WiringBook(p)
	var all bytes.Buffer
	for _, s := range book {
		if err := s.WriteSVG(&all); err != nil {
			t.Fatal(err)
		}
	}
	return p, all.String(), book
}

// TestWiringBook: a drawing for each channel, every piece with its two ends and its length, every
// reading, every label; at odd sizes, too.
func TestWiringBook(t *testing.T) {
	for _, c := range []struct {
		name     string
		change   func(*design.Design)
		drawings int
		says     []string
	}{
		{"the demo", nil, 8, []string{"Channel 1: 3 strings of 2 drivers", "Channel 3: 1 string of 1 driver"}},
		{"one driver each", func(d *design.Design) { d.Wiring.Channels = 0 }, 1, []string{"39 channels of one driver each"}},
		{"one driver each on two bodies", func(d *design.Design) {
			d.Wiring.Channels = 0
			d.Copies = []design.Copy{{Channels: design.OwnChannels}}
			d.Copies[0].At.Y = -1.5
		}, 2, []string{"39 channels of one driver each, body 1", "39 channels of one driver each, body 2"}},
		{"one channel", func(d *design.Design) { d.Wiring.Channels = 1 }, 1, []string{"Channel 1: 3 strings of 13 drivers", "read each alone"}},
		{"deep drivers", func(d *design.Design) { d.Driver.Depth = 0.05 }, 8, []string{"slack_mm = 80"}},
		{"two bodies", func(d *design.Design) {
			d.Copies = []design.Copy{{Channels: design.OwnChannels}}
			d.Copies[0].At.Y = -1.5
		}, 16, []string{"Channel 9, body 2"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, text, book := wired(t, c.change)
			drawings := 0
			for _, s := range book {
				if strings.HasPrefix(s.Name, "wiring-channel") || strings.HasPrefix(s.Name, "wiring-alone") {
					drawings++
				}
			}
			if drawings != c.drawings {
				t.Errorf("%d drawings, want %d", drawings, c.drawings)
			}
			for _, s := range loom.Strings(p) {
				ch := p.Channels[s.Channel].ID
				for i, m := range s.Order {
					id := p.Array.Mounts[m].ID
					for _, want := range []string{fmt.Sprintf(">%d +<", id), fmt.Sprintf(">%d −<", id), fmt.Sprintf(">driver %d: %d.%d, %d of %d<", id, ch, s.Number+1, i+1, len(s.Order))} {
						if strings.Count(text, want) != 1 {
							t.Errorf("%q stands %d times", want, strings.Count(text, want))
						}
					}
				}
				for _, want := range []string{fmt.Sprintf(">%d.%d + red<", ch, s.Number+1), fmt.Sprintf(">string %d.%d<", ch, s.Number+1)} {
					if !strings.Contains(text, want) {
						t.Errorf("%q is not there", want)
					}
				}
			}
			for _, say := range c.says {
				if !strings.Contains(text, say) {
					t.Errorf("%q is not said", say)
				}
			}
		})
	}
}
