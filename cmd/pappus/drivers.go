package main

import (
	"cmp"
	"fmt"
	"io"
	"path/filepath"
	"slices"

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
	source, p, err := s.source(j)
	if err != nil {
		return outcome{}, err
	}
	j.say("reading drivers")
	l, err := source.Read(j.Context())
	if err != nil {
		return outcome{}, err
	}
	var d *intake.Deal
	if p == nil {
		l.Judge(nil)
	} else {
		l.Judge(&p.Array.Driver)
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

// source says how the folder is read, and plans the design; nil where none is named.
func (s sortingFlags) source(j *job) (intake.Source, *timing.Plan, error) {
	source := intake.Source{Folder: j.args[0], Impedance: s.reader()}
	if err := among("reference", s.reference, references); err != nil {
		return source, nil, err
	}
	source.Reference = [...]int{1, 0, -1}[slices.Index(references, s.reference)]
	path, isHeard := cmp.Or(j.args[1:]...), intake.IsHeard(source.Folder)
	if path == "" && !isHeard {
		return source, nil, nil
	}
	p, err := j.planOf(j.Context(), j.progress, path)
	if err != nil {
		return source, nil, err
	}
	if isHeard {
		signal, err := sound.New(p, s.sweep)
		if err != nil {
			return source, nil, err
		}
		source.Sweep = signal.Sweep
	}
	if path == "" {
		p = nil // the built-in one was for its sweep alone
	}
	return source, p, nil
}
