package programme

import (
	"math"
	"math/bits"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// Peak is the largest magnitude in every programme, 6 dB below full scale.
const Peak = 0.5

// Programme is one kind of sound.
type Programme struct {
	Name  string // for file names
	Words string // for people
	// Make makes the sound at a rate of 8000 to 384000 samples a second.
	Make func(rate int) Loop
}

// Written are the programmes that are written to files. They show what there is
// to hear between them.
var Written = []Programme{
	{"pink_noise", "pink noise", Pink},
	{"clicks", "click train", Clicks},
	{"phrase", "plucked strings", Phrase},
	{"speech", "spoken-like phrase", Speech},
}

// All is every programme, in the order in which they are offered.
var All = append(Written[:len(Written):len(Written)],
	Programme{"applause", "applause", Applause},
	Programme{"sweep", "sine sweep", Sweep},
)

// Named returns a programme of All by its name, and whether there is one.
func Named(name string) (Programme, bool) {
	for _, k := range All {
		if k.Name == name {
			return k, true
		}
	}
	return Programme{}, false
}

// Names returns the names of All.
func Names() []string {
	var names []string
	for _, k := range All {
		names = append(names, k.Name)
	}
	return names
}

// Loop is one period of a sound, mono, free of DC, at most Peak in magnitude.
// Its end joins on to its beginning.
type Loop []float64

// Streamer streams the loop from its beginning for ever, the same sample left
// and right. Bound it with beep.Take. Streamers of one loop share its samples
// and are otherwise independent.
func (l Loop) Streamer() beep.Streamer { return &reader{loop: l} }

type reader struct {
	loop Loop
	at   int
}

func (r *reader) Stream(samples [][2]float64) (int, bool) {
	if len(r.loop) == 0 {
		return 0, false
	}
	for i := range samples {
		v := r.loop[r.at]
		samples[i] = [2]float64{v, v}
		if r.at++; r.at == len(r.loop) {
			r.at = 0
		}
	}
	return len(samples), true
}

func (r *reader) Err() error { return nil }

// finish takes out what DC is left and scales to Peak.
func finish(mono []float64) Loop {
	floats.AddConst(-stat.Mean(mono, nil), mono)
	floats.Scale(Peak/floats.Norm(mono, math.Inf(1)), mono)
	return mono
}

// powerOfTwo returns the least power of two that is not below n.
func powerOfTwo(n int) int { return 1 << bits.Len(uint(n-1)) }

// top returns the highest frequency in Hz that a programme holds at a rate.
func top(rate int) float64 { return min(20000, 0.45*float64(rate)) }
