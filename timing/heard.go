package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// heard is the direct sound of a plan's array at places: what the delays are measured by.
type heard struct {
	plan   *Spot
	kernel *kernel
	medium *radiate.Medium
	weight []complex128 // [mount][frequency]
	places []r3.Vec
	sum    []complex128 // [place][frequency]
	parts  []float64    // [place][frequency]: the sum of the drivers' magnitudes
	smear  []float64    // [place] s
}

// newHeard hears a plan's array, with its delays, at places in m and frequencies in Hz.
// The frame's Z is best the normal of the plane that the places are in.
func newHeard(p *Spot, frequency []float64, frame harmonic.Frame, places []r3.Vec) (*heard, error) {
	free := *p
	free.Array = alone(p.Array)
	h := &heard{plan: &free, medium: radiate.NewMedium(p.airState(), frequency), places: places}
	h.kernel = newKernel(&free, nil, frequency)
	h.weight = h.kernel.weight
	h.sum = make([]complex128, len(places)*len(frequency))
	h.parts, h.smear = make([]float64, len(h.sum)), make([]float64, len(places))
	if p.Array.Timing.Model != sphereModel {
		return h, h.oneByOne(all(len(places)))
	}
	w := newWhole(h.plan.Array, h.medium, scene{h.plan.Array, h.medium}.images(), frame, h.weight)
	if err := w.add(h.sum, places); err != nil {
		return nil, err
	}
	seen := make([]r3.Vec, len(places))
	for i, at := range places {
		seen[i] = r3.Sub(at, p.Array.Body.BallCentre)
	}
	rings, close := w.rings(seen)
	if err := h.oneByOne(close); err != nil || len(rings) == 0 {
		return h, err
	}
	k := h.kernel
	s, err := newSizes(w.cap, h.medium, k.driver, k.low, k.high, rings[0].r, rings[len(rings)-1].r)
	if err != nil {
		return nil, err
	}
	h.addSizes(s, frame, rings)
	h.fillSmear(s, seen, rings)
	return h, nil
}

// combOnset returns the comb onset at a place in Hz. loud is room for one number for each
// frequency.
func (h *heard) combOnset(place int, loud []float64) float64 {
	nf := len(h.medium.Frequency)
	for f, v := range h.sum[place*nf : (place+1)*nf] {
		loud[f] = cmplx.Abs(v)
	}
	return measure.CombOnset(h.medium.Frequency, loud, h.parts[place*nf:(place+1)*nf])
}

// oneByOne hears driver after driver at some of the places.
func (h *heard) oneByOne(some []int) error {
	if len(some) == 0 {
		return nil
	}
	near := make([]r3.Vec, len(some))
	for i, place := range some {
		near[i] = h.places[place]
	}
	field, err := newField(h.plan.Array, h.medium, near)
	if err != nil {
		return err
	}
	k := *h.kernel
	k.field = field
	nf, nm := len(k.frequency), len(k.delay)
	scratch := make([]kernelScratch, cores.Count())
	for i := range scratch {
		scratch[i] = k.scratch(1)
	}
	cores.Each(len(some), func(worker, i int) {
		s, place := &scratch[worker], some[i]
		s.points = append(s.points[:0], near[i])
		s.hearer.move(h.plan, near[i])
		k.hear(s)
		copy(h.sum[place*nf:(place+1)*nf], s.sum)
		copy(h.parts[place*nf:(place+1)*nf], s.parts)
		for m, mount := range h.plan.Array.Mounts {
			s.arrival[m] = s.hearer.heard(mount) + k.delay[m]
		}
		h.smear[place] = measure.Smear(s.arrival, s.energy[:nm])
	})
	return nil
}

// addSizes adds up the drivers' magnitudes at the places on rings: sizes are the same for all
// drivers but for their gains, so that harmonics sum them too.
func (h *heard) addSizes(s *sizes, frame harmonic.Frame, rings []ringPlaces) {
	a, fed := h.plan.Array, newFeed(h.plan)
	direction, gain := fromBall(a), make([]float64, len(a.Mounts))
	for m, g := range fed.gain {
		gain[m] = math.Abs(g)
	}
	nf := len(h.medium.Frequency)
	for b := range s.slabs {
		slab := &s.slabs[b]
		n := slab.to - slab.from
		moments := harmonic.NewMoments(frame, direction, [][]float64{gain}, slab.degree)
		scratch := make([]sizeScratch, cores.Count())
		for i := range scratch {
			scratch[i] = sizeScratch{harmonic.NewShared(moments, 0, n), make([]float64, (slab.degree+1)*n), make([]float64, n)}
		}
		cores.Each(len(rings), func(worker, i int) {
			k, ring := &scratch[worker], &rings[i]
			s.seriesAt(k.series, slab, ring.r)
			k.ring.Set(ring.cos, ring.sin, k.series)
			for f := range k.factor {
				k.factor[f] = cmplx.Abs(h.kernel.driver[slab.from+f]) * math.Exp(-h.medium.Loss[slab.from+f]*ring.r)
			}
			for p, place := range ring.place {
				dst := h.parts[place*nf+slab.from : place*nf+slab.to]
				k.ring.At(dst, ring.azimuth[p])
				for f := range dst {
					dst[f] *= k.factor[f]
				}
			}
		})
	}
}

// sizeScratch is one goroutine's room to work.
type sizeScratch struct {
	ring   *harmonic.Shared
	series []float64
	factor []float64
}

// fillSmear fills in the smear at the places on rings, seen from the ball's centre.
func (h *heard) fillSmear(s *sizes, seen []r3.Vec, rings []ringPlaces) {
	a, fed := h.plan.Array, newFeed(h.plan)
	direction := fromBall(a)
	for m, d := range direction {
		direction[m] = r3.Unit(d)
	}
	scratch := make([]smearScratch, cores.Count())
	for i := range scratch {
		scratch[i] = smearScratch{energies: make([]float64, sizeAngles), times: make([]float64, sizeAngles),
			energy: make([]float64, len(direction)), arrival: make([]float64, len(direction))}
	}
	cores.Each(len(rings), func(worker, i int) {
		k, ring := &scratch[worker], &rings[i]
		s.energyAt(k.energies, ring.r)
		k.hearer.move(h.plan, r3.Add(a.Body.BallCentre, r3.Vec{X: ring.r}))
		for j := range k.times {
			k.times[j] = k.hearer.heardFrom(math.Pi * float64(j) / (sizeAngles - 1))
		}
		for _, place := range ring.place {
			to := r3.Scale(1/ring.r, seen[place])
			for m, d := range direction {
				at := math.Acos(min(max(r3.Dot(d, to), -1), 1)) / math.Pi * (sizeAngles - 1)
				j := min(int(at), sizeAngles-2)
				x := at - float64(j)
				k.energy[m] = fed.gain[m] * fed.gain[m] * ((1-x)*k.energies[j] + x*k.energies[j+1])
				k.arrival[m] = fed.delay[m] + (1-x)*k.times[j] + x*k.times[j+1]
			}
			h.smear[place] = measure.Smear(k.arrival, k.energy)
		}
	})
}

// smearScratch is one goroutine's room to work.
type smearScratch struct {
	energies, times []float64 // for each angle
	energy, arrival []float64 // for each mount
	hearer          hearer
}
