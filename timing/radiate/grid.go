package radiate

import (
	"math"
	"math/cmplx"

	"pappus/layout"
	"pappus/timing/boundary"
	"pappus/timing/cores"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// Where drivers differ by more than a turn, as on a body with faces, the sum of their sizes has no
// series; it is taken at gridDistances distances, evenly spaced in one over the distance, and
// every four degrees round the frame's axis, and looked up between: the sum over all drivers is
// smooth, within 0.12 dB of that taken place by place (a dodecahedron of 150 mm to 4 kHz, 0.7 m above it).
const (
	gridDistances = 8
	gridAngles    = 90
)

// grid is how large the pressure of each driver is at places of a plane.
type grid struct {
	low, step float64     // one over the first distance, and from one to the next, 1/m
	below     []int       // the frequencies that it is for: those of the true field
	size      [][]float64 // [distance*gridAngles+angle]: [mount][frequency below], without the loss in air, times the distance
}

// gridTogether is how many drivers' waves are summed over n at once: what they need is some 20 MB.
const gridTogether = 32

// newGrid returns that of a body's drivers at the height of the rings' plane, at the frequencies
// that the true field has a share in; above, drivers are alike again.
func (s *Scene) newGrid(x *Rings) *grid {
	near, far := x.Ring[0].R, x.Ring[len(x.Ring)-1].R
	g := &grid{low: 1 / far, step: max(1/near-1/far, 1e-9) / (gridDistances - 1), size: make([][]float64, gridDistances*gridAngles)}
	field := s.Field.(*bodyField)
	g.below = field.below
	from, to := Of(s.Array.Mounts, x.way.Body)
	mounts, n := s.Array.Mounts[from:to], len(g.below)
	for i := range g.size {
		g.size[i] = make([]float64, len(mounts)*n)
	}
	height := x.Ring[0].R * x.Ring[0].cos
	for first := 0; first < len(mounts); first += gridTogether {
		some := mounts[first:min(first+gridTogether, len(mounts))]
		sum := field.each(some, x.frame)
		ring := make([]*gridRing, cores.Count())
		cores.Each(gridDistances, func(w, i int) {
			if ring[w] == nil {
				ring[w] = newGridRing(field, sum, some, x.frame)
			}
			ring[w].set(1/(g.low+float64(i)*g.step), height)
			for j := range gridAngles {
				ring[w].sizes(g.size[i*gridAngles+j][first*n:(first+len(some))*n], 2*math.Pi*float64(j)/gridAngles)
			}
		})
	}
	return g
}

// each returns the waves of each of some drivers at each of a table's wavenumbers, in a frame:
// sets [wavenumber][mount].
func (b *bodyField) each(mounts []layout.Mount, frame harmonic.Frame) *harmonic.Sum {
	steps := len(b.table.Waves)
	degree, waves := make([]int, steps*len(mounts)), make([][]complex128, steps*len(mounts))
	turn := harmonic.NewTurn(frame, b.table.Degree[steps-1])
	cores.Each(len(waves), func(_, i int) {
		step, mount := i/len(mounts), mounts[i%len(mounts)]
		degree[i] = b.table.Degree[step]
		own := make([]complex128, boundary.Wide(degree[i]))
		for j, v := range b.table.Waves[step][b.piston[mount.ID]] {
			own[j] = complex128(v)
		}
		waves[i] = make([]complex128, len(own))
		turn.Of(waves[i], own, degree[i])
	})
	return harmonic.NewSumOf(degree, waves)
}

// gridRing is one goroutine's room to hear each driver at places of a ring.
type gridRing struct {
	field         *bodyField
	mounts        []layout.Mount
	frame         harmonic.Frame
	ring          *harmonic.Ring
	r, height     float64
	re, im        [][]float64  // [wavenumber][n]
	one           []complex128 // [wavenumber][mount]
	grid          []complex128 // [wavenumber]
	ball          Field        // of both, without loss
	both          []complex128 // [mount][frequency]: of the ball where both fields have a share
	radialScratch []complex128
}

func newGridRing(b *bodyField, sum *harmonic.Sum, mounts []layout.Mount, frame harmonic.Frame) *gridRing {
	steps := len(b.table.Waves)
	ball, both := b.both()
	x := &gridRing{ball: ball, both: make([]complex128, len(mounts)*both), field: b, mounts: mounts, frame: frame, ring: harmonic.NewRing(sum, steps*len(mounts)),
		one: make([]complex128, steps*len(mounts)), grid: make([]complex128, steps),
		radialScratch: make([]complex128, b.table.Degree[steps-1]+1)}
	for _, d := range b.table.Degree {
		x.re, x.im = append(x.re, make([]float64, d+1)), append(x.im, make([]float64, d+1))
	}
	return x
}

// set takes the ring at a distance from the centre and a height above it along the frame's Z, in m.
func (x *gridRing) set(r, height float64) {
	x.r, x.height = r, height
	for i, d := range x.field.table.Degree {
		one := x.radialScratch[:d+1]
		x.field.table.Radial(one, x.field.table.K(i), r)
		for n, v := range one {
			x.re[i][n], x.im[i][n] = real(v), imag(v)
		}
	}
	cos := height / r
	x.ring.Set(cos, math.Sqrt(max(0, 1-cos*cos)), func(i int) (re, im []float64) {
		step := i / len(x.mounts)
		return x.re[step], x.im[step]
	})
}

// sizes sets dst[mount][frequency] to r times the size of the pressure at an azimuth.
func (x *gridRing) sizes(dst []float64, azimuth float64) {
	b, n, all := x.field, len(x.field.below), len(x.both)/len(x.mounts)
	x.ring.At(x.one, azimuth)
	if all > 0 {
		sin, cos := math.Sincos(azimuth)
		flat := math.Sqrt(max(0, x.r*x.r-x.height*x.height))
		at := r3.Add(r3.Scale(x.height, x.frame.Z), r3.Add(r3.Scale(flat*cos, x.frame.X), r3.Scale(flat*sin, x.frame.Y)))
		x.ball.At(x.both, x.mounts, r3.Add(at, b.centre))
	}
	for m := range x.mounts {
		for i := range x.grid {
			x.grid[i] = x.one[i*len(x.mounts)+m]
		}
		to, both := row(dst, m, n), row(x.both, m, all)
		for i, f := range b.below {
			// As in bodyField.solved, times r.
			v := b.between[f].Of(x.grid) * cmplx.Rect(b.table.Reach, b.medium.Wavenumber[f]*(b.table.Reach-x.r))
			if share := b.share[f]; share > 0 {
				v += complex(share, 0) * (both[i-n+all]*complex(x.r, 0) - v)
			}
			to[i] = math.Hypot(real(v), imag(v))
		}
	}
}

// both returns the field of the ball at the frequencies where both have a share, which are the
// last of those below, and how many they are; without loss.
func (b *bodyField) both() (Field, int) {
	var both []int
	for _, f := range b.below {
		if b.share[f] > 0 {
			both = append(both, f)
		}
	}
	m := b.medium.some(both).WithoutLoss()
	field, err := Sphere(m, b.full.cap, b.centre, quick)
	if err != nil {
		panic(err) // newBody has tried this cap and these wavenumbers
	}
	return field, len(m.Frequency)
}

// sum returns the sizes of all drivers together at each place of the grid, for gains of groups
// and a response: [place][frequency].
func (g *grid) sum(group []int, gain []float64, response []complex128) [][]float64 {
	n := len(g.below)
	out := make([][]float64, len(g.size))
	cores.Each(len(out), func(_, i int) {
		out[i] = make([]float64, n)
		for m, c := range group {
			weight := math.Abs(gain[c])
			for f, v := range g.size[i][m*n : (m+1)*n] {
				out[i][f] += weight * v
			}
		}
		for j, f := range g.below {
			out[i][j] *= math.Hypot(real(response[f]), imag(response[f]))
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
			room[w] = make([]float64, len(g.below))
		}
		ring := &x.Ring[i]
		for p, place := range ring.Place {
			g.between(room[w], sum, ring.R, ring.azimuth[p])
			for i, f := range g.below {
				dst[place*n+f] += room[w][i] * math.Exp(-m.Loss[f]*ring.R) / ring.R
			}
		}
	})
}
