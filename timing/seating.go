package timing

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/timing/radiate"
	"pappus/timing/seats"

	"gonum.org/v1/gonum/spatial/r3"
)

// Seating is how one set of delays serves all seats, by losses in dB against all drivers in
// step over the thirds from 500 Hz to 8 kHz, of the loudspeaker itself on its surface, without
// the room, within the reach of the head (Array.Seating.Head).
//
// Drivers are twins here, since it matters little: of 40 lots as usual (tolerance.Usual) for the
// starter's five seats, a seat's loss is off by 0.3 dB at most in the median and by 0.4 dB in 95 of
// 100 (0.1 and 0.1 where fs, Q and Re alone are off by a tenth), and delays sought for the lot
// itself, 12 us from the twins', gain 0.2 and 0.5 dB of the aim: less than WorthOctave.
type Seating struct {
	Aim        string    // even, worst, mean or round
	Thirds     []float64 // Hz, exact centres
	MiddleSeat int       // index into Array.Seats: the nearest to the middle of all
	Planned    seats.Figures
	Middle     seats.Figures // with channels and delays for the middle seat alone
	Without    seats.Figures // without delays
	Bound      seats.Figures // with any phase for each channel and frequency: no processing of these channels does better
	Counts     []SeatCount   // for 1, 2 … channels; empty where the channels are laid out by hand, by neighbours or by height, and while a seat is dragged
	Strings    []SeatStrings // what shorter strings cost and bring; empty where there is no choice

	Round *Round // of the aim round; nil: another aim

	MiddleDelay []float64 // s, of each driver, as planned for the middle seat alone and as it can be set
}

// SeatCount is what a number of channels would leave at the seats, with strings of any length
// up to what the design allows, so that more are never worse.
type SeatCount struct {
	Channels int
	Longest  int // drivers in the longest string
	seats.Figures
}

// SeatStrings is a plan for all seats with strings of no more than Longest drivers.
type SeatStrings struct {
	Longest int
	Value   float64 // dB, what the aim makes small
	seats.Figures
	Louder float64 // dB more at the seats, in the mean, from the same amplifier than with strings of any length
	Chosen bool    // the plan's own
}

// hall is what places near seats hear of each driver of an array.
type hall struct {
	scene  *radiate.Scene
	thirds []float64
	ends   []int
	heard  map[r3.Vec][]complex128 // [mount*frequencies+f], on the surface, without the room, all fed alike
}

// served are channels with their delays that serve seats.
type served struct {
	seats    []layout.Seat
	effort   effort // with which they were found
	channels []Channel
	found    findings
	seating  *Seating
}

// effort is how long the channels for seats are sought.
type effort int

const (
	thorough effort = iota
	dragged         // at once, with the shortest strings: a seat is dragged
	sketched        // once for each length of strings, by the rule for these: many designs are gone through
)

// mostHeard is how many places' sounds a planner keeps at most: those of some dozens of
// seats, and of one that is dragged.
const mostHeard = 1024

// newHall makes an array ready to be heard at seats.
func newHall(a *layout.Array) (*hall, error) {
	h := &hall{heard: map[r3.Vec][]complex128{}}
	var frequency []float64
	frequency, h.thirds, h.ends = seats.Frequencies()
	var err error
	h.scene, err = newScene(unroomed(a), frequency)
	return h, err
}

// listen makes the planner's array ready to be heard at seats, where it is not yet.
func (p *Planner) listen() (err error) {
	if p.hall == nil {
		p.hall, err = newHall(p.array)
	}
	return err
}

// field returns what seats hear, each at the places that its head reaches and sound does.
func (h *hall) field(a *layout.Array) *seats.Field {
	f := &seats.Field{Frequency: h.scene.Medium.Frequency, Ends: h.ends, Drivers: len(a.Mounts)}
	if len(h.heard) > mostHeard {
		clear(h.heard)
	}
	for i, s := range a.Seats {
		for j, off := range seats.Around(a.Seating.Head) {
			at := r3.Add(s.At, off)
			if j > 0 && a.ReachSpot(at) != nil {
				continue // a head does not go into walls
			}
			f.Place, f.Seat = append(f.Place, h.at(at)), append(f.Seat, i)
		}
		f.Weight = append(f.Weight, s.Weight)
	}
	return f
}

// at returns what a place in m hears of each mount.
func (h *hall) at(place r3.Vec) []complex128 {
	heard, ok := h.heard[place]
	if !ok {
		heard = make([]complex128, len(h.scene.Array.Mounts)*len(h.scene.Medium.Frequency))
		h.scene.Hear(heard, h.scene.Ways, place)
		h.heard[place] = heard
	}
	return heard
}

// Seats is Spot with other seats for the array's, as while one is dragged: quickly, and without
// Counts and Strings.
func (p *Planner) Seats(at r3.Vec, list []layout.Seat) (*Spot, error) {
	a := *p.array
	a.Spot, a.Seats = at, list
	for i, s := range list {
		if err := a.ReachSpot(s.At); err != nil {
			return nil, fmt.Errorf("seat %d: %w", i+1, err)
		}
	}
	return p.spot(context.Background(), &a, dragged)
}

// Know takes over what a spot of the planner's array was found for its seats, so that it need
// not be found again for another place.
func (p *Planner) Know(s *Spot) { p.served = s.served }

// serve returns the channels and delays that serve an array's seats, which it keeps until
// other seats are asked for; of nothing where there are fewer than two.
func (p *Planner) serve(ctx context.Context, a *layout.Array, e effort) (served, error) {
	if len(a.Seats) < 2 {
		return served{}, nil
	}
	if p.served.effort != e || !slices.Equal(p.served.seats, a.Seats) {
		if err := p.listen(); err != nil {
			return served{}, err
		}
		atSeats := p.hall.field(a)
		s := &server{p, a, atSeats, atSeats, seats.Aim(a.Seating.Aim), &Seating{Aim: a.Seating.Aim, Thirds: p.hall.thirds, MiddleSeat: design.MiddleSeat(a.Seats)}}
		channels, found, err := s.serve(ctx, e)
		if errors.Is(err, seats.ErrSizes) {
			err = loadsRefused(a, err)
		}
		if err != nil {
			return served{}, err
		}
		p.served = served{slices.Clone(a.Seats), e, channels, found, s.Seating}
	}
	out := p.served
	out.channels = slices.Clone(out.channels) // whose delays are settled for each spot
	return out, nil
}

// server finds channels for an array's seats.
type server struct {
	p     *Planner
	array *layout.Array
	seats *seats.Field
	field *seats.Field // that is planned on: the seats, or all round
	aim   seats.Aim
	*Seating
}

// serve finds the channels with their delays, and fills in how well they serve.
func (s *server) serve(ctx context.Context, e effort) ([]Channel, findings, error) {
	middle, err := s.middle(ctx)
	if err != nil {
		return nil, nil, err
	}
	if s.aim == seats.Round {
		if s.field, err = roundField(s.array); err != nil {
			return nil, nil, err
		}
	}
	var delay []float64
	channels, found, err := s.p.channels(s.array, func(count int) (groups [][]int, err error) {
		groups, delay, err = s.sort(ctx, middle, count, e)
		return groups, err
	})
	if err != nil {
		return nil, nil, err
	}
	if delay == nil {
		if delay, err = s.delays(ctx, channels, e); err != nil {
			return nil, nil, err
		}
	}
	for c := range channels {
		channels[c].Delay = delay[c]
	}
	groups, gain := mountsOf(channels), gains(s.array, channels)
	if e == sketched {
		s.Planned = s.seats.Judge(groups, gain, delay)
		return channels, found, nil
	}
	s.Planned, s.Without, s.Bound = s.seats.JudgeAll(groups, gain, delay)
	if e == thorough {
		s.Bound = s.seats.Together(groups, gain)
	}
	if s.aim == seats.Round {
		if err := s.round(ctx, channels, delay, e); err != nil {
			return nil, nil, err
		}
	}
	if s.Seating.Round == nil && s.Middle.Worst > s.Without.Worst {
		found.warn("seats_middle_worse", advice.Note, MiddleWorse{s.array.Seats[s.MiddleSeat].Name, s.Middle.Worst, s.Without.Worst, s.Planned.Worst})
	}
	return channels, found, nil
}

// middle plans for the middle seat alone.
func (s *server) middle(ctx context.Context) (*Spot, error) {
	alone := *s.array
	alone.Seats, alone.Spot = nil, s.array.Seats[s.MiddleSeat].At
	spot, err := s.p.spot(ctx, &alone, thorough)
	if err != nil {
		return nil, err
	}
	s.Seating.Middle = s.seats.Judge(mountsOf(spot.Channels), gains(spot.Array, spot.Channels), delaysOf(spot.Channels))
	for _, r := range spot.Arrivals {
		s.MiddleDelay = append(s.MiddleDelay, r.Delay)
	}
	return spot, nil
}

// limits are what all plans of the array obey.
func (s *server) limits() seats.Limits { return seats.Limits{Step: s.array.Processor.Step} }

// delays finds those of channels whose drivers are settled.
func (s *server) delays(ctx context.Context, channels []Channel, e effort) ([]float64, error) {
	l := s.limits()
	l.Groups, l.Gain = mountsOf(channels), gains(s.array, channels)
	for _, c := range channels {
		l.Delay = append(l.Delay, c.Channel.Delay)
	}
	found, err := s.plan(ctx, l, e)
	return found.Delay, err
}

func (s *server) plan(ctx context.Context, l seats.Limits, e effort) (seats.Answer, error) {
	if e != thorough {
		return s.field.Quick(s.aim, l)
	}
	return s.field.Plan(ctx, s.aim, l)
}

// sort sorts drivers into count channels and finds their delays; none yet where the design
// says how drivers are shared out.
func (s *server) sort(ctx context.Context, middle *Spot, count int, e effort) (groups [][]int, delay []float64, err error) {
	w := s.array.Wiring
	if w.Split == byNeighbours || w.Split == byHeight || len(s.array.Bodies()) > 1 {
		return mountsOf(middle.Channels), nil, nil
	}
	var found seats.Answer
	switch {
	case e == dragged:
		found, err = s.quickly(count)
	case e == sketched && w.LongestString > 0:
		found, err = s.quickly(count)
	case e == sketched:
		found, err = s.choose(count, func(most int) (seats.Answer, error) { return s.quick(count, most) })
	case w.LongestString > 0:
		found, err = s.within(ctx, count, w.LongestString)
		if errors.Is(err, seats.ErrSizes) {
			found, err = s.within(ctx, count, 0)
		}
	default:
		found, err = s.choose(count, func(most int) (seats.Answer, error) { return s.within(ctx, count, most) })
	}
	return found.Groups, found.Delay, err
}

// quickly finds count channels with the shortest strings that the design allows.
func (s *server) quickly(count int) (found seats.Answer, err error) {
	most := s.array.Wiring.LongestString
	if most == 0 {
		most = s.p.sizes.shortest(count)
	}
	for _, most := range []int{most, 0} {
		if found, err = s.quick(count, most); !errors.Is(err, seats.ErrSizes) {
			return found, err
		}
	}
	return found, err
}

// quick finds count channels with no more than most drivers in a string, 0: with any number.
func (s *server) quick(count, most int) (seats.Answer, error) {
	l := s.limits()
	l.Channels, l.Allowed = count, s.p.sizes.within(most)
	return s.field.Quick(s.aim, l)
}

// within finds count channels with no more than most drivers in a string, 0: with any number,
// and what fewer channels would leave.
func (s *server) within(ctx context.Context, count, most int) (found seats.Answer, err error) {
	l := s.limits()
	l.Channels, l.Allowed = count, s.p.sizes.within(most)
	all, err := s.field.PlanUpTo(ctx, s.aim, l)
	if err != nil {
		return found, err
	}
	if found = all[len(all)-1]; found.Groups == nil {
		return found, seats.ErrSizes
	}
	// The search is one by chance: what is shown while a seat is dragged is never better.
	if quick, err := s.field.Quick(s.aim, l); err == nil && s.field.Value(s.aim, quick.Figures) < s.field.Value(s.aim, found.Figures) {
		found = quick
		all[len(all)-1] = quick
	}
	s.Counts = nil
	for _, a := range all {
		if a.Groups != nil {
			s.Counts = append(s.Counts, SeatCount{len(a.Groups), s.p.sizes.longest(a.Groups), s.figures(a)})
		}
	}
	return found, nil
}

// figures are those of an answer at the seats.
func (s *server) figures(a seats.Answer) seats.Figures {
	if s.field == s.seats {
		return a.Figures
	}
	return s.seats.Judge(a.Groups, nil, a.Delay)
}

// choose finds count channels by the rule for strings: the shortest, since voltage divides
// along a string, with which the aim loses no more than WorthOctave in dB against strings of
// any length. As at one spot, level can be bought and timing cannot. within finds channels with
// so many drivers in a string at most; 0: with any number.
func (s *server) choose(count int, within func(most int) (seats.Answer, error)) (seats.Answer, error) {
	free, err := within(0)
	if err != nil {
		return free, err
	}
	counts, longest := s.Counts, s.p.sizes.longest(free.Groups)
	loud := newLoudness(s.array, s.p.ratedVolt)
	row := func(a seats.Answer) SeatStrings {
		longest := s.p.sizes.longest(a.Groups)
		return SeatStrings{Longest: longest, Value: s.field.Value(s.aim, a.Figures), Figures: s.figures(a), Louder: loud.level(longest) - a.Mean}
	}
	last := row(free)
	for most := s.p.sizes.shortest(count); most < longest && loud.worth(most) > loud.worth(longest); most++ {
		short, err := within(most)
		if errors.Is(err, seats.ErrSizes) {
			continue
		}
		if err != nil {
			return free, err
		}
		one := row(short)
		one.Louder -= last.Louder
		one.Chosen = one.Value <= last.Value+WorthOctave
		if s.Strings = append(s.Strings, one); one.Chosen {
			free = short
			break
		}
	}
	last.Louder, last.Chosen = 0, s.p.sizes.longest(free.Groups) == longest
	s.Strings, s.Counts = append(s.Strings, last), counts
	return free, nil
}

// loadsRefused names the least load as what keeps drivers from being sorted into channels for seats.
func loadsRefused(a *layout.Array, err error) error {
	return a.Fault("wiring.minimum_load_ohm", prose.Number(a.Wiring.MinimumLoad, 6),
		prose.Sprintf("no strings of these drivers, of %.3g ohm each, make as many channels of such a load; must be lower, or wiring.channels another number", a.Driver.DCOhm), err)
}
