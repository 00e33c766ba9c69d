package page

import (
	"errors"
	"math"

	"pappus/render/document"
	"pappus/timing"
)

// turned is what is tried with one channel.
type turned struct {
	Channel  int     `json:"channel"` // its number
	Off      bool    `json:"off"`
	Reversed bool    `json:"reversed"`
	Late     float64 `json:"late_us"` // later than planned; below 0: earlier
}

// mostLate is by how much a delay that is tried may be off in us.
const mostLate = 1e4

// checkTurned tells what is tried that cannot be.
func checkTurned(all []turned) error {
	for _, t := range all {
		if !(math.Abs(t.Late) <= mostLate) {
			return errors.New("turned: late_us must be from -10000 to 10000")
		}
	}
	return nil
}

// seconds returns what is tried as timing has it.
func seconds(all []turned) []timing.Turned {
	out := make([]timing.Turned, len(all))
	for i, t := range all {
		out[i] = timing.Turned{ID: t.Channel, Off: t.Off, Reversed: t.Reversed, Late: t.Late / 1e6}
	}
	return out
}

// asPlanned is what stays beside what is tried.
type asPlanned struct {
	Aligned  document.Numbers  `json:"aligned_db"` // at the frequencies that the plan's response has; null: silent
	Channels []document.Output `json:"channels"`
	Measures document.Measures `json:"measures"`
	Seats    *seating          `json:"seats,omitempty"` // only where there are several
}

func asPlannedOf(p *timing.Spot) *asPlanned {
	s := document.OfSpot(p)
	return &asPlanned{short(curvePlaces, s.Response.Aligned), s.Channels, s.Measures, seatingOf(s.Seats, false)}
}
