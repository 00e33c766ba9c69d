package main

import (
	"io"
	"runtime"
	"sync"

	"pappus/render/figure"
	"pappus/timing"
	"pappus/timing/band"
)

var workers = runtime.GOMAXPROCS(0)

// drawn lists a picture as PNG and as SVG.
func drawn(name string, draw func(io.Writer, figure.Format) error) []file {
	var out []file
	for _, f := range []figure.Format{figure.PNG, figure.SVG} {
		out = append(out, file{name + "." + string(f), func(w io.Writer) error { return draw(w, f) }})
	}
	return out
}

// channelPictures lists the pictures of what the channels are set to.
func channelPictures(p *timing.Plan) []file {
	out := drawn("counts", func(w io.Writer, f figure.Format) error { return figure.Counts(w, f, p) })
	if len(p.Front) > 1 {
		out = append(out, drawn("front", func(w io.Writer, f figure.Format) error { return figure.Front(w, f, p) })...)
	}
	if len(p.Protection.Excursion) > 0 {
		out = append(out, drawn("excursion", func(w io.Writer, f figure.Format) error { return figure.Excursion(w, f, p) })...)
	}
	if p.Array.Woofer.Present {
		woofer := sync.OnceValues(func() (timing.Woofer, error) { return timing.WithWoofer(p) })
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

// pictures lists the pictures of a plan, each as PNG and as SVG.
func pictures(p *timing.Plan, survey *timing.Survey) []file {
	var out []file
	add := func(name string, draw func(io.Writer, figure.Format) error) { out = append(out, drawn(name, draw)...) }
	add("response", func(w io.Writer, f figure.Format) error { return figure.Response(w, f, p) })
	add("arrivals", func(w io.Writer, f figure.Format) error { return figure.Arrivals(w, f, p) })
	out = append(out, channelPictures(p)...)
	add("ways", func(w io.Writer, f figure.Format) error { return figure.Ways(w, f, p) })
	add("polar_horizontal", func(w io.Writer, f figure.Format) error { return figure.Polar(w, f, p, p.Horizontal, false) })
	add("polar_vertical", func(w io.Writer, f figure.Format) error { return figure.Polar(w, f, p, p.Vertical, true) })
	for _, s := range []struct {
		name     string
		coverage *timing.Coverage
	}{{"coverage_above_", survey.Above}, {"coverage_side_", survey.Side}} {
		c := s.coverage
		for b, centre := range c.Band {
			if centre > 400 && centre < 5000 { // the four octaves that speech and timing live in
				add(s.name+band.Name(centre), func(w io.Writer, f figure.Format) error {
					return figure.Coverage(w, f, p, c, figure.Level(c, b))
				})
			}
		}
		add(s.name+"smear", func(w io.Writer, f figure.Format) error {
			return figure.Coverage(w, f, p, c, figure.Smear(c))
		})
		add(s.name+"comb_onset", func(w io.Writer, f figure.Format) error {
			return figure.Coverage(w, f, p, c, figure.CombOnset(c))
		})
	}
	return out
}
