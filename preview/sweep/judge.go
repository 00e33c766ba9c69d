package sweep

import (
	"context"
	"fmt"
	"io/fs"
	"strings"

	"pappus/preview/decode"
	"pappus/timing"
	"pappus/timing/sweep"
	"pappus/timing/verdict"
)

// Judge holds recordings of the usual signal against a plan, named as package timing/sweep
// has it. A single one, whatever its name is, is of the whole array. played is what the
// array did meanwhile.
func Judge(ctx context.Context, p *timing.Plan, recordings []verdict.Recording, played timing.Case) (verdict.Found, error) {
	s, err := New(p, Options{})
	if err != nil {
		return verdict.Found{}, err
	}
	named := make(map[string]verdict.Recording, len(recordings))
	for _, f := range recordings {
		named[strings.ToLower(f.Name)] = f
	}
	if len(recordings) == 1 && !verdict.IsPart(p, recordings[0].Name) {
		named[sweep.RecordedName+".wav"] = recordings[0]
	}
	read := func(name string) (int, [][]float64, error) {
		if err := ctx.Err(); err != nil {
			return 0, nil, err
		}
		recording, ok := named[name]
		if !ok {
			return 0, nil, fmt.Errorf("%s: %w", name, fs.ErrNotExist)
		}
		rate, channels, err := readRecording(recording)
		if err != nil {
			err = fmt.Errorf("%s: %w", name, err)
		}
		return rate, channels, err
	}
	return verdict.Takes{Sweep: s.Sweep, Read: read, Level: verdict.LevelSetting{Case: played}}.Judge(p)
}

func readRecording(r verdict.Recording) (rate int, channels [][]float64, err error) {
	file, err := r.Open()
	if err != nil {
		return 0, nil, err
	}
	defer file.Close()
	return decode.ReadChannels(file)
}
