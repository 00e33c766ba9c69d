package verdict

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/seats"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// Seats is what recordings of all channels at seats tell: how much is lost there against all
// drivers in step, over the thirds that all of them tell of, where the microphone stood; a
// plan's own figures are of heads that move.
//
// No recording tells what the drivers would give in step; that is the plan's. What is lost is
// what the plan loses and, in each third, by how much less was measured than planned, less
// what is the same everywhere, as the drivers' own response and the microphone's gain are:
//
//	lost(s,b) = planned(s,b) + common(b) - (measured level - planned level)(s,b)
//
// Where the channels were recorded one by one with a wire, common is what they have alike;
// else it is the mean of the differences over the seats, by which the mean loss is as planned
// and only how the seats differ is told. Without a wire nothing tells one recording's gain
// from another's, and each seat's own mean difference is taken out first.
type Seats struct {
	Heard             []Seat    // the seats that were recorded, in the design's order
	Thirds            []float64 // Hz, exact centres
	Planned, Measured seats.Figures
	OwnMean           bool // the mean that was measured is told, and not as planned
	Wired             bool // the levels of the recordings can be compared
}

// Seat is what the recording at one seat tells.
type Seat struct {
	Index int // into Array.Seats
	Name  string
	Level Level
	Whole *recording.Measured
	Error float64 // dB, one standard error of the loss there: the mean of its bands'
}

// seats judges what was recorded at seats; nil where nothing was, or nothing follows. A seat
// at the spot without a recording of its own has that of the spot. Faults and what else to
// know are added to those of the spot.
func (t Takes) seats(p *timing.Plan, out *Found) (*Seats, error) {
	if p.Seating == nil {
		return nil, nil
	}
	t.Level.surface = true // as losses are
	found, recorded, others, each := &Seats{Wired: true}, 0, 0, out.Channels != nil
	for i, s := range p.Array.Seats {
		name := sweep.RecordedSeatName(i + 1)
		at, err := t.repeated(t.path(name))
		if err == nil {
			recorded++
		} else if errors.Is(err, fs.ErrNotExist) && s.At == p.Array.Spot && out.Whole != nil {
			at, err = place{mean: out.Whole, each: out.repeats}, nil
		}
		m := at.mean
		for _, f := range at.faults {
			f.Seat = s.Name
			out.Faults = append(out.Faults, f)
		}
		switch {
		case isCut(err):
			return nil, err
		case errors.Is(err, fs.ErrNotExist):
		case err == nil:
			level, err := OfLevel(p, []Position{{At: s.At, Measured: *m, Repeats: at.each}}, t.Level)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
			found.Heard = append(found.Heard, Seat{Index: i, Name: s.Name, Level: level, Whole: m})
			found.Wired = found.Wired && m.Absolute
			if level.OtherCase {
				others++
			}
		default:
			out.Faults = append(out.Faults, Fact{Code: SeatUnusable, Seat: s.Name, Err: err})
		}
		one, err := t.channelsAt(p, i, out)
		if err != nil {
			return nil, err
		}
		each = each || one
	}
	switch {
	case len(found.Heard) == 0:
		return nil, nil
	case out.Channels != nil && out.Channels.OtherCase:
		if !slices.ContainsFunc(out.Notes, func(f Fact) bool { return f.Code == LevelUnjudged }) {
			out.Notes = append(out.Notes, Fact{Code: LevelUnjudged})
		}
		return nil, nil
	case areMost(others, len(found.Heard)):
		out.Faults = append(out.Faults, Fact{Code: SeatsOtherCase})
	}
	if !found.Wired && len(found.Heard) > 1 {
		out.Notes = append(out.Notes, Fact{Code: SeatsNoWire})
	}
	out.Faults = append(out.Faults, found.wires()...)
	if err := found.judge(p, t.Level.Case, out.Channels); err != nil {
		return nil, err
	}
	if len(found.Thirds) == 0 {
		thirds := p.Seating.Thirds
		return nil, fmt.Errorf("%w: nothing was measured at all seats from %s to %s", errMeasured, band.Hertz(thirds[0]), band.Hertz(thirds[len(thirds)-1]))
	}
	if len(found.Heard) == 1 && !found.OwnMean {
		if recorded > 0 {
			out.Notes = append(out.Notes, Fact{Code: SeatAlone, Seat: found.Heard[0].Name})
		}
		return nil, nil
	}
	if each {
		return found, nil // they were recorded one by one, which tells more
	}
	suspects, err := found.suspect(p, t.Level.Case)
	out.Faults = append(out.Faults, suspects...)
	return found, err
}

// areMost tells whether so many of all are more than half of them.
func areMost(some, all int) bool { return 2*some > all }

// channelsAt judges channels that were recorded one by one at a seat, by its index, and adds
// the faults that are not known yet: what is turned away from one seat is heard at another. It
// tells whether there were any.
func (t Takes) channelsAt(p *timing.Plan, seat int, out *Found) (bool, error) {
	t.prefix = sweep.RecordedSeatName(seat+1) + "_"
	each, err := t.each(p)
	if err != nil || each.heard < 2 {
		return false, err
	}
	there, err := p.At(p.Array.Seats[seat].At)
	if err != nil {
		return false, err
	}
	faults := each.faults
	v, err := OfChannels(there, each.measured, Setting{Case: t.Level.Case, Missing: each.missing, Repeats: each.repeats})
	if err == nil {
		faults = append(faults, v.Faults...)
	} else {
		faults = append(faults, Fact{Code: Uncompared, Err: err})
	}
	for _, f := range faults {
		f.Seat = p.Array.Seats[seat].Name
		if !slices.ContainsFunc(out.Faults, f.same) {
			out.Faults = append(out.Faults, f)
		}
	}
	return true, nil
}

// same tells whether another fact is the same fault of the same channels, found elsewhere.
func (f Fact) same(other Fact) bool {
	return f.File == "" && f.Err == nil && f.Code == other.Code && f.String == other.String && slices.Equal(f.Channels, other.Channels)
}

// judge works out what is lost.
func (s *Seats) judge(p *timing.Plan, played timing.Case, channels *Channels) error {
	lost, err := p.Still(played)
	if err != nil {
		return err
	}
	var weight []float64
	for _, h := range s.Heard {
		weight = append(weight, p.Array.Seats[h.Index].Weight)
	}
	planned, measured := make([][]float64, len(s.Heard)), make([][]float64, len(s.Heard))
	own := s.own()
	for b, centre := range p.Seating.Thirds {
		over, failure := s.over(centre, own)
		common := stat.Mean(over, weight)
		if s.OwnMean = channels != nil && channels.timed && s.Wired; s.OwnMean {
			common = channels.commonIn(centre)
		}
		if math.IsNaN(common + floats.Sum(over)) {
			continue // a recording tells nothing of it
		}
		s.Thirds = append(s.Thirds, centre)
		for i, h := range s.Heard {
			loss := lost.Band[h.Index][b]
			planned[i], measured[i] = append(planned[i], loss), append(measured[i], loss+common-over[i])
			s.Heard[i].Error += failure[i]
		}
	}
	for i := range s.Heard {
		s.Heard[i].Error /= float64(len(s.Thirds))
	}
	if len(s.Thirds) > 0 {
		s.Planned, s.Measured = seats.OfBands(planned, s.Thirds, weight), seats.OfBands(measured, s.Thirds, weight)
	}
	return nil
}

// wires tells of seats whose wire is of another level than at the others: what was measured
// there is off by as much.
func (s *Seats) wires() (found []Fact) {
	var all []*recording.Measured
	for _, h := range s.Heard {
		all = append(all, h.Whole)
	}
	_, level := wires(all)
	for i, h := range s.Heard {
		if math.Abs(level[i]) > wireApart {
			found = append(found, Fact{Code: SeatWireLevel, Seat: h.Name, Value: level[i]})
		}
	}
	return found
}

// own returns each seat's own mean difference in dB, where nothing tells one recording's gain
// from another's; 0 where a wire does.
func (s *Seats) own() []float64 {
	out := make([]float64, len(s.Heard))
	for i, h := range s.Heard {
		if !s.Wired {
			out[i] = h.Level.Offset
		}
	}
	return out
}

// over returns by how much in dB each seat was over its plan in a third, less something for
// each, and one standard error of that; NaN where a recording tells nothing.
func (s *Seats) over(centre float64, less []float64) (over, failure []float64) {
	for i, h := range s.Heard {
		b := slices.IndexFunc(h.Level.Bands, func(b Band) bool { return math.Abs(b.Centre-centre) < 1e-6*centre }) // free: the next is a quarter higher
		if b < 0 {
			over, failure = append(over, math.NaN()), append(failure, math.NaN())
			continue
		}
		one := h.Level.Bands[b]
		over, failure = append(over, one.Difference+h.Level.Offset-less[i]), append(failure, one.Error)
	}
	return over, failure
}

// commonIn returns what the channels have alike in a third in dB, the middle one's gain in it;
// NaN where nothing is known.
func (v *Channels) commonIn(centre float64) float64 {
	low, high := band.Edges(centre, 3)
	from, to := band.Range(v.Frequency, low, high)
	return v.Gain + stat.Mean(v.Common[from:to], nil)
}
