package verdict

import (
	"math"

	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// perThird frequencies in each third are what a sum of channels is worked out at: steps of 1/48
// of an octave, as fine as recordings are told.
const perThird = 16 // free: finer steps tell no more

// seemsOff is how far in dB the seats are off their plans before a channel is suspected: as
// far as drivers of one make differ (common practice).
const seemsOff = 1.0

// suspect names the one channel that seems to be turned round or silent by what all channels
// together gave at several seats, where they were not recorded one by one. Each channel in
// turn is taken for either in the plan, and the thirds' levels at all seats are held against
// that, less what all seats have alike. As with the delays (isOther), one is named where the
// plan as it is is off by seemsOff, with the channel so by less than otherBetter of that,
// and with no other so by less than this over otherBetter. What channels give is
// worked out with a room's echoes, so behind a gate in a room none is named.
func (s *Seats) suspect(p *timing.Plan, played timing.Case) ([]Fact, error) {
	if len(s.Heard) == 1 || len(p.Channels) == 1 || s.Heard[0].Level.Gated && p.Array.Room.Present {
		return nil, nil
	}
	g := gains{Seats: s}
	for _, centre := range s.Thirds {
		over, _ := s.over(centre, make([]float64, len(s.Heard)))
		g.over = append(g.over, over)
	}
	frequency := within(s.Thirds)
	for _, h := range s.Heard {
		there, err := p.At(p.Array.Seats[h.Index].At)
		if err != nil {
			return nil, err
		}
		g.given = append(g.given, sums(there.StringTransfers(played, frequency), len(frequency)))
	}
	asIs := g.misfit(-1, 1)
	best, second, found := math.Inf(1), math.Inf(1), Fact{Value: asIs}
	for c := range p.Channels {
		for _, is := range []struct {
			code Code
			gain float64
		}{{SeemsReversed, -1}, {SeemsSilent, 0}} {
			switch off := g.misfit(c, is.gain); {
			case off < best:
				best, second = off, best
				found.Code, found.Channels, found.Error = is.code, []int{p.Channels[c].ID}, off
			case off < second:
				second = off
			}
		}
	}
	if !isSuspect(asIs, best, second) {
		return nil, nil
	}
	return []Fact{found}, nil
}

// within returns the frequencies in Hz at which thirds of octaves are worked out, perThird in each.
func within(thirds []float64) []float64 { return band.Frequencies(thirds, 3, perThird) }

// isSuspect tells whether the seats are off their plans as they are, and with one channel at
// fault far less than that, and than with any other; in dB.
func isSuspect(asIs, best, second float64) bool {
	return asIs >= seemsOff && best < otherBetter*min(asIs, second)
}

// gains are what channels give at the seats that were recorded.
type gains struct {
	*Seats
	given [][][]complex128 // [seat][channel][frequency], as planned
	over  [][]float64      // [third][seat] dB that was measured over the plan
}

// misfit returns how far in dB, as RMS over seats and thirds, what was measured is off the
// plan where one channel has a gain times what is planned; a channel below 0: none has.
func (g *gains) misfit(channel int, gain float64) float64 {
	off := make([][]float64, len(g.given)) // [seat][third]
	for i, channels := range g.given {
		for b := range g.Thirds {
			planned, so := 0.0, 0.0
			for f := b * perThird; f < (b+1)*perThird; f++ {
				var sum, changed complex128
				for c, row := range channels {
					sum += row[f]
					if c == channel {
						changed += complex(gain-1, 0) * row[f]
					}
				}
				planned, so = planned+energy(sum), so+energy(sum+changed)
			}
			off[i] = append(off[i], g.over[b][i]-10*math.Log10(so/planned))
		}
		if !g.Wired {
			floats.AddConst(-stat.Mean(off[i], nil), off[i])
		}
	}
	square := 0.0
	for b := range g.Thirds {
		var seats []float64
		for _, row := range off {
			seats = append(seats, row[b])
		}
		square += stat.PopVariance(seats, nil) / float64(len(g.Thirds))
	}
	return math.Sqrt(square)
}
