package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"

	"pappus/preview"
	"pappus/preview/programme"
	"pappus/render/figure"
	"pappus/render/folder"
	"pappus/render/outdir"
	"pappus/render/page"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// ofSounds lists sound files among others.
func ofSounds(files []preview.File) []outdir.File {
	out := make([]outdir.File, len(files))
	for i, f := range files {
		out[i] = outdir.File(f)
	}
	return out
}

// drawnSounds are sounds as they are drawn.
func drawnSounds(made func() ([]preview.Sound, error)) func() ([]figure.Sound, error) {
	return func() ([]figure.Sound, error) {
		sounds, err := made()
		var out []figure.Sound
		for _, s := range sounds {
			out = append(out, figure.Sound(s))
		}
		return out, err
	}
}

// sounds lists the sounds of a plan, every programme in every case, and pictures of them:
// the first programme's spectrogram and what is heard of a click.
func sounds(p *timing.Plan) []outdir.File {
	files, first, clicks := preview.SoundFiles(&p.Spot)
	kind, name := programme.Written[0], p.Array.Name
	out := append(ofSounds(files), folder.Spectrograms("spectrogram_"+kind.Name, name+": "+kind.Words, preview.Rate, drawnSounds(first))...)
	return append(out, folder.Impulses(name+": what is heard of a click", preview.Rate, drawnSounds(clicks))...)
}

// pageWords are the cases as the page speaks of them everywhere else.
var pageWords = map[string]string{"as_built": "without delays", "aligned": "with delays", "point": "from one ideal point"}

// hear makes what is heard at a place or on a walk for the page.
func hear(options *page.Options) {
	kept := preview.NewKept()
	write := func(ctx context.Context, w io.Writer, h preview.Heard, of page.Hearing) error {
		h.Programme, h.Listener = of.Programme, preview.Listener{TwoEars: of.TwoEars, Dry: of.Dry}
		err := kept.Write(ctx, w, h, of.Case)
		if errors.Is(err, preview.ErrWay) {
			err = fmt.Errorf("%w: %w", page.ErrAsked, err)
		}
		return err
	}
	for _, k := range programme.All {
		options.Programmes = append(options.Programmes, page.Named{Name: k.Name, Words: k.Words})
	}
	for _, c := range preview.Cases {
		options.Cases = append(options.Cases, page.Named{Name: c.Name, Words: cmp.Or(pageWords[c.Name], c.Words), Seats: c.Case == timing.MiddleSeat})
	}
	options.Sound = func(ctx context.Context, w io.Writer, p *timing.Spot, at r3.Vec, of page.Hearing) error {
		if at == p.Array.Spot {
			return write(ctx, w, preview.Heard{Plan: p}, of)
		}
		return write(ctx, w, preview.Heard{Plan: p, From: at, Away: true}, of)
	}
	options.Walk = func(ctx context.Context, w io.Writer, p *timing.Spot, from, to r3.Vec, of page.Hearing) error {
		return write(ctx, w, preview.Heard{Plan: p, Walk: true, From: from, To: to}, of)
	}
}
