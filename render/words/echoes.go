package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/timing"
	"pappus/timing/band"
)

// mostEchoes is how many echoes are told of; a room has up to six, the rest are in
// plan.json.
const mostEchoes = 2

// Told returns the echoes that screens and the page tell of, the deepest.
func Told(all []timing.Echo) []timing.Echo { return all[:min(mostEchoes, len(all))] }

// Echo says what an echo does.
func Echo(e timing.Echo) string {
	return fmt.Sprintf("The %s sends an echo %.2f ms late, %.0f mm longer on its way, which combs from %.0f Hz on, by %.0f dB there, whatever the delays.",
		e.Wall, 1000*e.Late, 1000*e.Extra, e.Dip, e.Depth)
}

// mostAbsorber is the thickest absorber in m that is worth a word: thicker ones are not
// sold as panels (common practice).
const mostAbsorber = 0.2

// EchoCure says what moves an echo's dip or takes it away, for a speed of sound in m/s.
func EchoCure(e timing.Echo, speed float64) string {
	nearer, further := "closer to it", "further from it"
	switch e.Wall {
	case "surface below", "floor":
		nearer, further = "lower", "higher"
	case "ceiling":
		nearer, further = "higher", "lower"
	}
	text := fmt.Sprintf("With the body %.0f mm %s it begins near %.0f Hz", 1000*timing.EchoMove, further, e.Further)
	if !math.IsNaN(e.Nearer) {
		text += fmt.Sprintf(", %s near %.0f Hz", nearer, e.Nearer)
	}
	weakens, takes := e.Absorber(speed)
	if weakens > mostAbsorber {
		return text + fmt.Sprintf("; a porous absorber would have to be %.0f mm thick, a tenth of the wavelength at %.0f Hz, to weaken it at all.", 1000*weakens, e.Dip)
	}
	return text + fmt.Sprintf("; a porous absorber weakens it from %.0f mm thick (a tenth of the wavelength at %.0f Hz) and takes nearly all from %.0f mm, where it is thrown back, %s.",
		1000*weakens, e.Dip, 1000*takes, thrownBack(e))
}

// Against says what to do against an echo.
func Against(e timing.Echo, speed float64) string {
	return fmt.Sprintf("Against the echo of the %s: w%s", e.Wall, strings.TrimPrefix(EchoCure(e, speed), "W"))
}

// thrownBack says where an echo is thrown back, from the body's centre.
func thrownBack(e timing.Echo) string {
	part := func(v float64, positive, negative string) string {
		if v < 0 {
			v, positive = -v, negative
		}
		return fmt.Sprintf("%.2f m %s", v, positive)
	}
	x, y, z := part(e.At.X, "in front", "behind"), part(e.At.Y, "to its left", "to its right"), part(e.At.Z, "up", "down")
	switch e.Wall {
	case "surface below":
		return "on the table or floor, " + x + " of the body's centre and " + y
	case "floor", "ceiling":
		return "on the " + e.Wall + ", " + x + " of the body's centre and " + y
	case "front wall", "back wall":
		return "on the " + e.Wall + ", " + y + " and " + z + " from the body's centre"
	}
	return "on the " + e.Wall + ", " + x + " and " + z + " from the body's centre"
}

// NotBoosted says where nothing is boosted because of echoes; nothing where there are none.
func NotBoosted(echoes []timing.Echo) string {
	if len(echoes) == 0 {
		return ""
	}
	parts := make([]string, len(echoes))
	for i, e := range echoes {
		parts[i] = fmt.Sprintf("%.0f Hz, where the echo of the %s takes %.0f dB", e.Dip, e.Wall, e.Depth)
	}
	return "Not boosted within half an octave of " + strings.Join(parts, ", nor of ") + ": a boost goes into the echo too, and the dip moves with the ear."
}

// Stretch names where a null is.
func Stretch(n timing.Null) string {
	low, high := band.Hertz(n.Low), band.Hertz(n.High)
	if low == high {
		return "near " + low
	}
	return low + " to " + high
}

// Nulls says which stretches are left alone and why, once for all of them.
func Nulls(nulls []timing.Null) string {
	var parts []string
	most, from := 0.0, 0.0 // where the last stretch named begins
	for i, n := range nulls {
		most = max(most, n.Loss)
		if i > 0 && band.Hertz(n.Low) == band.Hertz(nulls[i-1].High) { // one as they are named
			n.Low = from
			parts = parts[:len(parts)-1]
		}
		parts, from = append(parts, Stretch(n)), n.Low
	}
	return fmt.Sprintf("%s: up to %.0f dB are lost because sounds arrive out of step; a boost would be spent on all of them alike and only heat the drivers",
		strings.Join(parts, ", "), most)
}
