package verdict

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/sweep"
)

// singles are the recordings of single channels.
type singles struct {
	measured []*recording.Measured   // nil: nothing is heard, or missing
	repeats  [][]*recording.Measured // further recordings of each
	missing  []int                   // channels without a recording that can be used
	heard    int
	faults   []Fact // which those are, and why
	err      error  // the first reason
}

// silent names the channels whose recordings have nothing, beside others that were heard.
func (s singles) silent(p *timing.Plan) (out []Fact) {
	for i, m := range s.measured {
		if m == nil && !slices.Contains(s.missing, i) {
			out = append(out, Fact{Code: Silent, Channels: []int{p.Channels[i].ID}})
		}
	}
	return out
}

// besideSilent says with an error which channels are silent, if any are.
func (s singles) besideSilent(p *timing.Plan, err error) error {
	for _, f := range slices.Backward(s.silent(p)) {
		err = fmt.Errorf("channel %d is silent: %w", f.Channels[0], err)
	}
	return err
}

// each analyses the recordings of single channels. Where there is none at all nothing is
// missing: channels were not recorded one by one.
func (t Takes) each(p *timing.Plan) (singles, error) {
	out := singles{measured: make([]*recording.Measured, len(p.Channels)), repeats: make([][]*recording.Measured, len(p.Channels))}
	absent := 0
	for i, c := range p.Channels {
		name := sweep.RecordedChannelName(c.ID, 1)
		m, err := t.analyse(t.path(name), t.path(sweep.ChannelName(c.ID)))
		switch {
		case err == nil:
			out.measured[i] = m
			out.heard++
			if err := t.again(&out, i, c.ID); err != nil {
				return out, err
			}
			continue
		case isCut(err):
			return out, err
		case errors.Is(err, recording.ErrQuiet):
			continue
		case errors.Is(err, fs.ErrNotExist):
			absent++
			out.faults = append(out.faults, Fact{Code: NoRecording, Channels: []int{c.ID}, File: name + ".wav"})
		default:
			out.faults = append(out.faults, Fact{Code: Unusable, Channels: []int{c.ID}, Err: err})
			if out.err == nil {
				out.err = err
			}
		}
		out.missing = append(out.missing, i)
	}
	if absent == len(p.Channels) {
		out.missing, out.faults = nil, nil
	}
	return out, nil
}

// again analyses what else was recorded of a channel. A take that cannot be used is named,
// and the others are judged.
func (t Takes) again(out *singles, i, id int) error {
	for take := 2; ; take++ {
		m, err := t.analyse(t.path(sweep.RecordedChannelName(id, take)))
		switch {
		case err == nil:
			out.repeats[i] = append(out.repeats[i], m)
		case isCut(err):
			return err
		case errors.Is(err, fs.ErrNotExist):
			return nil
		default:
			out.faults = append(out.faults, Fact{Code: TakeUnusable, Channels: []int{id}, Take: take, Err: err})
		}
	}
}
