package page

import (
	"encoding/binary"
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
	{"direct_level", timing.LiveDirectLevel, "dB", 1, 2},
	{"summing_loss", timing.LiveSummingLoss, "dB", 1, 2},
	{"smear", timing.LiveSmear, "us", 1e6, 1},
	{"comb_onset", timing.LiveCombOnset, "Hz", 1, 0},
	{"loss", timing.LiveLoss, "dB", 1, 2},
}

// strip is a part of a map of a quantity. Along and up are measured from the body's axis and
// centre. Its cells are those whose column c and row r of so many C and R have
// from <= max(|2c+1-C|, |2r+1-R|) < to, row after row, lowest first.
type strip struct {
	Columns int       `json:"columns"`
	Rows    int       `json:"rows"`
	Low     [2]number `json:"low_m"` // outer edges along and up
	High    [2]number `json:"high_m"`
	Unit    string    `json:"unit"`
	Most    number    `json:"most_hz,omitempty"` // held by cells without a comb onset
	Fine    bool      `json:"fine,omitempty"`    // of the map of a chair at rest
	Last    bool      `json:"last,omitempty"`    // of the map
	From    int       `json:"from"`
	To      int       `json:"to"`
	Least   int       `json:"least"` // a cell's value is (least + its number) / per
	Per     float64   `json:"per"`
	Cells   []byte    `json:"cells" ts:"string"` // numbers of two bytes, the low one first, in base64; 65535: no sound can be there
}

// mapOf is a map that can be filled again while its slice stays.
type mapOf struct {
	slice     timing.Slice
	quantity  timing.Quantity
	centre    float64
	perOctave int
	own       bool // each place with its own delays
}

// silent is the number of a cell where no sound can be.
const silent = math.MaxUint16

// stripOf is a filled strip of a slice as the page has it: values as its quantity rounds them,
// or to ten times that, and so on, where they are further apart than two bytes can tell.
func stripOf(s timing.Slice, q quantity, part timing.Strip, values []float64) *strip {
	x, y := r3.Dot(s.Origin, s.Right)-s.Step/2, r3.Dot(s.Origin, s.Up)-s.Step/2
	out := &strip{
		Columns: s.Columns, Rows: s.Rows, Unit: q.unit, From: part.From, To: part.To,
		Low:  [2]number{document.To(6, x), document.To(6, y)},
		High: [2]number{document.To(6, x+float64(s.Columns)*s.Step), document.To(6, y+float64(s.Rows)*s.Step)},
	}
	top := math.Inf(1)
	if q.is == timing.LiveCombOnset {
		octaves := band.Octaves()
		_, top = band.Edges(octaves[len(octaves)-1], 1)
		out.Most = document.To(0, top)
	}
	var cells []float64
	for cell := range values {
		if part.Has(s, cell) {
			cells = append(cells, q.scale*min(values[cell], top))
		}
	}
	out.number(cells, math.Pow10(q.places))
	return out
}

// number puts values into numbers, so many to one.
func (s *strip) number(values []float64, per float64) {
	least, most := math.Inf(1), math.Inf(-1)
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			least, most = min(least, math.Round(v*per)), max(most, math.Round(v*per))
		}
	}
	if most-least >= silent {
		s.number(values, per/10)
		return
	}
	s.Per, s.Cells = per, make([]byte, 0, 2*len(values))
	if least <= most {
		s.Least = int(least)
	}
	for _, v := range values {
		n := uint16(silent)
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			n = uint16(math.Round(v*per) - least)
		}
		s.Cells = binary.LittleEndian.AppendUint16(s.Cells, n)
	}
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
	if m.quantity != n.quantity || m.own != n.own || m.centre != n.centre || m.perOctave != n.perOctave || a.Columns != b.Columns || a.Rows != b.Rows || a.Step != b.Step {
		return false
	}
	for _, corner := range [][2]int{{0, 0}, {a.Columns, 0}, {0, a.Rows}, {a.Columns, a.Rows}} {
		if r3.Norm(r3.Sub(a.Point(corner[0], corner[1]), b.Point(corner[0], corner[1]))) > drift*a.Step {
			return false
		}
	}
	return true
}
