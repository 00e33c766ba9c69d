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

const mm = 1e-3 // m

// surroundingRules are for [surface] and [room]: there is one of them.
func surroundingRules(_ *patient, now state, f *design.Error) []remedy {
	if list := missing(now, f); list != nil {
		return list
	}
	d := now.design
	switch f.Key {
	case "surface":
		const why = "in a room the floor is the surface below the body"
		return []remedy{out("surface", why), out("room", "the body stands on a surface")}
	case "room.size_m":
		return []remedy{to(f.Key, larger(d), "the body must fit in").asked()}
	case "room.body_at_m":
		return []remedy{to(f.Key, inside(d), "the body must be inside the room")}
	}
	return nil
}

// low is how far the body reaches from its centre along an axis, backward.
func low(d *design.Design, axis int) float64 {
	if axis == 2 && d.Body.HasCut {
		return max(0, -d.Body.CutHeightMM*mm)
	}
	return d.Body.RadiusMM * mm
}

// larger is a room that the body fits in.
func larger(d *design.Design) []any {
	out := make([]any, 3)
	for axis, size := range d.Room.SizeM {
		out[axis] = max(size, tenthUp(1.1*(d.Body.RadiusMM*mm+low(d, axis))))
	}
	return out
}

// inside is where the body is inside the room, as near to where it was as can be.
func inside(d *design.Design) []any {
	out := make([]any, 3)
	for axis, at := range d.Room.BodyAtM {
		out[axis] = min(max(at, low(d, axis)), d.Room.SizeM[axis]-d.Body.RadiusMM*mm)
	}
	return out
}

// spotRules are for a chair that is not where a chair can be. They are asked for only
// where somebody moves the chair.
func spotRules(p *patient, now state, f *design.Error) []remedy {
	if list := missing(now, f); list != nil {
		return list
	}
	d := now.design
	at := r3.Vec{X: d.Spot.XM, Y: d.Spot.YM, Z: d.Spot.ZM}
	to, why := at, "the chair must be outside the body"
	switch {
	case errors.Is(f.Err, design.ErrSpotInside):
		to = outward(at, d.Body.RadiusMM*mm, p.clearance())
	case errors.Is(f.Err, layout.ErrBelowSurface):
		to.Z, why = ground(d)+ears, "the chair must be above the surface"
	case d.Room.Present:
		to, why = within(d, at), "the chair must be in the room"
	}
	return []remedy{{set: moved("spot", at, to), why: why}}
}

// ears is how high above a surface a chair's ears are put that were below it, in m:
// about those of somebody who sits on the floor (common practice).
const ears = 0.7

// leastClearance is how far from the body a chair is put at least, in m.
const leastClearance = 0.3

// clearance is how far from the body the chair was, in m.
func (p *patient) clearance() float64 {
	was := p.before().design
	if was == nil {
		return leastClearance
	}
	s := was.Spot
	return max(leastClearance, r3.Norm(r3.Vec{X: s.XM, Y: s.YM, Z: s.ZM})-was.Body.RadiusMM*mm)
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

// ground is the height of the surface below the body, in m.
func ground(d *design.Design) float64 {
	trial, err := layout.Build(withoutSpot(d))
	if err != nil {
		return 0
	}
	return trial.Surface.Height
}

// withoutSpot is a design whose spot is where it is no matter.
func withoutSpot(d *design.Design) *design.Design {
	out := *d
	out.Spot = design.Spot{ZM: 90}
	return &out
}

// margin is how far from a wall a place is put, in m.
const margin = 0.1

// within is the nearest place inside the room.
func within(d *design.Design, at r3.Vec) r3.Vec {
	clamp := func(v, at, size float64) float64 { return min(max(v, margin-at), size-at-margin) }
	b, s := d.Room.BodyAtM, d.Room.SizeM
	return r3.Vec{X: clamp(at.X, b[0], s[0]), Y: clamp(at.Y, b[1], s[1]), Z: clamp(at.Z, b[2], s[2])}
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

// wooferRules are for a woofer without what it needs, or that is where none can be.
func wooferRules(p *patient, now state, f *design.Error) []remedy {
	if list := missing(now, f); list != nil {
		return list
	}
	d := now.design
	at := r3.Vec{X: d.Woofer.XM, Y: d.Woofer.YM, Z: d.Woofer.ZM}
	to, why := at, "the woofer must not stand at the chair"
	switch {
	case errors.Is(f.Err, layout.ErrWooferInside):
		to, why = outward(at, d.Body.RadiusMM*mm, leastClearance), "the woofer must be outside the body"
	case errors.Is(f.Err, layout.ErrBelowSurface):
		to.Z, why = ground(d)+margin, "the woofer must be above the surface"
	case strings.Contains(f.Reason, "room"):
		to, why = within(d, at), "the woofer must be in the room"
	default:
		to.X -= 0.5
	}
	return []remedy{{set: moved("woofer", at, to), why: why}}
}

// channelRules are for channels that are laid out by hand for other drivers than there
// are, or beside a number of channels.
func channelRules(p *patient, now state, f *design.Error) []remedy {
	n := len(now.design.Channels)
	if n == 0 {
		return nil
	}
	var list []remedy
	if f.Key == "wiring.channels" {
		list = append(list, out("channel", "wiring.channels sorts the drivers instead"))
		return append(list, out(f.Key, "the channels are laid out by hand"))
	}
	if now.design.Wiring.Channels > 0 {
		return append(list, out("channel", "not all of them are laid out"))
	}
	if at, ids := skipped(now.design); at != "" {
		list = append(list, to(at, ids, "their places stay empty"))
	}
	return append(list, remedy{
		set: []Change{{"channel", nil}, {"wiring.channels", n}},
		why: "the channels were laid out by hand for other drivers; as many are sorted anew",
	})
}

// skipped is the first channel that has drivers in places that stay empty, and its
// drivers without them.
func skipped(d *design.Design) (key string, left []any) {
	for i, c := range d.Channels {
		left = nil
		for _, id := range c.Drivers {
			if !contains(d.Mounts.Skip, id) {
				left = append(left, id)
			}
		}
		if len(left) > 0 && len(left) < len(c.Drivers) {
			return fmt.Sprintf("channel[%d].drivers", i+1), left
		}
	}
	return "", nil
}
