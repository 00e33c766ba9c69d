package sheets

import (
	"fmt"
	"io"
	"time"

	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-pdf/fpdf"
)

const typeface = "Liberation Sans"

// made is the date that stands in each file, so that the same design gives the
// same bytes.
var made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// WritePDF writes sheets as the pages of one PDF, each in its own size.
func WritePDF(w io.Writer, title string, sheets ...*Sheet) error {
	doc := fpdf.New("P", "mm", "A4", "")
	doc.SetCreationDate(made)
	doc.SetModificationDate(made)
	doc.SetCatalogSort(true)
	doc.SetTitle(title, true)
	doc.SetAutoPageBreak(false, 0)
	doc.SetLineJoinStyle("round")
	doc.AddUTF8FontFromBytes(typeface, "", liberationsansregular.TTF)
	for _, s := range sheets {
		doc.AddPageFormat("P", fpdf.SizeType{Wd: s.Width, Ht: s.Height})
		for _, i := range s.items {
			i.pdf(doc)
		}
	}
	if err := doc.Output(w); err != nil {
		return fmt.Errorf("writing a pdf: %w", err)
	}
	return nil
}

const pointsToMM = 25.4 / 72

func (i item) pdf(doc *fpdf.Fpdf) {
	at, c := i.points[0], i.pen.colour
	if i.words != "" {
		doc.SetTextColor(int(c.R), int(c.G), int(c.B))
		doc.SetFont(typeface, "", i.size/pointsToMM)
		doc.Text(at.X-float64(i.anchor)/2*doc.GetStringWidth(i.words), at.Y, i.words)
		return
	}
	doc.SetDrawColor(int(c.R), int(c.G), int(c.B))
	doc.SetFillColor(int(i.pen.fill.R), int(i.pen.fill.G), int(i.pen.fill.B))
	doc.SetLineWidth(i.pen.width)
	doc.SetDashPattern(i.pen.dashes, 0)
	style := ""
	if i.pen.fill.A > 0 {
		style = "F"
	}
	if i.pen.width > 0 {
		style += "D"
	}
	switch {
	case i.radius > 0:
		doc.Circle(at.X, at.Y, i.radius, style)
	case i.closed:
		points := make([]fpdf.PointType, len(i.points))
		for k, p := range i.points {
			points[k] = fpdf.PointType{X: p.X, Y: p.Y}
		}
		doc.Polygon(points, style)
	default:
		doc.MoveTo(at.X, at.Y)
		for _, p := range i.points[1:] {
			doc.LineTo(p.X, p.Y)
		}
		doc.DrawPath("D")
	}
}
