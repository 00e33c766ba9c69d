package verdict_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pappus/timing"
	"pappus/timing/rehearsal"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
)

// TestTwoChannels: of two channels, each the other's only sibling, the one with a string that
// does not play is named, and the delays are those planned.
func TestTwoChannels(t *testing.T) {
	text := strings.Replace(cubeText, `on = "faces"`, "count = 16", 1)
	text = strings.Replace(text, `shape = "cube"`, `shape = "ball"`, 1)
	p := planOf(t, fmt.Sprintf(text, "[wiring]\nchannels = 2\n"))
	for c, channel := range p.Banks {
		if len(channel.Strings) < 2 {
			t.Fatalf("channel %d has strings %v", c+1, channel.Strings)
		}
		for s := range channel.Strings {
			t.Run(fmt.Sprintf("string %d of channel %d", s+1, c+1), func(t *testing.T) {
				measured := record(t, p, rehearsal.Setting{Case: timing.Aligned, DeadStrings: [][2]int{{c, s}}}, nil)
				v, err := verdict.OfChannels(p, measured[:2], verdict.Setting{Case: timing.Aligned})
				if err != nil {
					t.Fatal(err)
				}
				if diff := cmp.Diff([]string{fmt.Sprintf("dead string [%d] %d of %d", c+1, s+1, len(channel.Strings))}, told(v.Faults)); diff != "" {
					t.Error(diff)
				}
				for i, got := range v.Channels {
					if off := math.Abs(got.Delay - p.Channels[i].Delay); !(off < 5e-6) {
						t.Errorf("channel %d: %.1f us off, give or take %.1f", got.ID, 1e6*off, 1e6*got.Error)
					}
				}
			})
		}
	}
}
