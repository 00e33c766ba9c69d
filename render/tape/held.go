package tape

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Direction says where a direction of the room points: forward, to the left, 30° left of
// forward and 20° down.
func Direction(v r3.Vec) string {
	const degree = 180 / math.Pi
	up := math.Atan2(v.Z, math.Hypot(v.X, v.Y)) * degree
	level, left := "forward", math.Atan2(v.Y, v.X)*degree
	hand, off := "left", math.Abs(left)
	if left < 0 {
		hand = "right"
	}
	switch {
	case up > 90-aim:
		return "straight up"
	case up < aim-90:
		return "straight down"
	case off >= 180-aim:
		level = "backward"
	case math.Abs(off-90) <= aim:
		level = "to the " + hand
	case off > 90:
		level = fmt.Sprintf("%.0f° %s of backward", 180-off, hand)
	case off > aim:
		level = fmt.Sprintf("%.0f° %s of forward", off, hand)
	}
	switch {
	case up > aim:
		return fmt.Sprintf("%s and %.0f° up", level, up)
	case up < -aim:
		return fmt.Sprintf("%s and %.0f° down", level, -up)
	}
	return level
}

// Beside says where a place is from the first body: so far forward, to the left and up.
func Beside(at r3.Vec) string {
	var parts []string
	for _, one := range []struct {
		away     float64
		way, not string
	}{{at.X, "forward", "back"}, {at.Y, "to the left", "to the right"}, {at.Z, "up", "down"}} {
		if one.away < 0 {
			one.away, one.way = -one.away, one.not
		}
		if one.away >= near {
			parts = append(parts, metres(one.away)+" "+one.way)
		}
	}
	return strings.Join(parts, " and ") + " of body 1"
}

// Held says how a body is held in the room: what it is fixed to, and where its own top and
// front mark point. It says nothing of a body that stands as it was designed.
func Held(a *layout.Array, body int) string {
	p := a.Bodies()[body]
	if p.Turn == (layout.Placing{}).Turn {
		return ""
	}
	how := "turned"
	switch a.On {
	case layout.OnCeiling:
		how = "hung from the ceiling"
	case layout.OnWall:
		how = "fixed to the wall behind it"
	}
	return fmt.Sprintf("%s: its top points %s, its front mark %s", how, Direction(p.Out(r3.Vec{Z: 1})), Direction(p.Out(r3.Vec{X: 1})))
}
