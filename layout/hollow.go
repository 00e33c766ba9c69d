package layout

import (
	"errors"
	"math"

	"pappus/layout/body"
	"pappus/layout/box"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// Hollow is what the drivers share inside the body.
type Hollow struct {
	Room     box.Room
	Driver   box.Driver // with what follows from what is given
	Closed   *box.Closed
	Vented   *box.Vented // brings the Q down to the target; nil where none does or needs to
	Vent     box.Vent
	Gap      float64 // area of the stand's gap over the vent's; NaN without a stand or a cut
	Mass     float64 // reactance of the air in the vent over its resistance, at resonance
	Stuffing float64 // kg, to begin with
	// Why says, in words, why there is no alignment or no vent; empty where there
	// is.
	Why string
}

// heavyAir is the most that the air in a vent's holes may weigh against its resistance
// (common practice).
const heavyAir = 0.3

// LeastHoles returns how many holes make the air in the vent light enough, whose mass goes as
// one over their area; 0 where those that there are do.
func (h Hollow) LeastHoles() int {
	if !(h.Mass > heavyAir) {
		return 0
	}
	return int(math.Ceil(float64(h.Vent.Number) * h.Mass / heavyAir))
}

// VentSpeed returns the peak speed of the air in the vent at the resonance, in m/s, for an RMS
// voltage over each driver; NaN where the values do not tell. There must be a vent.
func (h Hollow) VentSpeed(volt float64) float64 {
	_, flow, err := h.Vented.Flow(volt, h.Vented.Resonance)
	if err != nil {
		return math.NaN()
	}
	return math.Sqrt2 * h.Vent.Velocity(flow)
}

// Hollow computes the box that the drivers share. Without small-signal values it
// has volumes alone. The error is a *design.Error that tells of walls or drivers that leave no
// room.
func (a *Array) Hollow() (Hollow, error) {
	var h Hollow
	room, err := a.room()
	if err != nil {
		return h, a.noRoom(err)
	}
	h.Room, h.Stuffing = room, a.Box.Stuffing*room.Net
	air := plain(a.Air)
	d, closed, err := a.closed(room, air)
	if err != nil {
		h.Why = err.Error()
		return h, nil
	}
	h.Driver, h.Closed = d, &closed
	vented, err := box.Damp(d, len(a.Own()), room.Net, a.Box.TargetQ, air)
	if err != nil {
		h.Why = err.Error()
		return h, nil
	}
	h.Vented = &vented
	h.Vent = box.Vent{Radius: a.Box.VentRadius, Number: a.Box.VentHoles, Depth: a.Wall}
	h.Mass = h.Vent.MassRatio(vented.Resistance, vented.Resonance, air)
	h.Gap = math.NaN()
	if a.Stand > 0 && a.Body.IsCut {
		h.Gap = h.Vent.GapRatio(a.foot(), a.Stand)
	}
	return h, nil
}

// room divides the body's volume.
func (a *Array) room() (box.Room, error) {
	gross := a.Body.Volume()
	hollow, err := shell.Hollow(a.Body, a.Wall)
	if err != nil {
		return box.Room{}, err
	}
	return box.Divide(gross, gross-hollow, displaced(a), a.Box.Braces, len(a.Own()))
}

// Shared is the room that the drivers of one body share. The error tells of walls or drivers
// that leave none.
func (a *Array) Shared() (box.Room, error) { return a.room() }

// closed is the alignment of all drivers in the closed body.
func (a *Array) closed(room box.Room, air box.Air) (box.Driver, box.Closed, error) {
	s := a.Driver.Small
	given := box.Driver{Fs: s.Fs, Qms: s.Qms, Qes: s.Qes, Vas: s.Vas, Re: a.Driver.DCOhm, BL: s.BL, Mms: s.Mass, Sd: s.Area}
	d, err := given.Complete(air)
	if err != nil {
		return d, box.Closed{}, err
	}
	c, err := box.Close(d, len(a.Own()), room.Net)
	return d, c, err
}

// plain is the air as a dry ideal gas, which is near enough for springs of air:
// within half a percent of moist air (common practice).
func plain(a Air) box.Air {
	const gas, ratio = 287.05, 1.4 // J/(kg K); of specific heats
	return box.Air{Density: a.Pressure / (gas * a.Temperature), SoundSpeed: math.Sqrt(ratio * gas * a.Temperature)}
}

// displaced returns what one driver takes up behind the body's face, in m3: the
// frustum of its basket and the cylinder of its magnet.
func displaced(a *Array) float64 {
	o := a.Driver.Outline
	magnet := o.MagnetRadius
	if magnet == 0 {
		magnet = o.CutoutRadius
	}
	basket := o.Depth - o.MagnetHeight
	r, q := o.CutoutRadius, magnet
	return math.Pi*basket*(r*r+r*q+q*q)/3 + math.Pi*q*q*o.MagnetHeight
}

// foot returns the perimeter of the body at its cut, in m.
func (a *Array) foot() float64 {
	if a.Body.IsBall() {
		return 2 * math.Pi * math.Sqrt(a.Body.Radius*a.Body.Radius-a.Body.Cut*a.Body.Cut)
	}
	return baseEdges(a.Body)
}

func baseEdges(b *body.Body) float64 {
	sum := 0.0
	for _, e := range b.Edges() {
		if b.Faces[e.Faces[0]].Base() || b.Faces[e.Faces[1]].Base() {
			p, q := b.Vertices[e.A], b.Vertices[e.B]
			sum += math.Hypot(math.Hypot(p.X-q.X, p.Y-q.Y), p.Z-q.Z)
		}
	}
	return sum
}

// inBody returns the driver's resonance in the body and its Q there: what the design has,
// or where it has none what the small-signal values tell; 0 where they do not.
func (a *Array) inBody() (resonance, q float64, err error) {
	d := a.Driver
	if d.Resonance > 0 || d.Small.Fs == 0 {
		return d.Resonance, d.ResonanceQ, nil
	}
	room, err := a.room()
	if err != nil {
		return 0, 0, err
	}
	_, c, err := a.closed(room, plain(a.Air))
	if errors.Is(err, box.ErrMissing) {
		return 0, d.ResonanceQ, nil
	}
	return c.Resonance, c.Q, err
}

// noRoom says of a body that has none for the drivers' air what must be smaller, or larger.
func (a *Array) noRoom(err error) *design.Error {
	room, thick := a.room() // as it was when it failed
	switch {
	case thick == nil:
		return a.Fault("driver", "", err.Error(), err)
	case !errors.Is(thick, box.ErrFull):
		return a.Fault("body.wall_mm", prose.Sprintf("%.4g", a.Wall/mm), thick.Error(), err)
	}
	if left := room.Net + room.Braces; left > 0 {
		return a.Fault("box.braces_l", prose.Sprintf("%.4g", room.Braces/litre), prose.Sprintf(
			"must be less than %.3g, which is what walls and drivers leave of the body", left/litre), err)
	}
	return a.Fault("body.radius_mm", prose.Sprintf("%.4g", a.Body.Radius/mm), prose.Sprintf(
		"must be more: walls and drivers take %.3g l, and the body has %.3g l", (room.Walls+room.Drivers)/litre, room.Gross/litre), err)
}

// Fault is the error for a key of the design that the array is laid out by, which wraps err.
func (a *Array) Fault(key, value, reason string, err error) *design.Error {
	return &design.Error{File: a.File, Line: a.Lines.Of(key), Key: key, Value: value, Reason: reason, Err: err}
}

const litre = 1e-3 // m3

// Segments cuts the shell so that it fits the printer's bed. The error is a *design.Error where
// the bed is smaller than one mount.
func (a *Array) Segments() (shell.Plan, error) {
	p, err := shell.Cut(a.Body, a.Holes(), a.job())
	if errors.Is(err, shell.ErrBed) {
		return p, a.Fault("print.bed_mm", "", err.Error()+"; must hold one with its margin", err)
	}
	return p, err
}

// InOne tells whether the shell fits the printer's bed without a cut.
func (a *Array) InOne() bool { return shell.Fits(a.Body, a.job()) }

func (a *Array) job() shell.Job {
	return shell.Job{Bed: shell.Size(a.Print.Bed), Wall: a.Wall, Margin: a.Print.Margin, Density: a.Print.Density}
}

// Holes gives the cut-outs of the shell. One on a ball that does not look straight outward
// gets no seat, which the shell then refuses.
func (a *Array) Holes() []shell.Hole {
	out := make([]shell.Hole, len(a.Own()))
	for i, m := range a.Own() {
		h := shell.Hole{ID: m.ID, Point: a.Seat(m), Normal: m.Normal, Face: m.Face, Radius: a.Driver.CutoutRadius, Seat: a.Driver.FlangeRadius}
		if a.Body.IsBall() && r3.Dot(m.Normal, r3.Unit(m.Point)) < leastSquare {
			h.Seat = 0
		}
		out[i] = h
	}
	return out
}

// leastSquare is the cosine of how far a mount on a ball may lean from straight outward: one
// degree, as on faces.
const leastSquare = 0.9998
