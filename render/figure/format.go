package figure

import (
	"errors"
	"fmt"
	"image/png"
	"io"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// nothing tells that there is nothing to draw in a picture.
func nothing(picture string) error { return errors.New(picture + ": nothing to draw") }

// Format is the kind of file that a picture becomes.
type Format string

// The formats there are.
const (
	PNG Format = "png"
	SVG Format = "svg"
)

// The size of every picture; at 144 dots to the inch 1400 by 900 dots.
const (
	width  = vg.Length(700)
	height = vg.Length(450)
	dpi    = 144
	margin = vg.Length(18)
)

// write draws a picture inside of its margins and writes it.
func write(w io.Writer, f Format, paint func(draw.Canvas)) error {
	switch f {
	case PNG:
		c := vgimg.NewWith(vgimg.UseWH(width, height), vgimg.UseDPI(dpi))
		paint(inside(draw.New(c)))
		// The usual level takes several times as long for a few kilobytes.
		encoder := png.Encoder{CompressionLevel: png.BestSpeed}
		if err := encoder.Encode(w, c.Image()); err != nil {
			return fmt.Errorf("writing a png: %w", err)
		}
	case SVG:
		c := vgsvg.New(width, height)
		page := draw.New(c)
		page.SetColor(paper)
		page.Fill(page.Rectangle.Path())
		paint(inside(page))
		if _, err := c.WriteTo(w); err != nil {
			return fmt.Errorf("writing an svg: %w", err)
		}
	default:
		return fmt.Errorf("no such picture format: %q, there are %q and %q", f, PNG, SVG)
	}
	return nil
}

func inside(c draw.Canvas) draw.Canvas {
	return draw.Crop(c, margin, -margin, margin, -margin)
}
