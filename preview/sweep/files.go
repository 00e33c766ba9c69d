package sweep

import (
	"fmt"

	"pappus/layout/prose"
	"pappus/preview/wave"
	"pappus/timing"
	"pappus/timing/sweep"
)

// File is one file with the signal.
type File struct {
	Name   string // without its ending: sweep, sweep_channel_3
	Words  string // what to do with it
	Format wave.Format
}

// Files returns the file for the whole array, and one for each channel in turn. All hold the
// same signal, mono at 24 bit; the text in each says which channel is to play it.
func (s Signal) Files(p *timing.Plan) []File {
	out := []File{s.file(sweep.WholeName, "play it with all channels on")}
	for _, c := range p.Channels {
		out = append(out, s.file(sweep.ChannelName(c.ID), fmt.Sprintf("play it with channel %d on and all others muted", c.ID)))
	}
	return out
}

// file returns a file with its text.
func (s Signal) file(name, words string) File {
	w := s.Sweep
	return File{name, words, wave.Format{
		Rate: s.Rate, Channels: 1, Depth: wave.PCM24, Title: name,
		Comment: prose.Sprintf("sine sweep from %g to %g Hz in %g s, peaks %g dB below full scale; %s", w.Start, w.Stop, w.Length, -s.Level, words),
	}}
}
