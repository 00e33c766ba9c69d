package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/measure"
	"pappus/timing/radiate"
	"pappus/timing/seats"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"
)

// newScene returns an array in its surroundings at frequencies in Hz.
func newScene(a *layout.Array, frequency []float64) (*radiate.Scene, error) {
	return radiate.NewScene(a, radiate.NewMedium(airOf(a), frequency))
}

// alone returns an array in open air, for what is told of its direct sound.
func alone(a *layout.Array) *layout.Array {
	free := *unroomed(a)
	free.Surface.Present = false
	return &free
}

// unroomed returns an array without the room, for what is told of the
// loudspeaker itself.
func unroomed(a *layout.Array) *layout.Array {
	free := *a
	free.Room.Present = false
	return &free
}

// places are where an array is heard, with all that does not hang on its channels, delays
// and spot.
type places struct {
	at        []r3.Vec // m
	frequency []float64
	frame     harmonic.Frame
	scene     *radiate.Scene
	bodies    []bodyPlaces
	low, high int // the frequencies that weigh arrivals
}

// bodyPlaces are places as the direct sound of one body finds them.
type bodyPlaces struct {
	rings    *radiate.Rings
	sizes    *radiate.Sizes // nil where no place is on a ring, or they are not asked for
	from, to int            // the body's mounts
}

// newPlaces makes places in m ready for plans of one array; one of them tells the drivers'
// response. The frame's Z is best the normal of the plane that the places are in. Sizes are
// needed for magnitudes and smear.
func newPlaces(p *Spot, frequency []float64, frame harmonic.Frame, at []r3.Vec, sizes bool) (*places, error) {
	s, err := newScene(p.Array, frequency)
	if err != nil {
		return nil, err
	}
	x := &places{at: at, frequency: frequency, frame: frame, scene: s}
	x.low, x.high = band.Range(frequency, layout.WeightLowHz, layout.WeightHighHz)
	for _, way := range s.Direct() {
		one := bodyPlaces{rings: s.Rings(way, frame, at)}
		one.from, one.to = radiate.Of(p.Array.Mounts, way.Body)
		if sizes && len(one.rings.Ring) > 0 {
			one.sizes = s.NewSizes(one.rings, p.response(frequency), x.low, x.high)
		}
		x.bodies = append(x.bodies, one)
	}
	return x, nil
}

// heard is the direct sound at places: what the delays are measured by. What is nil is not
// computed.
type heard struct {
	sum   []complex128 // [place][frequency]
	parts []float64    // [place][frequency]: the sum of the drivers' magnitudes
	smear []float64    // [place] s
}

// hearing is the direct sound of a plan at places, heard at some after others.
type hearing struct {
	*places
	spot     *Spot
	feed     radiate.Feed
	response []complex128
	each     []timed
	body     []bodyHearing
}

// bodyHearing is that of one body; what is not asked for, or has no place on a ring, is nil.
type bodyHearing struct {
	sum   *radiate.Summed
	sizes *radiate.SummedSizes
}

// hearing returns what a plan sounds like, ready to be heard; dst tells what is wanted.
func (x *places) hearing(dst heard, p *Spot) *hearing {
	h := &hearing{places: x, spot: p, response: p.response(x.frequency), body: make([]bodyHearing, len(x.bodies))}
	h.feed = p.feed(true, x.frequency, h.response)
	if dst.smear != nil {
		h.each = x.timed(len(p.Arrivals))
	}
	for i, one := range x.bodies {
		if dst.sum != nil {
			h.body[i].sum = x.scene.OnRings(h.feed, one.rings)
		}
		if dst.parts != nil && one.sizes != nil {
			h.body[i].sizes = one.sizes.Sum(h.feed.Group, gains(p.Array, p.Channels), h.response)
		}
	}
	return h
}

// hear fills in the direct sound of a plan at all places.
func (x *places) hear(dst heard, p *Spot) { x.hearing(dst, p).hear(dst, nil) }

// hear fills in the places that keep tells, nil: all: over harmonics and looked up where places
// are on rings (radiate.Rings), elsewhere driver by driver.
func (h *hearing) hear(dst heard, keep []bool) {
	for i, one := range h.bodies {
		one.rings = one.rings.Within(keep)
		if dst.sum != nil {
			h.body[i].sum.Add(dst.sum, keep)
		}
		if s := h.body[i].sizes; s != nil {
			s.Add(dst.parts, one.rings)
		}
		if dst.smear != nil && one.sizes != nil {
			h.time(dst, h.each, &one, h.spot)
		}
		h.hearNear(dst, h.each, &one, h.spot, h.feed)
	}
}

// timed is when and how loud each driver is heard at a place where not all bodies have been
// heard yet.
type timed struct {
	energy, arrival []float64 // for each mount
	bodies          int       // that have been heard
}

// timed returns room for all places; none where there is one body, which needs none.
func (x *places) timed(mounts int) []timed {
	if len(x.bodies) == 1 {
		return nil
	}
	out := make([]timed, len(x.at))
	room := make([]float64, 2*mounts*len(out))
	for i := range out {
		one := room[2*mounts*i : 2*mounts*(i+1)]
		out[i].energy, out[i].arrival = one[:mounts], one[mounts:]
	}
	return out
}

// smeared takes in when and how loud a body's drivers are heard at a place, and fills in the
// smear once all bodies are.
func (x *places) smeared(dst heard, each []timed, one *bodyPlaces, place int, k *smearScratch) {
	if each == nil {
		dst.smear[place] = measure.Smear(k.arrival, k.energy)
		return
	}
	t := &each[place]
	copy(t.energy[one.from:one.to], k.energy[one.from:one.to])
	copy(t.arrival[one.from:one.to], k.arrival[one.from:one.to])
	if t.bodies++; t.bodies == len(x.bodies) {
		dst.smear[place] = measure.Smear(t.arrival, t.energy)
	}
}

// hearNear fills in the places that are heard driver by driver.
func (x *places) hearNear(dst heard, each []timed, one *bodyPlaces, p *Spot, feed radiate.Feed) {
	n, scratch := len(x.frequency), newSmearScratch(len(p.Arrivals))
	x.scene.EachNear(one.rings, func(worker, place int, pressure []complex128) {
		k := &scratch[worker]
		k.hearer.move(p, x.at[place])
		for m := one.from; m < one.to; m++ {
			row := pressure[m*n : (m+1)*n]
			for f, w := range feed.Of(m) {
				row[f] *= w
				if dst.sum != nil {
					dst.sum[place*n+f] += row[f]
				}
				if dst.parts != nil {
					dst.parts[place*n+f] += math.Sqrt(energyOf(row[f]))
				}
			}
			k.energy[m], k.arrival[m] = meanEnergy(row[x.low:x.high]), k.hearer.heard(p.Array.Mounts[m])+p.Arrivals[m].Delay
		}
		if dst.smear != nil {
			x.smeared(dst, each, one, place, k)
		}
	})
}

// echoes returns what a surface or a room sends back of a plan, [place][frequency].
func (x *places) echoes(p *Spot) *radiate.Summed {
	return x.scene.NewSummed(p.feed(true, x.frequency, p.response(x.frequency)), x.scene.Echoes(), x.frame, x.at)
}

// combOnset returns the comb onset in Hz at a place. loud is room for one number for each
// frequency.
func (x *places) combOnset(h heard, place int, loud []float64) float64 {
	n := len(x.frequency)
	for f, v := range h.sum[place*n : (place+1)*n] {
		loud[f] = math.Sqrt(energyOf(v))
	}
	return measure.CombOnset(x.frequency, loud, h.parts[place*n:(place+1)*n])
}

// loss returns by how many dB a place falls short of all drivers in step.
func (x *places) loss(h heard, place int) float64 {
	n := len(x.frequency)
	sum := h.sum[place*n : (place+1)*n]
	return bandLoss(x.frequency, func(f int) float64 { return energyOf(sum[f]) }, h.parts[place*n:(place+1)*n])
}

// bandLoss returns by how many dB sums whose squared magnitudes energy tells fall short of
// their parts in step at frequencies in Hz, over those from 500 Hz to 8 kHz: seats.Figures has
// the formula. It is NaN where there are none.
func bandLoss(frequency []float64, energy func(f int) float64, parts []float64) float64 {
	share, count := 0.0, 0
	for f, hz := range frequency {
		if hz < seats.LowHz || hz > seats.HighHz {
			continue
		}
		if loud := parts[f]; loud > 0 {
			share += energy(f) / (loud * loud)
		}
		count++
	}
	return -10 * math.Log10(share/float64(count))
}

// time finds when and how loud a body's drivers are heard at the places on rings: energies and
// times are the same for all drivers but for gains and delays, so that they are looked up over
// the angle, within 0.3 us; of several bodies within a thousandth, since the loss in air is left
// out.
func (x *places) time(dst heard, each []timed, one *bodyPlaces, p *Spot) {
	gain := gains(p.Array, p.Channels)
	direction := make([]r3.Vec, len(p.Arrivals))
	for m, mount := range p.Array.Mounts {
		direction[m] = r3.Unit(r3.Sub(mount.Point, p.Array.Body.BallCentre))
	}
	const angles = radiate.SizeAngles
	scratch := newSmearScratch(len(direction))
	cores.Each(len(one.rings.Ring), func(worker, i int) {
		k, ring := &scratch[worker], &one.rings.Ring[i]
		one.sizes.Energy(k.energies[:], ring.R)
		if each != nil { // else the distance is the same for all drivers
			floats.Scale(1/(ring.R*ring.R), k.energies[:])
		}
		k.hearer.moveFrom(p, ring.R)
		for j := range k.times {
			k.times[j] = k.hearer.heardFrom(math.Pi * float64(j) / (angles - 1))
		}
		for _, place := range ring.Place {
			to := r3.Scale(1/ring.R, one.rings.Seen[place])
			for m := one.from; m < one.to; m++ {
				at := math.Acos(min(max(r3.Dot(direction[m], to), -1), 1)) / math.Pi * (angles - 1)
				j := min(int(at), angles-2)
				part, g := at-float64(j), gain[p.Arrivals[m].Channel]
				k.energy[m] = g * g * ((1-part)*k.energies[j] + part*k.energies[j+1])
				k.arrival[m] = p.Arrivals[m].Delay + (1-part)*k.times[j] + part*k.times[j+1]
			}
			x.smeared(dst, each, one, place, k)
		}
	})
}

// smearScratch is one goroutine's room to work.
type smearScratch struct {
	energies, times [radiate.SizeAngles]float64
	energy, arrival []float64 // for each mount
	hearer          hearer
}

// newSmearScratch returns room for each goroutine.
func newSmearScratch(mounts int) []smearScratch {
	s := make([]smearScratch, cores.Count())
	for i := range s {
		s[i].energy, s[i].arrival = make([]float64, mounts), make([]float64, mounts)
	}
	return s
}

// meanEnergy returns the mean of squared magnitudes.
func meanEnergy(pressure []complex128) float64 {
	sum := 0.0
	for _, v := range pressure {
		sum += energyOf(v)
	}
	return sum / float64(len(pressure))
}
