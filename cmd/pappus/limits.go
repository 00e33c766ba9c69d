package main

import (
	"errors"
	"fmt"
	"io"

	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/timing/limiter"

	"github.com/spf13/cobra"
)

// usualCrest is the crest factor in dB of most music (common practice).
const usualCrest = 14.0

// leastCrest and mostCrest bound what may be asked for: a square wave has 0 dB, and no music
// reaches 40.
const leastCrest, mostCrest = 0.0, 40.0

// errCrest is for a crest factor that no sound has.
var errCrest = errors.New("no such crest factor")

func newLimits(f *flags) *cobra.Command {
	c := &cobra.Command{Use: "limits [DESIGN.toml]", Short: "Show what limiters are set to, how loud music may be and how long, and which amplifier fits",
		Example: "  pappus limits\n  pappus limits lantern.toml --crest 10"}
	crest := c.Flags().Float64("crest", usualCrest, "crest factor of the music in dB: its peak over its RMS")
	return f.command(c, "", "folder to write it into, too", func(j *job) (outcome, error) {
		if *crest < leastCrest || *crest > mostCrest {
			return outcome{}, prose.Errorf("--crest: %w as %.6g dB: from %g to %g", errCrest, *crest, leastCrest, mostCrest)
		}
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		l, err := limiter.Of(p, *crest)
		return outcome{
			plan:   p,
			files:  folder.Limits(l),
			json:   func(document.Written) any { return document.OfLimits(p, l) },
			screen: func(w io.Writer, colour bool) error { return table.LimitScreen(w, p, l, colour) },
			last:   fmt.Sprintf("\nIt is in %s, too; begin with limits.csv.\n", j.folder),
		}, err
	})
}
