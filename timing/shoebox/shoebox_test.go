package shoebox_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/shoebox"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

var (
	size   = r3.Vec{X: 5.2, Y: 4.1, Z: 2.7}
	source = r3.Vec{X: 1.3, Y: 2.5, Z: 0.8}
)

// TestCount: centred octahedral numbers, OEIS A001845.
func TestCount(t *testing.T) {
	want := []int{1, 7, 25, 63, 129, 231, 377, 575, 833}
	for order, n := range want {
		if got := shoebox.Count(order); got != n {
			t.Errorf("order %d: Count is %d, want %d", order, got, n)
		}
		if got := len(shoebox.Images(size, source, order)); got != n {
			t.Errorf("order %d: %d images, want %d", order, got, n)
		}
	}
	if got := shoebox.Images(size, source, -1); len(got) != 0 || shoebox.Count(-1) != 0 {
		t.Errorf("below order 0: %v", got)
	}
}

// key names a place to a tenth of a micrometre.
func key(p r3.Vec) [3]int64 {
	return [3]int64{int64(math.Round(p.X * 1e7)), int64(math.Round(p.Y * 1e7)), int64(math.Round(p.Z * 1e7))}
}

// mirrored is an image made by mirroring in one wall after the other.
type mirrored struct {
	centre, flip r3.Vec
	hits         [6]int
}

// mirror turns an image over in one wall of the real room.
func mirror(m mirrored, wall int) mirrored {
	at := [6]float64{0, size.X, 0, size.Y, 0, size.Z}[wall]
	switch wall / 2 {
	case 0:
		m.centre.X, m.flip.X = 2*at-m.centre.X, -m.flip.X
	case 1:
		m.centre.Y, m.flip.Y = 2*at-m.centre.Y, -m.flip.Y
	default:
		m.centre.Z, m.flip.Z = 2*at-m.centre.Z, -m.flip.Z
	}
	m.hits[wall]++
	return m
}

// TestAgainstMirrors builds every image by mirroring in the walls, one after the
// other, and keeps those that no shorter sequence reaches.
func TestAgainstMirrors(t *testing.T) {
	const order = 5
	found := map[[3]int64]mirrored{}
	layer := []mirrored{{centre: source, flip: r3.Vec{X: 1, Y: 1, Z: 1}}}
	for range order + 1 {
		var next []mirrored
		for _, m := range layer {
			if _, ok := found[key(m.centre)]; ok {
				continue
			}
			found[key(m.centre)] = m
			for wall := range 6 {
				next = append(next, mirror(m, wall))
			}
		}
		layer = next
	}
	images := shoebox.Images(size, source, order)
	if len(images) != len(found) {
		t.Fatalf("%d images, %d by mirrors", len(images), len(found))
	}
	point := r3.Vec{X: 4.4, Y: 0.6, Z: 1.9} // in the room
	for _, image := range images {
		m, ok := found[key(r3.Add(source, centre(image)))]
		if !ok {
			t.Errorf("no mirror makes %+v", image)
			continue
		}
		if diff := cmp.Diff(m.hits, image.Hits); diff != "" {
			t.Errorf("hits of the image at %v (-mirrors +got):\n%s", m.centre, diff)
		}
		if m.flip != image.Flip {
			t.Errorf("flip of the image at %v: %v, want %v", m.centre, image.Flip, m.flip)
		}
		heard := r3.Norm(image.Moved(r3.Sub(point, source)))
		if want := r3.Norm(r3.Sub(point, m.centre)); math.Abs(heard-want) > 1e-12*want {
			t.Errorf("distance %.15g m, want %.15g", heard, want)
		}
	}
}

// TestOneWallEach: the seven images of first order by hand.
func TestOneWallEach(t *testing.T) {
	one := r3.Vec{X: 1, Y: 1, Z: 1}
	want := []shoebox.Image{
		{Mirror: shoebox.Mirror{Flip: one}},
		{Mirror: shoebox.Mirror{Flip: r3.Vec{X: -1, Y: 1, Z: 1}, Shift: r3.Vec{X: -2.6}}, Hits: [6]int{0: 1}},
		{Mirror: shoebox.Mirror{Flip: r3.Vec{X: 1, Y: -1, Z: 1}, Shift: r3.Vec{Y: -5}}, Hits: [6]int{2: 1}},
		{Mirror: shoebox.Mirror{Flip: r3.Vec{X: 1, Y: 1, Z: -1}, Shift: r3.Vec{Z: -1.6}}, Hits: [6]int{4: 1}},
		{Mirror: shoebox.Mirror{Flip: r3.Vec{X: 1, Y: 1, Z: -1}, Shift: r3.Vec{Z: 3.8}}, Hits: [6]int{5: 1}},
		{Mirror: shoebox.Mirror{Flip: r3.Vec{X: 1, Y: -1, Z: 1}, Shift: r3.Vec{Y: 3.2}}, Hits: [6]int{3: 1}},
		{Mirror: shoebox.Mirror{Flip: r3.Vec{X: -1, Y: 1, Z: 1}, Shift: r3.Vec{X: 7.8}}, Hits: [6]int{1: 1}},
	}
	got := shoebox.Images(size, source, 1)
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-12)); diff != "" {
		t.Errorf("images (-want +got):\n%s", diff)
	}
}

// TestSymmetry: from the middle of a cube, images come in sets of equal distance.
func TestSymmetry(t *testing.T) {
	cube := r3.Vec{X: 3, Y: 3, Z: 3}
	for _, image := range shoebox.Images(cube, r3.Scale(0.5, cube), 4) {
		n := [3]int{image.Hits[0] + image.Hits[1], image.Hits[2] + image.Hits[3], image.Hits[4] + image.Hits[5]}
		want := 3 * math.Sqrt(float64(n[0]*n[0]+n[1]*n[1]+n[2]*n[2]))
		if got := r3.Norm(centre(image)); math.Abs(got-want) > 1e-12 {
			t.Errorf("hits %v: at %g m, want %g", image.Hits, got, want)
		}
	}
}

// TestDensity: images fill space, one for each volume of the room (Kuttruff,
// Room Acoustics, chapter 4).
func TestDensity(t *testing.T) {
	const reach = 40.0
	within := 0
	for _, image := range shoebox.Images(size, source, 32) {
		if r3.Norm(centre(image)) < reach {
			within++
		}
	}
	want := 4 * math.Pi / 3 * reach * reach * reach / (size.X * size.Y * size.Z)
	if math.Abs(float64(within)/want-1) > 0.01 {
		t.Errorf("%d images within %g m, want about %.0f", within, reach, want)
	}
}

// TestReciprocity: what stands at a is heard at b as what stands at b is at a,
// image by image.
func TestReciprocity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) r3.Vec {
			unit := rapid.Float64Range(0.01, 0.99)
			return r3.Vec{
				X: size.X * unit.Draw(t, name+" x"),
				Y: size.Y * unit.Draw(t, name+" y"),
				Z: size.Z * unit.Draw(t, name+" z"),
			}
		}
		a, b := draw("a"), draw("b")
		reflection := [6]float64{0.9, 0.8, 0.7, 0.6, 0.5, 0.95}
		there, back := pressure(a, b, reflection), pressure(b, a, reflection)
		if cmplx.Abs(there-back) > 1e-9*(1+cmplx.Abs(there)) {
			t.Errorf("from %v to %v %v, back %v", a, b, there, back)
		}
	})
}

// pressure sums point sources over the images of a room.
func pressure(from, to r3.Vec, reflection [6]float64) complex128 {
	const k = 18.3 // rad/m, 1 kHz
	var sum complex128
	var walls [6][]float64
	for wall, r := range reflection {
		walls[wall] = []float64{r}
	}
	for _, image := range shoebox.Images(size, from, 6) {
		d := r3.Norm(image.Moved(r3.Sub(to, from)))
		sum += cmplx.Rect(image.Factors(walls)[0]/d, -k*d)
	}
	return sum
}

// TestFactors: soft walls leave the direct part alone, and a floor alone its own image.
func TestFactors(t *testing.T) {
	for _, image := range shoebox.Images(size, source, 4) {
		soft := image.Factors([6][]float64{{0}, {0}, {0}, {0}, {0}, {0}})[0]
		floor := image.Factors([6][]float64{{0}, {0}, {0}, {0}, {0.7}, {0}})[0]
		want, onFloor := 0.0, 0.0
		if n := reflections(image); n == 0 {
			want, onFloor = 1, 1
		} else if n == 1 && image.Hits[4] == 1 {
			onFloor = 0.7
		}
		if soft != want || floor != onFloor {
			t.Errorf("hits %v: soft walls leave %g, want %g; a floor %g, want %g", image.Hits, soft, want, floor, onFloor)
		}
	}
}

// centre returns where the mirrored body's centre stands, in m.
func centre(i shoebox.Image) r3.Vec { return i.Turned(r3.Scale(-1, i.Shift)) }

// reflections returns how many made an image.
func reflections(i shoebox.Image) int {
	n := 0
	for _, h := range i.Hits {
		n += h
	}
	return n
}

// TestHardWall: nothing moves in or out through a hard wall, since each image on
// one side has a partner as far away on the other.
func TestHardWall(t *testing.T) {
	count := map[int64]int{}
	onWall := r3.Sub(r3.Vec{X: size.X, Y: 1.1, Z: 2.2}, source)
	const order = 7
	for _, image := range shoebox.Images(size, source, order) {
		inside := centre(image).X < onWall.X
		distance := int64(math.Round(1e8 * r3.Norm(image.Moved(onWall))))
		switch {
		case !inside:
			count[distance]--
		case reflections(image) < order: // else its partner is one reflection too far
			count[distance]++
		}
	}
	for distance, n := range count {
		if n != 0 {
			t.Errorf("%g m: %+d more images inside than beyond", float64(distance)/1e8, n)
		}
	}
}

func ExampleImages() {
	room, body := r3.Vec{X: 5, Y: 4, Z: 2.8}, r3.Vec{X: 1, Y: 2, Z: 0.7}
	for _, image := range shoebox.Images(room, body, 1) {
		fmt.Printf("%d reflections, centre at %+.1f\n", reflections(image), centre(image))
	}
	// Output:
	// 0 reflections, centre at {+0.0 +0.0 +0.0}
	// 1 reflections, centre at {-2.0 +0.0 +0.0}
	// 1 reflections, centre at {+0.0 -4.0 +0.0}
	// 1 reflections, centre at {+0.0 +0.0 -1.4}
	// 1 reflections, centre at {+0.0 +0.0 +4.2}
	// 1 reflections, centre at {+0.0 +4.0 +0.0}
	// 1 reflections, centre at {+8.0 +0.0 +0.0}
}

func BenchmarkImages(b *testing.B) {
	for _, order := range []int{2, 8} {
		b.Run(fmt.Sprint("order ", order), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				shoebox.Images(size, source, order)
			}
		})
	}
}
