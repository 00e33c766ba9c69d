package preview

import (
	"fmt"
	"io"
	"math"
	"slices"
	"sync"

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
// and what is heard of a click, each named by its case. All are made together, by whichever
// is asked for first.
func SoundFiles(p *timing.Spot) (files []File, first, clicks func() ([]Sound, error)) {
	var sounds, impulses []Sound
	made := sync.OnceValue(func() (err error) {
		sounds, impulses, err = Sounds(p, Rate)
		return err
	})
	for _, k := range programme.Written {
		for _, c := range Written {
			i := len(files)
			files = append(files, File{k.Name + "_" + c.Name + ".wav", func(w io.Writer) error {
				if err := made(); err != nil {
					return err
				}
				s := sounds[i]
				return wave.Write(w, s.Streamer(), wave.Format{Rate: Rate, Channels: 1, Depth: wave.PCM16,
					Title: p.Array.Name + ", " + s.Words, Comment: whatIsHeard(p, s.Words, "ITU-R BS.1770-5")})
			}})
		}
	}
	first = func() ([]Sound, error) {
		err := made()
		return ofFirst(sounds), err
	}
	clicks = func() ([]Sound, error) {
		err := made()
		return impulses, err
	}
	return files, first, clicks
}

// ofFirst returns the sounds of the first programme among all, each named by its case.
func ofFirst(all []Sound) []Sound {
	if len(all) == 0 {
		return nil
	}
	out := slices.Clone(all[:len(Written)])
	for i, c := range Written {
		out[i].Words = c.Words
	}
	return out
}

// Filters lists a correction's two filters as WAV files, their taps the samples.
func Filters(c timing.Correction) []File {
	filter := func(name, words string, t timing.Taps) File {
		return File{name, func(w io.Writer) error {
			return wave.Write(w, Sound{Samples: t.Samples}.Streamer(), wave.Format{Rate: int(math.Round(c.Rate)), Channels: 1, Depth: wave.Float32, Title: words})
		}}
	}
	return []File{
		filter("level_minimum_phase.wav", "levelling, minimum phase", c.Minimum),
		filter("level_linear_phase.wav", "levelling, linear phase", c.Linear),
	}
}

// Streamer streams the sound once, left and right alike.
func (s Sound) Streamer() beep.Streamer {
	return beep.Take(len(s.Samples), programme.Loop(s.Samples).Streamer())
}

// Sounds makes each of programme.Written in every case of Written, at a rate of 8000 to 384000
// samples a second: whole periods of the programme that last about 6 s, which
// rise and fall within 10 ms. The cases of one programme are matched in level,
// as NewSet does it, and each is convolved but once. Clicks are what is heard of one sample,
// each named by its case.
func Sounds(p *timing.Spot, rate int) (sounds, clicks []Sound, err error) {
	if rate < 8000 || rate > 384000 {
		return nil, nil, fmt.Errorf("%d samples a second, 8000 to 384000 are possible", rate)
	}
	responses, err := Listener{}.Responses(p, plain(Written), rate)
	if err != nil {
		return nil, nil, err
	}
	for _, kind := range programme.Written {
		mono := excerpt(kind.Make(rate), rate)
		heard := make([][]float64, len(Written))
		levels := make([]Level, len(Written))
		for i, r := range responses {
			heard[i] = convolve(mono, r.Left)
			levels[i] = LevelOf(Sound{Samples: heard[i]}.Streamer(), rate)
		}
		for i, gain := range Gains(levels) {
			for k := range heard[i] {
				heard[i][k] *= gain
			}
			c := Written[i]
			sounds = append(sounds, Sound{kind.Words + ", " + c.Words, heard[i]})
		}
	}
	return sounds, clicksOf(responses, Written), nil
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
