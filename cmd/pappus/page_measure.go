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
)

// measurePage holds recordings that came from the page against a plan: those of the
// sweep that the page hands out, named as they are for pappus measure. A single one
// whatever its name is of the whole array.
func measurePage(ctx context.Context, p *timing.Plan, r page.Recorded) (page.Verdict, error) {
	s, err := sound.New(p, sound.Options{})
	if err != nil {
		return page.Verdict{}, err
	}
	named := make(map[string][]byte, len(r.Files))
	for _, f := range r.Files {
		named[strings.ToLower(f.Name)] = f.Data
	}
	if len(r.Files) == 1 && !isChannel(p, r.Files[0].Name) {
		named[allName+".wav"] = r.Files[0].Data
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
	f, err := takes{measuring: measuring{reference: "right", built: r.AsBuilt}, signal: s, say: func(string) {}, read: read}.judge(p)
	if err != nil {
		return page.Verdict{}, err
	}
	return page.Verdict{Judged: f.Judged, Sentences: f.sentences()}, nil
}

// isChannel tells whether a file is named as the recording of one channel.
func isChannel(p *timing.Plan, name string) bool {
	for _, c := range p.Channels {
		if strings.EqualFold(name, channelName(c.ID)+".wav") || strings.EqualFold(name, sound.ChannelName(c.ID)+".wav") ||
			strings.HasPrefix(strings.ToLower(name), channelName(c.ID)+"_") {
			return true
		}
	}
	return false
}

// sweepDownload lists the sweeps to play and record.
func sweepDownload(p *timing.Plan) ([]file, error) {
	s, err := sound.New(p, sound.Options{})
	if err != nil {
		return nil, err
	}
	return sweepFiles(p, s), nil
}
