package repair

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"pappus/layout"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// places gives the body's name and all its places, as directions by their number,
// those that stay empty too; nothing where they cannot be laid out.
func (p *patient) places() (name string, at map[int]r3.Vec) {
	d, _ := design.Examine(p.name, p.text)
	if d == nil {
		return "", nil
	}
	all := *d
	all.Mounts.Skip, all.Channels, all.Wiring.Channels = nil, nil, 0
	a, err := layout.Build(&all)
	if err != nil {
		return "", nil
	}
	at = make(map[int]r3.Vec, len(a.Own()))
	for _, m := range a.Own() {
		at[m.ID] = r3.Unit(m.Point)
	}
	return named(d), at
}

// named is how a body is called.
func named(d *design.Design) string {
	name := article(d.Body.Shape)
	switch {
	case d.Body.Shape == "file":
		name = "the body of " + d.Body.File
	case d.Body.HasCut:
		name += ", cut as this one is,"
	}
	return name
}

// article puts one before a word.
func article(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

// checkNumbers looks after a change whether the numbers that the design names are still
// those of the places that they were. A place that stays empty for a cable must not
// become another one unnoticed.
func (p *patient) checkNumbers() {
	now := p.examine()
	if now.array == nil || len(now.design.Mounts.Skip) == 0 || p.mine["mounts.skip"] || !p.relays() {
		return
	}
	if p.before().array == nil {
		return
	}
	old := patient{name: p.name, text: p.former}
	_, was := old.places()
	_, is := p.places()
	id := moves(now.design.Mounts.Skip, was, is)
	if id == 0 {
		return
	}
	r := out("mounts.skip", fmt.Sprintf("%d is another place on this body", id))
	words := r.words(p.text, now.design, p.cure)
	if p.set(r.set[0]) == nil {
		p.said = append(p.said, words)
		p.mend()
	}
}

// relays tells whether any change is one of the body or of its mounts.
func (p *patient) relays() bool {
	for key := range p.mine {
		if strings.HasPrefix(key, "body.") || strings.HasPrefix(key, "mounts.") || strings.HasPrefix(key, "driver.") {
			return true
		}
	}
	return false
}

// moves gives the first number whose place has moved by more than half of the way to its
// neighbour; 0: none has.
func moves(ids []int, was, is map[int]r3.Vec) int {
	for _, id := range ids {
		from, known := was[id]
		to, there := is[id]
		if !known || !there {
			continue
		}
		nearest := math.Inf(1)
		for other, at := range is {
			if other != id {
				nearest = min(nearest, angle(to, at))
			}
		}
		if angle(from, to) > nearest/2 {
			return id
		}
	}
	return 0
}

func angle(a, b r3.Vec) float64 { return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b)) }

// larger is a room that the body fits in.
func larger(d *design.Design) []any {
	out := make([]any, 3)
	for axis, size := range coordinates(d.Room.Size) {
		back, ahead := d.Span(axis)
		out[axis] = max(size, tenthUp(1.1*(ahead+max(0, back))))
	}
	return out
}

// inside is where the body is inside the room, as near to where it was as can be.
func inside(d *design.Design) []any {
	out := make([]any, 3)
	size := coordinates(d.Room.Size)
	for axis, at := range coordinates(d.Room.Body) {
		back, ahead := d.Span(axis)
		out[axis] = math.Round(1e6*min(max(at, back, 0), size[axis]-ahead)) / 1e6
	}
	return out
}

func coordinates(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

// seat is for a seat that is where none can be, or called as another is.
func seat(c condition) []remedy {
	if strings.HasSuffix(c.fault.Key, ".name") {
		return []remedy{out(c.fault.Key, "another seat has that name").asked()}
	}
	return elsewhere(c)
}

// elsewhere is for a chair, a seat or a woofer that is where none can be. For the chair it is
// asked only where somebody moves it.
func elsewhere(c condition) []remedy {
	d, table := c.design, "woofer"
	at, clear, above, below, before := d.Woofer.At, leastClearance, margin, margin, margin
	what := "the woofer must "
	switch key, _, _ := strings.Cut(c.fault.Key, "."); {
	case key == "spot":
		at, clear, table, what = d.Spot, c.clearance(), "spot", "the chair must "
		above, below, before = ears, underCeiling, beforeWall
	case key != "woofer":
		var n int
		if _, err := fmt.Sscanf(key, "seat[%d]", &n); err != nil || n > len(d.Seats) {
			return nil
		}
		s := d.Seats[n-1]
		above, below, before = ears, underCeiling, beforeWall
		at, table, what = s.At, key, fmt.Sprintf("seat %q must ", s.Name)
	}
	to, why := at, what
	switch {
	case errors.Is(c.fault, layout.ErrInside) || r3.Norm(at) <= d.Body.Radius:
		to, why = outward(at, d.Body.Radius, clear), what+"be outside the body"
	case errors.Is(c.fault, layout.ErrBelowSurface):
		to.Z, why = ground(d)+above, what+"be above the surface"
	case errors.Is(c.fault, layout.ErrAboveCeiling):
		to.Z, why = ground(d)-below, what+"be below the ceiling"
	case errors.Is(c.fault, layout.ErrBehindWall):
		to.X, why = ground(d)+before, what+"be before the wall"
	case d.Room.Present && within(d, at, 0) != at:
		to, why = within(d, at, margin), what+"be in the room"
	case table == "woofer":
		to.X, why = at.X-0.5, "the woofer must not stand where somebody listens"
	default:
		to.Y, why = at.Y+0.5, what+"be beside the other"
	}
	return []remedy{{set: moved(table, at, to), why: why}}
}

// ears is how high above a surface a chair's ears are put that were below it, in m:
// about those of somebody who sits on the floor (common practice).
const ears = 0.7

// underCeiling is how far below a ceiling a chair's ears are put that were above it, in m:
// those of somebody who sits, 1.2 m high, under one of 2.5 m; beforeWall is how far before a
// wall they are put that were behind it (common practice).
const underCeiling, beforeWall = 1.3, 1.0

// leastClearance is how far from the body a chair is put at least, in m.
const leastClearance = 0.3

// clearance is how far from the body the chair was, in m.
func (p *patient) clearance() float64 {
	was := p.before().design
	if was == nil {
		return leastClearance
	}
	return max(leastClearance, r3.Norm(was.Spot)-was.Body.Radius)
}

// outward moves a place along the floor away from a body, until it is so far from it.
func outward(at r3.Vec, radius, clear float64) r3.Vec {
	flat := r3.Vec{X: at.X, Y: at.Y}
	if r3.Norm(flat) < 1e-6 {
		flat = r3.Vec{X: 1}
	}
	along := math.Sqrt(max(0, (radius+clear)*(radius+clear)-at.Z*at.Z))
	out := r3.Scale(max(along, clear), r3.Unit(flat))
	out.Z = at.Z
	return out
}

// ground is the height of the surface that the body is fixed to, in m; of a wall how far
// forward it is.
func ground(d *design.Design) float64 {
	bare := *d // with a spot that is in nothing's way, and no woofer
	bare.Spot, bare.Woofer, bare.Copies = r3.Scale(-90, layout.Towards(d.Placing.On)), design.Woofer{}, nil
	bare.Seats, bare.Areas, bare.Seating = nil, nil, design.Seating{}
	trial, err := layout.Build(&bare)
	if err != nil {
		return 0
	}
	return trial.Surface.Height
}

// margin is how far from a wall a place is put, in m.
const margin = 0.1

// within is the nearest place inside the room, so far from its walls in m.
func within(d *design.Design, at r3.Vec, margin float64) r3.Vec {
	clamp := func(v, at, size float64) float64 { return min(max(v, margin-at), size-at-margin) }
	b, s := d.Room.Body, d.Room.Size
	return r3.Vec{X: clamp(at.X, b.X, s.X), Y: clamp(at.Y, b.Y, s.Y), Z: clamp(at.Z, b.Z, s.Z)}
}

// moved is what brings a table's place elsewhere.
func moved(table string, from, to r3.Vec) []Change {
	var set []Change
	for _, axis := range []struct {
		name     string
		from, to float64
	}{{"x_m", from.X, to.X}, {"y_m", from.Y, to.Y}, {"z_m", from.Z, to.Z}} {
		if math.Abs(axis.from-axis.to) > 1e-9 {
			set = append(set, Change{table + "." + axis.name, math.Round(1000*axis.to) / 1000})
		}
	}
	return set
}
