package timing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
	"pappus/timing/band"
)

// The listening circle on which a dead driver's loss is heard: every 10 degrees,
// and as many frequencies in each octave as the room's slices have when dragged.
const (
	ringSteps   = 36
	ringOctave  = 5
	ringLow     = 900.0 // Hz: the octaves of 1, 2 and 4 kHz
	ringHigh    = 4500.0
	sameLoss    = 1e-6 // dB, below which two losses count as equal
	SilenceLoss = 200  // dB, the most that is told
)

// ring holds each driver's sound, with its delay and gain, round the listening
// circle.
type ring struct {
	angle     []float64
	frequency []float64
	octaves   int
	driver    [][]complex128 // [mount][angle*frequency]
	sum       []complex128
	level     []float64 // [angle*octave] energy with all alive
}

func newRing(p *Spot) (*ring, error) {
	var octaves []float64
	for _, centre := range band.Octaves() {
		if centre > ringLow && centre < ringHigh {
			octaves = append(octaves, centre)
		}
	}
	r := &ring{frequency: band.Frequencies(octaves, 1, ringOctave), octaves: len(octaves)}
	var places []r3.Vec
	open := unroomed(p.Array)
	for _, angle := range circleAngles(ringSteps) {
		if at := p.listeningCircle(angle); open.Reach(at) == nil { // a wall behind takes half of the circle
			r.angle, places = append(r.angle, angle), append(places, at)
		}
	}
	s, err := newScene(open, r.frequency)
	if err != nil {
		return nil, err
	}
	fed, nf := p.feed(true, r.frequency, p.response(r.frequency)), len(r.frequency)
	r.driver = make([][]complex128, len(p.Array.Mounts))
	for m := range r.driver {
		r.driver[m] = make([]complex128, len(places)*nf)
	}
	s.Each(s.Ways, places, func(_, place int, pressure []complex128) {
		for m, driver := range r.driver {
			for f, w := range fed.Of(m) {
				driver[place*nf+f] = w * pressure[m*nf+f]
			}
		}
	})
	r.sum = r.add(make([]complex128, len(places)*nf), all(len(r.driver)))
	r.level = make([]float64, len(places)*r.octaves)
	r.energies(r.level, r.sum)
	return r, nil
}

// all returns 0 to n-1.
func all(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// add adds some drivers to dst.
func (r *ring) add(dst []complex128, mounts []int) []complex128 {
	for _, m := range mounts {
		for i, v := range r.driver[m] {
			dst[i] += v
		}
	}
	return dst
}

// energies fills dst with the energy of each octave at each angle.
func (r *ring) energies(dst []float64, sum []complex128) {
	for i := range dst {
		dst[i] = meanEnergy(sum[i*ringOctave : (i+1)*ringOctave])
	}
}

// lost is what one dead driver, or a whole dead string from its first driver on,
// takes off at the worst angle.
type lost struct {
	loss, angle float64
	str, mount  int
}

// losses returns what each dead driver of a channel does, strung so, or each dead
// string.
func (r *ring) losses(mounts []int, strings [][]int, f failed) []lost {
	whole := r.add(make([]complex128, len(r.sum)), mounts)
	own, left := make([]complex128, len(r.sum)), make([]complex128, len(r.sum))
	energy := make([]float64, len(r.level))
	try := func(dead []complex128) (loss, angle float64) {
		for i := range left {
			same, other := f.same[i%len(f.same)], f.other[i%len(f.other)]
			left[i] = r.sum[i] + (other-1)*(whole[i]-own[i]) + (same-1)*own[i] - same*dead[i]
		}
		r.energies(energy, left)
		return r.loss(energy)
	}
	silent := make([]complex128, len(r.sum))
	var out []lost
	for s, members := range strings {
		clear(own)
		r.add(own, members)
		one := lost{str: s}
		if f.silences() {
			one.loss, one.angle = try(silent) // all of the string is: same is 0
		}
		for _, m := range members {
			one.mount = m
			if !f.silences() {
				one.loss, one.angle = try(r.driver[m])
			}
			out = append(out, one)
			if f.death.Whole {
				break
			}
		}
	}
	return out
}

// worst returns the greatest of the losses.
func (r *ring) worst(mounts []int, strings [][]int, f failed) float64 {
	worst := math.Inf(-1)
	for _, l := range r.losses(mounts, strings, f) {
		worst = max(worst, l.loss)
	}
	return worst
}

// loss returns the greatest mean loss of the octaves in dB, and its angle in rad.
func (r *ring) loss(energy []float64) (loss, angle float64) {
	loss = math.Inf(-1)
	for a, at := range r.angle {
		mean := 0.0
		for b := range r.octaves {
			i := a*r.octaves + b
			if r.level[i] > 0 {
				mean += min(SilenceLoss, 10*math.Log10(r.level[i]/energy[i])) / float64(r.octaves)
			}
		}
		if mean > loss+sameLoss {
			loss, angle = mean, at
		}
	}
	return loss, angle
}
