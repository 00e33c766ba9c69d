package preview

import (
	"math"

	"pappus/preview/through"
	"pappus/timing"
	"pappus/timing/head"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Listener is who listens, and to what. The zero value is what Impulse hears: one
// ear in the air at the plan's spot, and all echoes that the design has.
type Listener struct {
	TwoEars bool
	// TurnDeg is how far the head is turned to the left from facing the body, in
	// degrees. It counts with two ears only.
	TurnDeg float64
	Dry     bool   // without the surface below the body or the room round it
	At      r3.Vec // m, the middle of the head; zero: the plan's spot
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
func (who Listener) place(p *timing.Plan) r3.Vec {
	if who.At == (r3.Vec{}) {
		return p.Array.Spot
	}
	return who.At
}

// nose returns where the listener looks from a place in m.
func (who Listener) nose(place r3.Vec) r3.Vec {
	sin, cos := math.Sincos(math.Atan2(-place.Y, -place.X) + who.TurnDeg*math.Pi/180)
	return r3.Vec{X: cos, Y: sin}
}

// lead returns by how much an ear may hear a sound before the head's middle, in s.
func (who Listener) lead(p *timing.Plan) float64 {
	if who.TwoEars {
		return head.Radius / p.SpeedOfSound
	}
	return 0
}

// Responses returns what the listener hears of a click in each case, all of one
// length, as Impulse does for one ear: for two, the first arrival at the head's middle
// stands 1.26 ms after the beginning, the 0.26 ms being those from an ear to the
// middle. A place that no sound can reach gives layout.ErrUnreachable.
func (who Listener) Responses(p *timing.Plan, cases []timing.Case, rate int) ([]Response, error) {
	place, w := who.place(p), timing.HeardWoofer(p)
	if err := reach(p.Array, place); err != nil {
		return nil, err
	}
	first, n := make([]float64, len(cases)), 2
	for i, c := range cases {
		from, to := spanWith(p, w, c, who.Dry, place)
		first[i] = from - who.lead(p)
		n = max(n, grid(lastingWith(p, w, to-from), rate))
	}
	frequency := frequencies(n, rate)
	h, err := newHearer(p, who, timing.Listening{Cases: cases, Dry: who.Dry, Woofer: w}, []r3.Vec{place}, frequency)
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
	left, right [][]complex128 // right is left where one ear hears for both
}

func newHearer(p *timing.Plan, who Listener, l timing.Listening, places []r3.Vec, frequency []float64) (*hearer, error) {
	h, err := &hearer{who: who}, error(nil)
	if who.TwoEars {
		h.two, err = timing.NewEars(p, l, places, frequency)
	} else {
		h.one, err = timing.NewHearing(p, l, places, frequency)
	}
	h.left = spectra(len(l.Cases), len(frequency))
	h.right = h.left
	if who.TwoEars {
		h.right = spectra(len(l.Cases), len(frequency))
	}
	return h, err
}

func spectra(cases, frequencies int) [][]complex128 {
	out := make([][]complex128, cases)
	for i := range out {
		out[i] = make([]complex128, frequencies)
	}
	return out
}

// fork returns a hearer of the same with its own room to work.
func (h *hearer) fork() *hearer {
	f := *h
	f.left = spectra(len(h.left), len(h.left[0]))
	f.right = f.left
	if f.who.TwoEars {
		f.right = spectra(len(h.left), len(h.left[0]))
	}
	return &f
}

// hear fills in what is heard at a place.
func (h *hearer) hear(place r3.Vec) {
	if h.who.TwoEars {
		h.two.At(h.left, h.right, place, h.who.nose(place))
		return
	}
	h.one.At(h.left, place)
}
