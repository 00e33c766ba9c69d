package main

import (
	"context"
	"fmt"
	"path"
	"slices"

	"pappus/render/page"
	"pappus/timing"
)

// pageOptions is what the page of a design is made of.
func pageOptions(design string) page.Options {
	heard := newHearings()
	return page.Options{
		Path: design, Version: version,
		Programmes: pageProgrammes(), Cases: pageCases(), Sound: heard.sound, Walk: heard.walk,
		Files: pageFiles, Write: writeDownload, Measure: measurePage,
	}
}

// sweepName is the download that the page asks for beside the recordings, too.
const sweepName = "sweep"

// pageFiles is what can be had as files.
var pageFiles = []page.Named{
	{Name: "plan", Words: "everything that pappus plan writes"},
	{Name: "tables", Words: "tables as CSV, and plan.json"},
	{Name: "pictures", Words: "plots and coverage maps as PNG and SVG"},
	{Name: "sounds", Words: "sounds as WAV"},
	{Name: "processor", Words: "the processor's settings"},
	{Name: "level", Words: "sections and filters that make the spot's level even"},
	{Name: "sheets", Words: "sheets, shell and parts for the workshop"},
	{Name: sweepName, Words: "the sweeps to measure it with, once it is built"},
}

// kindsOfFile are the endings of the files of a plan that go into a download; no
// endings: all.
var kindsOfFile = map[string][]string{
	"plan":     nil,
	"tables":   {".csv", ".json"},
	"pictures": {".png", ".svg"},
}

// writeDownload adds the files of one download.
func writeDownload(ctx context.Context, what string, p *timing.Plan, add page.Add) error {
	files, err := download(what, p)
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := add(f.name, f.write); err != nil {
			return err
		}
	}
	return nil
}

// download lists the files of one download.
func download(what string, p *timing.Plan) ([]file, error) {
	switch what {
	case "sounds":
		return sounds(p), nil
	case "processor":
		return processorFiles(p)
	case "level":
		return levelDownload(p)
	case sweepName:
		return sweepDownload(p)
	case "sheets":
		sheets, _, err := sheetFiles(p)
		var out []file
		for _, s := range sheets {
			out = append(out, file{s.Name, s.Write})
		}
		return out, err
	}
	kinds, ok := kindsOfFile[what]
	if !ok {
		return nil, fmt.Errorf("no files are called %s", what)
	}
	survey, err := timing.Look(p)
	if err != nil {
		return nil, err
	}
	files, err := planFiles(p, survey)
	return slices.DeleteFunc(files, func(f file) bool { return kinds != nil && !slices.Contains(kinds, path.Ext(f.name)) }), err
}

// processorFiles lists the processor's settings.
func processorFiles(p *timing.Plan) ([]file, error) {
	rows, err := timing.Processor(p, nil)
	return processorTables(p, rows), err
}

// levelDownload lists the files that make the spot's level even.
func levelDownload(p *timing.Plan) ([]file, error) {
	l, err := timing.Level(p)
	if err != nil {
		return nil, err
	}
	correction, err := l.Correction(p.Array.Processor.Rate)
	if err != nil {
		return nil, err
	}
	return levelFiles(p, l, correction)
}
