package design

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"
)

// MaxSeats is the most seats that one design may have, those of its areas counted: of
// more, no picture shows each, and planning takes minutes.
const MaxSeats = 64

// What a seat's name and weight may be: a name goes on pictures and into the names of
// files; weights further apart than this leave the lighter seat out.
const (
	longestName = 40
	leastWeight = 0.01
	mostWeight  = 100.0
)

// onePlace is the distance in m below which two seats are at one place: what is written in
// metres, by a tape measure, is no finer.
const onePlace = 1e-3

// Area is where several people sit, or somebody may sit or walk anywhere. It is sampled
// into seats (AllSeats).
type Area struct {
	Name   string
	Shape  string
	Count  int     // seats that it is sampled into
	Weight float64 // of all its seats together
	// From and To in m are the first and the last place of a line, and opposite corners of a
	// level rectangle.
	From, To r3.Vec
	// Of an arc or a ring: radius in m and height in m, round the axis of the body.
	Radius, Z float64
	// Of an arc: from and to in degrees from straight ahead, to the left.
	FromDeg, ToDeg float64
}

// allRound is how many seats stand for people all round, for nobody in particular: one every
// 30 degrees, as evenness round a source is judged (ISO 3382-1, table A.1, gliding means
// over 30 degrees).
const allRound = 12

// AllSeats returns the seats of a design, those that its areas are sampled into last, each
// area's under its name with a number behind.
//
// An area of weight w and n seats gives seats of weight w/n, however finely it is sampled; an
// area whose weight is not given weighs as much as it has seats, so that a row of five is
// five seats written out. Those of a line or an arc stand at equal distances from its
// first to its last place, or alone in its middle. Those of a rectangle stand in rows
// across, one behind the other in x, the first and the last at its edges, as many as make
// the steps along and across most alike: of n seats over a depth of d and a width of w,
// with k = w/d, about r rows of which n/r = 1 + k (r - 1).
//
// Where the aim is round and there is no seat, they are all round, at the spot's height and
// distance from the body's axis.
func (d *Design) AllSeats() []Seat {
	seats := slices.Clone(d.Seats)
	for _, a := range d.areas() {
		for i, at := range a.places() {
			name := "seat " + strconv.Itoa(len(seats)+1)
			if a.Name != "" {
				name = a.Name
				if a.Count > 1 {
					name += " " + strconv.Itoa(i+1)
				}
			}
			seats = append(seats, Seat{Name: name, At: at, Weight: a.Weight / float64(a.Count)})
		}
	}
	return seats
}

// areas are those of the file, or people all round.
func (d *Design) areas() []Area {
	if d.Seating.Aim != round || len(d.Seats) > 0 || len(d.Areas) > 0 {
		return d.Areas
	}
	return []Area{{Name: "all round", Shape: ring, Count: allRound, Weight: allRound, Radius: math.Hypot(d.Spot.X, d.Spot.Y), Z: d.Spot.Z}}
}

// places are where an area's seats stand, in m.
func (a Area) places() []r3.Vec {
	out := make([]r3.Vec, a.Count)
	switch a.Shape {
	case lineShape:
		for i := range out {
			out[i] = r3.Add(a.From, r3.Scale(part(i, a.Count), r3.Sub(a.To, a.From)))
		}
	case arc:
		for i := range out {
			out[i] = a.round(a.FromDeg + part(i, a.Count)*(a.ToDeg-a.FromDeg))
		}
	case ring:
		for i := range out {
			out[i] = a.round(360 * float64(i) / float64(a.Count))
		}
	case rectangle:
		n, size := float64(a.Count), r3.Sub(a.To, a.From)
		k := math.Abs(size.Y / size.X)
		rows := int(min(max(math.Round((k-1+math.Sqrt((k-1)*(k-1)+4*k*n))/(2*k)), 1), n))
		upTo := func(row int) int { return int(math.Round(n * float64(row) / float64(rows))) }
		for row := range rows {
			first, last := upTo(row), upTo(row+1)
			for i := first; i < last; i++ {
				out[i] = r3.Vec{X: a.From.X + part(row, rows)*size.X, Y: a.From.Y + part(i-first, last-first)*size.Y, Z: a.From.Z}
			}
		}
	}
	return out
}

// part is how far along the i-th of n places is that go from 0 to 1; a half for one alone.
func part(i, n int) float64 {
	if n == 1 {
		return 0.5
	}
	return float64(i) / float64(n-1)
}

// round is a place of an arc or a ring at an angle in degrees.
func (a Area) round(deg float64) r3.Vec {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return r3.Vec{X: a.Radius * cos, Y: a.Radius * sin, Z: a.Z}
}

// MiddleSeat returns the index of the seat that is nearest to the middle of all, each by its
// weight; of several as near, to a micrometre, the first; -1 where there is none.
func MiddleSeat(seats []Seat) int {
	var sum r3.Vec
	weight := 0.0
	for _, s := range seats {
		sum = r3.Add(sum, r3.Scale(s.Weight, s.At))
		weight += s.Weight
	}
	middle, best, nearest := r3.Scale(1/weight, sum), -1, math.Inf(1)
	for i, s := range seats {
		if away := r3.Norm(r3.Sub(s.At, middle)); away < nearest-1e-6 {
			best, nearest = i, away
		}
	}
	return best
}

// Listener is a place where somebody listens, and where the design has it.
type Listener struct {
	Key string // the table: spot, seat[2], area[1]; seats where it is all round
	Who string // in a sentence: the spot, seat "by the window"
	At  r3.Vec // m
}

// Axis gives the key of the place along an axis; of an area the area.
func (l Listener) Axis(axis string) string {
	if l.Key == "seats" {
		return "seats.aim"
	}
	if len(l.Key) > 4 && l.Key[:5] == "area[" {
		return l.Key
	}
	return l.Key + "." + axis + "_m"
}

// Listeners returns everywhere that somebody listens: the spot, but where it is a seat's
// place, and all seats.
func (d *Design) Listeners() []Listener {
	seats := d.AllSeats()
	var out []Listener
	if !slices.ContainsFunc(seats, func(s Seat) bool { return s.At == d.Spot }) {
		out = append(out, Listener{"spot", "the spot", d.Spot})
	}
	var keys []string
	for i := range d.Seats {
		keys = append(keys, nth("seat", i+1))
	}
	for i, a := range d.areas() {
		key := nth("area", i+1)
		if len(d.Areas) == 0 {
			key = "seats"
		}
		keys = append(keys, slices.Repeat([]string{key}, a.Count)...)
	}
	for i, s := range seats {
		out = append(out, Listener{keys[i], "seat " + strconv.Quote(s.Name), s.At})
	}
	return out
}

// fillSeats sets what seats have where the file does not say, and the spot where it has none.
func (r *reader) fillSeats() {
	for i := range r.Seats {
		r.Seats[i].Name = cmp.Or(r.Seats[i].Name, "seat "+strconv.Itoa(i+1))
	}
	for i := range r.Areas {
		r.Areas[i].Weight = cmp.Or(r.Areas[i].Weight, float64(r.Areas[i].Count))
	}
	if seats := r.AllSeats(); !r.has("spot") && len(seats) > 0 {
		r.Spot = seats[MiddleSeat(seats)].At
	}
}

// areaKeys are the keys that each shape of an area needs and the others do not have.
var areaKeys = []struct {
	keys   []string
	shapes []string
}{
	{[]string{"from_m", "to_m"}, []string{lineShape, rectangle}},
	{[]string{"radius_m", "z_m"}, []string{arc, ring}},
	{[]string{"from_deg", "to_deg"}, []string{arc}},
}

// checkAreas notes what is wrong with areas each, and tells whether nothing is.
func (r *reader) checkAreas() bool {
	before := len(r.faults)
	for i, a := range r.Areas {
		r.checkArea(nth("area", i+1), a)
	}
	return len(r.faults) == before
}

// checkSeats notes seats that are too many, or alike.
func (r *reader) checkSeats() {
	r.only("seats.aim", r.Seating.Aim, []string{round}, "seats.loud")
	r.must(r.Seating.Aim != round || len(r.Copies) == 0, "seats.aim", `"even", "worst" or "mean" where there are [[body_at]] tables: nobody sits all round several bodies`)
	seats := r.AllSeats()
	at := r.heard[len(r.heard)-len(seats):]
	switch {
	case len(seats) > MaxSeats:
		r.conflict(at[MaxSeats].Key, "this makes %d seats; must be at most %d, with those of areas", len(seats), MaxSeats)
		return
	case len(seats) == 1 && len(r.heard) == 2:
		r.conflict("spot", "the one seat is another place; must be left out where there is one seat, which is the spot, or give more seats")
	}
	for i, s := range seats {
		j := slices.IndexFunc(seats[:i], func(o Seat) bool { return o.Name == s.Name || length(r3.Sub(o.At, s.At)) < onePlace })
		switch {
		case j < 0:
			continue
		case seats[j].Name == s.Name:
			r.conflict(r.origin(at[i].Key+".name", at[i].Key), "seat %d is called %q too; must be another name", j+1, s.Name)
		default:
			r.conflict(at[i].Axis("x"), "seat %q is at the place of seat %q; must be %s mm away or more", s.Name, seats[j].Name, plain(onePlace/mm))
		}
		return // an area upon another would tell of each
	}
}

// checkArea notes keys of other shapes, keys that the shape lacks, and what has no size.
func (r *reader) checkArea(at string, a Area) {
	for _, g := range areaKeys {
		keys := make([]string, len(g.keys))
		for i, k := range g.keys {
			keys[i] = at + "." + k
			if slices.Contains(g.shapes, a.Shape) && !r.has(keys[i]) {
				r.lacks(keys[i], rowOf(r.schema(), keys[i]).kindly()+fmt.Sprintf(" where the shape is %q", a.Shape))
			}
		}
		r.only(at+".shape", a.Shape, g.shapes, keys...)
	}
	size := r3.Sub(a.To, a.From)
	switch {
	case a.Shape == rectangle:
		r.must(size.X != 0 && size.Y != 0, at+".to_m", "the opposite corner of from_m, another in x and in y")
		r.must(size.Z == 0, at+".to_m", "as high as from_m: a rectangle is level")
	case a.Shape == arc:
		r.must(math.Abs(a.ToDeg-a.FromDeg) < 360, at+".to_deg", `less than 360 from from_deg; a "ring" goes all the way round`)
	}
}
