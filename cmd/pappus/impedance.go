package main

import (
	"errors"
	"fmt"
	"io"
	"math/cmplx"
	"os"
	"path/filepath"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/impedance"
	"pappus/layout/prose"
	"pappus/preview/decode"
	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/outdir"
	"pappus/render/table"
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
	points, err := readImpedance(args[0], i)
	if err != nil {
		return err
	}
	fit, err := impedancefit.Best(points)
	if err != nil {
		return fmt.Errorf("%s: %w", args[0], err)
	}
	m := table.Impedance{Name: filepath.Base(args[0]), Points: points, Fit: fit, Recorded: recorded(args[0])}
	if m.Mechanical, err = second(fit, i, path); err != nil {
		return err
	}
	var planned func(hz float64) complex128
	if path != "" {
		if planned, m.PlannedOhm, err = plannedDriver(path); err != nil {
			return err
		}
	}
	if i.write && !i.anyway {
		if err := doubt(m); err != nil {
			return fmt.Errorf("nothing written: %w; look at it without --write, then add --anyway if it is so", err)
		}
	}
	if err := addAll(i.folder, impedanceFiles(m, planned)); err != nil {
		return err
	}
	if i.write {
		if err := writeKeys(path, fit.Keys(m.Mechanical)); err != nil {
			return err
		}
	}
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfImpedance(fit, m.Mechanical))
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

// doubt returns why values had better not go into a design without a second look.
func doubt(m table.Impedance) error {
	switch {
	case m.Fit.Rough():
		return prose.Errorf("the circuit follows %s only within %.2g percent, and not for noise", m.Name, 100*m.Fit.Misfit)
	case m.OffPlan():
		return prose.Errorf("in %s Re is %.4g ohm, dc_ohm in the design %.4g", m.Name, m.Fit.DCOhm.Value, m.PlannedOhm)
	}
	return nil
}

// recorded tells whether a file is a recording, and not a table.
func recorded(path string) bool { return strings.EqualFold(filepath.Ext(path), ".wav") }

// readImpedance reads a table, or a recording.
func readImpedance(path string, i impedanceFlags) ([]impedance.Point, error) {
	if !recorded(path) {
		rows, err := layout.ReadImpedance(path)
		return points(rows), err
	}
	if i.series == 0 {
		return nil, fmt.Errorf("%s: a recording needs --series-ohm, the resistor between left and right", path)
	}
	r, err := readRecording(path)
	if err != nil {
		return nil, err
	}
	r.SeriesOhm, r.Low, r.High = i.series, i.low, i.high
	if i.bridged != "" {
		b, err := readRecording(i.bridged)
		if err != nil {
			return nil, err
		}
		r.Bridged = &b
	}
	out, err := r.Impedance()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return out, nil
}

// readRecording reads the two sides of a recording.
func readRecording(path string) (impedancefit.Recording, error) {
	rate, samples, err := decode.Channels(path)
	if err != nil {
		return impedancefit.Recording{}, err
	}
	if len(samples) != 2 {
		return impedancefit.Recording{}, fmt.Errorf("%s: %s, must be 2: left before the resistor, right over the driver", path, prose.Count(len(samples), "channel", "channels"))
	}
	return impedancefit.Recording{Whole: samples[0], Driver: samples[1], Rate: float64(rate)}, nil
}

func points(rows []layout.ImpedancePoint) []impedance.Point {
	out := make([]impedance.Point, len(rows))
	for i, p := range rows {
		out[i] = impedance.Point(p)
	}
	return out
}

// second reads the second measurement, if there is one.
func second(free impedancefit.Fit, i impedanceFlags, path string) (*impedancefit.Mechanical, error) {
	if i.second == "" {
		if i.mass != 0 || i.box != 0 {
			return nil, errors.New("--mass-g and --box-l need --second, the measurement with them")
		}
		return nil, nil
	}
	if i.mass == 0 && i.box == 0 {
		return nil, errors.New("--second needs --mass-g or --box-l: what was different then")
	}
	points, err := readImpedance(i.second, i)
	if err != nil {
		return nil, err
	}
	other, err := impedancefit.Best(points)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", i.second, err)
	}
	a, err := load(path)
	if err != nil {
		return nil, err
	}
	area := i.area / 1e4
	if area == 0 && path != "" {
		area = a.Driver.Small.Area
	}
	if area == 0 {
		return nil, errors.New("the area of the cone is not known: give --sd-cm2, or sd_cm2 in the design")
	}
	state := air.Air{Temperature: a.Air.Temperature, Humidity: a.Air.Humidity, Pressure: a.Air.Pressure}
	around := impedancefit.Air{Density: state.Density(), SoundSpeed: state.SpeedOfSound()}
	var m impedancefit.Mechanical
	if i.mass != 0 {
		m, err = impedancefit.AddedMass(free, other, i.mass/1000, area, around)
	} else {
		m, err = impedancefit.KnownBox(free, other, i.box/1000, area, around)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", i.second, err)
	}
	return &m, nil
}

// plannedDriver returns the impedance of a design's driver in free air, nil where the
// design does not tell, and its direct current resistance, 0 where that is not known.
func plannedDriver(path string) (at func(hz float64) complex128, ohm float64, err error) {
	d, err := design.Read(path)
	if err != nil {
		return nil, 0, err
	}
	curve, err := impedance.New(impedance.Driver{Resonance: d.Driver.FsHz, QMS: d.Driver.Qms, QES: d.Driver.Qes, DCOhm: d.Driver.DCOhm, Inductance: d.Driver.LeMH / 1000})
	if err != nil {
		return nil, d.Driver.DCOhm, nil // not all of it is known
	}
	return curve.At, d.Driver.DCOhm, nil
}

// impedanceFiles lists the files of a driver's impedance.
func impedanceFiles(m table.Impedance, planned func(hz float64) complex128) []file {
	f := m.Fit
	with := func(e impedancefit.Estimate) string {
		value, sigma := e.Text(1)
		return value + " ± " + sigma
	}
	lines := figure.ImpedanceLines{Title: "Impedance in " + m.Name, Measured: m.Points, Fitted: f.At, Planned: planned,
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
	points, err := readImpedance(args[0], i)
	if err != nil {
		return err
	}
	p, err := f.planned(first(args[1:]))
	if err != nil {
		return err
	}
	at := -1
	for k, one := range p.Channels {
		if one.ID == i.channel {
			at = k
		}
	}
	if at < 0 {
		return fmt.Errorf("there is no channel %d; the plan has %d", i.channel, len(p.Channels))
	}
	bank, driver, known := p.PlannedLoad(at)
	found, err := impedancefit.Compare(points, bank, driver)
	if err != nil {
		return fmt.Errorf("%s: %w", args[0], err)
	}
	below, _, _ := strings.Cut(table.LoadWords(found), ".")
	lines := figure.ImpedanceLines{Below: below, Title: fmt.Sprintf("Channel %d: %s", i.channel, filepath.Base(args[0])), Measured: points,
		Planned: func(hz float64) complex128 {
			var z [1]complex128
			bank.Load(z[:], []complex128{driver.At(hz)})
			if cmplx.IsInf(z[0]) {
				return cmplx.NaN()
			}
			return z[0]
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
