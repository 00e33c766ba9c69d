package main

import (
	"cmp"
	"fmt"
	"io"
	"path/filepath"
	"slices"

	"pappus/layout"
	sound "pappus/preview/sweep"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/timing"
	"pappus/timing/intake"

	"github.com/spf13/cobra"
)

// sortingFlags are those of the command drivers.
type sortingFlags struct {
	impedanceFlags
	sweep     sound.Options
	reference string
}

func newDrivers(f *flags) *cobra.Command {
	var s sortingFlags
	c := f.command(&cobra.Command{
		Use:   "drivers FOLDER [DESIGN.toml]",
		Short: "Judge single drivers before they are built in, and sort them into strings",
		Long: "FOLDER holds what was measured of each driver: NAME.csv, .zma or .txt is a table of its impedance\n" +
			"(frequency_hz,ohm,degrees), NAME.wav a recording of it over a resistor as \"pappus impedance\" reads it,\n" +
			"and NAME_heard.wav the sweep of \"pappus sweep\" as a microphone heard it. Drivers are held against\n" +
			"each other and, where a design is named, against its driver, and are dealt out to its strings. In\n" +
			"series all have one current, so the resonances of a string should be alike, and strings as loud.",
		Args: argsOf(1, 2, "FOLDER, which has what was measured,"),
	}, "drivers", "folder for tables and pictures", func(j *job) (outcome, error) { return sortDrivers(j, s) })
	c.Flags().Float64Var(&s.series, "series-ohm", 0, "the resistor in series, for recordings of impedance")
	c.Flags().StringVar(&s.bridged, "bridged", "", "a recording with the resistor bridged by a wire, to even out the inputs' gains")
	c.Flags().Float64Var(&s.low, "low-hz", 20, "where the sweep of those recordings begins")
	c.Flags().Float64Var(&s.high, "high-hz", 20000, "where it ends")
	c.Flags().StringVar(&s.reference, "reference", "right", "where the wire from the player is in what was heard: right, left or none")
	addSweepFlags(c, &s.sweep)
	return c
}

// sortDrivers judges a folder of drivers and sorts them.
func sortDrivers(j *job, s sortingFlags) (outcome, error) {
	if err := among("reference", s.reference, references); err != nil {
		return outcome{}, err
	}
	source := intake.Source{Folder: j.args[0], Impedance: s.reader(), Reference: [...]int{1, 0, -1}[slices.Index(references, s.reference)]}
	path := cmp.Or(j.args[1:]...)
	var p *timing.Plan
	var planned *layout.Driver
	isHeard := intake.IsHeard(source.Folder)
	if path != "" || isHeard {
		var err error
		if p, err = j.planOf(j.Context(), j.progress, path); err != nil {
			return outcome{}, err
		}
	}
	if isHeard {
		signal, err := sound.New(p, s.sweep)
		if err != nil {
			return outcome{}, err
		}
		source.Sweep = signal.Sweep
	}
	if path == "" {
		p = nil // it was for its sweep alone
	} else {
		planned = &p.Array.Driver
	}
	j.say("reading drivers")
	l, err := source.Read(j.Context())
	if err != nil {
		return outcome{}, err
	}
	l.Judge(planned)
	var d *intake.Deal
	if p != nil {
		j.say("sorting drivers")
		if d, err = l.Deal(j.Context(), p); err != nil {
			return outcome{}, err
		}
	}
	name := filepath.Base(filepath.Clean(source.Folder))
	return outcome{
		plan: p, files: folder.Drivers(name, l, d),
		json:   func(w document.Written) any { return document.OfDrivers(w, l, d) },
		screen: func(w io.Writer, colour bool) error { return table.IntakeScreen(w, name, l, d, colour) },
		last:   fmt.Sprintf("\nTables and pictures are in %s; begin with drivers.csv.\n", j.folder),
	}, nil
}
