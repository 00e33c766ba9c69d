package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"

	"pappus/layout/dampinglog"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/table"
	"pappus/timing/damping"

	"github.com/spf13/cobra"
)

func newTune(f *flags) *cobra.Command {
	var folder string
	c := &cobra.Command{
		Use:   "tune [DESIGN.toml]",
		Short: "Damp the shared box step by step: trials side by side, and what to try next",
		Long: "Reads the damping log beside the design, mine.damping.toml for mine.toml, which tune add\n" +
			"writes. Change one thing at a time.",
		Args: oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			return tune(c, f, first(args), folder)
		},
	}
	c.Flags().StringVarP(&folder, "output", "o", "tuning", "folder for table and picture")
	c.AddCommand(newTuneAdd(f))
	return c
}

// logOf returns the path of a design's damping log.
func logOf(path string) string {
	if path == "" {
		path = "lantern.toml"
	}
	return dampinglog.Beside(path)
}

func tune(c *cobra.Command, f *flags, path, folder string) error {
	a, err := load(path)
	if err != nil {
		return err
	}
	t, err := damping.NewStudy(a, path, logOf(path))
	if err != nil {
		return err
	}
	if err := addAll(folder, tuneFiles(t)); err != nil {
		return err
	}
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfTuning(t))
	case f.quiet:
		return nil
	}
	return table.TuningScreen(c.OutOrStdout(), t, colour(c.OutOrStdout()))
}

// tuneFiles lists the files of a damping log; without a trial that has a resonance
// there is no picture.
func tuneFiles(t damping.Study) []file {
	files := []file{{"trials.csv", func(w io.Writer) error { return table.Trials(w, t.Trials) }}}
	next := &t.Next
	if errors.Is(t.Why, damping.ErrNoTrials) {
		return files
	}
	if t.Why != nil {
		next = nil
	}
	for _, format := range []figure.Format{figure.PNG, figure.SVG} {
		files = append(files, file{"tuning." + string(format), func(w io.Writer) error {
			return figure.Tuning(w, format, t.Name, t.Trials, t.Goal, next)
		}})
	}
	return files
}

func newTuneAdd(f *flags) *cobra.Command {
	var t dampinglog.Trial
	var fits dampinglog.Fits
	c := &cobra.Command{
		Use:   "add [DESIGN.toml]",
		Short: "Add a trial to the damping log; what is there is never changed",
		Args:  oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			if t.Impedance == "" {
				return errors.New("--impedance: name the table of a channel's impedance that was measured then")
			}
			if !c.Flags().Changed("most-stuffing-g") {
				fits.StuffingG = math.NaN()
			}
			if !c.Flags().Changed("most-depth-mm") {
				fits.DepthMM = math.NaN()
			}
			if !c.Flags().Changed("most-vents") {
				fits.Vents = -1
			}
			return tuneAdd(c, f, first(args), t, &fits)
		},
	}
	c.Flags().IntVar(&t.Vents, "vents", 0, "openings")
	c.Flags().Float64Var(&t.VentMM, "vent-mm", 0, "across each opening")
	c.Flags().Float64Var(&t.StuffingG, "stuffing-g", 0, "mass of the stuffing")
	c.Flags().Float64Var(&t.DepthMM, "depth-mm", 0, "how deep it is packed, if measured")
	c.Flags().StringVar(&t.Impedance, "impedance", "", "table of a channel's impedance then: frequency_hz,ohm,degrees")
	c.Flags().StringVar(&t.Response, "response", "", "table of the response then: frequency_hz,level_db,phase_deg")
	c.Flags().StringVar(&t.Remark, "remark", "", "a remark")
	c.Flags().StringVar(&t.Date, "date", "", "the day, as 2025-03-01")
	c.Flags().Float64Var(&fits.StuffingG, "most-stuffing-g", 0, "the most stuffing that there is room for; said once")
	c.Flags().Float64Var(&fits.DepthMM, "most-depth-mm", 0, "and how deep")
	c.Flags().IntVar(&fits.Vents, "most-vents", 0, "and how many openings")
	return c
}

// tuneAdd adds a trial once its files can be read.
func tuneAdd(c *cobra.Command, f *flags, path string, t dampinglog.Trial, fits *dampinglog.Fits) error {
	if path != "" {
		if _, err := design.Read(path); err != nil {
			return err
		}
	}
	l := &dampinglog.Log{Path: logOf(path)}
	for _, name := range []*string{&t.Impedance, &t.Response} {
		if *name == "" {
			continue
		}
		beside, err := besideLog(l.Path, *name)
		if err != nil {
			return err
		}
		*name = beside
	}
	if _, err := damping.ReadFiles(l, t); err != nil {
		return err
	}
	if err := dampinglog.Add(l.Path, t, fits); err != nil {
		return err
	}
	if f.quiet {
		return nil
	}
	_, err := fmt.Fprintln(c.OutOrStdout(), "Added to "+l.Path+"; then: "+prose.Command("pappus tune", path))
	return err
}

// besideLog returns a file's path as seen from the log.
func besideLog(path, name string) (string, error) {
	folder, err := filepath.Abs(filepath.Dir(path))
	if err != nil {
		return "", err
	}
	file, err := filepath.Abs(name)
	if err != nil {
		return "", err
	}
	relative, err := filepath.Rel(folder, file)
	return filepath.ToSlash(relative), err
}
