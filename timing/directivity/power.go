package directivity

import (
	"math"

	"pappus/timing/cores"

	"gonum.org/v1/gonum/spatial/r3"
)

// Fill adds the pressures of a source at points to dst, which is 0 before:
// dst[p*n+f] at point p and frequency f of n. It is called from several
// goroutines at once, with different dst, and keeps neither slice. The sum of
// radiate.Field.Add over the mounts of an array is one.
type Fill func(dst []complex128, points []r3.Vec)

// Power fills dst, one value for each frequency, with the power that a source
// radiates over that of a point source of unit strength in free air: the mean
// over all directions of |r p|^2, where p is the pressure at the distance r in m,
// over that of the point source at 1 m. Ten times its log10 is the power level.
//
// The rule must serve the highest frequency. |p|^2 stands for the intensity, so r
// must be in the far field, and the air must take nothing on the way. A source
// alone counts, without the room; above a hard surface the images fill a half
// space twice over, and the power is half of what Power says.
//
// It uses all cores; the result is the same to the bit for any number of them.
func (r *Rule) Power(dst []float64, distance float64, fill Fill) {
	n, rings := len(dst), len(r.Direction)/r.ring
	part := make([]float64, rings*n)
	pressure, points := make([][]complex128, cores.Count()), make([][]r3.Vec, cores.Count())
	for i := range pressure {
		pressure[i], points[i] = make([]complex128, r.ring*n), make([]r3.Vec, r.ring)
	}
	cores.Each(rings, func(worker, i int) {
		r.place(points[worker], i, distance)
		clear(pressure[worker])
		fill(pressure[worker], points[worker])
		r.weigh(part[i*n:(i+1)*n], i, pressure[worker])
	})
	clear(dst)
	for i := range rings {
		for f := range dst {
			dst[f] += part[i*n+f] * distance * distance / (4 * math.Pi)
		}
	}
}

// place fills points with those of a ring.
func (r *Rule) place(points []r3.Vec, ring int, distance float64) {
	for j, d := range r.Direction[ring*r.ring : (ring+1)*r.ring] {
		points[j] = r3.Scale(distance, d)
	}
}

// weigh adds the weighted energies of a ring to dst.
func (r *Rule) weigh(dst []float64, ring int, pressure []complex128) {
	for j, w := range r.Weight[ring*r.ring : (ring+1)*r.ring] {
		for f, p := range pressure[j*len(dst) : (j+1)*len(dst)] {
			dst[f] += w * (real(p)*real(p) + imag(p)*imag(p))
		}
	}
}

// Index returns the directivity index in dB towards a place at a distance in m
// where the pressure is p, for the power that Power gives:
//
//	10 log10(4 pi |p|^2 / integral of |p|^2 over all directions)
//
// 0 for a source that is even all round. Kinsler, Frey, Coppens and Sanders,
// Fundamentals of Acoustics, 4th ed., 7.6.
func Index(p complex128, distance, power float64) float64 {
	square := (real(p)*real(p) + imag(p)*imag(p)) * distance * distance
	return 10 * math.Log10(square/power)
}
