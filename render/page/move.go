package page

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	mostCells  = 96
	dragCells  = 32 // up to as many the spot is being dragged
	mostMaps   = 4  // that a session keeps
	dragOctave = 5  // frequencies in each octave while dragging
	restOctave = 12 // and at rest
)

// move is a message that asks for a spot.
type move struct {
	Seq      int64   `json:"seq"`
	ID       string  `json:"id"`
	Spot     triple  `json:"spot_m"`
	View     string  `json:"view"`
	Quantity string  `json:"quantity"`
	Band     float64 `json:"band_hz"`
	Cells    int     `json:"cells"`
}

// rests tells whether the spot is no longer being dragged.
func (m move) rests() bool { return m.Cells > dragCells }

// check tells what a message asks that cannot be.
func (m move) check() error {
	switch {
	case m.Cells < 0 || m.Cells > mostCells:
		return fmt.Errorf("cells = %d: must be from 0 to %d", m.Cells, mostCells)
	case m.Cells > 0 && m.Cells < 4:
		return fmt.Errorf("cells = %d: must be 4 or more, or 0 for no map", m.Cells)
	case m.View != "" && m.View != "above" && m.View != "side":
		return errors.New("view: must be above or side")
	case m.Quantity != "" && !slices.ContainsFunc(quantities, func(q quantity) bool { return q.name == m.Quantity }):
		return errors.New("quantity: must be level, smear, comb_onset or summing_loss")
	case m.Band != 0 && !(m.Band >= 80 && m.Band <= 12000):
		return fmt.Errorf("band_hz = %g: must be from 80 to 12000", m.Band)
	}
	for _, v := range m.Spot {
		if !(math.Abs(v) <= 100) {
			return errors.New("spot_m: must be within 100 m")
		}
	}
	return nil
}

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
}

// moved is the answer to a move.
type moved struct {
	Seq      int64        `json:"seq"`
	Unknown  bool         `json:"unknown,omitempty"`
	Fault    string       `json:"fault,omitempty"`
	Error    string       `json:"error,omitempty"`
	Spot     *triple      `json:"spot_m,omitempty"`
	Drivers  []heard      `json:"drivers,omitempty"`
	Channels []set        `json:"channels,omitempty"`
	Response *response    `json:"response,omitempty"`
	Measures *bothWays    `json:"measures,omitempty"`
	Echoes   []echo       `json:"echoes,omitempty"`
	Polar    *polar       `json:"polar,omitempty"`
	Map      *coverageMap `json:"map,omitempty"`
}

type heard struct {
	ID       int    `json:"id"`
	Channel  int    `json:"channel"`
	Delay    number `json:"delay_us"`
	Level    number `json:"level_db"`
	Arrival  number `json:"arrival_us"`
	Path     number `json:"path_m"`
	Straight number `json:"straight_path_m"`
	Seen     bool   `json:"seen"`
}

type set struct {
	ID      int    `json:"id"`
	Drivers []int  `json:"drivers"`
	Delay   number `json:"delay_us"` // what can be set
	Exact   number `json:"exact_us"`
	Gain    number `json:"gain_db"`
}

type response struct {
	Frequency numbers `json:"frequency_hz"`
	Unaligned numbers `json:"unaligned_db"`
	Aligned   numbers `json:"aligned_db"`
	InStep    numbers `json:"in_step_db"`
}

type bothWays struct {
	Aligned   figures `json:"aligned"`
	Unaligned figures `json:"unaligned"`
}

type figures struct {
	Smear     number `json:"smear_us"`
	Spread    number `json:"spread_us"`
	CombOnset number `json:"comb_onset_hz"`
}

// echo is what a surface does to the sound at the spot: see timing.Echo.
type echo struct {
	Wall    string `json:"by"`
	Extra   number `json:"extra_mm"`
	Late    number `json:"late_us"`
	Dip     number `json:"dip_hz"`
	Depth   number `json:"depth_db"`
	At      triple `json:"at_m"`
	Nearer  number `json:"dip_100_mm_nearer_hz"`
	Further number `json:"dip_100_mm_further_hz"`
}

type polar struct {
	Angle numbers   `json:"angle_deg"`
	Band  numbers   `json:"band_hz"`
	Level []numbers `json:"level_db"`     // with the delays
	As    []numbers `json:"unaligned_db"` // and without
}

type coverageMap struct {
	Columns int        `json:"columns"`
	Rows    int        `json:"rows"`
	Low     [2]float64 `json:"low_m"`
	High    [2]float64 `json:"high_m"`
	Step    float64    `json:"step_m"`
	Unit    string     `json:"unit"`
	Most    float64    `json:"most_hz,omitempty"`
	Values  numbers    `json:"values"`
}

// session is one spot that is being moved: what is kept from one move to the next.
// It is for one goroutine.
type session struct {
	plans   *plans
	made    *planned
	planner *timing.Planner
	maps    []keptMap // the last used at the end
	values  []float64
}

// keptMap is a map that can be filled again while its slice stays.
type keptMap struct {
	slice timing.Slice
	of    mapOf
	live  *timing.Live
}

// mapOf is what a map shows, but for its slice.
type mapOf struct {
	quantity  timing.Quantity
	centre    float64
	perOctave int
}

// answer works a move out. The error is that of ctx.
func (s *session) answer(ctx context.Context, m move) (moved, error) {
	out := moved{Seq: m.Seq}
	if err := m.check(); err != nil {
		out.Error = err.Error()
		return out, nil
	}
	found, err := s.open(m.ID)
	switch {
	case err != nil:
		return out, err
	case !found:
		out.Unknown = true
		return out, nil
	}
	spot := r3.Vec{X: m.Spot[0], Y: m.Spot[1], Z: m.Spot[2]}
	p, err := s.planner.Move(spot)
	if err != nil {
		out.Fault = s.words(err, spot)
		return out, nil
	}
	out.fill(p)
	if m.rests() {
		if out.Polar, err = s.polar(p); err != nil {
			return out, err
		}
	}
	if m.Quantity != "" && m.Cells > 0 {
		if out.Map, err = s.draw(ctx, p, m); err != nil {
			return out, err
		}
	}
	return out, ctx.Err()
}

// open makes the session one of a plan, and tells whether there is such a plan.
func (s *session) open(id string) (bool, error) {
	if s.made != nil && s.made.id == id {
		return true, nil
	}
	made := s.plans.find(id)
	if made == nil {
		return false, nil
	}
	planner, err := timing.NewPlanner(made.array)
	if err != nil {
		return false, err
	}
	if err := planner.Follow(); err != nil {
		return false, err
	}
	s.made, s.planner, s.maps = made, planner, nil
	return true, nil
}

// words says why a spot is none.
func (s *session) words(err error, spot r3.Vec) string {
	a := s.made.array
	switch {
	case !errors.Is(err, layout.ErrSpotInside):
		return faultOf(err).Reason
	case !a.Room.Contains(spot):
		return "the spot is outside the room"
	case !a.Surface.Above(spot):
		return "the spot is below the surface"
	}
	return "the spot is inside the body"
}

// fill takes over what a plan says.
func (out *moved) fill(p *timing.Plan) {
	a := p.Array
	at := tripled(a.Spot, 1, 6)
	out.Spot = &at
	for i, r := range p.Arrivals {
		out.Drivers = append(out.Drivers, heard{
			ID: a.Mounts[i].ID, Channel: p.Channels[r.Channel].ID, Delay: settable(r.Delay), Level: db(r.Level),
			Arrival: us(r.Time), Path: number{r.Path, 4}, Straight: number{r.Straight, 4}, Seen: r.Seen,
		})
	}
	for _, c := range p.Channels {
		ids := make([]int, len(c.Mounts))
		for i, m := range c.Mounts {
			ids[i] = a.Mounts[m].ID
		}
		out.Channels = append(out.Channels, set{c.ID, ids, settable(c.Delay), us(c.Exact), db(c.Gain)})
	}
	all := func(v []float64, places int) numbers { return numbers{values: v, scale: 1, places: places} }
	r := p.Response
	out.Response = &response{all(r.Frequency, 1), all(r.Unaligned, 2), all(r.Aligned, 2), all(r.InStep, 2)}
	out.Measures = &bothWays{figuresOf(p.Aligned), figuresOf(p.Unaligned)}
	for _, e := range p.Echoes {
		out.Echoes = append(out.Echoes, echo{e.Wall, number{1000 * e.Extra, 0}, us(e.Late), number{e.Dip, 0}, number{e.Depth, 1},
			tripled(e.At, 1, 3), number{e.Nearer, 0}, number{e.Further, 0}})
	}
}

func figuresOf(m timing.Measures) figures {
	return figures{us(m.Smear), us(m.Spread), number{m.CombOnset, 0}}
}

func us(v float64) number { return number{1e6 * v, 1} }
func db(v float64) number { return number{v, 2} }

// settable writes a delay so that no step of a processor is lost.
func settable(v float64) number { return number{1e6 * v, 3} }

// polar returns the level round the vertical axis through the plan's spot.
func (s *session) polar(p *timing.Plan) (*polar, error) {
	whole, err := timing.Make(p.Array)
	if err != nil {
		return nil, err
	}
	h := whole.Horizontal
	out := &polar{Angle: numbers{h.Angle, 180 / math.Pi, 1, 0}, Band: numbers{h.Band, 1, 1, 0}}
	for b := range h.Band {
		out.Level = append(out.Level, numbers{h.Aligned[b], 1, 2, 0})
		out.As = append(out.As, numbers{h.Unaligned[b], 1, 2, 0})
	}
	return out, nil
}

// draw fills the map that a move asks for.
func (s *session) draw(ctx context.Context, p *timing.Plan, m move) (*coverageMap, error) {
	at := slices.IndexFunc(quantities, func(q quantity) bool { return q.name == m.Quantity })
	q, of := quantities[at], mapOf{perOctave: dragOctave}
	of.quantity = q.is
	if m.rests() {
		of.perOctave = restOctave
	}
	if q.is == timing.LiveLevel || q.is == timing.LiveSummingLoss {
		of.centre = nearestOctave(m.Band)
	}
	slice := timing.HorizontalSlice(p.WithCells(m.Cells))
	if m.View == "side" {
		slice = timing.VerticalSlice(p.WithCells(m.Cells))
	}
	live, err := s.live(ctx, p, slice, of)
	if err != nil {
		return nil, err
	}
	n := slice.Columns * slice.Rows
	s.values = slices.Grow(s.values[:0], n)[:n]
	if err := live.Fill(ctx, s.values, p); err != nil {
		return nil, err
	}
	return drawn(slice, q, s.values), nil
}

// drawn is a filled slice as the page has it. Along and up are measured from the
// body's axis and centre.
func drawn(s timing.Slice, q quantity, values []float64) *coverageMap {
	low := [2]float64{r3.Dot(s.Origin, s.Right) - s.Step/2, r3.Dot(s.Origin, s.Up) - s.Step/2}
	out := &coverageMap{
		Columns: s.Columns, Rows: s.Rows, Step: rounded(s.Step, 6), Unit: q.unit,
		Low:    [2]float64{rounded(low[0], 6), rounded(low[1], 6)},
		High:   [2]float64{rounded(low[0]+float64(s.Columns)*s.Step, 6), rounded(low[1]+float64(s.Rows)*s.Step, 6)},
		Values: numbers{values: values, scale: q.scale, places: q.places},
	}
	if q.is == timing.LiveCombOnset {
		octaves := band.Octaves()
		_, high := band.Edges(octaves[len(octaves)-1], 1)
		out.Most = math.Round(high)
		out.Values.most = out.Most
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

// alike tells whether one slice may stand for another.
func alike(a, b timing.Slice) bool {
	if a.Columns != b.Columns || a.Rows != b.Rows || a.Step != b.Step {
		return false
	}
	for _, corner := range [][2]int{{0, 0}, {a.Columns, 0}, {0, a.Rows}, {a.Columns, a.Rows}} {
		if r3.Norm(r3.Sub(a.Point(corner[0], corner[1]), b.Point(corner[0], corner[1]))) > drift*a.Step {
			return false
		}
	}
	return true
}

// live returns a map for a slice, one that is kept if there is one.
func (s *session) live(ctx context.Context, p *timing.Plan, slice timing.Slice, of mapOf) (*timing.Live, error) {
	for i, k := range s.maps {
		if k.of == of && alike(k.slice, slice) {
			s.maps = append(slices.Delete(s.maps, i, i+1), k)
			return k.live, nil
		}
	}
	made, err := timing.NewLive(ctx, p, slice, of.quantity, of.centre, of.perOctave)
	if err != nil {
		return nil, err
	}
	if s.maps = append(s.maps, keptMap{slice, of, made}); len(s.maps) > mostMaps {
		s.maps = slices.Delete(s.maps, 0, 1)
	}
	return made, nil
}
