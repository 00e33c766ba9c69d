package main

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"strings"

	"pappus/preview/decode"
	sound "pappus/preview/sweep"
	"pappus/render/page"
	"pappus/timing"
	"pappus/timing/sweep"
	"pappus/timing/verdict"
)

// measurePage holds recordings that came from the page against a plan: those of the
// sweep that the page hands out, named as they are for pappus measure. A single one
// whatever its name is of the whole array.
func measurePage(ctx context.Context, p *timing.Plan, r page.Recorded) (verdict.Found, error) {
	s, err := sound.New(p, sound.Options{})
	if err != nil {
		return verdict.Found{}, err
	}
	named := make(map[string][]byte, len(r.Files))
	for _, f := range r.Files {
		named[strings.ToLower(f.Name)] = f.Data
	}
	if len(r.Files) == 1 && !verdict.IsChannel(p, r.Files[0].Name) {
		named[sweep.RecordedName+".wav"] = r.Files[0].Data
	}
	read := func(name string) (int, [][]float64, error) {
		if err := ctx.Err(); err != nil {
			return 0, nil, err
		}
		data, ok := named[name]
		if !ok {
			return 0, nil, fmt.Errorf("%s: %w", name, fs.ErrNotExist)
		}
		rate, channels, err := decode.ReadChannels(bytes.NewReader(data))
		if err != nil {
			return 0, nil, fmt.Errorf("%s: %w", name, err)
		}
		return rate, channels, nil
	}
	return verdict.Takes{Sweep: s.Sweep, Read: read, Level: verdict.LevelSetting{Case: played(r.AsBuilt)}}.Judge(p)
}
