package words

import (
	"cmp"
	"fmt"
	"math"

	"pappus/layout/prose"
	"pappus/render/tape"
	"pappus/timing"
)

// Bodies says where several bodies are, how each is heard at the spot, and what is left out;
// nothing for one.
func Bodies(p *timing.Plan) []string {
	a := p.Array
	heard := p.Bodies()
	if len(heard) == 1 {
		return nil
	}
	least := math.Inf(1)
	for _, h := range heard {
		least = min(least, h.Delay)
	}
	taken := "taken for a rigid ball of its own, which neither shades another nor sends its sound back"
	if p.Solved() != nil {
		taken = "solved for as if it stood alone: none shades another or sends its sound back"
	}
	out := []string{fmt.Sprintf("%d bodies with %s each; each is %s.",
		len(heard), prose.Count(len(a.Own()), "driver", "drivers"), taken)}
	for i, h := range heard {
		body := a.Bodies()[i]
		where := "with channels of its own"
		switch {
		case i == 0:
			where = "where places count from"
		case body.Shared:
			where = tape.Beside(body.At) + "; on the channels of body 1"
		default:
			where = tape.Beside(body.At) + "; " + where
		}
		if how := tape.Held(a, i); how != tape.Held(a, 0) {
			where += "; " + cmp.Or(how, "standing as designed")
		}
		out = append(out, fmt.Sprintf("Body %d (%s; drivers from %d): %.2f m from the spot, heard there after %.2f ms, with %.2f ms of programme delay, %.1f dB below all together.",
			i+1, where, a.Mounts[i*len(a.Own())].ID, h.Distance, 1000*h.Arrival, 1000*(h.Delay-least), -h.Level))
	}
	hz, beside := p.BodyComb()
	return append(out, fmt.Sprintf("The delays bring the bodies into step at the spot alone: an ear %.0f mm beside it can lose the sound of two of them from %.0f Hz on, where their ways differ by half a wavelength.",
		1000*beside, hz))
}
