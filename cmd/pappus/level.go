package main

import (
	"fmt"
	"io"
	"math"

	"pappus/preview"
	"pappus/preview/wave"
	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/outdir"
	"pappus/render/table"
	"pappus/timing"

	"github.com/spf13/cobra"
)

func newLevel(f *flags) *cobra.Command {
	var folder string
	c := &cobra.Command{
		Use:   "level [DESIGN.toml]",
		Short: "Make the spot's level even: sections for the processor, or FIR filters",
		Args:  oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			return level(c, f, first(args), folder)
		},
	}
	c.Flags().StringVarP(&folder, "output", "o", "level", "folder for the sections, filters and picture")
	return c
}

func level(c *cobra.Command, f *flags, design, folder string) error {
	p, err := f.planned(design)
	if err != nil {
		return err
	}
	l, err := timing.Level(p)
	if err != nil {
		return err
	}
	correction, err := l.Correction(p.Array.Processor.Rate)
	if err != nil {
		return err
	}
	files, err := levelFiles(p, l, correction)
	if err != nil {
		return err
	}
	if err := addAll(folder, files); err != nil {
		return err
	}
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfLevel(p, l, correction))
	case f.quiet:
		return nil
	}
	if err := f.heed(c.OutOrStdout(), p); err != nil {
		return err
	}
	if err := table.LevelScreen(c.OutOrStdout(), p, l, correction, colour(c.OutOrStdout())); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.OutOrStdout(), "\nSections, filters and a picture are in %s; begin with level.png.\n", folder)
	return err
}

// levelFiles lists the files of a levelling.
func levelFiles(p *timing.Plan, l timing.Levelling, c timing.Correction) ([]file, error) {
	rows, err := timing.Processor(p, l.Sections)
	if err != nil {
		return nil, err
	}
	files := []file{
		{"level.csv", func(w io.Writer) error { return table.Level(w, l) }},
		{"sections.csv", func(w io.Writer) error { return table.Sections(w, c) }},
		{"level_minimum_phase.wav", func(w io.Writer) error { return writeTaps(w, c.Minimum, c.Rate, "levelling, minimum phase") }},
		{"level_linear_phase.wav", func(w io.Writer) error { return writeTaps(w, c.Linear, c.Rate, "levelling, linear phase") }},
	}
	files = append(files, processorTables(p, rows)...)
	for _, format := range []figure.Format{figure.PNG, figure.SVG} {
		files = append(files, file{"level." + string(format), func(w io.Writer) error { return figure.Levelling(w, format, p, l) }})
	}
	return files, nil
}

// writeTaps writes a filter's taps as the samples of a WAV file.
func writeTaps(w io.Writer, t timing.Taps, rate float64, title string) error {
	format := wave.Format{Rate: int(math.Round(rate)), Channels: 1, Depth: wave.Float32, Title: title}
	return wave.Write(w, preview.Sound{Samples: t.Samples}.Streamer(), format)
}

// addAll writes files into a folder, all or none.
func addAll(folder string, files []file) error {
	dir, err := outdir.Open(folder)
	if err != nil {
		return err
	}
	defer dir.Abort()
	for _, f := range files {
		if err := dir.Add(f.name, f.write); err != nil {
			return err
		}
	}
	return dir.Commit()
}
