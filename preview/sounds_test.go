package preview_test

import (
	"math"
	"slices"
	"testing"

	"pappus/preview"
	"pappus/preview/programme"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
)

// made is all that is written of a plan's sounds.
func made(p *timing.Spot, rate int) (all, clicks []preview.Sound, err error) {
	return preview.Sounds(p, preview.Listener{}, preview.Usual(p), programme.Written, rate)
}

func TestSounds(t *testing.T) {
	p := pair(t, halfMillisecond)
	sounds, _, err := made(p, 48000)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	cases := len(preview.Usual(p))
	for first := 0; first < len(sounds); first += cases {
		peak, loudness := 0.0, 0.0
		for _, s := range sounds[first : first+cases] {
			names = append(names, s.Words)
			l := preview.LevelOf(s.Streamer(), 48000)
			peak = max(peak, l.Peak)
			if loudness == 0 {
				loudness = l.Integrated
			}
			if math.Abs(l.Integrated-loudness) > 0.1 {
				t.Errorf("%s: %.3f LUFS, want %.3f", s.Words, l.Integrated, loudness)
			}
			seconds, step := ends(s.Streamer())
			if seconds < 4 || seconds > 8 {
				t.Errorf("%s lasts %g s", s.Words, seconds)
			}
			if step > 0.01 {
				t.Errorf("%s begins or ends with a step of %g", s.Words, step)
			}
		}
		if db := 20 * math.Log10(peak); math.Abs(db+3) > 1e-6 {
			t.Errorf("%s: highest true peak at %.3f dBTP, want -3", sounds[first].Words, db)
		}
	}
	for _, want := range []string{"pink noise, as built", "click train, aligned", "spoken-like phrase, ideal point"} {
		if !slices.Contains(names, want) {
			t.Errorf("no %s among %v", want, names)
		}
	}
	for _, rate := range []int{0, 7999, 384001} {
		if _, _, err := made(pair(t, halfMillisecond), rate); err == nil {
			t.Errorf("no error at %d samples a second", rate)
		}
	}
}

// What is heard must be the sum that defines convolution, to a factor.
func TestSoundsAreConvolved(t *testing.T) {
	p := pair(t, halfMillisecond)
	sounds, _, err := made(p, 8000)
	if err != nil {
		t.Fatal(err)
	}
	speech := programme.Speech(8000)
	h := preview.Impulse(p, timing.AsBuilt, 8000)
	gain := 0.0
	for _, s := range sounds {
		if s.Words != "spoken-like phrase, as built" {
			continue
		}
		// The middle of the sound, at both sides of its half, away from the edges.
		middle := len(s.Samples) / 2
		for n := middle - 1500; n < middle+1500; n += 7 {
			want := 0.0
			for k, v := range h {
				want += v * speech[((n-k)%len(speech)+len(speech))%len(speech)]
			}
			if gain == 0 && math.Abs(want) > 1e-3 {
				gain = s.Samples[n] / want
			}
			if gain != 0 && math.Abs(s.Samples[n]-gain*want) > 1e-6 {
				t.Fatalf("sample %d: %g, want %g", n, s.Samples[n], gain*want)
			}
		}
	}
	if gain == 0 {
		t.Error("nothing was compared")
	}
}

// ends returns how many seconds at 48 kHz a stream lasts, and the larger of its
// first and last magnitude.
func ends(s beep.Streamer) (seconds, step float64) {
	buffer := make([][2]float64, 4096)
	count, last := 0, 0.0
	for {
		n, ok := s.Stream(buffer)
		if !ok {
			return float64(count) / 48000, max(step, math.Abs(last))
		}
		if count == 0 {
			step = math.Abs(buffer[0][0])
		}
		count += n
		last = buffer[n-1][0]
	}
}

func BenchmarkSounds(b *testing.B) {
	p := pair(b, halfMillisecond)
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := made(p, 48000); err != nil {
			b.Fatal(err)
		}
	}
}
