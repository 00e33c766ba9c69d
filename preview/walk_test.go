package preview

import (
	"errors"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/preview/programme"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
)

// past goes by the lantern at half a metre.
var past = Way{Places: []r3.Vec{{X: 0.5, Y: -1, Z: 0.4}, {X: 0.5, Y: 1, Z: 0.4}}}

func newTestBank(t testing.TB, p *timing.Spot, who Listener, way Way, c timing.Case) *bank {
	t.Helper()
	if err := way.check(); err != nil {
		t.Fatal(err)
	}
	b, err := newBanks(t.Context(), p, who, way, []timing.Case{c}, rate)
	if err != nil {
		t.Fatal(err)
	}
	return b[0]
}

// banded is noise from 1 to 4 kHz that is silent, to the last digits, outside
// of the band, and begins and ends softly.
func banded(n int) [][2]float64 {
	random := rand.New(rand.NewPCG(5, 8))
	spectrum := make([]complex128, n/2+1)
	for k := range spectrum {
		if f := float64(k) * rate / float64(n); f > 1000 && f < 4000 {
			spectrum[k] = cmplx.Rect(1, 2*math.Pi*random.Float64())
		}
	}
	out := make([][2]float64, n)
	for i, v := range fourier.NewFFT(n).Sequence(nil, spectrum) {
		v *= hann(i, n)
		out[i] = [2]float64{v, v}
	}
	return out
}

func hann(i, n int) float64 { return (1 - math.Cos(2*math.Pi*(float64(i)+0.5)/float64(n))) / 2 }

// above returns the share in dB of the energy of one side that lies above a
// frequency in Hz, of samples that begin and end softly.
func above(samples [][2]float64, side int, from float64) float64 {
	n := len(samples)
	x := make([]float64, n)
	for i, v := range samples {
		x[i] = v[side] * hann(i, n)
	}
	var high, all float64
	for k, v := range fourier.NewFFT(n).Coefficients(nil, x) {
		e := real(v)*real(v) + imag(v)*imag(v)
		all += e
		if float64(k)*rate/float64(n) > from {
			high += e
		}
	}
	return 10 * math.Log10(high/all)
}

// A walk may not click: of a programme from 1 to 4 kHz nothing comes out above 8
// kHz, to -60 dB of the whole.
func TestWalkDoesNotClick(t *testing.T) {
	p := lantern(t, same)
	b := newTestBank(t, p, Listener{TwoEars: true}, past, timing.Aligned)
	source := banded(1 << 16)
	heard := drain(b.through(&once{source}), 700)
	for side := range 2 {
		if db := above(heard, side, 8000); db > -60 {
			t.Errorf("side %d: %.1f dB above 8 kHz", side, db)
		}
	}
}

// Where the way ends, and where it begins, what is heard is what a listener hears
// who stands there, but for what the table of places misses: 0.2 percent of the
// louder ear, and 0.5 percent for a sum with deep notches.
func TestWalkEndsAsItStands(t *testing.T) {
	endsAsItStands(t, lantern(t, same), past, Cases)
}

// TestWalkByTwoBodies: with a second body two metres further, to the left, the same; who stands
// at first, so that nothing of a click rings on while the one body comes nearer than the other.
func TestWalkByTwoBodies(t *testing.T) {
	endsAsItStands(t, lantern(t, func(a *layout.Array) {
		a.Placings = []layout.Placing{{}, {At: r3.Vec{X: -0.5, Y: 2}}}
		for _, m := range a.Mounts {
			m.ID, m.Body = m.ID+len(a.Mounts), 1
			a.Mounts = append(a.Mounts, m)
		}
	}), Way{Places: []r3.Vec{{X: 0.5, Y: 0.8, Z: 0.4}, {X: 0.5, Y: 1, Z: 0.4}}, Wait: 0.1}, Cases[:2])
}

func endsAsItStands(t *testing.T, p *timing.Spot, way Way, cases []Case) {
	t.Helper()
	who := Listener{TwoEars: true, TurnDeg: 20}
	banks, err := newBanks(t.Context(), p, who, way, plain(cases), rate)
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range cases {
		b := banks[i]
		// The longest part of a fade, and a click on a step, is heard through that step.
		steps := len(b.steps)
		for name, there := range map[string]struct {
			sample int
			place  r3.Vec
		}{"begin": {0, way.Places[0]}, "end": {(b.wait + steps + 3) * b.hop, way.Places[1]}} {
			source := make([][2]float64, there.sample+1)
			source[there.sample] = [2]float64{1, 1}
			heard := drain(b.through(&once{source}), 512)[there.sample:]
			who.At = &there.place
			stands := response(t, p, who, c.Case)
			first, _ := p.Span(c.Case, false, there.place)
			bankFirst := b.first + bulk(p, there.place)
			most, worst := 0.0, 0.0
			for side, h := range [][]float64{stands.Left, stands.Right} {
				x := make([]float64, len(heard))
				for i, v := range heard {
					x[i] = v[side]
				}
				for f := 150.0; f < 16000; f *= 1.1 {
					want := at(h, rate, f) * turn(f, bankFirst-first+who.lead(p))
					most = max(most, cmplx.Abs(want))
					worst = max(worst, cmplx.Abs(at(x, rate, f)-want))
				}
			}
			if worst > 0.005*most {
				t.Errorf("%s, %s: off by %.2g of the most", c.Name, name, worst/most)
			}
		}
	}
}

// In a room the floor goes along: where all other walls swallow everything, what is
// heard at the beginning of a walk is what a listener hears who stands there.
func TestWalkHearsTheFloorOfARoom(t *testing.T) {
	p := lantern(t, func(a *layout.Array) {
		a.Surface = layout.Surface{}
		a.Room = layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 5, Z: 2.6}, Body: r3.Vec{X: 2, Y: 2.5, Z: 0.9}, Order: 1}
		for wall := range a.Room.Absorption {
			for band := range a.Room.Absorption[wall] {
				a.Room.Absorption[wall][band] = 1
			}
		}
		a.Room.Absorption[4] = layout.Absorption{0.1, 0.1, 0.2, 0.2, 0.3, 0.3, 0.4}
	})
	who := Listener{At: &past.Places[0]}
	loud := func(dry bool) []float64 {
		who.Dry = dry
		b := newTestBank(t, p, who, past, timing.AsBuilt)
		heard := drain(b.through(&once{[][2]float64{{1, 1}}}), 512)
		left := make([]float64, len(heard))
		for i, v := range heard {
			left[i] = v[0]
		}
		return left
	}
	wet, dry := loud(false), loud(true)
	who.Dry = false
	want := response(t, p, who, timing.AsBuilt).Left
	echo, off, most := 0.0, 0.0, 0.0
	for f := 150.0; f < 16000; f *= 1.05 {
		have := cmplx.Abs(at(wet, rate, f))
		most = max(most, cmplx.Abs(at(want, rate, f)))
		off = max(off, math.Abs(have-cmplx.Abs(at(want, rate, f))))
		echo = max(echo, math.Abs(have-cmplx.Abs(at(dry, rate, f))))
	}
	if off > 0.01*most || echo < 0.2*most {
		t.Errorf("off by %.2g of the most; the floor counts for %.2g", off/most, echo/most)
	}
}

// Who stands first and then walks to and fro hears the steps up and down again,
// without an end and without a step left out.
func TestToAndFro(t *testing.T) {
	b := bank{steps: make([][]complex64, 4), wait: 2, back: true}
	var have []int
	for at := range 12 {
		have = append(have, b.place(at))
	}
	if want := []int{0, 0, 0, 1, 2, 3, 2, 1, 0, 1, 2, 3}; !slices.Equal(have, want) {
		t.Errorf("%v, want %v", have, want)
	}
	one := bank{steps: make([][]complex64, 1), back: true}
	if one.place(7) != 0 {
		t.Error("moves without a way")
	}
}

// Walking to and fro may not click either, at the turns as little as on the way.
func TestToAndFroDoesNotClick(t *testing.T) {
	way := Way{Places: []r3.Vec{past.Places[0], r3.Add(past.Places[0], r3.Vec{Y: 0.2})}, Wait: 0.1, ToAndFro: true}
	b := newTestBank(t, lantern(t, same), Listener{TwoEars: true}, way, timing.AsBuilt)
	heard := drain(b.through(&once{banded(1 << 16)}), 700)
	for side := range 2 {
		if db := above(heard, side, 8000); db > -60 {
			t.Errorf("side %d: %.1f dB above 8 kHz", side, db)
		}
	}
}

// Halfway between two steps the mean of both responses must be the response there,
// to -40 dB up to 10 kHz: what the blend errs by.
func TestStepsAreShort(t *testing.T) {
	p := lantern(t, same)
	way := past
	l := timing.Listening{Cases: []timing.Case{timing.Aligned}}
	hop := way.hop(p, false, rate)
	step := float64(hop) / rate
	frequency := []float64{500, 1000, 2000, 4000, 7000, 10000}
	for i := range 40 {
		t0 := way.Seconds() * float64(i) / 40
		var value [3][2][]complex128
		for j := range value {
			place := way.at(t0 + step*float64(j)/2)
			value[j] = [2][]complex128{make([]complex128, len(frequency)), make([]complex128, len(frequency))}
			e, err := timing.NewEars(p, l, []r3.Vec{place}, frequency)
			if err != nil {
				t.Fatal(err)
			}
			e.At(value[j][:1], value[j][1:], place, Listener{}.nose(place))
			for k, f := range frequency {
				value[j][0][k] *= turn(f, bulk(p, place))
				value[j][1][k] *= turn(f, bulk(p, place))
			}
		}
		for k, f := range frequency {
			louder := max(cmplx.Abs(value[1][0][k]), cmplx.Abs(value[1][1][k]))
			for side := range 2 {
				e := cmplx.Abs((value[0][side][k]+value[2][side][k])/2-value[1][side][k]) / louder
				if db := 20 * math.Log10(e); db > -40 {
					t.Errorf("at %.2f s, %g Hz, side %d: %.1f dB off", t0, f, side, db)
				}
			}
		}
	}
}

// What comes out does not hang on the sizes of the buffers, and is as long as the
// source and both responses are, less what comes before time 0.
func TestWalkInAnyBuffers(t *testing.T) {
	p := lantern(t, func(a *layout.Array) { a.Timing.Model = "point" })
	b := newTestBank(t, p, Listener{}, past, timing.AsBuilt)
	for _, n := range []int{0, 1, 1000, 5000} {
		source := banded(n + 2)[:n]
		want := drain(b.through(&once{source}), 4096)
		length := n + len(b.driver) + b.length - 2 - b.early
		if n == 0 {
			length = 0
		}
		if len(want) != length {
			t.Errorf("%d samples of %d, want %d", len(want), n, length)
		}
		for _, size := range []int{1, 77, 256, 3000} {
			have := drain(b.through(&once{source}), size)
			if len(have) != len(want) {
				t.Fatalf("buffers of %d: %d samples, want %d", size, len(have), len(want))
			}
			for i := range have {
				if have[i] != want[i] {
					t.Fatalf("buffers of %d, sample %d: %v, want %v", size, i, have[i], want[i])
				}
			}
		}
	}
}

func TestWalkIsMatched(t *testing.T) {
	p := lantern(t, func(a *layout.Array) { a.Timing.Model = "point" })
	loop := programme.Pink(rate)
	s, err := NewWalk(t.Context(), p, Listener{TwoEars: true}, past, Cases[:2], func() beep.Streamer { return beep.Take(2*rate, loop.Streamer()) }, rate)
	if err != nil {
		t.Fatal(err)
	}
	a, b := LevelOf(s.Streamer(0), rate), LevelOf(s.Streamer(1), rate)
	if math.Abs(a.Integrated-b.Integrated) > 0.05 || max(a.Peak, b.Peak) > 1.001*Ceiling {
		t.Errorf("%+v and %+v", a, b)
	}
}

func TestImpossibleWays(t *testing.T) {
	p := pair()
	loop := programme.Pink(rate)
	for name, way := range map[string]Way{
		"nowhere":   {},
		"no number": {Places: []r3.Vec{{X: 1}, {X: math.NaN()}}},
		"too late":  {Places: past.Places, Wait: math.Inf(1)},
		"too early": {Places: past.Places, Wait: -1},
		"endless":   {Places: []r3.Vec{{X: 1}, {X: math.Inf(1)}}},
		"too far":   {Places: []r3.Vec{{X: 1}, {X: 1e4}}},
		"far, far":  {Places: []r3.Vec{{X: 1}, {X: 1e300}}},
	} {
		if _, err := NewWalk(t.Context(), p, Listener{}, way, Cases, func() beep.Streamer { return beep.Take(9, loop.Streamer()) }, rate); !errors.Is(err, ErrWay) {
			t.Errorf("%s: error %v", name, err)
		}
	}
	through := Way{Places: []r3.Vec{{X: 1}, {X: -1}}}
	if _, err := NewWalk(t.Context(), lantern(t, same), Listener{}, through, Cases, func() beep.Streamer { return beep.Take(9, loop.Streamer()) }, rate); !errors.Is(err, layout.ErrInside) {
		t.Errorf("through the body: error %v", err)
	}
}

func TestWalkAllocatesNothing(t *testing.T) {
	b := newTestBank(t, lantern(t, same), Listener{TwoEars: true}, past, timing.Aligned)
	s := b.through(programme.Pink(rate).Streamer())
	buffer := make([][2]float64, 500)
	if n := testing.AllocsPerRun(300, func() { s.Stream(buffer) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// A dome of 60 drivers heard with two ears by who walks past it, a second at a
// time, the steps computed beforehand.
func BenchmarkWalk(b *testing.B) {
	w := newTestBank(b, sixty(b), Listener{TwoEars: true}, past, timing.Aligned)
	s := w.through(programme.Pink(rate).Streamer())
	buffer := make([][2]float64, 512)
	b.ReportAllocs()
	for b.Loop() {
		for left := rate; left > 0; left -= len(buffer) {
			s.Stream(buffer)
		}
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "x_real_time")
}

// The steps of 2 m on that way.
func BenchmarkBank(b *testing.B) {
	p := sixty(b)
	b.ReportAllocs()
	for b.Loop() {
		w := newTestBank(b, p, Listener{TwoEars: true}, past, timing.Aligned)
		b.ReportMetric(float64(len(w.steps)), "steps")
		b.ReportMetric(float64(len(w.steps)*len(w.steps[0])*8)/1e6, "MB")
	}
}
