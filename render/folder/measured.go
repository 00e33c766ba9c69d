package folder

import (
	"errors"
	"io"
	"math/cmplx"

	"pappus/layout/impedance"
	"pappus/render/figure"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
	"pappus/timing/verdict"
)

// Measured lists what recordings came to.
func Measured(p *timing.Plan, f verdict.Found) []file {
	var out []file
	if f.Channels != nil {
		out = append(out, file{Name: "channels.csv", Write: func(w io.Writer) error { return table.MeasuredChannels(w, p, *f.Channels) }})
	}
	if f.Seats != nil {
		out = append(out, file{Name: "seats.csv", Write: func(w io.Writer) error { return table.MeasuredSeats(w, *f.Seats) }})
		out = append(out, drawn("seats", func(w io.Writer, format figure.Format) error { return figure.MeasuredSeats(w, format, p, *f.Seats) })...)
	}
	if f.Level == nil {
		return out
	}
	level, whole := *f.Level, *f.Whole
	out = append(out,
		file{Name: "bands.csv", Write: func(w io.Writer) error { return table.MeasuredBands(w, level, whole) }},
		file{Name: "response.csv", Write: func(w io.Writer) error { return table.MeasuredResponse(w, whole) }})
	if turns := f.Turns; turns != nil {
		out = append(out, file{Name: "phase.csv", Write: func(w io.Writer) error { return table.MeasuredPhase(w, *turns) }})
		out = append(out, drawn("phase", func(w io.Writer, f figure.Format) error { return figure.MeasuredPhase(w, f, p, *turns) })...)
	}
	if whole.HasHarmonics() {
		out = append(out, drawn("harmonics", func(w io.Writer, f figure.Format) error { return figure.Harmonics(w, f, p, whole) })...)
	}
	out = append(out, Impulses(p.Array.Name+": measured, what is heard of a click", int(whole.Rate), func() ([]figure.Sound, error) {
		return []figure.Sound{{Words: "measured at the spot", Samples: whole.Impulse}}, nil
	})...)
	return append(out, drawn("measured", func(w io.Writer, f figure.Format) error { return figure.Measured(w, f, p, level) })...)
}

// Impedance lists what was found of a driver's impedance.
func Impedance(m impedancefit.Study) []file {
	return append(curve(figure.ImpedanceLines{Picture: words.OfImpedance(m), Measured: m.Points, Fitted: m.Fit.At, Planned: m.Planned}),
		file{Name: "fit.csv", Write: func(w io.Writer) error { return table.ImpedanceFit(w, m) }})
}

// Load lists a channel's impedance, in the file named, against the plan's at a frequency in Hz.
func Load(channel int, name string, points []impedance.Point, found impedancefit.Load, planned func(hz float64) complex128) []file {
	return curve(figure.ImpedanceLines{Picture: words.OfLoad(channel, name, found), Measured: points,
		Planned: func(hz float64) complex128 {
			if z := planned(hz); !cmplx.IsInf(z) {
				return z
			}
			return cmplx.NaN()
		}})
}

// curve lists the table and the picture of an impedance.
func curve(lines figure.ImpedanceLines) []file {
	return append([]file{ImpedanceTable("measured.csv", lines.Measured)},
		drawn("impedance", func(w io.Writer, f figure.Format) error { return figure.Impedance(w, f, lines) })...)
}

// ImpedanceTable is the table of an impedance.
func ImpedanceTable(name string, points []impedance.Point) file {
	return file{Name: name, Write: func(w io.Writer) error { return table.MeasuredImpedance(w, points) }}
}

// Tuning lists a damping log's trials; without one that has a resonance there is no picture.
func Tuning(t damping.Study) []file {
	files := []file{{Name: "trials.csv", Write: func(w io.Writer) error { return table.Trials(w, t.Trials) }}}
	next := &t.Next
	if errors.Is(t.Why, damping.ErrNoTrials) {
		return files
	}
	if t.Why != nil {
		next = nil
	}
	return append(files, drawn("tuning", func(w io.Writer, f figure.Format) error {
		return figure.Tuning(w, f, t.Name, t.Trials, t.Goal, next)
	})...)
}
