package verdict

import (
	"math"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
)

// pieces of a third of an octave, of which each is left out in turn.
const pieces = 4

// heard is what was measured and planned at one position: energies at each frequency, the
// measured one's variance by noise and gate, and for how long the response listens, in s.
type heard struct {
	measured, planned, variance []float64
	length                      float64
}

// newHeard returns that of one response and what is planned.
func newHeard(r recording.Response, at float64, plan []complex128) heard {
	h := heard{make([]float64, len(plan)), make([]float64, len(plan)), make([]float64, len(plan)), r.To - at}
	for f, v := range plan {
		e := energy(r.Transfer[f])
		share := r.Error[f] * math.Ln10 / 10 // of the energy
		h.measured[f], h.planned[f], h.variance[f] = e, energy(v), e*e*share*share
	}
	return h
}

// bandErrors fills in one standard error of each band's difference:
//
//   - noise and gate: each frequency's error, of which those within one over the gate of each
//     other are one;
//   - the scatter within the band, about what is planned there: the jackknife over its quarters,
//     pooled with the bands on both sides for nine degrees of freedom in place of three, or the
//     scatter of the positions, if that is larger: both see echoes that were not planned;
//   - the level to which all bands are brought;
//   - the model: by how much the level of one driver can be off (Plan.LevelError), all within
//     that taken for as likely (JCGM 100:2008, 4.3.7).
func (v *Level) bandErrors(p *timing.Plan, all []heard) {
	within := make([]float64, len(v.Bands))
	for i, b := range v.Bands {
		within[i] = v.within(b, all)
	}
	matched := 0.0
	for _, b := range v.Bands {
		if b.Centre >= v.Low && b.Centre <= v.High {
			matched++
		}
	}
	for i := range v.Bands {
		b := &v.Bands[i]
		sum, count := 0.0, 0.0
		for _, square := range within[max(0, i-1):min(len(within), i+2)] {
			sum, count = sum+square, count+1
		}
		bands := math.Sqrt(sum/count) * student((pieces-1)*count) / Expanded
		square := v.noise(*b, all) + math.Pow(max(bands, v.between(*b, all)), 2)
		if matched > 0 {
			square += v.Uneven * v.Uneven / matched
		}
		if off := p.LevelError(b.Centre) / math.Sqrt(3); off > 0 { // not where there is no body
			square += off * off
		}
		b.Error = math.Sqrt(square)
	}
}

// part returns a sum over the positions and the frequencies from low to high in Hz: energies
// measured and planned, the measured one's variance, and how many frequencies there are.
func (v *Level) part(all []heard, low, high float64) (measured, planned, variance, count float64) {
	for _, h := range all {
		for f, hz := range v.Frequency {
			if hz >= low && hz < high && !math.IsNaN(h.measured[f]) {
				measured, planned = measured+h.measured[f], planned+h.planned[f]
				variance, count = variance+h.variance[f], count+1
			}
		}
	}
	return measured, planned, variance, count
}

// noise returns the variance of a band's level in dB by noise and gate.
func (v *Level) noise(b Band, all []heard) float64 {
	low, high := band.Edges(b.Centre, 3)
	measured, _, variance, count := v.part(all, low, high)
	alike := max(1, count/float64(len(all))/max(1, (high-low)*all[0].length))
	return variance / (measured * measured) * alike * 100 / (math.Ln10 * math.Ln10)
}

// within returns the variance of a band's difference in dB by the scatter within it.
func (v *Level) within(b Band, all []heard) float64 {
	low, high := band.Edges(b.Centre, 3)
	measured, planned, _, _ := v.part(all, low, high)
	var left []float64
	for i := range pieces {
		from, to := low*math.Pow(high/low, float64(i)/pieces), low*math.Pow(high/low, float64(i+1)/pieces)
		m, p, _, count := v.part(all, from, to)
		if count > 0 && m < measured {
			left = append(left, 10*math.Log10((measured-m)/(planned-p)))
		}
	}
	if len(left) < 2 {
		return 0
	}
	// Where the gate tells fewer than these pieces apart, they vary together.
	alike := max(1, float64(len(left))/max(1, (high-low)*all[0].length))
	return deleted(left) * alike
}

// between returns the standard error of a band's difference in dB by the scatter of the
// positions; 0 for one.
func (v *Level) between(b Band, all []heard) float64 {
	if len(all) < 2 {
		return 0
	}
	low, high := band.Edges(b.Centre, 3)
	n, sum, square := float64(len(all)), 0.0, 0.0
	for i := range all {
		measured, planned, _, _ := v.part(all[i:i+1], low, high)
		off := 10 * math.Log10(measured/planned)
		sum, square = sum+off, square+off*off
	}
	return math.Sqrt(max(0, square-sum*sum/n)/(n-1)/n) * student(n-1) / Expanded
}
