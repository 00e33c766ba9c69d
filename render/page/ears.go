package page

import (
	"fmt"
	"math"
	"net/http"
	"slices"
	"strings"

	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// earsAsked is what is to be heard at a place, by whoever convolves it. Where the design has
// several seats, it is what is heard there of the plan for all of them.
type earsAsked struct {
	Text    string   `json:"text"`
	Spot    *triple  `json:"spot_m"` // what is planned for; null: as the design has it
	At      *triple  `json:"at_m"`   // where the ears are; null: at the spot
	Cases   []string `json:"cases"`  // some of those that are offered
	TwoEars bool     `json:"two_ears"`
	Dry     bool     `json:"dry"`
}

// loudnessAsked is what is to be equally loud.
type loudnessAsked struct {
	Text string  `json:"text"`
	Spot *triple `json:"spot_m"`
	At   *triple `json:"at_m"`
	Hearing
}

// Hearing is what is to be heard and how.
type Hearing struct {
	Programme string `json:"programme"`
	TwoEars   bool   `json:"two_ears"`
	Dry       bool   `json:"dry"`
}

// Stems are impulse responses of channels, as package preview has them.
type Stems struct {
	Filters [][]float64
	Stems   []Stem
	Cases   [][]Fed // of each case that was asked for
}

// Stem is that of one channel, the woofer or the ideal point.
type Stem struct {
	Source      timing.Source
	Channel     int // index into Spot.Channels
	Filter      int // index into Stems.Filters
	From        int
	Left, Right []float64
}

// Fed is how a stem is heard in a case.
type Fed struct {
	Stem  int     `json:"stem"`          // index
	Gain  float64 `json:"gain"`          // factor, negative where inverted
	Delay float64 `json:"delay_samples"` // may be below 0, where its sound begins late enough
}

// Sound is a programme: samples that go on from their end at their beginning.
type Sound struct {
	Samples            []float64
	Frequency, Energy  []float64 // its loudness: Hz, and mean squares as weighted for loudness
	Ceiling            float64   // no peak is to pass it; full scale 1
	LookAhead, Release float64   // s, of the limiter
}

// programmeHead is what is known of a programme; its samples follow.
type programmeHead struct {
	Rate      int       `json:"rate"`
	Samples   int       `json:"samples"`
	Frequency []float64 `json:"frequency_hz"`
	Energy    []float64 `json:"energy"` // weighted for loudness, at each frequency
	Ceiling   float64   `json:"ceiling"`
	LookAhead float64   `json:"look_ahead_s"`
	Release   float64   `json:"release_s"`
}

// earsHead says what the samples are that follow: filters, then of each stem those of the left
// ear and, with two ears, those of the right one. A case is the sum of what it feeds, each
// stem behind its filter, times a gain and later by a delay.
type earsHead struct {
	Rate    int              `json:"rate"`
	TwoEars bool             `json:"two_ears"`
	Filters []int            `json:"filters"` // samples of each
	Stems   []stemHead       `json:"stems"`
	Cases   map[string][]Fed `json:"cases" ts:"Record<string, Fed[]>"`
}

// stemHead is a stem without its samples.
type stemHead struct {
	Channel int `json:"channel"` // its number; 0: the ideal point, which is none
	Filter  int `json:"filter"`  // index
	From    int `json:"from"`    // samples before its first one
	Samples int `json:"samples"` // for each ear
}

// loudnessAnswer is by which factors cases are equally loud, and their highest peak at the
// ceiling.
type loudnessAnswer struct {
	Gains map[string]float64 `json:"gains" ts:"Record<string, number>"`
}

// rate is that of all sound, in samples a second.
const rate = 48000

func (p *Page) ears(w http.ResponseWriter, r *http.Request, in earsAsked) (any, error) {
	for _, name := range in.Cases {
		if err := known(p.options.Cases, name, "case"); err != nil {
			return nil, err
		}
	}
	at, plan, done, err := p.heardAt(r, in.Text, in.Spot, in.At)
	if err != nil {
		return nil, err
	}
	defer done()
	stems, err := p.options.Stems(plan, at, in.Cases, Hearing{TwoEars: in.TwoEars, Dry: in.Dry})
	if err != nil {
		return nil, err
	}
	head, samples := stems.packed(plan, in.Cases)
	sendSamples(w, head, samples...)
	return nil, nil
}

// packed returns stems of a plan as they are sent.
func (s *Stems) packed(plan *timing.Spot, cases []string) (earsHead, [][]float64) {
	head, samples := earsHead{Rate: rate, Cases: map[string][]Fed{}}, slices.Clone(s.Filters)
	for _, f := range s.Filters {
		head.Filters = append(head.Filters, len(f))
	}
	for _, stem := range s.Stems {
		channel := 0
		switch stem.Source {
		case timing.OfDrivers:
			channel = plan.Channels[stem.Channel].ID
		case timing.OfWoofer:
			channel = plan.WooferID()
		}
		head.Stems = append(head.Stems, stemHead{channel, stem.Filter, stem.From, len(stem.Left)})
		samples = append(samples, stem.Left, stem.Right)
		head.TwoEars = stem.Right != nil
	}
	for i, fed := range s.Cases {
		head.Cases[cases[i]] = fed
	}
	return head, samples
}

// heardAt returns the plan that is heard, and from where. The caller calls done afterwards.
func (p *Page) heardAt(r *http.Request, text string, spot, ears *triple) (at r3.Vec, plan *timing.Spot, done func(), err error) {
	for _, place := range []*triple{spot, ears} {
		if place == nil {
			continue
		}
		if err := (move{Spot: *place}).check(); err != nil {
			return at, nil, nil, &failure{http.StatusBadRequest, err.Error()}
		}
	}
	made, done, err := p.workOn(r.Context(), text)
	if err != nil {
		return at, nil, nil, err
	}
	plan, at = &made.plan.Spot, made.array.Spot
	if spot != nil && vector(*spot) != at {
		if at = vector(*spot); len(made.array.Seats) < 2 {
			if plan, err = p.moved.of(made, *spot); err != nil {
				done()
				return at, nil, nil, err
			}
		}
	}
	if ears != nil {
		at = vector(*ears)
	}
	return at, plan, done, nil
}

func (p *Page) loudness(_ http.ResponseWriter, r *http.Request, in loudnessAsked) (any, error) {
	if err := known(p.options.Programmes, in.Programme, "programme"); err != nil {
		return nil, err
	}
	at, plan, done, err := p.heardAt(r, in.Text, in.Spot, in.At)
	if err != nil {
		return nil, err
	}
	defer done()
	gains, err := p.options.Loudness(r.Context(), plan, at, in.Hearing)
	if err != nil {
		return nil, err
	}
	return loudnessAnswer{gains}, r.Context().Err()
}

// programme sends a programme, or says that the browser's is the same still.
func (p *Page) programme(w http.ResponseWriter, r *http.Request) {
	name := r.URL.Query().Get("name")
	if err := known(p.options.Programmes, name, "programme"); err != nil {
		fail(w, err)
		return
	}
	s, err := p.options.Programme(name)
	if err != nil {
		fail(w, err)
		return
	}
	body, err := withSamples(programmeHead{rate, len(s.Samples), s.Frequency, s.Energy, s.Ceiling, s.LookAhead, s.Release}, s.Samples)
	if err != nil {
		fail(w, err)
		return
	}
	tag := `"` + hashOf(body) + `"`
	w.Header().Set("Cache-Control", "private, no-cache") // kept, and asked after
	w.Header().Set("ETag", tag)
	if strings.Contains(r.Header.Get("If-None-Match"), tag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	sendBinary(w, body)
}

// stride is how far apart in m places of a walk are that are looked at.
const stride = 0.05

// walkAsked is a way.
type walkAsked struct {
	Text string  `json:"text"`
	From triple  `json:"from_m"`
	Way  string  `json:"way"`  // one of the walks that are offered; empty: to a place
	To   *triple `json:"to_m"` // that place
}

// walkAnswer is where the way ends, and how fast it is walked.
type walkAnswer struct {
	To   triple `json:"to_m"`
	Pace number `json:"pace_m_s"`
}

// walk finds a way, straight and through air.
func (p *Page) walk(_ http.ResponseWriter, r *http.Request, in walkAsked) (any, error) {
	from, end := vector(in.From), r3.Vec{}
	switch at := slices.IndexFunc(walks, func(w walk) bool { return w.Name == in.Way }); {
	case in.Way == "" && in.To != nil:
		end = vector(*in.To)
	case at < 0:
		return nil, known(walkNames(), in.Way, "way")
	default:
		end = walks[at].to(from)
	}
	to := triple{end.X, end.Y, end.Z}
	if far(in.From) || far(to) {
		return nil, &failure{http.StatusBadRequest, "from_m, to_m: must be within 100 m"}
	}
	made, err := p.plans.of(r.Context(), in.Text, p.work)
	if err != nil {
		return nil, err
	}
	way := r3.Sub(end, from)
	for i, n := 0, int(math.Ceil(r3.Norm(way)/stride)); i <= n; i++ {
		if err := made.array.Reach(r3.Add(from, r3.Scale(float64(i)/float64(max(n, 1)), way))); err != nil {
			return nil, fmt.Errorf("%w: on the way %s", ErrAsked, noSpot(err))
		}
	}
	return walkAnswer{to, number(p.options.Pace)}, nil
}
