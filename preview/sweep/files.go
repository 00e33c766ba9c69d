package sweep

import (
	"fmt"

	"pappus/layout/prose"
	"pappus/preview/wave"
	"pappus/timing"
)

// File is one file with the signal.
type File struct {
	Name   string // without its ending: sweep, sweep_channel_3
	Words  string // what to do with it
	Format wave.Format
}

// WholeName is the name of the file for the whole array.
const WholeName = "sweep"

// ChannelName returns the name of the file for a channel.
func ChannelName(id int) string { return fmt.Sprintf("sweep_channel_%d", id) }

// Files returns the file for the whole array, and one for each channel in turn. All hold the
// same signal, mono at 24 bit; the text in each says which channel is to play it.
func (s Signal) Files(p *timing.Plan) []File {
	out := []File{s.file(WholeName, "play it with all channels on")}
	for _, c := range p.Channels {
		out = append(out, s.file(ChannelName(c.ID), fmt.Sprintf("play it with channel %d on and all others muted", c.ID)))
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
