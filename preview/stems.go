package preview

import (
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/cores"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"
)

// Stems are what a listener hears of a click from each channel by itself, so that whoever
// plays it can set gains and delays:
//
//	case = sum over its Feds: Gain * (Filters[Stem.Filter] convolved with Stem) later by Delay
//
// At Rate, and as Listener.Responses has it, within -60 dB, but 1 ms later: what filters and
// stems have before their time 0 is in both.
type Stems struct {
	Filters [][]float64 // the drivers' own response; with a woofer its low-pass, too
	Stems   []Stem
	Cases   [][]Fed // of each case
}

// Stem is the impulse response of one channel, the woofer or the ideal point.
type Stem struct {
	Source      timing.Source
	Channel     int       // index into Spot.Channels; 0 where it is none of them
	Filter      int       // which of the filters it is behind
	From        int       // samples before its first one
	Left, Right []float64 // of one length; Right is nil where one ear hears for both
}

// Fed is how a stem is heard in a case.
type Fed struct {
	Stem  int
	Gain  float64 // factor, negative where inverted
	Delay float64 // samples; may be below 0, by less than its stem has before the first sound
}

// cutBelow is the share of a stem's energy that is cut off at each of its ends: 78 dB below
// it, so that a sum of stems that takes 15 dB out of them is still right within -60 dB.
const cutBelow = 1.5e-8

// Stems returns the stems of some cases. A place that no sound can reach is ErrWay.
func (who Listener) Stems(p *timing.Spot, cases []timing.Case) (*Stems, error) {
	place, heard := who.place(p), sounding{p, timing.HeardWoofer(p)}
	if err := reach(p.Array, place); err != nil {
		return nil, err
	}
	parts := timing.NewParts(p, timing.Listening{Cases: cases, Dry: who.Dry, Flat: true, Woofer: heard.woofer})
	n := grid(parts.Lasting()+2*who.lead(p)+2*preRoll+settle, Rate)
	frequency := frequencies(n, Rate)
	h, err := parts.Hearing(who.TwoEars, frequency)
	if err != nil {
		return nil, err
	}
	pieces, err := who.pieces(h, p, place, frequency, n)
	if err != nil {
		return nil, err
	}
	first := math.Inf(1)
	for _, piece := range pieces {
		first = min(first, piece.first)
	}
	out := &Stems{Filters: heard.filters()}
	for _, part := range parts.Part {
		stem := Stem{Source: part.Source, Channel: part.Channel}
		if part.Source == timing.OfWoofer {
			stem.Filter = 1
		}
		out.Stems = append(out.Stems, stem)
	}
	out.join(pieces, first, parts.Left, who.size(heard, cases, place))
	out.feed(parts, heard, who, place, cases, first)
	return out, nil
}

// piece is a piece of what is heard, as samples.
type piece struct {
	timing.Piece
	first float64        // s, of its sample at preRoll
	sides [2][][]float64 // left and right of each of its rows; right is nil where one ear hears for both
}

// pieces hears a place, each piece moved to whole samples.
func (who Listener) pieces(h *timing.PartsHearing, p *timing.Spot, place r3.Vec, frequency []float64, n int) ([]piece, error) {
	out, work := make([]piece, h.Lots()), make([]*inverse, cores.Count())
	err := h.Each(place, who.nose(r3.Sub(place, middle(p.Array))), func(w, i int, heard timing.Piece) {
		if work[w] == nil {
			work[w] = newInverse(frequency, n, Rate)
		}
		one := piece{Piece: heard, first: math.Floor((heard.First-who.lead(p))*Rate) / Rate}
		for side, spectra := range [][][]complex128{heard.Left, heard.Right} {
			for _, spectrum := range spectra {
				one.sides[side] = append(one.sides[side], slices.Clone(work[w].of(spectrum, one.first)))
			}
		}
		one.Left, one.Right = nil, nil
		out[i] = one
	})
	return out, err
}

// join puts all pieces together, the first of them, in s, at the beginning of n samples, round
// which goes what a wall that is not even over frequency spreads, as in Listener.Responses.
func (s *Stems) join(pieces []piece, first float64, left func([]float64) [][]float64, n int) {
	frequency := frequencies(n, Rate)
	echoes := left(frequency)
	cores.Each(len(s.Stems), func(_, row int) {
		var sides [2][]float64
		for side := range sides {
			sides[side] = joined(pieces, first, echoes, row, side, n)
		}
		s.Stems[row].cut(sides[0], sides[1])
	})
}

// joined returns n samples of one side of a stem; nil where it is not heard there.
func joined(pieces []piece, first float64, echoes [][]float64, row, side, n int) (all []float64) {
	type echo struct{ factor, samples []float64 } // those that walls leave alike
	var uneven []echo
	for _, p := range pieces {
		k := slices.Index(p.Rows, row)
		if k < 0 || p.sides[side] == nil {
			continue
		}
		if all == nil {
			all = make([]float64, n)
		}
		to, by, factor := all, 1.0, echoes[p.Mirror]
		if factor != nil && slices.Min(factor) == slices.Max(factor) {
			by = factor[0]
		} else if factor != nil {
			i := slices.IndexFunc(uneven, func(e echo) bool { return slices.Equal(e.factor, factor) })
			if i < 0 {
				i, uneven = len(uneven), append(uneven, echo{factor, make([]float64, n)})
			}
			to = uneven[i].samples
		}
		at := int(math.Round((p.first - first) * Rate))
		for i, v := range p.sides[side][k] {
			to[(at+i)%n] += by * v
		}
	}
	if len(uneven) == 0 {
		return all
	}
	fft, sum := fourier.NewFFT(n), make([]complex128, n/2+1)
	spectrum := make([]complex128, n/2+1)
	for _, e := range uneven {
		for f, v := range fft.Coefficients(spectrum, e.samples) {
			sum[f] += v * complex(e.factor[f]/float64(n), 0)
		}
	}
	floats.Add(all, fft.Sequence(nil, sum))
	return all
}

// size returns how many samples Listener.Responses takes for some cases at a place.
func (who Listener) size(heard sounding, cases []timing.Case, place r3.Vec) int {
	n := 2
	for _, c := range cases {
		from, to := heard.span(c, who.Dry, place)
		n = max(n, grid(heard.lasting(to-from+who.lead(heard.Spot)), Rate))
	}
	return n
}

// cut takes the samples between the ends of which cutBelow says that there is nothing.
func (s *Stem) cut(left, right []float64) {
	energy := make([]float64, len(left))
	for i, v := range left {
		energy[i] = v * v
	}
	for i, v := range right {
		energy[i] += v * v
	}
	nothing := cutBelow * floats.Sum(energy)
	from, to := 0, len(energy)
	for sum := 0.0; from < to-1; from++ {
		if sum += energy[from]; sum > nothing {
			break
		}
	}
	for sum := 0.0; to > from+1; to-- {
		if sum += energy[to-1]; sum > nothing {
			break
		}
	}
	s.From, s.Left = from, left[from:to]
	if right != nil {
		s.Right = right[from:to]
	}
}

// feed says how the stems, whose beginning is at first, in s, are heard in each case: its first
// sound where Listener.Responses has it.
func (s *Stems) feed(parts *timing.Parts, heard sounding, who Listener, place r3.Vec, cases []timing.Case, first float64) {
	for i, c := range cases {
		begin, _ := heard.span(c, who.Dry, place)
		begin -= who.lead(heard.Spot)
		feds := make([]Fed, len(parts.Cases[i]))
		for k, fed := range parts.Cases[i] {
			feds[k] = Fed{fed.Part, fed.Gain, (fed.Delay - (begin - first)) * Rate}
		}
		s.Cases = append(s.Cases, feds)
	}
}

// filters returns what the drivers are behind and, where there is one, the woofer, with time 0
// at preRoll.
func (p sounding) filters() [][]float64 {
	n := grid(p.lasting(0), Rate)
	frequency := frequencies(n, Rate)
	drivers := p.DriverResponse(nil, frequency)
	if p.woofer == nil {
		return [][]float64{sequence(drivers, frequency, 0, n, Rate)}
	}
	low := make([]complex128, len(frequency))
	for f, hz := range frequency {
		drivers[f] *= p.woofer.HighPass.Response(hz)
		low[f] = p.woofer.LowPass.Response(hz)
	}
	return [][]float64{sequence(drivers, frequency, 0, n, Rate), sequence(low, frequency, 0, n, Rate)}
}
