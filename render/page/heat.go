package page

import (
	"context"
	"math"
	"slices"

	"pappus/render/document"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/gonum/spatial/r3"
)

// quantity is what a map may show.
type quantity struct {
	name   string
	is     timing.Quantity
	unit   string
	scale  float64
	places int
}

var quantities = []quantity{
	{"level", timing.LiveLevel, "dB", 1, 2},
	{"summing_loss", timing.LiveSummingLoss, "dB", 1, 2},
	{"smear", timing.LiveSmear, "us", 1e6, 1},
	{"comb_onset", timing.LiveCombOnset, "Hz", 1, 0},
	{"loss", timing.LiveLoss, "dB", 1, 2},
}

// heat is a map of a quantity. Along and up are measured from the body's axis and centre.
type heat struct {
	Columns int              `json:"columns"`
	Rows    int              `json:"rows"`
	Low     [2]number        `json:"low_m"` // outer edges along and up
	High    [2]number        `json:"high_m"`
	Step    number           `json:"step_m"`
	Unit    string           `json:"unit"`
	Most    number           `json:"most_hz,omitempty"` // held by cells without a comb onset
	Values  document.Numbers `json:"values"`            // row by row, lowest first; null: no sound can be there
}

// mapOf is a map that can be filled again while its slice stays.
type mapOf struct {
	slice     timing.Slice
	quantity  timing.Quantity
	centre    float64
	perOctave int
}

// draw fills the map that a move asks for.
func (s *session) draw(ctx context.Context, p *timing.Spot, m move) (*heat, error) {
	at := slices.IndexFunc(quantities, func(q quantity) bool { return q.name == m.Quantity })
	q := quantities[at]
	of := mapOf{slice: timing.HorizontalSlice(p.WithCells(m.Cells)), quantity: q.is, perOctave: dragOctave}
	if m.View == "side" {
		of.slice = timing.VerticalSlice(p.WithCells(m.Cells))
	}
	if m.rests() {
		of.perOctave = restOctave
	}
	if q.is == timing.LiveLevel || q.is == timing.LiveSummingLoss {
		of.centre = nearestOctave(m.Band)
	}
	live, err := s.live(ctx, p, of)
	if err != nil {
		return nil, err
	}
	n := of.slice.Columns * of.slice.Rows
	s.values = slices.Grow(s.values[:0], n)[:n]
	if err := live.Fill(ctx, s.values, p); err != nil {
		return nil, err
	}
	return heatOf(of.slice, q, s.values), nil
}

// heatOf is a filled slice as the page has it.
func heatOf(s timing.Slice, q quantity, values []float64) *heat {
	x, y := r3.Dot(s.Origin, s.Right)-s.Step/2, r3.Dot(s.Origin, s.Up)-s.Step/2
	out := &heat{
		Columns: s.Columns, Rows: s.Rows, Step: document.To(6, s.Step), Unit: q.unit,
		Low:    [2]number{document.To(6, x), document.To(6, y)},
		High:   [2]number{document.To(6, x+float64(s.Columns)*s.Step), document.To(6, y+float64(s.Rows)*s.Step)},
		Values: make(document.Numbers, len(values)),
	}
	if q.is == timing.LiveCombOnset {
		octaves := band.Octaves()
		_, high := band.Edges(octaves[len(octaves)-1], 1)
		out.Most = document.To(0, high)
	}
	for i, v := range values {
		if out.Values[i] = document.To(q.places, q.scale*v); out.Most > 0 && math.IsInf(v, 1) {
			out.Values[i] = out.Most
		}
	}
	return out
}

// nearestOctave returns the exact centre of the octave that is nearest; that of
// 1 kHz where none is asked for.
func nearestOctave(hz float64) float64 {
	if hz == 0 {
		hz = 1000
	}
	return slices.MinFunc(band.Octaves(), func(a, b float64) int {
		if math.Abs(math.Log(a/hz)) < math.Abs(math.Log(b/hz)) {
			return -1
		}
		return 1
	})
}

// drift is how far, in cells, a slice may be off while the spot is dragged: an
// upright slice turns a little when the spot's place is rounded.
const drift = 0.05

// alike tells whether one map may stand for another.
func (m mapOf) alike(n mapOf) bool {
	a, b := m.slice, n.slice
	if m.quantity != n.quantity || m.centre != n.centre || m.perOctave != n.perOctave || a.Columns != b.Columns || a.Rows != b.Rows || a.Step != b.Step {
		return false
	}
	for _, corner := range [][2]int{{0, 0}, {a.Columns, 0}, {0, a.Rows}, {a.Columns, a.Rows}} {
		if r3.Norm(r3.Sub(a.Point(corner[0], corner[1]), b.Point(corner[0], corner[1]))) > drift*a.Step {
			return false
		}
	}
	return true
}

// live returns a map, one that is kept if there is one.
func (s *session) live(ctx context.Context, p *timing.Spot, of mapOf) (*timing.Live, error) {
	for _, kept := range s.maps.Keys() {
		if kept.alike(of) {
			live, _ := s.maps.Get(kept)
			return live, nil
		}
	}
	made, err := timing.NewLive(ctx, p, of.slice, of.quantity, of.centre, of.perOctave)
	if err == nil {
		s.maps.Add(of, made)
	}
	return made, err
}
