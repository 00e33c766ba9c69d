package main

import (
	"fmt"
	"io"

	"pappus/render/outdir"
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
		Args:  cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			return oneLine(writeSheets(c, f, first(args), folder))
		},
	}
	c.Flags().StringVarP(&folder, "output", "o", "sheets", "folder for the sheets")
	return c
}

func writeSheets(c *cobra.Command, f *flags, design, folder string) error {
	a, err := load(design)
	if err != nil {
		return err
	}
	p, err := timing.Make(a)
	if err != nil {
		return err
	}
	files, err := sheets.Files(p, sheets.Options{})
	if err != nil {
		return err
	}
	fits, err := a.Fit()
	if err != nil {
		return err
	}
	dir, err := outdir.Open(folder)
	if err != nil {
		return err
	}
	defer dir.Abort()
	for _, file := range files {
		if err := dir.Add(file.Name, file.Write); err != nil {
			return err
		}
	}
	if err := dir.Add("fit.csv", func(w io.Writer) error { return table.Fit(w, a, fits) }); err != nil {
		return err
	}
	if err := dir.Commit(); err != nil {
		return err
	}
	if f.quiet {
		return nil
	}
	_, err = fmt.Fprintf(c.OutOrStdout(), "%s\nThe sheets are in %s; print sheets.pdf at 100 percent and check the bar with a ruler.\n",
		table.FitWords(a, fits), folder)
	return err
}
