package figure

import (
	"math"
	"math/cmplx"
	"os"
	"path/filepath"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/render/words"
	"pappus/testdata/reference"
	"pappus/timing/air"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// picturesIn names the folder that pictures for documents are drawn into.
const picturesIn = "PICTURES"

// pistonPolar is the level in dB over that of a point source of one driver on the top face of
// a dodecahedron of 150 mm, 2 m from its middle at 2 kHz: at angles from the face's axis in rad,
// above 0 over the middle of one of its edges, below over a corner.
type pistonPolar struct {
	angle, ball, body []float64
	at, given         []float64 // of the solutions done apart
}

// TestBodyPolar draws one driver on a dodecahedron by the ball, by the body and by solutions done
// apart, where the environment names a folder for it.
func TestBodyPolar(t *testing.T) {
	folder := os.Getenv(picturesIn)
	if folder == "" {
		t.Skipf("%s names no folder", picturesIn)
	}
	p := pistonPolar{}
	for degrees := -180.0; degrees < 180; degrees++ {
		p.angle = append(p.angle, degrees*math.Pi/180)
	}
	p.ball, p.body = p.levels(t, radiate.SphereModel), p.levels(t, radiate.BodyModel)
	rows, err := reference.Table("faceted_given.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if row["body"] == "dodecahedron" && row.Float("frequency_hz") == 2000 {
			side := 1.0
			if row.Float("plane_deg") == 0 {
				side = -1
			}
			p.at = append(p.at, side*row.Float("angle_deg")*math.Pi/180)
			p.given = append(p.given, 20*math.Log10(math.Hypot(row.Float("re"), row.Float("im"))))
		}
	}
	f, err := os.Create(filepath.Join(folder, "dodecahedron_2k.png"))
	if err != nil {
		t.Fatal(err)
	}
	if err := write(f, PNG, p.paint); err != nil {
		t.Error(err)
	}
	if err := f.Close(); err != nil {
		t.Error(err)
	}
}

// levels returns those of a model.
func (p *pistonPolar) levels(t *testing.T, model string) []float64 {
	t.Helper()
	b, err := body.Platonic("dodecahedron", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	top := 0
	for f := range b.Faces {
		if b.Normal(f).Z > b.Normal(top).Z {
			top = f
		}
	}
	a := &layout.Array{Body: b, Driver: layout.Driver{ConeRadius: 0.025}, Timing: layout.Timing{Model: model, SolveTo: 3000},
		Mounts: []layout.Mount{{ID: 1, Point: b.Centroid(top), Normal: b.Normal(top), Face: top}}}
	state := air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}
	s, err := radiate.NewScene(a, radiate.NewMedium(state, []float64{2000 * state.SpeedOfSound() / 343.2}).WithoutLoss())
	if err != nil {
		t.Fatal(err)
	}
	axis := b.Normal(top)
	corner := b.Vertices[b.Faces[top].Corners[0]]
	corner = r3.Unit(r3.Sub(corner, r3.Scale(r3.Dot(corner, axis), axis)))
	var out []float64
	one := make([]complex128, 1)
	for _, angle := range p.angle {
		sin, cos := math.Sincos(angle) // five corners: opposite of one is the middle of an edge
		s.Field.At(one, a.Mounts, r3.Add(r3.Scale(2*cos, axis), r3.Scale(-2*sin, corner)))
		out = append(out, 20*math.Log10(2*cmplx.Abs(one[0])))
	}
	return out
}

func (p *pistonPolar) paint(c draw.Canvas) {
	c = heading(c, words.Picture{Title: "One driver on a dodecahedron at 2 kHz",
		Below: "Level in dB over that of a point source, 2 m from the middle of a body of 150 mm radius; a cone of 25 mm; left over an edge's middle, right over a corner"})
	d := dial{centre: vg.Point{X: c.Center().X, Y: (c.Max.Y + c.Min.Y + 24) / 2}, top: 12, zero: math.Pi / 2}
	d.radius = min(c.Size().X, c.Size().Y-24)/2 - 20
	d.grid(&c, false)
	d.numbers(&c) // below the lines: one of the places lies there
	ball, own := stroke(1, 1.8), stroke(0, 1.8)
	c.StrokeLines(ball, d.lines(p.angle, p.ball)...)
	c.StrokeLines(own, d.lines(p.angle, p.body)...)
	dot := draw.GlyphStyle{Color: ink, Radius: 3, Shape: draw.CircleGlyph{}}
	for i, angle := range p.at {
		c.DrawGlyph(dot, d.at(angle, p.given[i]))
	}
	legend := []entry{ofLine("model = \"sphere\"", ball), ofLine("model = \"body\"", own), ofMark("solved by another program", dot)}
	below := draw.Crop(c, max(0, (c.Size().X-wideOf(legend))/2), 0, 0, 0)
	below.Max.Y = c.Min.Y + 20
	legendAbove(below, legend)
}
