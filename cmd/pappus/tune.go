package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"math"

	"pappus/layout/dampinglog"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/timing/damping"

	"github.com/spf13/cobra"
)

func newTune(f *flags) *cobra.Command {
	c := f.command(&cobra.Command{
		Use:   "tune [DESIGN.toml]",
		Short: "Damp the shared box step by step: trials side by side, and what to try next",
		Long: "Reads the damping log beside the design, mine.damping.toml for mine.toml, which tune add\n" +
			"writes. Change one thing at a time.",
	}, "tuning", "folder for table and picture", func(j *job) (outcome, error) {
		a, err := load(j.design())
		if err != nil {
			return outcome{}, err
		}
		t, err := damping.NewStudy(a, j.design(), logOf(j.design()))
		return outcome{
			files:  folder.Tuning(t),
			json:   func(document.Written) any { return document.OfTuning(t) },
			screen: func(w io.Writer, colour bool) error { return table.TuningScreen(w, t, colour) },
		}, err
	})
	c.AddCommand(newTuneAdd(f))
	return c
}

// logOf returns the path of a design's damping log.
func logOf(path string) string { return dampinglog.Beside(cmp.Or(path, "lantern.toml")) }

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
			return tuneAdd(c, f, cmp.Or(args...), t, &fits)
		},
	}
	c.Flags().IntVar(&t.Vents, "vents", 0, "openings")
	c.Flags().Float64Var(&t.VentMM, "vent-mm", 0, "across each opening")
	c.Flags().Float64Var(&t.FillG, "fill-g", 0, "mass of the filling in each")
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
		var err error
		if *name, err = l.Seen(*name); err != nil {
			return err
		}
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
