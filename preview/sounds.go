package preview

import (
	"fmt"
	"io"
	"math"
	"slices"
	"sync"

	"pappus/layout"
	"pappus/preview/programme"
	"pappus/preview/through"
	"pappus/preview/wave"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
)

// Sound is one programme in one case.
type Sound struct {
	Words string // for people: click train, as built
	// Samples is the sound, mono, from its beginning to the end of its last
	// echo.
	Samples []float64
}

// SoundFiles lists the sounds of a plan as WAV files, and gives those of the first programme
// at the spot and what is heard of a click there, each named by its case. All at one place
// are made together, by whichever is asked for first. Where there are several seats, the
// first programme is there, too, as the one hears it that pays most for the middle one.
func SoundFiles(p *timing.Spot) (files []File, first, clicks func() ([]Sound, error)) {
	cases := Usual(p)
	type heard struct{ sounds, clicks []Sound }
	list := func(who Listener, ending, where string, kinds []programme.Programme) func() (heard, error) {
		made := sync.OnceValues(func() (out heard, err error) {
			out.sounds, out.clicks, err = Sounds(p, who, cases, kinds, Rate)
			return out, err
		})
		for k, kind := range kinds {
			for c, of := range cases {
				files = append(files, File{kind.Name + "_" + of.Name + ending + ".wav", func(w io.Writer) error {
					all, err := made()
					if err != nil {
						return err
					}
					s := all.sounds[k*len(cases)+c]
					return wave.Write(w, s.Streamer(), wave.Format{Rate: Rate, Channels: 1, Depth: wave.PCM16,
						Title: p.Array.Name + ", " + s.Words, Comment: whatIsHeard(p, where, s.Words, "ITU-R BS.1770-5")})
				}})
			}
		}
		return made
	}
	spot := list(Listener{}, "", theSpot, programme.Written)
	if i := payer(p); i >= 0 {
		seat := p.Array.Seats[i]
		list(Listener{At: &seat.At}, fmt.Sprintf("_seat_%d", i+1), SeatWords(seat), programme.Written[:1])
	}
	first = func() ([]Sound, error) {
		all, err := spot()
		if err != nil {
			return nil, err
		}
		out := slices.Clone(all.sounds[:len(cases)])
		for i, c := range cases {
			out[i].Words = c.Words
		}
		return out, nil
	}
	clicks = func() ([]Sound, error) {
		all, err := spot()
		return all.clicks, err
	}
	return files, first, clicks
}

// SeatWords says whose ears hear a sound.
func SeatWords(s layout.Seat) string { return "the seat \"" + s.Name + "\"" }

// payer returns the index of the seat that loses most with delays for the middle seat alone,
// where planning for all is heard best; below 0 where there are no seats, nothing is heard at any,
// or it is the spot, which has its sounds.
func payer(p *timing.Spot) int {
	if p.Seating == nil {
		return -1
	}
	lost := p.Seating.Middle.Seat
	worst := -1
	for i, v := range lost {
		if !math.IsNaN(v) && (worst < 0 || v > lost[worst]) {
			worst = i
		}
	}
	if worst >= 0 && p.Array.Seats[worst].At == p.Array.Spot {
		return -1
	}
	return worst
}

// Filters lists a correction's two filters as WAV files, their taps the samples, and those of
// the channels for seats where they are worth setting.
func Filters(c timing.Correction, f *timing.SeatFilters) []File {
	filter := func(name, words string, rate float64, taps []float64) File {
		return File{name, func(w io.Writer) error {
			return wave.Write(w, Sound{Samples: taps}.Streamer(), wave.Format{Rate: int(math.Round(rate)), Channels: 1, Depth: wave.Float32, Title: words})
		}}
	}
	out := []File{
		filter("level_minimum_phase.wav", "levelling, minimum phase", c.Rate, c.Minimum.Samples),
		filter("level_linear_phase.wav", "levelling, linear phase", c.Rate, c.Linear.Samples),
	}
	if f != nil && f.Pays {
		for i, taps := range f.Taps {
			out = append(out, filter(fmt.Sprintf("seats_channel_%d.wav", i+1), fmt.Sprintf("channel %d for all seats", i+1), f.Rate, taps))
		}
	}
	return out
}

// Streamer streams the sound once, left and right alike.
func (s Sound) Streamer() beep.Streamer {
	return beep.Take(len(s.Samples), programme.Loop(s.Samples).Streamer())
}

// Sounds makes programmes in some cases as a listener hears them, at a rate of 8000 to 384000
// samples a second: whole periods of a programme that last about 6 s, which
// rise and fall within 10 ms. The cases of one programme are matched in level,
// as NewSet does it, and each is convolved but once. Clicks are what is heard of one sample,
// each named by its case.
func Sounds(p *timing.Spot, who Listener, cases []Case, kinds []programme.Programme, rate int) (all, clicks []Sound, err error) {
	if rate < 8000 || rate > 384000 {
		return nil, nil, fmt.Errorf("%d samples a second, 8000 to 384000 are possible", rate)
	}
	responses, err := who.Responses(p, plain(cases), rate)
	if err != nil {
		return nil, nil, err
	}
	for _, kind := range kinds {
		mono := excerpt(kind.Make(rate), rate)
		heard := make([][]float64, len(cases))
		levels := make([]Level, len(cases))
		for i, r := range responses {
			heard[i] = convolve(mono, r.Left)
			levels[i] = LevelOf(Sound{Samples: heard[i]}.Streamer(), rate)
		}
		for i, gain := range Gains(levels) {
			for k := range heard[i] {
				heard[i][k] *= gain
			}
			all = append(all, Sound{kind.Words + ", " + cases[i].Words, heard[i]})
		}
	}
	return all, clicksOf(responses, cases), nil
}

// convolve hears a mono sound through an impulse response. Its two halves travel
// as left and right, which takes half as long.
func convolve(mono, impulse []float64) []float64 {
	half := (len(mono) + 1) / 2
	pairs := make([][2]float64, half)
	for i := range pairs {
		pairs[i][0] = mono[i]
		if half+i < len(mono) {
			pairs[i][1] = mono[half+i]
		}
	}
	out, at := make([]float64, 2*half+len(impulse)-1), 0
	each(through.New(&once{pairs}, impulse), func(samples [][2]float64) {
		for i, v := range samples {
			out[at+i] += v[0]
			out[at+i+half] += v[1]
		}
		at += len(samples)
	})
	return out
}

// Stereo streams two sides of one length once.
func Stereo(left, right []float64) beep.Streamer {
	pairs := make([][2]float64, len(left))
	for i := range pairs {
		pairs[i] = [2]float64{left[i], right[i]}
	}
	return &once{pairs}
}

// once streams samples once.
type once struct{ left [][2]float64 }

func (o *once) Stream(samples [][2]float64) (int, bool) {
	n := copy(samples, o.left)
	o.left = o.left[n:]
	return n, n > 0
}

func (o *once) Err() error { return nil }

// excerpt returns whole periods of a loop, without a step at either end.
func excerpt(loop programme.Loop, rate int) []float64 {
	return leftOf(edged(beep.Take(periods(len(loop), rate)*len(loop), loop.Streamer()), rate))
}
