package main

import (
	"errors"
	"fmt"
	"io"
	"math/cmplx"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"pappus/layout/box"
	"pappus/layout/design"
	"pappus/preview/decode"
	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/outdir"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/air"
	"pappus/timing/impedancefit"

	"github.com/spf13/cobra"
)

// impedanceFlags are those of the command.
type impedanceFlags struct {
	folder, second  string
	bridged         string
	series          float64 // ohm
	low, high       float64 // Hz
	mass, box, area float64 // g, l, cm2
	channel         int
	write, anyway   bool
}

func newImpedance(f *flags) *cobra.Command {
	var i impedanceFlags
	c := &cobra.Command{
		Use:   "impedance FILE [DESIGN.toml]",
		Short: "Find a driver's values in its measured impedance, or a channel's dead strings",
		Long: "FILE is a table (CSV: frequency_hz,ohm,degrees) or a stereo WAV of a sweep that goes\n" +
			"through a known resistor into the driver: left the voltage before the resistor, right\n" +
			"the one over the driver, both recorded with the same gain against the same ground.\n" +
			"\"pappus sweep --start-hz 20 --below\" makes that sweep; use a low voltage. A second\n" +
			"measurement with a mass stuck to the cone, or in a small airtight box, gives Vas, the\n" +
			"moving mass and BL too. A recording with the resistor bridged by a wire (--bridged) evens\n" +
			"out inputs of different gain. With --channel, FILE is the impedance of a whole channel, and is\n" +
			"held against the plan.",
		Args: argsOf(1, 2, "FILE, the measured impedance,"),
		RunE: func(c *cobra.Command, args []string) error {
			for _, pair := range [][2]string{{"mass-g", "box-l"}, {"channel", "write"}, {"channel", "second"}} {
				if err := exclusive(c, pair[0], pair[1]); err != nil {
					return err
				}
			}
			if i.channel > 0 {
				return channelLoad(c, f, i, args)
			}
			return driverImpedance(c, f, i, args)
		},
	}
	c.Flags().Float64Var(&i.series, "series-ohm", 0, "the resistor in series, for a recording")
	c.Flags().StringVar(&i.bridged, "bridged", "", "a recording with the resistor bridged by a wire, to even out the inputs' gains")
	c.Flags().Float64Var(&i.low, "low-hz", 20, "where the recorded sweep begins")
	c.Flags().Float64Var(&i.high, "high-hz", 20000, "where it ends")
	c.Flags().StringVar(&i.second, "second", "", "the second measurement, with --mass-g or --box-l")
	c.Flags().Float64Var(&i.mass, "mass-g", 0, "the mass on the cone in the second measurement")
	c.Flags().Float64Var(&i.box, "box-l", 0, "the volume of the box in the second measurement")
	c.Flags().Float64Var(&i.area, "sd-cm2", 0, "the area of the cone, if the design has none")
	c.Flags().IntVar(&i.channel, "channel", 0, "hold the impedance of this channel against the plan")
	c.Flags().BoolVar(&i.write, "write", false, "write what is found into the design's driver")
	c.Flags().BoolVar(&i.anyway, "anyway", false, "with --write: even values that are in doubt")
	c.Flags().StringVarP(&i.folder, "output", "o", "impedance", "folder for tables and picture")
	return c
}

func driverImpedance(c *cobra.Command, f *flags, i impedanceFlags, args []string) error {
	path := first(args[1:])
	if i.write && path == "" {
		return errors.New("--write: name the design to write into: pappus impedance FILE DESIGN.toml --write")
	}
	m, err := impedancefit.NewStudy(i.reader(), args[0])
	if err != nil {
		return err
	}
	if err := again(&m, i, path); err != nil {
		return err
	}
	if path != "" {
		d, err := design.Read(path)
		if err != nil {
			return err
		}
		m.Against(d.Driver)
	}
	if i.write && !i.anyway {
		if err := m.Doubt(); err != nil {
			return fmt.Errorf("nothing written: %w; look at it without --write, then add --anyway if it is so", err)
		}
	}
	if err := addAll(i.folder, impedanceFiles(m)); err != nil {
		return err
	}
	if i.write {
		if err := writeKeys(path, m.Fit.Keys(m.Mechanical)); err != nil {
			return err
		}
	}
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfImpedance(m.Fit, m.Mechanical))
	case f.quiet:
		return nil
	}
	if err := table.ImpedanceScreen(c.OutOrStdout(), m, colour(c.OutOrStdout())); err != nil {
		return err
	}
	if i.write {
		fmt.Fprintf(c.OutOrStdout(), "\nWritten into the driver of %s.", path)
	}
	_, err = fmt.Fprintf(c.OutOrStdout(), "\nTables and a picture are in %s.\n", i.folder)
	return err
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
	state := air.Air{Temperature: a.Air.Temperature, Humidity: a.Air.Humidity, Pressure: a.Air.Pressure}
	return m.Again(i.reader(), i.second, impedancefit.Second{Mass: i.mass / 1000, Volume: i.box / 1000, Area: area,
		Air: box.Air{Density: state.Density(), SoundSpeed: state.SpeedOfSound()}})
}

// impedanceFiles lists the files of a driver's impedance.
func impedanceFiles(m impedancefit.Study) []file {
	f := m.Fit
	with := func(e impedancefit.Estimate) string {
		value, sigma := e.Text(1)
		return value + " ± " + sigma
	}
	lines := figure.ImpedanceLines{Title: "Impedance in " + m.Name, Measured: m.Points, Fitted: f.At, Planned: m.Planned,
		Below: fmt.Sprintf("resonance %s Hz, Qts %s, Re %s Ω", with(f.Resonance), with(f.Qts), with(f.DCOhm))}
	return append(measuredFiles(lines),
		file{"fit.csv", func(w io.Writer) error { return table.ImpedanceFit(w, m) }})
}

// measuredFiles lists the table and the picture of an impedance.
func measuredFiles(lines figure.ImpedanceLines) []file {
	files := []file{{"measured.csv", func(w io.Writer) error { return table.MeasuredImpedance(w, lines.Measured) }}}
	for _, format := range []figure.Format{figure.PNG, figure.SVG} {
		files = append(files, file{"impedance." + string(format), func(w io.Writer) error { return figure.Impedance(w, format, lines) }})
	}
	return files
}

// writeKeys sets keys of a design that is a file, once the outcome is a good design. The
// file is replaced as a whole.
func writeKeys(path string, keys []impedancefit.Key) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	for _, k := range keys {
		if text, err = design.Set(text, k.Name, k.Value); err != nil {
			return err
		}
	}
	if _, err := design.Parse(path, text); err != nil {
		return fmt.Errorf("nothing written: %w", err)
	}
	if path, err = filepath.EvalSymlinks(path); err != nil {
		return err
	}
	return outdir.Replace(path, text)
}

// channelLoad holds a channel's impedance against the plan.
func channelLoad(c *cobra.Command, f *flags, i impedanceFlags, args []string) error {
	points, err := i.reader().Read(args[0])
	if err != nil {
		return err
	}
	p, err := f.planned(first(args[1:]))
	if err != nil {
		return err
	}
	at := slices.IndexFunc(p.Channels, func(c timing.Channel) bool { return c.ID == i.channel })
	if at < 0 {
		return fmt.Errorf("there is no channel %d; the plan has %d", i.channel, len(p.Channels))
	}
	bank, driver, known := p.PlannedLoad(at)
	found, err := impedancefit.Compare(points, bank, driver)
	if err != nil {
		return fmt.Errorf("%s: %w", args[0], err)
	}
	below, _, _ := strings.Cut(words.Load(found), ".")
	lines := figure.ImpedanceLines{Below: below, Title: fmt.Sprintf("Channel %d: %s", i.channel, filepath.Base(args[0])), Measured: points,
		Planned: func(hz float64) complex128 {
			if z := bank.Of(driver.At(hz)); !cmplx.IsInf(z) {
				return z
			}
			return cmplx.NaN()
		}}
	if err := addAll(i.folder, measuredFiles(lines)); err != nil {
		return err
	}
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfLoad(i.channel, found, known))
	case f.quiet:
		return nil
	}
	if err := f.heed(c.OutOrStdout(), p); err != nil {
		return err
	}
	return table.LoadScreen(c.OutOrStdout(), i.channel, found, known, colour(c.OutOrStdout()))
}
