package figure

import (
	"image/color"

	"gonum.org/v1/plot"
	fonts "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The greys of the page.
var (
	paper = color.NRGBA{255, 255, 255, 255}
	ink   = color.NRGBA{40, 40, 40, 255}
	quiet = color.NRGBA{105, 105, 105, 255}
	rule  = color.NRGBA{222, 222, 222, 255}
	solid = color.NRGBA{214, 214, 214, 255} // the inside of the body
	mist  = color.NRGBA{255, 255, 255, 215} // behind words on a coloured ground
)

// colours are those of Okabe and Ito (2008) that show on white paper.
var colours = [...]color.NRGBA{
	{0, 114, 178, 255},   // blue
	{213, 94, 0, 255},    // vermilion
	{0, 158, 115, 255},   // bluish green
	{204, 121, 167, 255}, // reddish purple
	{230, 159, 0, 255},   // orange
	{86, 180, 233, 255},  // sky blue
	{0, 0, 0, 255},       // black
}

// dashes go with colours, lengths in points.
var dashes = [...][]vg.Length{
	nil,
	{7, 3},
	{2, 2},
	{9, 3, 2, 3},
	{4, 2},
	{12, 3},
	{9, 3, 2, 3, 2, 3},
}

// stroke returns the nth line style; after len(colours) styles the dashes
// shift, so that 49 curves differ.
func stroke(n int, wide vg.Length) draw.LineStyle {
	n = n % (len(colours) * len(dashes))
	return draw.LineStyle{
		Color:  colours[n%len(colours)],
		Width:  wide,
		Dashes: dashes[(n+n/len(colours))%len(dashes)],
	}
}

// dotted is the line of an aim or a limit.
func dotted(wide vg.Length) draw.LineStyle {
	return draw.LineStyle{Color: quiet, Width: wide, Dashes: dashes[2]}
}

// edge is the line at the edge of what a level may be.
var edge = draw.LineStyle{Color: colours[2], Width: 1, Dashes: dashes[1]}

func faint(c color.NRGBA) color.NRGBA {
	c.A = 95
	return c
}

// font returns a text style; its anchor is at the left of the base line.
func font(size vg.Length, c color.Color) text.Style {
	return text.Style{
		Color:   c,
		Font:    fonts.From(fonts.Font{Typeface: "Liberation", Variant: "Sans"}, size),
		XAlign:  draw.XLeft,
		YAlign:  draw.YBottom,
		Handler: plot.DefaultTextHandler,
	}
}

// lift in points sets words centred on a mark by their small letters, not by
// their descenders.
const lift = 1

// aligned returns a text style with its anchor elsewhere.
func aligned(s text.Style, x text.XAlignment, y text.YAlignment) text.Style {
	s.XAlign, s.YAlign = x, y
	return s
}

// label writes on a coloured ground.
func label(c *draw.Canvas, s text.Style, at vg.Point, words string) {
	r := s.Rectangle(words).Add(at)
	r.Min.X, r.Min.Y, r.Max.X, r.Max.Y = r.Min.X-3, r.Min.Y-2, r.Max.X+3, r.Max.Y+2
	c.SetColor(mist)
	c.Fill(r.Path())
	c.FillText(s, at, words)
}
