package main

import (
	"fmt"
	"path"
	"slices"

	sound "pappus/preview/sweep"
	"pappus/render/folder"
	"pappus/render/outdir"
	"pappus/render/page"
	"pappus/timing"
)

// downloads are what the page gives as files, by name, in the order in which they are
// offered.
var downloads = []struct {
	name, words string
	files       func(*timing.Plan) ([]outdir.File, error)
}{
	{"plan", "everything that pappus plan writes", filesOf(planned)},
	{"tables", "tables as CSV, and plan.json", filesOf(planned, ".csv", ".json")},
	{"pictures", "plots and coverage maps as PNG and SVG", filesOf(planned, ".png", ".svg")},
	{"sounds", "sounds as WAV", func(p *timing.Plan) ([]outdir.File, error) { return sounds(p), nil }},
	{"processor", "the processor's settings", func(p *timing.Plan) ([]outdir.File, error) {
		rows, err := timing.Processor(p, nil)
		return folder.Processor(p, rows), err
	}},
	{"level", "sections and filters that make the spot's level even", filesOf(levelled)},
	{"wiring", "the wiring book as PDF, and strings as CSV", func(p *timing.Plan) ([]outdir.File, error) { return folder.Wiring(p), nil }},
	{"sheets", "sheets, shell and parts for the workshop", filesOf(workshop)},
	{"sweep", "the sweeps to measure it with, once it is built", func(p *timing.Plan) ([]outdir.File, error) {
		s, err := sound.New(p, sound.Options{})
		if err != nil {
			return nil, err
		}
		return ofSounds(s.Files(p)), nil
	}},
}

// filesOf lists the files of what a command shows, those that have some endings; without
// any: all.
func filesOf(show func(*progress, *timing.Plan) (outcome, error), endings ...string) func(*timing.Plan) ([]outdir.File, error) {
	return func(p *timing.Plan) ([]outdir.File, error) {
		o, err := show(nil, p)
		return slices.DeleteFunc(o.files, func(f outdir.File) bool {
			return len(endings) > 0 && !slices.Contains(endings, path.Ext(f.Name))
		}), err
	}
}

// offered lists the downloads.
func offered() (out []page.Named) {
	for _, d := range downloads {
		out = append(out, page.Named{Name: d.name, Words: d.words})
	}
	return out
}

// download lists the files of one download.
func download(what string, p *timing.Plan) ([]outdir.File, error) {
	for _, d := range downloads {
		if d.name == what {
			return d.files(p)
		}
	}
	return nil, fmt.Errorf("no files are called %s", what)
}
