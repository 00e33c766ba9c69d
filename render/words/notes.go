package words

import (
	"fmt"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/render/tape"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Notes says what the model takes the array for.
func Notes(p *timing.Plan) []string {
	a := p.Array
	var notes []string
	if held := tape.Held(a, 0); held != "" {
		who := "The body"
		if len(a.Bodies()) > 1 {
			who = "Body 1"
		}
		notes = append(notes, who+" is "+held+". Driver numbers and places on the body, and all sheets but the picture of the whole, are the body's own; forward, left and up are the room's.")
	}
	notes = append(notes, Bodies(p)...)
	switch {
	case p.Solved() != nil:
		notes = append(notes, solved(p.Solved(), a.Timing.SolveTo, a.Body.BallRadius), trusted(p))
	case a.Timing.Model == radiate.SphereModel:
		notes = append(notes, ball(p))
		if trusted := trusted(p); trusted != "" {
			notes = append(notes, trusted)
		}
	}
	switch {
	case a.Room.Present:
		notes = append(notes, fmt.Sprintf("The room's walls mirror the sound up to %s; polars leave the room out.", prose.Count(a.Room.Order, "time", "times")))
	case a.Surface.Present:
		what, half, near := surface(a)
		if p.Solved() != nil && a.Surface.Near && len(a.Bodies()) == 1 {
			notes = append(notes, fmt.Sprintf("The %s mirrors the sound; where it is rigid that is exact up to the join, since the field is solved for with the mirrored body beside the body.", what))
		} else if a.Surface.Height == 0 && a.Body.IsCut && a.Body.Cut == 0 {
			notes = append(notes, fmt.Sprintf("The %s mirrors the sound, exact for half a ball that %s.", what, half))
		} else {
			notes = append(notes, fmt.Sprintf("The %s mirrors the sound: near, not exact, for %s.", what, near))
		}
	}
	return notes
}

// surface names what the body is fixed to, how half a ball is fixed to it, and what the mirror
// is only near for.
func surface(a *layout.Array) (what, half, near string) {
	const cut = "a body that is cut or does not touch it"
	switch a.Surface.On {
	case layout.OnCeiling:
		return "ceiling", "hangs flat under it", cut
	case layout.OnWall:
		return "wall behind", "sits flat on it", cut
	}
	return "surface below", "stands on it", "a lifted or cut body"
}

// ball says which ball stands for the body.
func ball(p *timing.Plan) string {
	b := p.Array.Body
	if b.BallCentre == (r3.Vec{}) {
		return fmt.Sprintf("The body is taken for a rigid ball of %.0f mm radius, of the whole body's volume.", 1000*b.BallRadius)
	}
	below, over := "below it", "over"
	if p.Array.Bodies()[0].Placed() {
		below, over = "at its cut", "towards its top from"
	}
	return fmt.Sprintf("With nothing hard %s the cut body is taken for a rigid ball of %.0f mm radius, its centre %.0f mm %s the uncut body's: half way between the whole body and what is left of it. For half a dodecahedron arrivals come out right within 40 us.",
		below, 1000*b.BallRadius, 1000*b.BallCentre.Z, over)
}

// hardlyOff is the error in dB below which it would be shown as 0.0.
const hardlyOff = 0.05

// told are the octaves whose errors are told.
var told = map[string]string{"500": "500 Hz", "1k": "1 kHz", "2k": "2 kHz", "4k": "4 kHz"}

// IsTold tells whether the error of an octave is.
func IsTold(centre float64) bool { return told[band.Name(centre)] != "" }

// solved says how far up a body is taken as it is, asked for so far up in Hz, and where the ball
// of a radius in m takes over.
func solved(s *radiate.Solution, asked, radius float64) string {
	text := prose.Sprintf("The body is taken as it is, its field solved for, up to %s; from %s to there the rigid ball of %.0f mm radius that stands for it takes over.",
		prose.Hertz(s.To, 2), prose.Hertz(s.From, 2), 1000*radius)
	if s.Short {
		text += fmt.Sprintf(" The design asks for %s (solve_to_hz), which would take more than %.0f minutes on two cores.", prose.Hertz(asked, 2), radiate.LongestSeconds/60.0)
	}
	return text
}

// better says what knows better where a ball stands for the body and is off; nothing where it is
// hardly so.
func better(p *timing.Plan) string {
	if !p.IsWorthSolving() {
		return ""
	}
	return " model = \"body\" under [timing] knows better: it solves for the field of the body as it is, which takes seconds to minutes, once."
}

// trusted says how far to trust the levels; nothing where a ball is no approximation.
func trusted(p *timing.Plan) string {
	octaves, dB := p.LevelErrors()
	if p.Solved() == nil && !(slices.Max(dB) >= hardlyOff) {
		return ""
	}
	var parts []string
	for b, centre := range octaves {
		if name := told[band.Name(centre)]; name != "" {
			parts = append(parts, fmt.Sprintf("%.1f dB at %s", dB[b], name))
		}
	}
	off := "the level of one driver can be off by " + strings.Join(parts, ", ")
	if p.Solved() != nil {
		return fmt.Sprintf("So %s: up to the join as far as two meshes are apart, above it as the ball is off (by boundary elements).", off)
	}
	why := "the body's faces are flat"
	if p.Array.Body.BallCentre != (r3.Vec{}) {
		why = "the body is cut and stands free"
	}
	return fmt.Sprintf("Since %s, %s; most near its front (by boundary elements).%s", why, off, better(p))
}
