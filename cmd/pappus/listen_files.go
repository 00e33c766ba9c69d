package main

import (
	"context"
	"fmt"
	"io"
	"sync"

	"pappus/layout/prose"
	"pappus/preview"
	"pappus/preview/wave"
	"pappus/render/document"
	"pappus/render/figure"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
)

// pictured is how much of a sound its spectrogram shows, in samples: 8 s.
const pictured = 8 * rate

// depth returns how samples are written.
func (h hearing) depth() (wave.Depth, error) {
	switch h.bits {
	case 16:
		return wave.PCM16, nil
	case 24:
		return wave.PCM24, nil
	case 32:
		return wave.Float32, nil
	}
	return 0, fmt.Errorf("--bits %d: must be 16, 24 or 32", h.bits)
}

// write writes each case as a WAV file, with pictures of the sounds, and says so.
func (h hearing) write(ctx context.Context, out io.Writer, f *flags, p *timing.Plan, set *preview.Set, cases []preview.Case, s source, said *progress) error {
	files, err := h.files(ctx, p, set, cases, s)
	if err != nil {
		return err
	}
	for i, one := range files {
		files[i].write = func(w io.Writer) error {
			if ctx.Err() != nil {
				return ctx.Err()
			}
			said.say("writing " + one.name)
			return one.write(w)
		}
	}
	err = addAll(h.folder, files)
	said.stop()
	if err != nil {
		return err
	}
	switch {
	case f.json:
		var named []document.Case
		for _, c := range cases {
			named = append(named, document.Case{Name: c.Name, Words: c.Words})
		}
		return document.Write(out, document.Sounds{Written: written(h.folder, files, p), Programme: s.name, Cases: named})
	case f.quiet:
		return nil
	}
	_, err = fmt.Fprintf(out, "%s%s, all as loud (%s), %s in %s, with pictures of the sound.\n%s",
		prose.Count(len(cases), "case", "cases"), h.left(p), matchedBy(set), prose.Noun(len(cases), "is", "are"), h.folder, caution)
	return err
}

// files lists each case as a WAV file, and pictures of the sounds.
func (h hearing) files(ctx context.Context, p *timing.Plan, set *preview.Set, cases []preview.Case, s source) ([]file, error) {
	depth, err := h.depth()
	if err != nil {
		return nil, err
	}
	format := wave.Format{Rate: rate, Channels: 1, Depth: depth}
	if h.twoEars {
		format.Channels = 2
	}
	var files []file
	for i, c := range cases {
		name := s.name + "_" + c.Name
		as := format
		as.Title, as.Comment = p.Array.Name+", "+s.words+", "+c.Words, h.comment(p, set, c)
		files = append(files, file{name + ".wav", func(w io.Writer) error { return wave.Write(w, preview.Until(ctx, set.Streamer(i)), as) }})
	}
	files = append(files, soundPictures("spectrogram", func(w io.Writer, f figure.Format, sounds []figure.Sound) error {
		return figure.Spectrograms(w, f, p.Array.Name+": "+s.words+h.walking()+h.side(), sounds, rate)
	}, func() ([]figure.Sound, error) { return excerpts(set, cases) })...)
	if len(h.walk) == 0 {
		files = append(files, soundPictures("impulse", func(w io.Writer, f figure.Format, sounds []figure.Sound) error {
			return figure.Energy(w, f, p.Array.Name+": what is heard of a click"+h.side(), sounds, rate)
		}, func() ([]figure.Sound, error) { return h.impulses(p, cases) })...)
	}
	return files, nil
}

// comment says in the file what it holds.
func (h hearing) comment(p *timing.Plan, set *preview.Set, c preview.Case) string {
	text := c.Words
	if h.twoEars {
		text += ", with two ears"
	}
	if h.dry {
		text += ", without surface or room"
	}
	return whatIsHeard(p, text+h.walking()+h.left(p), matchedBy(set))
}

// left says what of a room is not heard on a walk.
func (h hearing) left(p *timing.Plan) string {
	if len(h.walk) == 0 || h.dry || !p.Array.Room.Present {
		return ""
	}
	return ", with the floor's echo but not the room's other ones"
}

// matchedBy says by what the cases are equally loud.
func matchedBy(set *preview.Set) string {
	return [...]string{
		preview.ByLoudness: "ITU-R BS.1770-5",
		preview.ByUngated:  "weighted as in ITU-R BS.1770-5; too short or too soft for its gates",
		preview.ByRMS:      "by their RMS; too short to be weighted",
	}[set.Measure()]
}

// soundPictures lists a picture as PNG and SVG; the sounds are made once.
func soundPictures(name string, draw func(io.Writer, figure.Format, []figure.Sound) error, make func() ([]figure.Sound, error)) []file {
	made := sync.OnceValues(make)
	var out []file
	for _, f := range []figure.Format{figure.PNG, figure.SVG} {
		out = append(out, file{name + "." + string(f), func(w io.Writer) error {
			sounds, err := made()
			if err != nil {
				return err
			}
			return draw(w, f, sounds)
		}})
	}
	return out
}

// side says in a picture whose sound it shows.
func (h hearing) side() string {
	if h.twoEars {
		return ", left ear"
	}
	return ""
}

// excerpts returns the beginning of each case, as the left ear hears it.
func excerpts(set *preview.Set, cases []preview.Case) ([]figure.Sound, error) {
	var out []figure.Sound
	for i, c := range cases {
		heard := beep.Take(pictured, set.Streamer(i))
		sound := figure.Sound{Words: c.Words}
		buffer := make([][2]float64, 4096)
		for {
			n, ok := heard.Stream(buffer)
			for _, v := range buffer[:n] {
				sound.Samples = append(sound.Samples, v[0])
			}
			if !ok {
				break
			}
		}
		if err := heard.Err(); err != nil {
			return nil, err
		}
		out = append(out, sound)
	}
	return out, nil
}

// impulses returns what the left ear hears of a click in each case.
func (h hearing) impulses(p *timing.Plan, cases []preview.Case) ([]figure.Sound, error) {
	plain := make([]timing.Case, len(cases))
	for i, c := range cases {
		plain[i] = c.Case
	}
	responses, err := h.listener().Responses(p, plain, rate)
	if err != nil {
		return nil, err
	}
	out := make([]figure.Sound, len(cases))
	for i, r := range responses {
		out[i] = figure.Sound{Words: cases[i].Words, Samples: r.Left}
	}
	return out, nil
}
