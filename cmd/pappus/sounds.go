package main

import (
	"io"
	"sync"

	"pappus/preview"
	"pappus/preview/programme"
	"pappus/preview/wave"
	"pappus/timing"
)

// rate is that of the sounds, in samples a second.
const rate = 48000

// sounds lists the sounds of a plan: every programme in every case. They are
// made together, by whichever file is written first.
func sounds(p *timing.Plan) []file {
	made := sync.OnceValues(func() ([]preview.Sound, error) { return preview.Sounds(p, rate) })
	var out []file
	for i, name := range soundNames() {
		out = append(out, file{name + ".wav", func(w io.Writer) error {
			all, err := made()
			if err != nil {
				return err
			}
			return wave.Write(w, all[i].Streamer(), wave.Format{Rate: rate, Channels: 1, Depth: wave.PCM16, Title: all[i].Words})
		}})
	}
	return out
}

// soundNames lists the sounds in the order in which they are made.
func soundNames() []string {
	var names []string
	for _, k := range programme.All {
		for _, c := range preview.Cases {
			names = append(names, k.Name+"_"+c.Name)
		}
	}
	return names
}
