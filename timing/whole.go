package timing

import (
	"cmp"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/timing/ball"
	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// closeBy is the distance from the ball's centre, in radii, below which drivers are summed one
// by one: the harmonics of the whole array converge slowly there.
const closeBy = 1.5

// slabMost is how many frequencies share their harmonics' degree: fewer waste matrices,
// more waste terms on the low ones.
const slabMost = 16

// whole is the pressure of a whole array, its drivers on a ball, at many places: the sum over
// drivers of weight and field, with what walls mirror, at a cost that hardly grows with
// their number (package harmonic). It serves one goroutine, and uses all cores.
type whole struct {
	scene  scene
	cap    ball.Cap
	images []radiate.Image
	frame  harmonic.Frame
	weight []complex128 // [mount][frequency]
}

// newWhole returns the whole array, heard by some ways, for a medium's frequencies, with
// weights [mount][frequency]. The fewer distances and angles from the frame's Z the places
// have that are asked for, the faster it is: take the normal of the plane that they are in.
func newWhole(a *layout.Array, m *radiate.Medium, ways []radiate.Image, frame harmonic.Frame, weight []complex128) *whole {
	return &whole{scene: scene{a, m}, cap: coneCap(a), images: ways, frame: frame, weight: weight}
}

// ringPlaces are places at one distance from the ball's centre and one angle from the polar axis.
type ringPlaces struct {
	r, cos, sin float64
	place       []int
	azimuth     []float64
}

// add adds to dst[place][frequency] the pressure at places in m. Errors are those of
// package ball.
func (w *whole) add(dst []complex128, places []r3.Vec) error {
	rings := make([][]ringPlaces, len(w.images))
	nearest := math.Inf(1)
	var single []radiate.Image // that cost less driver by driver
	for i, image := range w.images {
		moved := make([]r3.Vec, len(places))
		for j, p := range places {
			moved[j] = r3.Sub(image.Moved(p), w.scene.array.Body.BallCentre)
		}
		var close []int
		if rings[i], close = w.rings(moved); w.dear(len(rings[i]), len(places)) {
			single, rings[i] = append(single, image), nil
			continue
		}
		if err := w.addClose(dst, image, places, close); err != nil {
			return err
		}
		if len(rings[i]) > 0 {
			nearest = min(nearest, rings[i][0].r)
		}
	}
	if len(single) > 0 {
		if err := (oneByOne{w.scene.array, w.scene.medium, single, w.weight}).add(dst, places); err != nil {
			return err
		}
	}
	if math.IsInf(nearest, 1) {
		return nil
	}
	nf := len(w.scene.medium.Frequency)
	for from := 0; from < nf; from += slabMost {
		if err := w.addSlab(dst, rings, from, min(from+slabMost, nf), nearest); err != nil {
			return err
		}
	}
	return nil
}

// What it costs, in ns on one core of the machine that BenchmarkWhole was first run on, to
// look up one driver at one frequency, to add one term of a ring's sum over n, and one of a
// place's sum over m. Only their proportions count, and only for speed.
const (
	lookUpCost = 9.0
	termCost   = 6.0
	orderCost  = 4.0
)

// dear tells whether harmonics cost more than drivers one by one: where drivers are few and
// places are on rings of their own, as those that a wall mirrors are.
func (w *whole) dear(rings, places int) bool {
	terms, orders := 0.0, 0.0
	for _, k := range w.scene.medium.Wavenumber {
		n := k*w.cap.Radius + 8 // about as many count
		terms, orders = terms+n*n/2, orders+n
	}
	drivers := float64(len(w.scene.array.Mounts) * len(w.scene.medium.Wavenumber))
	return float64(rings)*terms*termCost+float64(places)*orders*orderCost > float64(places)*drivers*lookUpCost
}

// rings sorts places, seen from the ball's centre, into rings, the nearest first, and returns apart those
// that are close by.
func (w *whole) rings(moved []r3.Vec) (rings []ringPlaces, close []int) {
	type key struct{ r, cos int64 } // in parts of 1e-9 of what is near enough to be one
	index := map[key]int{}
	for i, p := range moved {
		r := r3.Norm(p)
		if r < closeBy*w.cap.Radius {
			close = append(close, i)
			continue
		}
		cos, sin, azimuth := w.frame.Angles(p)
		k := key{int64(math.Round(r / w.cap.Radius * 1e9)), int64(math.Round(cos * 1e9))}
		at, known := index[k]
		if !known {
			at = len(rings)
			index[k] = at
			rings = append(rings, ringPlaces{r: r, cos: cos, sin: sin})
		}
		rings[at].place = append(rings[at].place, i)
		rings[at].azimuth = append(rings[at].azimuth, azimuth)
	}
	slices.SortStableFunc(rings, func(a, b ringPlaces) int { return cmp.Compare(a.r, b.r) })
	return rings, close
}

// addClose adds an image at the places that are close by, driver by driver.
func (w *whole) addClose(dst []complex128, image radiate.Image, places []r3.Vec, close []int) error {
	if len(close) == 0 {
		return nil
	}
	near := make([]r3.Vec, len(close))
	for i, place := range close {
		near[i] = places[place]
	}
	way := []radiate.Image{image}
	if err := w.scene.equip(way, near); err != nil {
		return err
	}
	nf := len(w.scene.medium.Frequency)
	field := radiate.Images(way, nf)
	cores.Each(len(close), func(_, i int) {
		row := dst[close[i]*nf : (close[i]+1)*nf]
		for m, mount := range w.scene.array.Mounts {
			field.Add(row, mount, near[i:i+1], w.weight[m*nf:(m+1)*nf])
		}
	})
	return nil
}

// addSlab adds all images at the frequencies [from, to) at the places on rings.
func (w *whole) addSlab(dst []complex128, rings [][]ringPlaces, from, to int, nearest float64) error {
	m := w.scene.medium
	longest, err := w.cap.Coefficients(nil, m.Wavenumber[to-1], nearest, seriesTolerance)
	if err != nil {
		return err
	}
	nf, n := len(m.Frequency), to-from
	part := make([]complex128, len(w.scene.array.Mounts)*n)
	for i := range w.scene.array.Mounts {
		copy(part[i*n:(i+1)*n], w.weight[i*nf+from:i*nf+to])
	}
	moments := newMoments(w.scene.array, w.frame, part, n, len(longest)-1)
	scratch := make([]wholeScratch, cores.Count())
	for i := range scratch {
		scratch[i] = wholeScratch{ring: harmonic.NewRing(moments), terms: ball.NewTerms(w.cap), z: make([][]complex128, n)}
	}
	for i, image := range w.images {
		cores.Each(len(rings[i]), func(worker, j int) {
			s, ring := &scratch[worker], &rings[i][j]
			for f := range s.z {
				k := m.Wavenumber[from+f]
				s.z[f] = s.terms.At(s.z[f][:0], k, ring.r, seriesTolerance)
				fade := math.Exp(-m.Loss[from+f]*ring.r) / ring.r
				if image.Factor != nil {
					fade *= image.Factor[from+f]
				}
				turn := cmplx.Rect(fade, -k*ring.r)
				for t := range s.z[f] {
					s.z[f][t] *= turn
				}
			}
			s.ring.Set(ring.cos, ring.sin, s.z)
			for p, place := range ring.place {
				s.ring.At(dst[place*nf+from:place*nf+to], ring.azimuth[p])
			}
		})
	}
	return nil
}

// wholeScratch is one goroutine's room to work.
type wholeScratch struct {
	ring  *harmonic.Ring
	terms *ball.Terms
	z     [][]complex128 // [frequency][n]
}
