package main

import (
	"fmt"
	"io"

	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/timing/tolerance"

	"github.com/spf13/cobra"
)

func newTolerance(f *flags) *cobra.Command {
	var percent, db, mm, us float64
	set := tolerance.Setting{}
	c := f.command(&cobra.Command{
		Use:   "tolerance [DESIGN.toml]",
		Short: "See before buying what drivers that are not alike do to level, smear, loads and power",
		Long: "Lots of drivers are drawn, each driver with its own resonance, Q, resistance, sensitivity, place\n" +
			"and time, evenly within the limits, and heard in the plan: in its strings and its box. Each cause\n" +
			"is shown by itself too. \"pappus drivers\" sorts those that were bought.",
	}, "tolerance", "folder for tables and picture", func(j *job) (outcome, error) {
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		j.say("drawing lots")
		set.Spread = tolerance.Spread{Share: percent / 100, Level: db, Place: mm / 1000, Time: us / 1e6}
		s, err := tolerance.Run(j.Context(), p, set)
		if err != nil {
			return outcome{}, err
		}
		return outcome{
			plan: p, files: folder.Tolerance(s),
			json:   func(w document.Written) any { return document.OfTolerance(w, s) },
			screen: func(w io.Writer, colour bool) error { return table.ToleranceScreen(w, s, colour) },
			last:   fmt.Sprintf("\nTables and a picture are in %s; begin with tolerance.png.\n", j.folder),
		}, nil
	})
	u := tolerance.Usual
	c.Flags().Float64Var(&percent, "percent", 100*u.Share, "how far fs, Qms, Qes and Re may be off either way")
	c.Flags().Float64Var(&db, "sensitivity-db", u.Level, "how far the sensitivity may be")
	c.Flags().Float64Var(&mm, "place-mm", 1000*u.Place, "how much further or less far a driver's sound may have to go")
	c.Flags().Float64Var(&us, "time-us", 1e6*u.Time, "how late or early it may come by itself")
	c.Flags().IntVar(&set.Runs, "runs", tolerance.UsualRuns, "how many lots are drawn")
	c.Flags().Uint64Var(&set.Seed, "seed", 1, "which ones")
	return c
}
