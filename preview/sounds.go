package preview

import (
	"fmt"
	"math"

	"pappus/preview/limit"
	"pappus/preview/programme"
	"pappus/preview/through"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
)

// Times of a programme in a file.
const (
	fileSeconds = 6.0  // s, about; whole periods are taken
	edge        = 0.01 // s, rise at the beginning, fall at the end
)

// Sound is one programme in one case.
type Sound struct {
	Name  string // for a file, without its ending: clicks_as_built
	Words string // for people: click train, as built
	// Samples is the sound, mono, from its beginning to the end of its last
	// echo.
	Samples []float64
}

// Streamer streams the sound once, left and right alike.
func (s Sound) Streamer() beep.Streamer {
	return beep.Take(len(s.Samples), programme.Loop(s.Samples).Streamer())
}

// Sounds makes each of programme.Written in every case of Written, at a rate of 8000 to 384000
// samples a second: whole periods of the programme that last about 6 s, which
// rise and fall within 10 ms. The cases of one programme are matched in level,
// as NewSet does it, and each is convolved but once.
func Sounds(p *timing.Plan, rate int) ([]Sound, error) {
	if rate < 8000 || rate > 384000 {
		return nil, fmt.Errorf("%d samples a second, 8000 to 384000 are possible", rate)
	}
	responses, err := Listener{}.Responses(p, plain(Written), rate)
	if err != nil {
		return nil, err
	}
	var sounds []Sound
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
			sounds = append(sounds, Sound{kind.Name + "_" + c.Name, kind.Words + ", " + c.Words, heard[i]})
		}
	}
	return sounds, nil
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
	out := make([]float64, 2*half+len(impulse)-1)
	heard := through.New(&once{pairs}, impulse)
	samples := make([][2]float64, 4096)
	for at := 0; ; {
		n, ok := heard.Stream(samples)
		if !ok {
			return out
		}
		for i, v := range samples[:n] {
			out[at+i] += v[0]
			out[at+i+half] += v[1]
		}
		at += n
	}
}

// once streams samples once.
type once struct{ left [][2]float64 }

func (o *once) Stream(samples [][2]float64) (int, bool) {
	n := copy(samples, o.left)
	o.left = o.left[n:]
	return n, n > 0
}

func (o *once) Err() error { return nil }

// Periods returns how many whole periods of so many samples last about 6 s, at rate
// samples a second: one at least.
func Periods(period, rate int) int {
	return max(1, int(math.Round(fileSeconds*float64(rate)/float64(period))))
}

// Edged streams a source that rises and falls within 10 ms, so that it begins and
// ends without a step, at rate samples a second.
func Edged(src beep.Streamer, rate int) beep.Streamer {
	short := int(edge * float64(rate))
	return limit.Fade(src, short, short)
}

// excerpt returns whole periods of a loop, without a step at either end.
func excerpt(loop programme.Loop, rate int) []float64 {
	mono := make([]float64, 0, Periods(len(loop), rate)*len(loop))
	edged := Edged(beep.Take(cap(mono), loop.Streamer()), rate)
	samples := make([][2]float64, 4096)
	for {
		n, ok := edged.Stream(samples)
		if !ok {
			return mono
		}
		for _, v := range samples[:n] {
			mono = append(mono, v[0])
		}
	}
}
