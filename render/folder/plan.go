package folder

import (
	"io"
	"slices"
	"sync"

	"pappus/layout"
	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/outdir"
	"pappus/render/sheets"
	"pappus/render/table"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/limiter"
)

type file = outdir.File

// drawn lists a picture as PNG and as SVG.
func drawn(name string, draw func(io.Writer, figure.Format) error) []file {
	var out []file
	for _, f := range []figure.Format{figure.PNG, figure.SVG} {
		out = append(out, file{Name: name + "." + string(f), Write: func(w io.Writer) error { return draw(w, f) }})
	}
	return out
}

// Plan lists plan.json, the tables and the pictures of a plan and what was surveyed.
func Plan(p *timing.Plan, survey *timing.Survey) ([]file, error) {
	rows, err := timing.Processor(p, nil)
	if err != nil {
		return nil, err
	}
	files := []file{
		{Name: "plan.json", Write: func(w io.Writer) error { return document.Write(w, document.OfPlan(p, survey)) }},
		{Name: "delays.csv", Write: func(w io.Writer) error { return table.Delays(w, p) }},
		loads(p),
		{Name: "phase.csv", Write: func(w io.Writer) error { return table.Phase(w, p) }},
		{Name: "octaves.csv", Write: func(w io.Writer) error { return table.Octaves(w, survey) }},
		{Name: "choices.csv", Write: func(w io.Writer) error { return table.Choices(w, p) }},
	}
	files = append(append(files, channelTables(p, rows)...), stringTables(p)...)
	files = append(files, seats(p)...)
	return append(files, pictures(p, survey)...), nil
}

// seats lists what seats lose; nothing where there are fewer than two.
func seats(p *timing.Plan) []file {
	if p.Seating == nil {
		return nil
	}
	files := []file{
		{Name: "seats.csv", Write: func(w io.Writer) error { return table.Seats(w, p) }},
		{Name: "seats_thirds.csv", Write: func(w io.Writer) error { return table.SeatThirds(w, p) }},
		{Name: "seats_counts.csv", Write: func(w io.Writer) error { return table.SeatCounts(w, p) }},
		{Name: "seats_strings.csv", Write: func(w io.Writer) error { return table.SeatStrings(w, p) }},
	}
	files = append(files, drawn("seats", func(w io.Writer, f figure.Format) error { return figure.Seats(w, f, p) })...)
	files = append(files, drawn("seats_thirds", func(w io.Writer, f figure.Format) error { return figure.SeatThirds(w, f, p) })...)
	if p.Seating.Round != nil {
		files = append(files,
			file{Name: "round.csv", Write: func(w io.Writer) error { return table.Round(w, p) }},
			file{Name: "round_front.csv", Write: func(w io.Writer) error { return table.RoundFront(w, p) }})
		files = append(files, drawn("round", func(w io.Writer, f figure.Format) error { return figure.Round(w, f, p) })...)
		files = append(files, drawn("polar_horizontal_as_built", func(w io.Writer, f figure.Format) error { return figure.PolarAsBuilt(w, f, p, p.Horizontal, false) })...)
		files = append(files, drawn("polar_vertical_as_built", func(w io.Writer, f figure.Format) error { return figure.PolarAsBuilt(w, f, p, p.Vertical, true) })...)
	}
	if len(p.Seating.Counts) > 0 && p.Seating.Round == nil {
		files = append(files, drawn("seats_counts", func(w io.Writer, f figure.Format) error { return figure.SeatCounts(w, f, p) })...)
	}
	return files
}

// Channels lists what each channel is set to.
func Channels(p *timing.Plan, rows []timing.ProcessorRow) []file {
	return slices.Concat([]file{loads(p)}, channelTables(p, rows), seats(p), channelPictures(p))
}

// Wiring lists how drivers are strung.
func Wiring(p *timing.Plan) []file {
	return append([]file{wiringBook(p), loads(p)}, stringTables(p)...)
}

// wiringBook is what the drivers are wired by.
func wiringBook(p *timing.Plan) file {
	return file{Name: "wiring.pdf", Write: func(w io.Writer) error {
		return sheets.WritePDF(w, p.Array.Name, sheets.WiringBook(p)...)
	}}
}

// Limits lists what limiters are set to, and how long music may be heard.
func Limits(l limiter.Limits) []file {
	return []file{
		{Name: "limits.csv", Write: func(w io.Writer) error { return table.Limits(w, l.Channels) }},
		{Name: "music.csv", Write: func(w io.Writer) error { return table.Music(w, l.Music) }},
		{Name: "listening.csv", Write: func(w io.Writer) error { return table.Listening(w, l.Places) }},
	}
}

// Processor lists the tables to set the processor by.
func Processor(p *timing.Plan, rows []timing.ProcessorRow) []file {
	return []file{
		{Name: "processor.csv", Write: func(w io.Writer) error { return table.Processor(w, rows, p.Array.Processor.Rate) }},
		{Name: "processor.json", Write: func(w io.Writer) error {
			channels, err := document.OfChannels(p, rows)
			if err != nil {
				return err
			}
			return document.Write(w, channels)
		}},
		{Name: "rounding.csv", Write: func(w io.Writer) error { return table.Rounding(w, p.Rounding) }},
	}
}

// Level lists what makes the spot's level even, but for the filters as sound files.
func Level(p *timing.Plan, l timing.Levelling, c timing.Correction) ([]file, error) {
	rows, err := timing.Processor(p, l.Sections)
	if err != nil {
		return nil, err
	}
	files := append([]file{
		{Name: "level.csv", Write: func(w io.Writer) error { return table.Level(w, l) }},
		{Name: "sections.csv", Write: func(w io.Writer) error { return table.Sections(w, c) }},
	}, Processor(p, rows)...)
	return append(files, drawn("level", func(w io.Writer, f figure.Format) error { return figure.Levelling(w, f, p, l) })...), nil
}

// Comparison lists the pictures of several plans.
func Comparison(designs []timing.Candidate) []file {
	var plans []*timing.Plan
	for _, d := range designs {
		plans = append(plans, d.Plan)
	}
	out := drawn("comparison", func(w io.Writer, f figure.Format) error { return figure.Compare(w, f, plans) })
	if slices.ContainsFunc(plans, func(p *timing.Plan) bool { return p.Seating != nil }) {
		out = append(out, drawn("seats", func(w io.Writer, f figure.Format) error { return figure.CompareSeats(w, f, designs) })...)
	}
	return out
}

// loads is the table of channels with their loads.
func loads(p *timing.Plan) file {
	return file{Name: "channels.csv", Write: func(w io.Writer) error { return table.Channels(w, p) }}
}

func channelTables(p *timing.Plan, rows []timing.ProcessorRow) []file {
	return append([]file{
		{Name: "counts.csv", Write: func(w io.Writer) error { return table.Counts(w, p) }},
		{Name: "front.csv", Write: func(w io.Writer) error { return table.Front(w, p) }},
		{Name: "highest.csv", Write: func(w io.Writer) error { return table.Highest(w, p) }},
	}, Processor(p, rows)...)
}

func stringTables(p *timing.Plan) []file {
	return []file{
		{Name: "strings.csv", Write: func(w io.Writer) error { return table.Strings(w, p) }},
		{Name: "deaths.csv", Write: func(w io.Writer) error {
			deaths, err := timing.EveryDeath(p)
			if err != nil {
				return err
			}
			return table.Deaths(w, p, deaths)
		}},
		{Name: "arrangements.csv", Write: func(w io.Writer) error { return table.Arrangements(w, timing.Stringings(p)) }},
	}
}

func channelPictures(p *timing.Plan) []file {
	var out []file
	if len(p.Counts) > 0 {
		out = drawn("counts", func(w io.Writer, f figure.Format) error { return figure.Counts(w, f, p) })
	}
	if len(p.Front) > 1 {
		out = append(out, drawn("front", func(w io.Writer, f figure.Format) error { return figure.Front(w, f, p) })...)
	}
	if len(p.Maximum.Excursion) > 0 {
		out = append(out, drawn("excursion", func(w io.Writer, f figure.Format) error { return figure.Excursion(w, f, p) })...)
	}
	if p.Array.Woofer.Present {
		woofer := sync.OnceValues(func() (timing.Woofer, error) { return timing.WithWoofer(&p.Spot) })
		out = append(out, drawn("woofer", func(w io.Writer, f figure.Format) error {
			x, err := woofer()
			if err != nil {
				return err
			}
			return figure.Woofer(w, f, p, x)
		})...)
	}
	return out
}

// mapped tells whether the map of an octave's level is drawn: those that speech and timing
// live in. The exact centre of a band, in Hz, is near its nominal one.
func mapped(centre float64) bool {
	return centre > 0.9*layout.WeightLowHz && centre < 1.1*layout.WeightHighHz
}

func pictures(p *timing.Plan, survey *timing.Survey) []file {
	var out []file
	add := func(name string, draw func(io.Writer, figure.Format) error) { out = append(out, drawn(name, draw)...) }
	add("response", func(w io.Writer, f figure.Format) error { return figure.Response(w, f, p) })
	add("phase", func(w io.Writer, f figure.Format) error { return figure.Phase(w, f, p) })
	add("arrivals", func(w io.Writer, f figure.Format) error { return figure.Arrivals(w, f, p) })
	out = append(out, channelPictures(p)...)
	add("ways", func(w io.Writer, f figure.Format) error { return figure.Ways(w, f, p) })
	add("polar_horizontal", func(w io.Writer, f figure.Format) error { return figure.Polar(w, f, p, p.Horizontal, false) })
	add("polar_vertical", func(w io.Writer, f figure.Format) error { return figure.Polar(w, f, p, p.Vertical, true) })
	for _, s := range []struct {
		name string
		of   *timing.Coverage
	}{{"coverage_above_", survey.Above}, {"coverage_side_", survey.Side}} {
		covered := func(name string, q figure.Quantity) {
			add(s.name+name, func(w io.Writer, f figure.Format) error { return figure.Coverage(w, f, p, s.of, q) })
		}
		for b, centre := range s.of.Band {
			if mapped(centre) {
				covered(band.Name(centre), figure.Level(s.of, b))
			}
		}
		if p.Seating != nil {
			covered("loss", figure.Loss(s.of))
		}
		covered("smear", figure.Smear(s.of))
		covered("comb_onset", figure.CombOnset(s.of))
	}
	return out
}
