package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/rehearsal"

	"gonum.org/v1/gonum/spatial/r3"
)

// Rehearsed says what is wrong in made-up recordings, and what else differs from the plan.
func Rehearsed(p *timing.Plan, s *rehearsal.Session) string {
	v := s.Variation()
	text := rehearsedFault(p, s.Fault()) + fmt.Sprintf(" The microphone stands %.0f mm off, the air is %.1f K %s than planned, the recorder's clock runs %+.0f parts per million, and %s from what stands round it.",
		1000*r3.Norm(v.Moved), math.Abs(v.Warmer), warmer(v.Warmer), v.Drift, prose.Count(len(v.Echoes), "echo comes", "echoes come"))
	if v.Hum.Hz > 0 {
		text += fmt.Sprintf(" There is a hum of %.0f Hz.", v.Hum.Hz)
	}
	if v.Woofer.Corner > 0 {
		text += fmt.Sprintf(" A woofer plays up to %.0f Hz.", v.Woofer.Corner)
	}
	if len(v.Pops) > 0 {
		text += " Something thumps once in each recording."
	}
	return text + rehearsedChannels(p, s)
}

// rehearsedChannels says what drivers and faults make of each channel, over the band that a
// measurement of channels goes by.
func rehearsedChannels(p *timing.Plan, s *rehearsal.Session) string {
	frequency := make([]float64, 200)
	band.Log(frequency, p.Array.Timing.FieldLow, p.Array.Timing.FieldHigh)
	truth, said := s.Truth(frequency), make([]string, len(p.Channels))
	for c, channel := range p.Channels {
		if math.IsInf(truth.Level[c], -1) {
			said[c] = fmt.Sprintf("channel %d is silent", channel.ID)
		} else {
			said[c] = fmt.Sprintf("channel %d is %s and %s", channel.ID, louder(truth.Level[c]), lateness(truth.Late[c]))
		}
	}
	return " By their drivers and their faults, over the plan, " + strings.Join(said, "; ") + "."
}

func warmer(k float64) string {
	if k < 0 {
		return "colder"
	}
	return "warmer"
}

// rehearsedFault says what is wrong.
func rehearsedFault(p *timing.Plan, f rehearsal.Fault) string {
	id, other := p.Channels[f.Channel].ID, p.Channels[f.Other].ID
	switch f.Kind {
	case rehearsal.ReversedChannel:
		return fmt.Sprintf("Channel %d is in reverse polarity.", id)
	case rehearsal.DeadString:
		return fmt.Sprintf("Channel %d: string %d of %d does not play.", id, f.String+1, len(p.Banks[f.Channel].Strings))
	case rehearsal.DeadChannel:
		return fmt.Sprintf("Channel %d is silent.", id)
	case rehearsal.LateChannel:
		return fmt.Sprintf("Channel %d comes 300 us late.", id)
	case rehearsal.QuietChannel:
		return fmt.Sprintf("Channel %d is 3 dB quieter than it should be.", id)
	case rehearsal.LoudChannel:
		return fmt.Sprintf("Channel %d is 3 dB louder than it should be.", id)
	case rehearsal.ReversedDriver:
		return fmt.Sprintf("Channel %d: driver %d is in reverse polarity.", id, p.Array.Mounts[f.Mount].ID)
	case rehearsal.Exchanged:
		return fmt.Sprintf("Channels %d and %d are exchanged.", id, other)
	case rehearsal.SameFile:
		return fmt.Sprintf("The recording of channel %d is that of channel %d.", other, id)
	case rehearsal.NoDelays:
		return "The delays were not set."
	}
	return rehearsedFile(id, f.Kind)
}

// rehearsedFile says what is wrong with a recording.
func rehearsedFile(id int, kind rehearsal.Kind) string {
	of := fmt.Sprintf("The recording of channel %d ", id)
	switch kind {
	case rehearsal.WireInverted:
		return of + "has its wire upside down."
	case rehearsal.WireLevel:
		return of + "has its wire 3 dB louder."
	case rehearsal.WrongFile:
		return of + "is of another sweep."
	case rehearsal.Clipped:
		return of + "is clipped."
	case rehearsal.GainChanged:
		return of + "has another gain from half of the sweep on."
	case rehearsal.Stopped:
		return of + "stands still for a while."
	case rehearsal.OtherRate:
		return "The files say another sample rate than they have."
	}
	return "Nothing is wrong."
}
