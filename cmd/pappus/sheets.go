package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"pappus/layout"
	"pappus/layout/printing"
	"pappus/layout/shell"
	"pappus/render/document"
	"pappus/render/sheets"
	"pappus/render/table"
	"pappus/timing"

	"github.com/spf13/cobra"
)

func newSheets(f *flags) *cobra.Command {
	var folder string
	c := &cobra.Command{
		Use:   "sheets [DESIGN.toml]",
		Short: "Write what the workshop needs: drilling templates, net, map, parts, shell",
		Args:  oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			return writeSheets(c, f, first(args), folder)
		},
	}
	c.Flags().StringVarP(&folder, "output", "o", "sheets", "folder for the sheets")
	return c
}

func writeSheets(c *cobra.Command, f *flags, design, folder string) error {
	p, err := f.planned(design)
	if err != nil {
		return err
	}
	files, w, err := sheetFiles(p)
	if err != nil {
		return err
	}
	all := make([]file, len(files))
	for i, f := range files {
		all[i] = file{f.Name, f.Write}
	}
	if err := addAll(folder, all); err != nil {
		return err
	}
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfWorkshop(written(folder, all, p), p.Array, w.fits, w.hollow, w.segments, w.noShell, w.noCut))
	case f.quiet:
		return nil
	}
	if err := f.heed(c.OutOrStdout(), p); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.OutOrStdout(), "%s\n\n%s\n\n%s\nThe sheets are in %s; print sheets.pdf at 100 percent and check the bar with a ruler.\n",
		table.FitWords(p.Array, w.fits), table.BoxWords(w.hollow), w.shellWords(p.Array), folder)
	return err
}

// sheetFiles lists what the workshop needs, with what was computed for it.
func sheetFiles(p *timing.Plan) ([]sheets.File, bench, error) {
	a := p.Array
	w, err := workshop(a)
	if err != nil {
		return nil, w, err
	}
	o := sheets.Options{Segments: sheets.Cuts(w.segments), Print: w.segments, Stuffing: w.hollow.Stuffed.Mass}
	files, err := sheets.Files(p, o)
	if errors.Is(err, sheets.ErrSegment) {
		w.noCut, w.segments = err.Error(), printing.Plan{}
		o.Segments, o.Print = nil, w.segments
		files, err = sheets.Files(p, o)
	}
	if errors.Is(err, shell.ErrCutout) {
		w.noShell = err.Error()
		o.NoShell, o.Print = true, printing.Plan{}
		files, err = sheets.Files(p, o)
	}
	if err != nil {
		return nil, w, err
	}
	return append(files,
		sheets.File{Name: "fit.csv", Write: func(out io.Writer) error { return table.Fit(out, a, w.fits) }},
		sheets.File{Name: "box.csv", Write: func(out io.Writer) error { return table.Box(out, w.hollow, p.DriverVolt()) }},
		sheets.File{Name: "segments.csv", Write: func(out io.Writer) error { return table.Segments(out, a, w.segments) }},
	), w, nil
}

// bench is what is computed for the workshop.
type bench struct {
	fits     layout.Fits
	hollow   layout.Hollow
	segments printing.Plan
	noShell  string // why there is no shell to print; empty where there is
	noCut    string // why it is not cut to the bed; empty where it is, or fits
}

// shellWords says how the shell is printed, or why it is not.
func (b bench) shellWords(a *layout.Array) string {
	switch {
	case b.noShell != "":
		return "No shell to print: " + b.noShell + "."
	case b.noCut != "":
		return table.Wrap("The shell is written whole, larger than the bed, since "+b.noCut+".") + table.BaseWords(a)
	}
	return table.SegmentWords(b.segments) + table.BaseWords(a)
}

func workshop(a *layout.Array) (bench, error) {
	var b bench
	var err error
	b.fits = a.Fit()
	if b.hollow, err = a.Hollow(); err != nil {
		return b, err
	}
	b.segments, err = a.Segments()
	if errors.Is(err, printing.ErrNoCleanCut) || errors.Is(err, printing.ErrTooMany) {
		b.noCut, err = strings.TrimPrefix(err.Error(), "printing: "), nil
	}
	return b, err
}
