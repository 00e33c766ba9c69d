package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"

	"pappus/preview"
	"pappus/preview/limit"
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

// hear makes what is heard at a place for the page.
func hear(options *page.Options) {
	for _, k := range programme.All {
		options.Programmes = append(options.Programmes, page.Named{Name: k.Name, Words: k.Words})
	}
	for _, c := range preview.Cases {
		options.Cases = append(options.Cases, page.Named{Name: c.Name, Words: cmp.Or(pageWords[c.Name], c.Words), Seats: c.Case == timing.MiddleSeat})
	}
	options.Pace, options.Stems, options.Programme = preview.Pace, stems, pageSound
	kept := preview.NewKept()
	options.Loudness = func(ctx context.Context, p *timing.Spot, at r3.Vec, h page.Hearing) (map[string]float64, error) {
		gains, err := kept.Gains(ctx, preview.Heard{Plan: p, Programme: h.Programme, At: at, TwoEars: h.TwoEars, Dry: h.Dry})
		if err != nil {
			return nil, ofWay(err)
		}
		out := map[string]float64{}
		for i, c := range preview.CasesOf(p) {
			out[c.Name] = gains[i]
		}
		return out, nil
	}
}

// ofWay tells the page which errors are of what was asked.
func ofWay(err error) error {
	if errors.Is(err, preview.ErrWay) {
		return fmt.Errorf("%w: %w", page.ErrAsked, err)
	}
	return err
}

// stems are what each channel gives at a place, for the page.
func stems(p *timing.Spot, at r3.Vec, names []string, h page.Hearing) (*page.Stems, error) {
	cases := make([]timing.Case, len(names))
	for i, name := range names {
		c, ok := preview.CaseNamed(preview.CasesOf(p), name)
		if !ok {
			return nil, fmt.Errorf("%w: %s takes a design with several seats", page.ErrAsked, name)
		}
		cases[i] = c.Case
	}
	s, err := preview.Listener{TwoEars: h.TwoEars, Dry: h.Dry, At: &at}.Stems(p, cases)
	if err != nil {
		return nil, ofWay(err)
	}
	out := &page.Stems{Filters: s.Filters, Cases: make([][]page.Fed, len(s.Cases))}
	for _, stem := range s.Stems {
		out.Stems = append(out.Stems, page.Stem(stem))
	}
	for i, feds := range s.Cases {
		for _, fed := range feds {
			out.Cases[i] = append(out.Cases[i], page.Fed(fed))
		}
	}
	return out, nil
}

// pageSound is a programme for the page.
func pageSound(name string) (page.Sound, error) {
	kind, ok := programme.Named(name)
	if !ok {
		return page.Sound{}, fmt.Errorf("no programme is called %s", name)
	}
	loop := kind.Make(preview.Rate)
	hz, energy := preview.Weighed(loop, preview.Rate)
	return page.Sound{Samples: loop, Frequency: hz, Energy: energy, Ceiling: preview.Ceiling, LookAhead: limit.LookAhead, Release: limit.Release}, nil
}
