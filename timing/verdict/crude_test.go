package verdict_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
)

// What the cruder recordings are made with.
const (
	crudeRate    = 24000.0
	crudeStop    = 10000.0
	crudeTaps    = 4096
	crudeLatency = 0.0113
	crudeNoise   = 3e-4 // RMS, about 45 dB under a channel's sound
	driverLevel  = 0.5  // dB, the most that a driver is off by, either way, evenly spread
	driverTime   = 5e-6 // s, so too
)

// crude is a loudspeaker that is not the program's model of it: sound goes straight or
// round a ball, and the ball's shadow is one pole and one zero (C. P. Brown and R. O. Duda,
// A structural model for binaural sound synthesis, IEEE Trans. Speech Audio Proc. 6 (1998)
// 476, equations 3 to 6; from memory). A table's echo comes from the mirrored ball.
type crude struct {
	plan      *timing.Plan
	frequency []float64
	drivers   [][]complex128
	sweep     sweep.Sweep
	played    []float64
	sent      []complex128 // its spectrum
	// echoes are the levels, as factors, of echoes of each channel that nobody planned, each 2
	// to 8 ms late.
	echoes []float64
}

// shade is what a crude loudspeaker's shadow is made with.
type shade struct {
	ball           float64 // of the radius of the plan's ball
	least, deepest float64 // least gain and where it is, in degrees: alpha_min and theta_min there
}

// published are the numbers of that paper.
var published = shade{1, 0.1, 150}

func newCrude(t testing.TB, p *timing.Plan, by shade) *crude {
	t.Helper()
	s, err := sweep.New(150, crudeStop, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	c := &crude{plan: p, sweep: s, frequency: make([]float64, crudeTaps/2+1)}
	for k := range c.frequency {
		c.frequency[k] = float64(k) * crudeRate / crudeTaps
	}
	c.played = s.Samples(crudeRate)
	c.sent = recording.Spectrum(c.played, recording.Length(len(c.played)+crudeTaps))
	for _, m := range p.Array.Mounts {
		h := make([]complex128, len(c.frequency))
		c.add(h, m.Point, r3.Vec{}, 1, by)
		if f := p.Array.Surface; f.Present {
			up := r3.Vec{Z: 2 * f.Height}
			mirrored := r3.Vec{X: m.Point.X, Y: m.Point.Y, Z: up.Z - m.Point.Z}
			c.add(h, mirrored, up, math.Sqrt(1-f.Absorption[3]), by)
		}
		c.drivers = append(c.drivers, h)
	}
	return c
}

// newOwn returns a loudspeaker that is the program's model of it.
func newOwn(t testing.TB, p *timing.Plan) *crude {
	t.Helper()
	c := newCrude(t, p, published)
	const most = 1e4 // the drivers are brought near the level of the crude ones
	for i, drivers := range p.DriverTransfers(timing.AsBuilt, c.frequency) {
		for s, h := range drivers {
			for k := range h {
				h[k] /= most
			}
			c.drivers[p.Channels[i].Mounts[s]] = h
		}
	}
	return c
}

// add adds a driver at a place, on a ball round a centre, to what is heard at the spot.
func (c *crude) add(dst []complex128, at, centre r3.Vec, gain float64, by shade) {
	a, speed := by.ball*c.plan.Array.Body.BallRadius, c.plan.SpeedOfSound
	out, to := r3.Sub(at, centre), r3.Sub(c.plan.Array.Spot, centre)
	far := r3.Norm(to)
	angle := math.Acos(max(-1, min(1, r3.Dot(out, to)/r3.Norm(out)/far)))
	way := math.Sqrt(far*far + a*a - 2*far*a*math.Cos(angle))
	if seen := math.Acos(a / far); angle > seen {
		way = math.Sqrt(far*far-a*a) + a*(angle-seen)
	}
	alpha := 1 + by.least/2 + (1-by.least/2)*math.Cos(math.Pi*angle/(by.deepest*math.Pi/180))
	for k, hz := range c.frequency {
		x := hz / (2 * speed / (2 * math.Pi * a)) // omega over twice c / a
		dst[k] += complex(gain/way, 0) * complex(1, alpha*x) / complex(1, x) * cmplx.Rect(1, -2*math.Pi*hz*way/speed)
	}
}

// fault is what is wrong with one channel; the zero value is nothing.
type fault struct {
	level    float64 // dB
	reversed bool
	late     float64 // s
}

// measure plays the sweep through a response, and measures what is heard.
func (c *crude) measure(t testing.TB, h []complex128, noise float64, random *rand.Rand) *recording.Measured {
	t.Helper()
	x, n := c.played, recording.Length(len(c.played)+crudeTaps)
	fft, short := fourier.NewFFT(n), fourier.NewFFT(crudeTaps)
	for k, hz := range c.frequency { // the band is closed, softly
		h[k] *= cmplx.Rect(0.05/crudeTaps/(1+math.Pow(hz/crudeStop, 8)), -2*math.Pi*hz*crudeLatency)
	}
	through := fft.Coefficients(nil, padded(short.Sequence(nil, h), n))
	for k := range through {
		through[k] *= c.sent[k] / complex(float64(n), 0)
	}
	heard := fft.Sequence(nil, through)[:len(x)]
	for k := range heard {
		heard[k] += noise * random.NormFloat64()
	}
	m, err := recording.Analyse(recording.Take{Rate: crudeRate, Samples: heard, Reference: x}, c.sweep, recording.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return &m
}

// channel returns what a channel of drivers that are all alike gives.
func (c *crude) channel(i int) []complex128 {
	h := make([]complex128, len(c.frequency))
	for _, m := range c.plan.Channels[i].Mounts {
		for k, v := range c.drivers[m] {
			h[k] += v
		}
	}
	return h
}

// over returns the level in dB and the time in s of one response over another, over the
// design's band: by the energy, and by the phase's least squares.
func (c *crude) over(h, other []complex128) truth {
	var one, all, turned, square float64
	for k, hz := range c.frequency {
		if hz < c.plan.Array.Timing.FieldLow || hz > c.plan.Array.Timing.FieldHigh {
			continue
		}
		a, b := cmplx.Abs(h[k]), cmplx.Abs(other[k])
		one, all = one+a*a/hz, all+b*b/hz // each part of an octave alike
		turned -= a * b * cmplx.Phase(h[k]*cmplx.Conj(other[k]))
		square += a * b * hz * 2 * math.Pi
	}
	return truth{10 * math.Log10(one/all), turned / square}
}

// truth is by how much a channel is over another, in dB and s.
type truth struct{ level, late float64 }

// record makes a recording of each channel, and measures it.
func (c *crude) record(t testing.TB, seed uint64, played timing.Case, noise float64, faults map[int]fault) ([]*recording.Measured, []truth) {
	t.Helper()
	random := rand.New(rand.NewPCG(seed, 1998))
	measured := make([]*recording.Measured, len(c.plan.Channels))
	truths := make([]truth, len(measured))
	for i, channel := range c.plan.Channels {
		f := faults[i]
		h := make([]complex128, len(c.frequency))
		for _, m := range channel.Mounts {
			gain, late := math.Pow(10, driverLevel*(2*random.Float64()-1)/20), driverTime*(2*random.Float64()-1)
			for k, v := range c.drivers[m] {
				h[k] += v * cmplx.Rect(gain, -2*math.Pi*c.frequency[k]*late)
			}
		}
		truths[i] = c.over(h, c.channel(i))
		c.reflect(h, random)
		truths[i].level += f.level
		truths[i].late += f.late
		delay, scale := f.late, math.Pow(10, f.level/20)
		if played == timing.Aligned {
			delay += channel.Delay
		}
		if f.reversed {
			scale = -scale
		}
		for k, hz := range c.frequency {
			h[k] *= cmplx.Rect(scale, -2*math.Pi*hz*delay)
		}
		measured[i] = c.measure(t, h, noise, random)
	}
	return measured, truths
}

// reflect adds the echoes to a response.
func (c *crude) reflect(h []complex128, random *rand.Rand) {
	after := make([]float64, len(c.echoes))
	for i := range after {
		after[i] = 0.002 + 0.006*random.Float64()
	}
	for k, hz := range c.frequency {
		sum := complex(1, 0)
		for i, gain := range c.echoes {
			sum += cmplx.Rect(gain, -2*math.Pi*hz*after[i])
		}
		h[k] *= sum
	}
}

func padded(x []float64, n int) []float64 {
	return append(append([]float64(nil), x...), make([]float64, n-len(x))...)
}

// free returns a plan without its table.
func free(t testing.TB, p *timing.Plan) *timing.Plan {
	t.Helper()
	a := *p.Array
	a.Surface = layout.Surface{}
	p, err := timing.Make(t.Context(), &a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
