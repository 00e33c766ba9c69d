package sweep

import (
	"fmt"
	"io"
	"math"
	"sync"

	"pappus/layout/prose"
	"pappus/preview"
	"pappus/preview/wave"
	"pappus/timing"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"
)

// Files returns the file for the whole array, and one for each channel in turn. All hold the
// same signal, mono at 24 bit; the text in each says which channel is to play it.
func (s Signal) Files(p *timing.Plan) []preview.File {
	signal := sync.OnceValue(func() preview.Sound { return preview.Sound{Samples: s.Samples()} })
	w := s.Sweep
	file := func(name, words string) preview.File {
		format := wave.Format{Rate: s.Rate, Channels: 1, Depth: wave.PCM24, Title: name,
			Comment: prose.Sprintf("sine sweep from %g to %g Hz in %g s, peaks %g dB below full scale; %s", w.Start, w.Stop, w.Length, -s.Level, words)}
		return preview.File{Name: name + ".wav", Write: func(w io.Writer) error { return wave.Write(w, signal().Streamer(), format) }}
	}
	out := []preview.File{file(sweep.WholeName, "play it with all channels on")}
	for _, c := range p.Channels {
		out = append(out, file(sweep.ChannelName(c.ID), fmt.Sprintf("play it with channel %d on and all others muted", c.ID)))
	}
	return out
}

// Rehearsed returns what would be recorded of the signal in a session, of the whole array and of each
// channel, and at each of several seats of the whole array: the microphone left, a wire right.
func (s Signal) Rehearsed(p *timing.Plan, spot *rehearsal.Session) []preview.File {
	var out []preview.File
	record := func(name string, channel int, session func() (*rehearsal.Session, error)) {
		out = append(out, preview.File{Name: name + ".wav", Write: func(w io.Writer) error {
			g, err := session()
			if err != nil {
				return err
			}
			take, err := g.Record(s.Sweep, channel)
			if err != nil {
				return err
			}
			return wave.Write(w, preview.Stereo(take.Samples, take.Reference), wave.Format{Rate: int(math.Round(take.Rate)), Channels: 2, Depth: wave.PCM24, Title: name,
				Comment: "made up: what a microphone (left) and a wire (right) would give of a sweep"})
		}})
	}
	here := func() (*rehearsal.Session, error) { return spot, nil }
	record(sweep.RecordedName, rehearsal.All, here)
	for i, c := range p.Channels {
		record(sweep.RecordedChannelName(c.ID, 1), i, here)
	}
	if p.Seating != nil {
		for i, seat := range p.Array.Seats {
			record(sweep.RecordedSeatName(i+1), rehearsal.All, func() (*rehearsal.Session, error) { return spot.At(seat.At, i) })
		}
	}
	return out
}
