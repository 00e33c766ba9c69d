package timing

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing/radiate"
	"pappus/timing/shoebox"

	"gonum.org/v1/gonum/spatial/r3"
)

// Echo is what one surface does to the sound at the spot: what it sends back comes later
// than the direct sound and combs with it, from its first dip on. No delay mends that;
// only the surface, the body's place and the spot do.
type Echo struct {
	Wall  string  // "surface below", "floor", "ceiling", "back wall", "front wall", "right wall" or "left wall"
	Extra float64 // m, by how much its way is longer than the direct one: mean of the drivers, weighted by energy
	Late  float64 // s, the same in time
	Dip   float64 // Hz, the first frequency where it takes most away
	Depth float64 // dB, by how much less is heard there than without it, above 0
	// At is where on the surface the sound is thrown back to the spot, in m from the
	// body's centre.
	At r3.Vec
	// Nearer and Further are about where the dip goes, in Hz, when the body is moved by
	// EchoMove towards the surface or away from it and the spot stays; Nearer is NaN where
	// the body has not as much room.
	Nearer, Further float64
}

// EchoMove is by how many m the body is moved for Echo.Nearer and Further.
const EchoMove = 0.1

// leastDepth in dB is the least dip that is told: a single dip of 1 dB is at the edge of
// what is heard in noise (F. E. Toole and S. E. Olive, J. Audio Eng. Soc. 36 (1988) 122,
// from memory).
const leastDepth = 1.0

// The first dip is looked for round that of a single echo so late, 1/(2 late): at
// dipSteps frequencies from dipFrom times that on. The drivers' echoes are not equally
// late, nor is each echo as loud as its driver, which shifts it.
const (
	dipFrom  = 0.3
	dipStep  = 0.1
	dipSteps = 18
)

// walls names the surfaces across each axis, at its low and at its high side.
var walls = [3][2]string{{"back wall", "front wall"}, {"right wall", "left wall"}, {"floor", "ceiling"}}

// echoes returns the echoes at the spot, the deepest first.
func (p *Spot) echoes() (out []Echo, err error) {
	a := once(p.Array)
	ways, bodies := radiate.Ways(a, radiate.NewMedium(airOf(a), nil)), len(a.Bodies())
	for number := 1; number < len(ways)/bodies; number++ {
		e, err := p.echoBy(a, number, ways[number*bodies].Mirror)
		if err != nil {
			return nil, err
		}
		if e.Depth >= leastDepth {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b Echo) int { return cmp.Compare(b.Depth, a.Depth) })
	return out, nil
}

// once returns an array whose sound is thrown back once at most.
func once(a *layout.Array) *layout.Array {
	once := *a
	once.Room.Order = min(a.Room.Order, 1)
	return &once
}

// echoBy returns the echo of an array by one mirror, which is across one axis; where it is thrown
// back, and how late, that of the body that is loudest at the spot.
func (p *Spot) echoBy(a *layout.Array, number int, image shoebox.Mirror) (Echo, error) {
	axis := slices.Index([]float64{image.Flip.X, image.Flip.Y, image.Flip.Z}, -1)
	at := along(image.Shift, axis) / 2
	wall := wallOf(a, axis, at)
	e := Echo{Wall: wall.name}
	mirrored := image.Moved(a.Spot)
	var source r3.Vec
	var h hearer
	h.move(p, mirrored)
	total, weight := 0.0, p.times().weight
	nearest := p.loudest()
	for m, mount := range a.Mounts {
		if mount.Body != nearest {
			continue
		}
		total += weight[m]
		long, _, _ := way(a, mount, mirrored)
		e.Extra += weight[m] * (long - p.Arrivals[m].Path)
		e.Late += weight[m] * (h.heard(mount) - p.Arrivals[m].Heard())
		source = r3.Add(source, r3.Scale(weight[m], a.PlaceOf(mount)))
	}
	e.Extra, e.Late, source = e.Extra/total, e.Late/total, r3.Scale(1/total, source)
	share := (at - along(source, axis)) / (along(mirrored, axis) - along(source, axis))
	e.At = r3.Add(source, r3.Scale(share, r3.Sub(mirrored, source)))
	err := p.dip(&e, a, number)
	e.move(a.Spot, source, axis, at)
	body := a.Bodies()[nearest]
	if away := along(wall.towards, axis) * (at - along(body.At, axis)); away-a.Body.Extent(body.In(wall.towards)) < EchoMove {
		e.Nearer = math.NaN()
	}
	return e, err
}

// wall is a surface that throws sound back.
type wall struct {
	name    string
	towards r3.Vec // the direction of the room from the body to it
}

// onlySurface names the surface that a body is fixed to where there is no room.
var onlySurface = map[string]string{layout.OnCeiling: "ceiling", layout.OnWall: walls[0][0]}

// wallOf returns the surface across an axis at a place in m along it.
func wallOf(a *layout.Array, axis int, at float64) wall {
	if !a.Room.Present {
		return wall{cmp.Or(onlySurface[a.Surface.On], "surface below"), layout.Towards(a.Surface.On)}
	}
	axes := [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
	if at > along(r3.Sub(r3.Scale(0.5, a.Room.Size), a.Room.Body), axis) { // beyond the room's middle
		return wall{walls[axis][1], axes[axis]}
	}
	return wall{walls[axis][0], r3.Scale(-1, axes[axis])}
}

// along returns a coordinate by its number.
func along(v r3.Vec, axis int) float64 { return [3]float64{v.X, v.Y, v.Z}[axis] }

// move fills in where the dip goes: over one source h from a surface, heard at H from it
// and R along it, the echo's way is longer by
//
//	sqrt(R^2 + (H+h)^2) - sqrt(R^2 + (H-h)^2)
//
// and the dip as much lower.
func (e *Echo) move(spot, source r3.Vec, axis int, at float64) {
	h, away := math.Abs(along(source, axis)-at), math.Abs(along(spot, axis)-at)
	ray := r3.Sub(spot, source)
	flat := math.Sqrt(max(0, r3.Norm2(ray)-along(ray, axis)*along(ray, axis)))
	extra := func(h float64) float64 { return math.Hypot(flat, away+h) - math.Hypot(flat, away-h) }
	e.Nearer, e.Further = e.Dip*extra(h)/extra(h-EchoMove), e.Dip*extra(h)/extra(h+EchoMove)
}

// dip fills in the first dip, of all drivers with their delays.
func (p *Spot) dip(e *Echo, a *layout.Array, number int) error {
	if !(e.Late > 1/(2*responseHigh)) {
		return nil // no dip that can be heard: the echo is part of the source
	}
	frequency := make([]float64, dipSteps)
	for i := range frequency {
		frequency[i] = (dipFrom + dipStep*float64(i)) / (2 * e.Late)
	}
	s, err := newScene(a, frequency)
	if err != nil {
		return err
	}
	fed := p.feed(true, frequency, plain(len(frequency)))
	direct, late := make([]complex128, len(frequency)), make([]complex128, len(frequency))
	heard := make([]complex128, len(a.Mounts)*len(frequency))
	s.Hear(heard, s.Direct(), a.Spot)
	fed.AddTo(direct, heard)
	s.Hear(heard, s.Mirrored(number), a.Spot)
	fed.AddTo(late, heard)
	left := make([]float64, len(frequency)) // share of the direct sound's energy
	for f := range left {
		left[f] = energyOf(direct[f]+late[f]) / energyOf(direct[f])
	}
	if at, least := firstDip(left); least < 1 {
		e.Dip, e.Depth = (dipFrom+dipStep*at)/(2*e.Late), -10*math.Log10(max(least, 1e-6))
	}
	return nil
}

// firstDip returns where between evenly spaced shares of energy the first dip of
// leastDepth or more is, by the parabola through the lowest and its neighbours, and what
// it leaves; 1 where there is none. A direct sound of 1 and one echo of r have
// (1-r)^2 + 4 r sin^2 of energy, which is a parabola near its lowest.
func firstDip(left []float64) (at, least float64) {
	enough := math.Pow(10, -leastDepth/10)
	for i := 1; i < len(left)-1; i++ {
		slope, bend := (left[i+1]-left[i-1])/2, left[i+1]-2*left[i]+left[i-1]
		if left[i] > left[i-1] || left[i] > left[i+1] || !(bend > 0) {
			continue
		}
		if least = left[i] - slope*slope/bend/2; least <= enough {
			return float64(i) - slope/bend, least
		}
	}
	return 0, 1
}

// A porous absorber on a wall weakens a tone noticeably from a tenth of its wavelength in
// thickness, and takes nearly all of it from a quarter, where the air moves most (common
// practice; T. J. Cox and P. D'Antonio, Acoustic Absorbers and Diffusers; from memory).
const (
	absorberShare = 0.1
	absorberFull  = 0.25
)

// Absorber returns how thick a porous absorber has to be in m, where the sound is thrown
// back, to weaken the first dip and to take nearly all of it, for a speed of sound in m/s.
func (e Echo) Absorber(speed float64) (weakens, takes float64) {
	return absorberShare * speed / e.Dip, absorberFull * speed / e.Dip
}
