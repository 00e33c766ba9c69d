package timing

import (
	"context"
	"errors"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing/band"
	"pappus/timing/measure"
	"pappus/timing/omni"
	"pappus/timing/radiate"
	"pappus/timing/seats"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/gonum/stat"
)

// Rings round the body's axis stand for people all round. A plan made on one height alone is
// uneven by some dB 0.3 m above and below, where those who stand, sit or walk have their
// ears; so there are three.
const (
	roundStep   = 0.3 // m between the heights
	roundArcs   = 12  // places on a circle while it is planned: one in each 30 degrees
	roundSteps  = 72  // places on a circle as it is judged: 5 degrees
	roundOctave = 12  // frequencies in each octave, as coverage has
)

// ErrNoCircle tells that people cannot be all round.
var ErrNoCircle = errors.New("nobody can be all round")

// Round is how level and evenness all round stand to each other.
type Round struct {
	Octaves []float64 // Hz, exact centres, 1 to 8 kHz
	Height  []float64 // m, of the circles
	Radius  float64   // m
	Loud    float64   // 0 even to 1 loud, as planned
	Planned Circles
	Without Circles      // without delays: all in parallel
	Front   []RoundPoint // of five plans from even to loud those that no other beats in both; empty while a seat is dragged
}

// Circles are what is heard on circles round the body's axis, by height and octave.
type Circles struct {
	Gain      [][]float64 // [height][octave] dB, the mean energy over that without delays
	Deviation [][]float64 // [height][octave] dB, of the 30-degree gliding mean that is furthest from the circle's (ISO 3382-1:2009, 4.2.1)
}

// RoundPoint is a plan between even and loud.
type RoundPoint struct {
	Loud      float64
	Gain      float64 // dB, mean over heights and octaves
	Deviation float64 // dB, the greatest of any
}

// roundOctaves are those that delays can do something for.
func roundOctaves() []float64 {
	all := band.Octaves()
	return all[len(all)-4:]
}

// rings returns the places of circles at the mean height and distance of an array's seats, so
// many on each, and their heights and radius in m.
func rings(a *layout.Array, steps int) (places [][]r3.Vec, heights []float64, radius float64) {
	middle := 0.0
	for _, s := range a.Seats {
		middle += s.At.Z / float64(len(a.Seats))
		radius += math.Hypot(s.At.X, s.At.Y) / float64(len(a.Seats))
	}
	for i := -1.0; i <= 1; i++ {
		z := middle + i*roundStep
		var circle []r3.Vec
		for _, angle := range circleAngles(steps) {
			sin, cos := math.Sincos(angle)
			at := r3.Vec{X: radius * cos, Y: radius * sin, Z: z}
			if a.ReachSpot(at) == nil {
				circle = append(circle, at)
			}
		}
		if len(circle) == steps { // none that goes through a table or a wall
			places, heights = append(places, circle), append(heights, z)
		}
	}
	return places, heights, radius
}

// roundField returns what people all round hear, against all drivers in parallel: each octave's
// loss is the mean energy that it has without delays over what it has with them. The error is
// ErrNoCircle where no circle can be reached.
func roundField(a *layout.Array) (*seats.Field, error) {
	places, _, radius := rings(a, roundArcs)
	octaves := roundOctaves()
	frequency := band.Frequencies(octaves, 1, roundOctave)
	s, err := newScene(unroomed(a), frequency)
	if err != nil {
		return nil, err
	}
	if len(places) == 0 {
		return nil, a.Fault("seats.aim", strconv.Quote(a.Seating.Aim), prose.Sprintf("a circle of %.3g m round the body's axis at the seats' height goes through what stands there; must be clear, or another aim than round", radius), ErrNoCircle)
	}
	n, plain := len(frequency), make([]float64, len(octaves))
	f := &seats.Field{Frequency: frequency, Drivers: len(a.Mounts), Full: make([]float64, n), Loud: a.Seating.Loud}
	for b := range octaves {
		f.Ends = append(f.Ends, (b+1)*roundOctave)
	}
	for _, circle := range places {
		for _, at := range circle {
			heard := make([]complex128, len(a.Mounts)*n)
			s.Hear(heard, s.Ways, at)
			f.Place = append(f.Place, heard)
			for b := range plain {
				for k := b * roundOctave; k < (b+1)*roundOctave; k++ {
					var sum complex128
					for m := k; m < len(heard); m += n {
						sum += heard[m]
					}
					plain[b] += energyOf(sum) / roundOctave
				}
			}
		}
	}
	for k := range f.Full {
		f.Full[k] = math.Sqrt(plain[k/roundOctave] / float64(len(f.Place)))
	}
	return f, nil
}

// roundPlan is a plan that is heard all round: groups of drivers, each with its gain (nil: all
// as loud) and delay in s (nil: none). Its gains are over those of the plan numbered over.
type roundPlan struct {
	groups      [][]int
	gain, delay []float64
	over        int
}

// feed returns what the plan feeds so many mounts at frequencies in Hz.
func (r roundPlan) feed(mounts int, frequency []float64) radiate.Feed {
	fed := radiate.Feed{Group: make([]int, mounts), Weight: make([][]complex128, len(r.groups))}
	for g, members := range r.groups {
		for _, m := range members {
			fed.Group[m] = g
		}
		fed.Weight[g] = make([]complex128, len(frequency))
		for k, hz := range frequency {
			if fed.Weight[g][k] = 1; r.delay != nil {
				fed.Weight[g][k] = turn(hz, r.delay[g])
			}
			if r.gain != nil {
				fed.Weight[g][k] *= complex(r.gain[g], 0)
			}
		}
	}
	return fed
}

// judgeRound measures plans on fine circles, which each driver is heard on once for all.
func judgeRound(a *layout.Array, plans []roundPlan) (rounds []Circles, heights []float64, radius float64, err error) {
	places, heights, radius := rings(a, roundSteps)
	octaves := roundOctaves()
	frequency := band.Frequencies(octaves, 1, roundOctave)
	s, err := newScene(unroomed(a), frequency)
	if err != nil {
		return nil, nil, 0, err
	}
	feeds := make([]radiate.Feed, len(plans))
	for i, r := range plans {
		feeds[i] = r.feed(len(a.Mounts), frequency)
	}
	rounds = make([]Circles, len(plans))
	angles := circleAngles(roundSteps)
	for _, circle := range places {
		levels := make([][][]float64, len(plans)) // [plan][octave][angle]
		for i := range plans {
			levels[i] = table(len(octaves), len(circle))
		}
		s.Each(s.Ways, circle, func(_, place int, heard []complex128) {
			sum := make([]complex128, len(frequency))
			for i, fed := range feeds {
				clear(sum)
				fed.AddTo(sum, heard)
				for b := range octaves {
					levels[i][b][place] = measure.Decibels(meanEnergy(sum[b*roundOctave : (b+1)*roundOctave]))
				}
			}
		})
		for i, r := range plans {
			gain, deviation := make([]float64, len(octaves)), make([]float64, len(octaves))
			for b, level := range levels[i] {
				gain[b] = 10 * math.Log10(meanOf(level)/meanOf(levels[r.over][b]))
				deviation[b] = math.Abs(omni.Deviation(angles, level))
			}
			rounds[i].Gain, rounds[i].Deviation = append(rounds[i].Gain, gain), append(rounds[i].Deviation, deviation)
		}
	}
	return rounds, heights, radius, nil
}

// meanOf returns the mean energy of levels in dB.
func meanOf(level []float64) (mean float64) {
	for _, l := range level {
		mean += math.Pow(10, l/10) / float64(len(level))
	}
	return mean
}

// Point sums circles up.
func (c Circles) Point(loud float64) RoundPoint {
	return RoundPoint{loud, stat.Mean(slices.Concat(c.Gain...), nil), slices.Max(slices.Concat(c.Deviation...))}
}

// undominated returns the points that no other beats in both.
func undominated(all []RoundPoint) []RoundPoint {
	return slices.DeleteFunc(slices.Clone(all), func(p RoundPoint) bool {
		return slices.ContainsFunc(all, func(o RoundPoint) bool {
			return o.Gain >= p.Gain && o.Deviation <= p.Deviation && (o.Gain > p.Gain || o.Deviation < p.Deviation)
		})
	})
}

// roundLoud are the weights of the front's plans.
var roundLoud = []float64{0, 0.25, 0.5, 0.75, 1}

// round tells of a plan for all round.
func (s *server) round(ctx context.Context, channels []Channel, delay []float64, e effort) error {
	groups, gain := mountsOf(channels), gains(s.array, channels)
	plans := []roundPlan{{groups, gain, nil, 0}, {groups, gain, delay, 0}, {groups, nil, nil, 2}}
	const without, planned, parallel, fronts = 0, 1, 2, 3
	if e == thorough {
		for _, loud := range roundLoud {
			field := *s.field
			field.Loud = loud
			l := s.limits()
			l.Channels, l.Allowed = len(groups), s.p.sizes.within(s.p.sizes.longest(groups))
			found, err := field.Quick(seats.Round, l)
			if err != nil {
				return err
			}
			plans = append(plans, roundPlan{found.Groups, nil, found.Delay, parallel})
		}
	}
	rounds, heights, radius, err := judgeRound(s.array, plans)
	if err != nil {
		return err
	}
	out := &Round{Octaves: roundOctaves(), Height: heights, Radius: radius, Loud: s.field.Loud, Planned: rounds[planned], Without: rounds[without]}
	var front []RoundPoint
	for i, c := range rounds[fronts:] {
		front = append(front, c.Point(roundLoud[i]))
	}
	out.Front = undominated(front)
	s.Seating.Round = out
	return ctx.Err()
}
