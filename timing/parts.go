package timing

import (
	"math"
	"slices"

	"pappus/timing/cores"
	"pappus/timing/head"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Parts are what cases of a plan are made of: each channel by itself, without gain and
// delay, and flat, as Listening has it. A case is the sum of its parts, each behind its
// Source's own response and as Fed has it.
type Parts struct {
	Part  []Part
	Cases [][]Fed // of each case of the Listening
	spot  *Spot
	how   Listening
}

// Part is what is fed as one.
type Part struct {
	Source  Source
	Channel int       // index into Spot.Channels; 0 where it is none of them
	late    []float64 // s, by how much each of the channel's mounts is later fed than the channel; nil: none
}

// Source is what a part consists of.
type Source int

const (
	OfDrivers Source = iota // behind Spot.DriverResponse and, with a woofer, its high-pass
	OfPoint                 // the ideal point, behind the same
	OfWoofer                // behind Woofer.LowPass
)

// Fed is how a part is fed in a case.
type Fed struct {
	Part  int
	Gain  float64 // factor, negative where inverted
	Delay float64 // s
}

// NewParts returns the parts of a plan's cases. The Listening is to be Flat.
func NewParts(p *Spot, l Listening) *Parts {
	out := &Parts{spot: p, how: l, Cases: make([][]Fed, len(l.Cases))}
	for i, c := range l.Cases {
		array, woofer := 0.0, 0.0
		if l.Woofer != nil {
			array, woofer = l.Woofer.Lags(p, c)
		}
		if c == IdealPoint {
			out.add(i, Part{Source: OfPoint}, Fed{Gain: total(newFeed(p).gain), Delay: array})
		} else {
			out.addChannels(i, p.delays(c), array)
		}
		if l.Woofer != nil {
			out.add(i, Part{Source: OfWoofer}, Fed{Gain: l.Woofer.gain(), Delay: woofer})
		}
	}
	return out
}

// alike is how far apart in s delays of drivers may be that are one channel's.
const alike = 1e-12

// addChannels adds the channels to a case that delays each mount, and all by as much more.
func (s *Parts) addChannels(c int, delay []float64, all float64) {
	gain := gains(s.spot.Array, s.spot.Channels)
	for i, channel := range s.spot.Channels {
		if len(channel.Mounts) == 0 {
			continue
		}
		part := Part{Channel: i, late: make([]float64, len(channel.Mounts))}
		least := math.Inf(1)
		for _, m := range channel.Mounts {
			least = min(least, delay[m])
		}
		for k, m := range channel.Mounts {
			part.late[k] = delay[m] - least
		}
		if slices.Max(part.late) < alike {
			part.late = nil
		}
		s.add(c, part, Fed{Gain: gain[i], Delay: least + all})
	}
}

// add feeds a part in a case, one that is there already where it is the same.
func (s *Parts) add(c int, part Part, fed Fed) {
	fed.Part = slices.IndexFunc(s.Part, func(p Part) bool {
		return p.Source == part.Source && p.Channel == part.Channel && slices.Equal(p.late, part.late)
	})
	if fed.Part < 0 {
		fed.Part = len(s.Part)
		s.Part = append(s.Part, part)
	}
	s.Cases[c] = append(s.Cases[c], fed)
}

// Lasting returns how long, at most, the first arrivals of all mounts of one body take that
// come by one way, in s: round the ball from the near side to the far one is pi radii.
func (s *Parts) Lasting() float64 {
	body, far := s.spot.Array.Body, 0.0
	for _, m := range s.spot.Array.Mounts {
		far = max(far, r3.Norm(r3.Sub(m.Point, body.BallCentre)))
	}
	late := 0.0
	for _, p := range s.Part {
		for _, v := range p.late {
			late = max(late, v)
		}
	}
	return math.Pi*max(far, body.BallRadius)/s.spot.SpeedOfSound + late
}

// How many mounts are heard at once: few enough that all cores have some, where there are not
// enough ways for that.
const (
	lotSize  = 16
	fewWays  = 8
	lotOfWay = together
)

// lot is what is heard at once: some mounts of a group by one of its ways.
type lot struct {
	group    *group
	way      int
	from, to int
	rows     []int // the parts that these mounts are of
}

// PartsHearing hears parts at places in the room.
type PartsHearing struct {
	*Parts
	ears *Ears
	two  bool
	lots []lot
}

// Hearing returns what hears the parts at frequencies in Hz, with two ears or with one.
// Errors are those of NewEars.
func (s *Parts) Hearing(two bool, frequency []float64) (*PartsHearing, error) {
	h, drivers, point, err := newHearing(s.spot, s.how.Dry, true, frequency)
	if err != nil {
		return nil, err
	}
	drivers.ways, point.ways = bare(drivers.ways), bare(point.ways)
	out := &PartsHearing{Parts: s, two: two}
	if out.ears, err = newEars(h, true); err != nil {
		return nil, err
	}
	groups := []*group{OfDrivers: &drivers, OfPoint: &point, OfWoofer: nil}
	if s.how.Woofer != nil {
		woofer := s.how.Woofer.group(s.spot, point)
		groups[OfWoofer] = &woofer
	}
	for row, p := range s.Part {
		groups[p.Source].feedPart(row, p, s.spot.Channels, frequency)
	}
	for _, g := range groups {
		if g != nil && g.fed != nil {
			out.lots = append(out.lots, g.lots()...)
		}
	}
	return out, nil
}

// bare returns ways without what walls leave.
func bare(ways []radiate.Way) []radiate.Way {
	out := slices.Clone(ways)
	for i := range out {
		out[i].Factor = nil
	}
	return out
}

// Left returns what the walls leave of the pressure by each mirror, at frequencies in Hz; nil:
// all, as of the first, which is none.
func (s *Parts) Left(frequency []float64) (out [][]float64) {
	for _, way := range radiate.InRoom(radiate.Ways(s.spot.scene(s.how.Dry), radiate.NewMedium(s.spot.airState(), frequency))) {
		out = append(out, way.Factor)
	}
	return out
}

// feedPart has the mounts of a part heard in a row.
func (g *group) feedPart(row int, p Part, channels []Channel, frequency []float64) {
	if g.fed == nil {
		g.fed = make([][]fed, len(g.mounts))
	}
	mounts := []int{0}
	if p.Source == OfDrivers {
		mounts = channels[p.Channel].Mounts
	}
	for k, m := range mounts {
		one := fed{row: row}
		if p.late != nil {
			one.weight = make([]complex128, len(frequency))
			for f, hz := range frequency {
				one.weight[f] = turn(hz, p.late[k])
			}
		}
		g.fed[m] = append(g.fed[m], one)
	}
}

// lots divides a group, alike on any number of cores.
func (g *group) lots() (out []lot) {
	size := lotOfWay
	if len(g.ways) < fewWays {
		size = lotSize
	}
	for way := range g.ways {
		first, end := radiate.Of(g.mounts, g.ways[way].Body)
		for from := first; from < end; from += size {
			one := lot{group: g, way: way, from: from, to: min(from+size, end)}
			for _, f := range slices.Concat(g.fed[one.from:one.to]...) {
				if !slices.Contains(one.rows, f.row) {
					one.rows = append(one.rows, f.row)
				}
			}
			out = append(out, one)
		}
	}
	return out
}

// Lots returns how many pieces Each hears.
func (h *PartsHearing) Lots() int { return len(h.lots) }

// Piece is what a place hears of some parts by one way.
type Piece struct {
	First       float64        // s, when its first sound arrives by the way, where nothing is delayed
	Mirror      int            // index into what Left returns, which is not in the piece
	Rows        []int          // the parts
	Left, Right [][]complex128 // of each of Rows: pressure at each frequency; Right is nil with one ear
}

// Each calls visit with all pieces of what is heard at a place in m, with a head that looks
// along nose: with each once, from all cores at once, by a worker below cores.Count. What a
// part gives there is the sum of its pieces, each times what Left has for it. visit may not keep a piece's spectra. A place that
// no sound can reach gives what layout.Array.Reach does.
func (h *PartsHearing) Each(place, nose r3.Vec, visit func(worker, lot int, p Piece)) error {
	if err := h.spot.Array.Reach(place); err != nil {
		return err
	}
	l, r := head.Ears(nose)
	cores.Each(len(h.lots), func(worker, i int) {
		held := h.ears.scratch.Get().(*ear)
		defer h.ears.scratch.Put(held)
		visit(worker, i, h.hear(held, h.lots[i], place, l, r))
	})
	return nil
}

// hear hears a lot.
func (h *PartsHearing) hear(held *ear, o lot, place, l, r r3.Vec) Piece {
	g, n := o.group, len(h.ears.plain)
	out := Piece{First: h.first(o, place), Mirror: o.way / g.bodies, Rows: o.rows}
	left, right := make([][]complex128, len(h.Part)), make([][]complex128, len(h.Part))
	for _, row := range o.rows {
		left[row], right[row] = make([]complex128, n), make([]complex128, n)
		out.Left = append(out.Left, left[row])
		if h.two {
			out.Right = append(out.Right, right[row])
		}
	}
	if !h.two {
		held.each(g, g.mounts[o.from:o.to], g.ways[o.way], place, func(m int, heard []complex128) { g.feed(left, heard, o.from+m) })
		return out
	}
	h.ears.way(held, g, g.mounts[o.from:o.to], o.way, place, l, r, func(m int) {
		g.feed(left, held.left, o.from+m)
		g.feed(right, held.right, o.from+m)
	})
	return out
}

// first returns when the first of all mounts of a lot's body is heard by its way, in s, as
// Spot.Span has it.
func (h *PartsHearing) first(o lot, place r3.Vec) float64 {
	g, at := o.group, o.group.ways[o.way].Moved(place)
	from, end := radiate.Of(g.mounts, g.ways[o.way].Body)
	first := math.Inf(1)
	for _, mount := range g.mounts[from:end] {
		long := r3.Norm(r3.Sub(at, mount.Point))
		if !g.apart {
			path, straight, _ := ownWay(h.spot.Array, mount, at)
			long = min(path, straight)
		}
		first = min(first, long/h.spot.SpeedOfSound)
	}
	return first
}
