package main

import (
	"io"
	"sync"

	"pappus/preview"
	"pappus/preview/programme"
	"pappus/preview/wave"
	"pappus/render/figure"
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
			return wave.Write(w, all[i].Streamer(), soundFormat(p, all[i]))
		}})
	}
	return append(out, soundsShown(p, made)...)
}

// soundsShown lists the pictures beside the sounds: the first programme's
// spectrogram and what is heard of a click.
func soundsShown(p *timing.Plan, made func() ([]preview.Sound, error)) []file {
	kind := programme.Written[0]
	spectrogram := soundPictures("spectrogram_"+kind.Name, func(w io.Writer, f figure.Format, sounds []figure.Sound) error {
		return figure.Spectrograms(w, f, p.Array.Name+": "+kind.Words, sounds, rate)
	}, func() ([]figure.Sound, error) {
		all, err := made()
		if err != nil {
			return nil, err
		}
		var shown []figure.Sound
		for i, c := range preview.Written {
			shown = append(shown, figure.Sound{Words: c.Words, Samples: all[i].Samples})
		}
		return shown, nil
	})
	return append(spectrogram, soundPictures("impulse", func(w io.Writer, f figure.Format, sounds []figure.Sound) error {
		return figure.Energy(w, f, p.Array.Name+": what is heard of a click", sounds, rate)
	}, func() ([]figure.Sound, error) { return hearing{}.impulses(p, preview.Written) })...)
}

// soundFormat is how a sound is written, with the words that go into its file.
func soundFormat(p *timing.Plan, s preview.Sound) wave.Format {
	return wave.Format{
		Rate:     rate,
		Channels: 1,
		Depth:    wave.PCM16,
		Title:    p.Array.Name + ", " + s.Words,
		Comment:  whatIsHeard(p, s.Words, "ITU-R BS.1770-5"),
	}
}

// whatIsHeard says in a sound file what it holds, and by which rule cases are as loud.
func whatIsHeard(p *timing.Plan, words, rule string) string {
	return "What the listening spot hears of the design \"" + p.Array.Name + "\": " + words +
		". All cases of one programme are equally loud (" + rule + ")."
}

// soundNames lists the sounds in the order in which they are made.
func soundNames() []string {
	var names []string
	for _, k := range programme.Written {
		for _, c := range preview.Written {
			names = append(names, k.Name+"_"+c.Name)
		}
	}
	return names
}
