package timing

import (
	"math"

	"pappus/timing/band"
	"pappus/timing/measure"
	"pappus/timing/radiate"
	"pappus/timing/reverb"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"
)

// Survey is what a plan does beyond the listening spot.
type Survey struct {
	Above, Side *Coverage
	Octaves     []Octave
	InStep      float64 // m2 round the spot where the smear stays within the design's limit
	Omni        Omni
	Spatial     Spatial
	Reverb      []reverb.Time // for each octave; nil where there is no room
}

// Octave is what one octave band is like with the plan's delays.
type Octave struct {
	Band        float64 // Hz, exact centre
	Directivity float64 // dB, towards the spot: the level there over the mean of all directions, in open air
	Power       float64 // dB, radiated in open air, over one driver as a point source
	Unevenness  float64 // dB, standard deviation round the listening circle
	Reach       float64 // m2 round the spot where the level is within 3 dB of the spot's
}

// reachLevel is how far, in dB, the level may be from the spot's where the good
// place still reaches.
const reachLevel = 3

// farAway is where the directivity is taken, in m: in the far field of any body
// that a person can lift.
const farAway = 100.0

// Look surveys a plan: coverage from above and from the side, and the figures
// that come from there. All cores are used; the result is the same to the bit for
// any number of them.
func Look(p *Plan) (*Survey, error) {
	var s Survey
	var err error
	if s.Above, err = Cover(&p.Spot, HorizontalSlice(&p.Spot)); err != nil {
		return nil, err
	}
	if s.Side, err = Cover(&p.Spot, VerticalSlice(&p.Spot)); err != nil {
		return nil, err
	}
	limit := p.Array.Coverage.SmearLimit
	s.InStep = s.Above.AreaInStep(p.Array.Spot, limit)
	reach := s.Above.AreaWithin(p.Array.Spot, reachLevel)
	if s.Omni, err = p.Omni(); err != nil {
		return nil, err
	}
	if s.Spatial, err = p.Spatial(); err != nil {
		return nil, err
	}
	for b, centre := range s.Above.Band {
		s.Octaves = append(s.Octaves, Octave{Band: centre, Unevenness: measure.Deviation(p.Horizontal.Aligned[b]), Reach: reach[b]})
	}
	if err := p.directivity(s.Octaves); err != nil {
		return nil, err
	}
	s.Reverb = p.reverb()
	return &s, nil
}

// directivityCount is how many frequencies an octave's directivity is the mean
// of.
const directivityCount = 3

// directivity fills in, for each octave, the directivity index towards the spot and
// the radiated power over one driver's, in dB, of the body alone:
//
//	index = 10 log10(4 pi |p|^2 / integral of |p|^2 over all directions)
//
// Energies of several bodies, each towards the spot, add up, since where they cancel changes from
// tone to tone.
// Kinsler, Frey, Coppens and Sanders, Fundamentals of Acoustics, 4th ed., 7.6.
func (p *Plan) directivity(octaves []Octave) error {
	var centre []float64
	for _, o := range octaves {
		centre = append(centre, o.Band)
	}
	frequency := band.Frequencies(centre, 1, directivityCount)
	s, err := radiate.NewScene(alone(p.Array), radiate.NewMedium(p.airState(), frequency).WithoutLoss())
	if err != nil {
		return err
	}
	fed := p.feed(true, frequency, p.response(frequency))
	ahead := make([][]complex128, len(s.Ways)) // [body][frequency]
	for body, way := range s.Ways {
		heard := make([]complex128, len(p.Array.Mounts)*len(frequency))
		ahead[body] = make([]complex128, len(frequency))
		at := p.Array.Bodies()[body].At
		s.Hear(heard, []radiate.Way{way}, r3.Add(at, r3.Scale(farAway, r3.Unit(r3.Sub(p.Array.Spot, at)))))
		fed.AddTo(ahead[body], heard)
	}
	round, unit := s.Power(fed), unit(p.Array, longestString(p.Channels))
	for i := range octaves {
		from, to := i*directivityCount, (i+1)*directivityCount
		mean, towards := floats.Sum(round[from:to])/directivityCount, 0.0
		for _, one := range ahead {
			towards += meanEnergy(one[from:to])
		}
		octaves[i].Directivity = 10 * math.Log10(towards*farAway*farAway/mean)
		octaves[i].Power = 10 * math.Log10(mean/(unit*unit))
	}
	return nil
}

// reverb returns the reverberation times of the octave bands; nil without a room.
func (p *Plan) reverb() []reverb.Time {
	r := p.Array.Room
	if !r.Present {
		return nil
	}
	var times []reverb.Time
	for _, centre := range band.Octaves() {
		room := reverb.Room{Size: r.Size}
		for wall, a := range r.Absorption {
			room.Absorption[wall] = a.At(centre)
		}
		times = append(times, room.Time(p.SpeedOfSound, p.airState().Loss(centre)))
	}
	return times
}
