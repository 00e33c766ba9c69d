package radiate

import (
	"math"

	"pappus/timing/cores"

	"gonum.org/v1/gonum/spatial/r3"
)

// Where drivers differ by more than a turn, as on a body with faces, the sum of their sizes has no
// series; it is taken at gridDistances distances, evenly spaced in one over the distance, and
// every three degrees round the frame's axis, and looked up between: the sum over all drivers is
// smooth, within 0.05 dB of that taken place by place.
const (
	gridDistances = 8
	gridAngles    = 120
)

// grid is how large the pressure of each driver is at places of a plane.
type grid struct {
	low, step float64     // one over the first distance, and from one to the next, 1/m
	size      [][]float64 // [distance*gridAngles+angle]: [mount][frequency], without the loss in air, times the distance
}

// newGrid returns that of a body's drivers at the height of the rings' plane.
func (s *Scene) newGrid(x *Rings) *grid {
	near, far := x.Ring[0].R, x.Ring[len(x.Ring)-1].R
	g := &grid{low: 1 / far, step: max(1/near-1/far, 1e-9) / (gridDistances - 1), size: make([][]float64, gridDistances*gridAngles)}
	height := x.Ring[0].R * x.Ring[0].cos
	free := s.Field.(*bodyField).withoutLoss()
	from, to := Of(s.Array.Mounts, x.way.Body)
	mounts, n := s.Array.Mounts[from:to], len(s.Medium.Frequency)
	cores.Each(len(g.size), func(_, i int) {
		r := 1 / (g.low + float64(i/gridAngles)*g.step)
		flat := math.Sqrt(max(0, r*r-height*height))
		sin, cos := math.Sincos(2 * math.Pi * float64(i%gridAngles) / gridAngles)
		at := r3.Add(r3.Scale(height, x.frame.Z), r3.Add(r3.Scale(flat*cos, x.frame.X), r3.Scale(flat*sin, x.frame.Y)))
		heard := make([]complex128, len(mounts)*n)
		free.At(heard, mounts, r3.Add(at, free.centre))
		g.size[i] = make([]float64, len(heard))
		for j, v := range heard {
			g.size[i][j] = r * math.Hypot(real(v), imag(v))
		}
	})
	return g
}

// sum returns the sizes of all drivers together at each place of the grid, for gains of groups
// and a response: [place][frequency].
func (g *grid) sum(group []int, gain []float64, response []complex128) [][]float64 {
	n := len(response)
	out := make([][]float64, len(g.size))
	cores.Each(len(out), func(_, i int) {
		out[i] = make([]float64, n)
		for m, c := range group {
			weight := math.Abs(gain[c])
			for f, v := range g.size[i][m*n : (m+1)*n] {
				out[i][f] += weight * v
			}
		}
		for f, v := range response {
			out[i][f] *= math.Hypot(real(v), imag(v))
		}
	})
	return out
}

// between sets dst to the sums at a distance and an azimuth: cubic over the distance, and over
// the angle (Lagrange).
func (g *grid) between(dst []float64, sum [][]float64, r, azimuth float64) {
	row, a := lagrange4((1/r-g.low)/g.step, gridDistances, false)
	column, b := lagrange4(azimuth/(2*math.Pi)*gridAngles, gridAngles, true)
	clear(dst)
	for i, u := range a {
		for j, v := range b {
			w := u * v
			for f, x := range sum[(row+i)*gridAngles+(column+j+gridAngles)%gridAngles] {
				dst[f] += w * x
			}
		}
	}
}

// lagrange4 returns the first of four even steps round a place among count, and their weights;
// round tells that the last is followed by the first, which may then be below 0.
func lagrange4(at float64, count int, round bool) (first int, weight [4]float64) {
	if round {
		at = math.Mod(at, float64(count))
		if at < 0 {
			at += float64(count)
		}
		first = int(at) - 1
	} else {
		at = min(max(at, 0), float64(count-1))
		first = min(max(int(at)-1, 0), count-4)
	}
	x := at - float64(first)
	return first, [4]float64{
		-(x - 1) * (x - 2) * (x - 3) / 6, x * (x - 2) * (x - 3) / 2,
		-x * (x - 1) * (x - 3) / 2, x * (x - 1) * (x - 2) / 6,
	}
}

// add adds the sums at the places of some rings to dst[place][frequency], with the loss in air.
func (g *grid) add(dst []float64, sum [][]float64, x *Rings, m *Medium) {
	n := len(m.Frequency)
	room := make([][]float64, cores.Count())
	cores.Each(len(x.Ring), func(w, i int) {
		if room[w] == nil {
			room[w] = make([]float64, n)
		}
		ring := &x.Ring[i]
		for p, place := range ring.Place {
			g.between(room[w], sum, ring.R, ring.azimuth[p])
			for f, v := range room[w] {
				dst[place*n+f] += v * math.Exp(-m.Loss[f]*ring.R) / ring.R
			}
		}
	})
}
