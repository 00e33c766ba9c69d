package main

import (
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
	named := make(map[string]page.Recording, len(r.Files))
	for _, f := range r.Files {
		named[strings.ToLower(f.Name)] = f
	}
	if len(r.Files) == 1 && !verdict.IsChannel(p, r.Files[0].Name) {
		named[sweep.RecordedName+".wav"] = r.Files[0]
	}
	read := func(name string) (int, [][]float64, error) {
		if err := ctx.Err(); err != nil {
			return 0, nil, err
		}
		recording, ok := named[name]
		if !ok {
			return 0, nil, fmt.Errorf("%s: %w", name, fs.ErrNotExist)
		}
		file, err := recording.Open()
		if err != nil {
			return 0, nil, fmt.Errorf("%s: %w", name, err)
		}
		defer file.Close()
		rate, channels, err := decode.ReadChannels(file)
		if err != nil {
			return 0, nil, fmt.Errorf("%s: %w", name, err)
		}
		return rate, channels, nil
	}
	return verdict.Takes{Sweep: s.Sweep, Read: read, Level: verdict.LevelSetting{Case: played(r.AsBuilt)}}.Judge(p)
}
