package sheets

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"image/color"
	"io"
	"pappus/layout/prose"
	"strings"
)

// WriteSVG writes the sheet as SVG 1.1, with its size in mm and one unit of its
// own to each mm.
func (s *Sheet) WriteSVG(w io.Writer) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %g %g">`+"\n",
		s.Width, s.Height, s.Width, s.Height)
	fmt.Fprintf(out, "<title>%s</title>\n", escaped(s.Title))
	fmt.Fprintf(out, `<rect width="%g" height="%g" fill="#ffffff"/>`+"\n", s.Width, s.Height)
	for _, i := range s.items {
		fmt.Fprintln(out, i.svg())
	}
	fmt.Fprintln(out, "</svg>")
	if err := out.Flush(); err != nil {
		return err
	}
	return nil
}

// svg gives an item as one element. A ten-thousandth of a mm is finer than any
// printer.
func (i item) svg() string {
	at := i.points[0]
	switch {
	case i.words != "":
		return fmt.Sprintf(`<text x="%s" y="%s" font-family="Liberation Sans, Arial, Helvetica, sans-serif" font-size="%s" text-anchor="%s" fill="%s">%s</text>`,
			prose.Trimmed(at.X, 4), prose.Trimmed(at.Y, 4), prose.Trimmed(i.size, 2), [...]string{"start", "middle", "end"}[i.anchor], hex(i.pen.colour), escaped(i.words))
	case i.radius > 0:
		return fmt.Sprintf(`<circle cx="%s" cy="%s" r="%s" %s/>`, prose.Trimmed(at.X, 4), prose.Trimmed(at.Y, 4), prose.Trimmed(i.radius, 4), i.pen.svg())
	}
	var points []string
	for _, p := range i.points {
		points = append(points, prose.Trimmed(p.X, 4)+","+prose.Trimmed(p.Y, 4))
	}
	name := "polyline"
	if i.closed {
		name = "polygon"
	}
	return fmt.Sprintf(`<%s points="%s" %s/>`, name, strings.Join(points, " "), i.pen.svg())
}

func (p pen) svg() string {
	style := `fill="none"`
	if p.fill.A > 0 {
		style = fmt.Sprintf(`fill="%s"`, hex(p.fill))
	}
	if p.width > 0 {
		style += fmt.Sprintf(` stroke="%s" stroke-width="%g" stroke-linejoin="round"`, hex(p.colour), p.width)
	}
	if p.dashes != nil {
		style += fmt.Sprintf(` stroke-dasharray="%s"`, strings.Trim(fmt.Sprint(p.dashes), "[]"))
	}
	return style
}

func hex(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

func escaped(words string) string {
	var b strings.Builder
	// A strings.Builder takes everything.
	_ = xml.EscapeText(&b, []byte(words))
	return b.String()
}
