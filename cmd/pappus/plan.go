package main

import (
	"context"
	"fmt"
	"io"

	"pappus/render/document"
	"pappus/render/outdir"
	"pappus/render/table"
	"pappus/timing"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"
)

func newPlan(f *flags) *cobra.Command {
	var folder string
	c := &cobra.Command{
		Use:   "plan [DESIGN.toml]",
		Short: "Plan a design (the built-in demo if none is named) into a folder",
		Args:  oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			return planInto(c, f, first(args), folder)
		},
	}
	c.Flags().StringVarP(&folder, "output", "o", "plan", "folder for tables, pictures and sounds")
	return c
}

func planInto(c *cobra.Command, f *flags, design, folder string) error {
	a, err := load(design)
	if err != nil {
		return err
	}
	said := startProgress(c.ErrOrStderr(), f.quiet)
	defer said.stop()
	p, err := f.make(a)
	if err != nil {
		return err
	}
	said.say("surveying the room")
	survey, err := timing.Look(p)
	if err != nil {
		return err
	}
	dir, err := outdir.Open(folder)
	if err != nil {
		return err
	}
	defer dir.Abort()
	if err := writeAll(c.Context(), dir, p, survey, said); err != nil {
		return err
	}
	if err := dir.Commit(); err != nil {
		return err
	}
	said.stop()
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfPlan(p, survey))
	case f.quiet:
		return nil
	}
	if err := f.heed(c.OutOrStdout(), p); err != nil {
		return err
	}
	if err := table.Screen(c.OutOrStdout(), p, survey, colour(c.OutOrStdout())); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.OutOrStdout(), "\nTables, pictures and sounds are in %s; begin with coverage_above_1k.png.\n", folder)
	return err
}

// file is one file of a plan: its name and how it is written.
type file struct {
	name  string
	write func(io.Writer) error
}

// written names what a command left in a folder, and what to look out for in its plan.
func written(folder string, files []file, p *timing.Plan) document.Written {
	out := document.Written{Folder: folder, Files: []string{}, Findings: document.Findings(p.Warnings)}
	for _, f := range files {
		out.Files = append(out.Files, f.name)
	}
	return out
}

// planFiles lists every file of a plan.
func planFiles(p *timing.Plan, survey *timing.Survey) ([]file, error) {
	rows, err := timing.Processor(p, nil)
	if err != nil {
		return nil, err
	}
	files := []file{
		{"plan.json", func(w io.Writer) error { return document.Write(w, document.OfPlan(p, survey)) }},
		{"delays.csv", func(w io.Writer) error { return table.Delays(w, p) }},
		loadTable(p),
		{"octaves.csv", func(w io.Writer) error { return table.Octaves(w, survey) }},
		{"choices.csv", func(w io.Writer) error { return table.Choices(w, p) }},
	}
	files = append(append(files, channelTables(p, rows)...), stringTables(p)...)
	// The sounds are made with the first of them, which takes longest: begin there,
	// and come to the others when they are made.
	heard := sounds(p)
	files = append(heard[:1:1], append(files, pictures(p, survey)...)...)
	return append(files, heard[1:]...), nil
}

// writeAll adds every file of a plan to a folder, on all cores.
func writeAll(ctx context.Context, dir *outdir.Dir, p *timing.Plan, survey *timing.Survey, said *progress) error {
	files, err := planFiles(p, survey)
	if err != nil {
		return err
	}
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(workers)
	for _, f := range files {
		group.Go(func() error {
			if ctx.Err() != nil {
				return ctx.Err()
			}
			said.say("writing " + f.name)
			return dir.Add(f.name, f.write)
		})
	}
	return group.Wait()
}
