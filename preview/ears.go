package preview

import (
	"math"

	"pappus/layout"
	"pappus/preview/through"
	"pappus/timing"
	"pappus/timing/head"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Listener is who listens, and to what. The zero value is one
// ear in the air at the plan's spot, and all echoes that the design has.
type Listener struct {
	TwoEars bool
	// TurnDeg is how far the head is turned to the left from facing the body, in
	// degrees. It counts with two ears only.
	TurnDeg float64
	Dry     bool    // without the surface below the body or the room round it
	At      *r3.Vec // m, the middle of the head; nil: the spot
}

// Response is what ears hear of a click.
type Response struct {
	Left, Right []float64 // of one length; Right is nil where one ear hears for both
}

// Through streams a source as it is heard.
func (r Response) Through(src beep.Streamer) beep.Streamer {
	if r.Right == nil {
		return through.New(src, r.Left)
	}
	return through.Ears(src, r.Left, r.Right)
}

// place returns where the listener is, in m.
func (who Listener) place(p *timing.Spot) r3.Vec {
	if who.At == nil {
		return p.Array.Spot
	}
	return *who.At
}

// nose returns where the listener looks, who faces the origin or is turned from it, from a
// place in m.
func (who Listener) nose(place r3.Vec) r3.Vec {
	sin, cos := math.Sincos(math.Atan2(-place.Y, -place.X) + who.TurnDeg*math.Pi/180)
	return r3.Vec{X: cos, Y: sin}
}

// lead returns by how much an ear may hear a sound before the head's middle, in s.
func (who Listener) lead(p *timing.Spot) float64 {
	if who.TwoEars {
		return head.Radius / p.SpeedOfSound
	}
	return 0
}

// Responses returns what the listener hears of a click in each case: the impulse response
// from the array, one value for each sample of 1/rate s, in units of timing.Plan.Transfer.
// The first arrival stands 1 ms after its beginning, for two ears 1.26 ms, the 0.26 ms
// being those from an ear to the head's middle; the way of the sound before that is taken
// out, in each case its own.
//
// All are of one length, a power of two that lasts at least 80 ms, four times the spread
// of the arrivals, and 20 ms after the last echo, with a woofer as long as its filters
// ring: 4096 at 48 kHz without a room. From 20 kHz, or from 3.3 kHz below half the rate
// where that is lower, a response falls smoothly to nothing at half the rate, so that an
// arrival between two samples rings for less than 1 ms. Up to there it is exact to -80 dB
// at 44.1 kHz and above. rate is at least 8000. A place that no sound can reach is ErrWay.
func (who Listener) Responses(p *timing.Spot, cases []timing.Case, rate int) ([]Response, error) {
	place, heard := who.place(p), sounding{p, timing.HeardWoofer(p)}
	if err := reach(p.Array, place); err != nil {
		return nil, err
	}
	first, n := make([]float64, len(cases)), 2
	for i, c := range cases {
		from, to := heard.span(c, who.Dry, place)
		first[i] = from - who.lead(p)
		n = max(n, grid(heard.lasting(to-from), rate))
	}
	frequency := frequencies(n, rate)
	h, err := newHearer(p, who, timing.Listening{Cases: cases, Dry: who.Dry, Woofer: heard.woofer}, []r3.Vec{place}, frequency)
	if err != nil {
		return nil, err
	}
	h.hear(place)
	out := make([]Response, len(cases))
	for i := range out {
		out[i].Left = sequence(h.left[i], frequency, first[i], n, rate)
		if who.TwoEars {
			out[i].Right = sequence(h.right[i], frequency, first[i], n, rate)
		}
	}
	return out, nil
}

// hearer holds what one or two ears hear at a place, in each case. It is for one
// goroutine; fork makes more.
type hearer struct {
	who         Listener
	one         *timing.Hearing
	two         *timing.Ears
	cases, size int            // frequencies
	middle      r3.Vec         // m, of the bodies, which the listener faces
	left, right [][]complex128 // right is left where one ear hears for both
}

func newHearer(p *timing.Spot, who Listener, l timing.Listening, places []r3.Vec, frequency []float64) (*hearer, error) {
	h, err := hearer{who: who, cases: len(l.Cases), size: len(frequency), middle: middle(p.Array)}, error(nil)
	if who.TwoEars {
		h.two, err = timing.NewEars(p, l, places, frequency)
	} else {
		h.one, err = timing.NewHearing(p, l, places, frequency)
	}
	return h.fork(), err
}

// middle returns the middle of an array's bodies in m: the origin for one.
func middle(a *layout.Array) r3.Vec {
	var sum r3.Vec
	for _, b := range a.Bodies() {
		sum = r3.Add(sum, b.At)
	}
	return r3.Scale(1/float64(len(a.Bodies())), sum)
}

func spectra(cases, frequencies int) [][]complex128 {
	out := make([][]complex128, cases)
	for i := range out {
		out[i] = make([]complex128, frequencies)
	}
	return out
}

// fork returns a hearer of the same with its own room to work.
func (h hearer) fork() *hearer {
	h.left = spectra(h.cases, h.size)
	h.right = h.left
	if h.who.TwoEars {
		h.right = spectra(h.cases, h.size)
	}
	return &h
}

// hear fills in what is heard at a place.
func (h *hearer) hear(place r3.Vec) {
	if h.who.TwoEars {
		h.two.At(h.left, h.right, place, h.who.nose(r3.Sub(place, h.middle)))
		return
	}
	h.one.At(h.left, place)
}
