package folder

import (
	"context"
	"errors"
	"fmt"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/kit"
	"pappus/layout/shell"
	"pappus/testdata/planned"
)

// TestUnmade: what keeps a kit from being made is told with the file, the line, the key and what it
// must be, and can be told apart; a stop stays one.
func TestUnmade(t *testing.T) {
	a := &layout.Array{File: "d.toml", Lines: design.Lines{"print.bed_mm": 3, "driver": 5, "mounts.on": 7}}
	for _, c := range []struct {
		is   error
		want string
	}{
		{shell.ErrTooMany, "d.toml:3: print.bed_mm: it would take more than 144 segments: so; must be larger, or the body smaller"},
		{shell.ErrNoCleanCut, "d.toml:3: print.bed_mm: no seam keeps off the cut-outs: so; must be larger, or the body smaller"},
		{shell.ErrSegment, "d.toml:3: print.bed_mm: the shell cannot be parted round segment: so; must be larger, or the body smaller"},
		{shell.ErrCutout, "d.toml:5: driver.cutout_mm: the cut-out does not fit: so; must be smaller, or the body larger"},
		{fmt.Errorf("%w: %w", shell.ErrCutout, shell.ErrNoFlat), "d.toml:7: mounts.on: the cut-out does not fit: there is no flat to cut it into: so; must have each on a flat for printed parts, by \"faces\" or, on a ball, \"even\": `pappus sheets` has templates and tables to mark and drill this one by hand"},
		{fmt.Errorf("%w: %w", kit.ErrPart, kit.ErrOrder), "d.toml:3: print.bed_mm: a part of the kit cannot be made: no order puts the segments together: so; must be another, by a few centimetres larger or smaller on a side, so that the shell is cut elsewhere"},
		{kit.ErrPart, "d.toml: kit: a part of the kit cannot be made: so; must be of another body, wall or bed"},
		{context.Canceled, "context canceled: so"},
	} {
		if err := unmade(a, fmt.Errorf("%w: so", c.is)); !errors.Is(err, c.is) || err.Error() != c.want {
			t.Errorf("%v\nwant %s", err, c.want)
		}
	}
}

// TestThickWall: a wall that leaves no hollow is told at its key.
func TestThickWall(t *testing.T) {
	p := planned.Demo(t, nil)
	a := *p.Array
	p.Array, a.Wall = &a, 0.99*a.Body.Radius
	var e *design.Error
	if _, err := NewKit(t.Context(), p, nil); !errors.As(err, &e) || e.Key != "body.wall_mm" {
		t.Errorf("%v, want one of body.wall_mm", err)
	}
}
