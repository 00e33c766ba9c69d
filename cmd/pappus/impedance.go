package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"

	"pappus/layout/box"
	"pappus/layout/design"
	"pappus/preview/decode"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/timing"
	"pappus/timing/air"
	"pappus/timing/impedancefit"

	"github.com/spf13/cobra"
)

// impedanceFlags are those of the command.
type impedanceFlags struct {
	second, bridged string
	series          float64 // ohm
	low, high       float64 // Hz
	mass, box, area float64 // g, l, cm2
	channel         int
	write, anyway   bool
}

func newImpedance(f *flags) *cobra.Command {
	var i impedanceFlags
	c := f.command(&cobra.Command{
		Use:   "impedance FILE [DESIGN.toml]",
		Short: "Find a driver's values in its measured impedance, or a channel's dead strings",
		Long: "FILE is a table (CSV: frequency_hz,ohm,degrees) or a stereo WAV of a sweep that goes\n" +
			"through a known resistor into the driver: left the voltage before the resistor, right\n" +
			"the one over the driver, both recorded with the same gain against the same ground.\n" +
			"\"pappus sweep --impedance\" makes that sweep, and says which voltage and resistor. A second\n" +
			"measurement with a mass stuck to the cone, or in a small airtight box, gives Vas, the\n" +
			"moving mass and BL too. A recording with the resistor bridged by a wire (--bridged) evens\n" +
			"out inputs of different gain. With --channel, FILE is the impedance of a whole channel, and is\n" +
			"held against the plan.",
		Args: argsOf(1, 2, "FILE, the measured impedance,"),
	}, "impedance", "folder for tables and picture", func(j *job) (outcome, error) {
		for _, pair := range [][2]string{{"mass-g", "box-l"}, {"channel", "write"}, {"channel", "second"}} {
			if err := exclusive(j.Command, pair[0], pair[1]); err != nil {
				return outcome{}, err
			}
		}
		if i.channel > 0 {
			return channelLoad(j, i)
		}
		return driverImpedance(j, i)
	})
	c.Flags().Float64Var(&i.series, "series-ohm", 0, "the resistor in series, for a recording")
	c.Flags().StringVar(&i.bridged, "bridged", "", "a recording with the resistor bridged by a wire, to even out the inputs' gains")
	c.Flags().Float64Var(&i.low, "low-hz", 0, "where the recorded sweep begins; not given: at 10 Hz, as that of sweep --impedance, or at 20 Hz")
	c.Flags().Float64Var(&i.high, "high-hz", 20000, "where it ends")
	c.Flags().StringVar(&i.second, "second", "", "the second measurement, with --mass-g or --box-l")
	c.Flags().Float64Var(&i.mass, "mass-g", 0, "the mass on the cone in the second measurement")
	c.Flags().Float64Var(&i.box, "box-l", 0, "the volume of the box in the second measurement")
	c.Flags().Float64Var(&i.area, "sd-cm2", 0, "the area of the cone, if the design has none")
	c.Flags().IntVar(&i.channel, "channel", 0, "hold the impedance of this channel against the plan")
	c.Flags().BoolVar(&i.write, "write", false, "write what is found into the design's driver")
	c.Flags().BoolVar(&i.anyway, "anyway", false, "with --write: even values that are in doubt")
	return c
}

func driverImpedance(j *job, i impedanceFlags) (outcome, error) {
	path := cmp.Or(j.args[1:]...)
	if i.write && path == "" {
		return outcome{}, errors.New("--write: name the design to write into: pappus impedance FILE DESIGN.toml --write")
	}
	m, err := impedancefit.NewStudy(i.reader(), j.args[0])
	if err != nil {
		return outcome{}, err
	}
	if err := again(&m, i, path); err != nil {
		return outcome{}, err
	}
	if path != "" {
		d, err := design.Read(path)
		if err != nil {
			return outcome{}, err
		}
		m.Against(d.Driver)
	}
	out := outcome{
		files:  folder.Impedance(m),
		json:   func(document.Written) any { return document.OfImpedance(m.Fit, m.Mechanical) },
		screen: func(w io.Writer, colour bool) error { return table.ImpedanceScreen(w, m, colour) },
		last:   fmt.Sprintf("\nTables and a picture are in %s.\n", j.folder),
	}
	if !i.write {
		return out, nil
	}
	if err := m.Doubt(); err != nil && !i.anyway {
		return outcome{}, fmt.Errorf("nothing written: %w; look at it without --write, then add --anyway if it is so", err)
	}
	out.then = func() error { return folder.SetKeys(path, m.Fit.Keys(m.Mechanical)) }
	out.last = fmt.Sprintf("\nWritten into the driver of %s.", path) + out.last
	return out, nil
}

// reader reads what was measured.
func (i impedanceFlags) reader() impedancefit.Reader {
	return impedancefit.Reader{Series: i.series, Low: i.low, High: i.high, Bridged: i.bridged, Decode: decode.Channels}
}

// again reads the second measurement, if there is one.
func again(m *impedancefit.Study, i impedanceFlags, path string) error {
	switch {
	case i.second == "" && (i.mass != 0 || i.box != 0):
		return errors.New("--mass-g and --box-l need --second, the measurement with them")
	case i.second == "":
		return nil
	case i.mass == 0 && i.box == 0:
		return errors.New("--second needs --mass-g or --box-l: what was different then")
	}
	a, err := load(path)
	if err != nil {
		return err
	}
	area := i.area / 1e4
	if area == 0 && path != "" {
		area = a.Driver.Small.Area
	}
	if area == 0 {
		return errors.New("the area of the cone is not known: give --sd-cm2, or sd_cm2 in the design")
	}
	state := air.Air(a.Air)
	return m.Again(i.reader(), i.second, impedancefit.Second{Mass: i.mass / 1000, Volume: i.box / 1000, Area: area,
		Air: box.Air{Density: state.Density(), SoundSpeed: state.SpeedOfSound()}})
}

// channelLoad holds a channel's impedance against the plan.
func channelLoad(j *job, i impedanceFlags) (outcome, error) {
	points, err := i.reader().Read(j.args[0])
	if err != nil {
		return outcome{}, err
	}
	p, err := j.planOf(j.Context(), j.progress, cmp.Or(j.args[1:]...))
	if err != nil {
		return outcome{}, err
	}
	at := slices.IndexFunc(p.Channels, func(c timing.Channel) bool { return c.ID == i.channel })
	if at < 0 {
		return outcome{}, fmt.Errorf("there is no channel %d; the plan has %d", i.channel, len(p.Channels))
	}
	bank, driver, known := p.PlannedLoad(at)
	found, err := impedancefit.Compare(points, bank, driver)
	if err != nil {
		return outcome{}, fmt.Errorf("%s: %w", j.args[0], err)
	}
	return outcome{
		plan:   p,
		files:  folder.Load(i.channel, filepath.Base(j.args[0]), points, found, func(hz float64) complex128 { return bank.Of(driver.At(hz)) }),
		json:   func(document.Written) any { return document.OfLoad(i.channel, found, known) },
		screen: func(w io.Writer, colour bool) error { return table.LoadScreen(w, i.channel, found, known, colour) },
	}, nil
}
