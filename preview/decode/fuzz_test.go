package decode

import (
	"bytes"
	"math"
	"testing"

	"pappus/testdata/drawn"
)

// FuzzRead: whatever the bytes, a stream has finite samples, is where it says, and goes back to
// its begin. Most seeds are of the rates that they are asked for at, so that filters are seldom made.
func FuzzRead(f *testing.F) {
	var seeds []string
	for _, c := range tones {
		file := content(f, c.file)
		seeds = append(seeds, string(file[:min(len(file), 1500)]))
		if len(file) > 5000 {
			seeds = append(seeds, string(wavOf(1, 6, 48000, 24, 0x3f, file[:360])))
		} else {
			seeds = append(seeds, string(file))
		}
	}
	seeds = append(seeds, string(riff(chunk("fmt ", nil), chunk("data", nil))))
	rates, samples := []int{16000, 32000, 48000, 16000, 44100}, make([][2]float64, 512)
	drawn.Bytes(f, seeds, func(t testing.TB, file []byte) {
		s, err := Read(bytes.NewReader(file), rates[len(file)%len(rates)])
		if err != nil {
			return
		}
		for range 400 {
			n, ok := s.Stream(samples)
			if !ok {
				break
			}
			for _, v := range samples[:n] {
				if math.IsNaN(v[0]) || math.IsInf(v[0], 0) {
					t.Fatalf("%v in the stream", v)
				}
			}
		}
		if s.Len() < 0 || s.Position() > 400*512 {
			t.Fatalf("at %d of %d", s.Position(), s.Len())
		}
		if err := s.Seek(0); err == nil && s.Position() != 0 {
			t.Fatalf("at %d, want 0", s.Position())
		}
	})
}

// FuzzReadChannels: whatever the bytes, channels are as long as each other, finite, and no
// more than were asked to be held.
func FuzzReadChannels(f *testing.F) {
	var seeds []string
	for _, name := range []string{"tone16.wav", "tone24.wav", "tone_float.wav"} {
		seeds = append(seeds, string(content(f, name)[:600]))
	}
	seeds = append(seeds, string(wavOf(1, 6, 48000, 24, 0x3f, make([]byte, 360))), string(wavOf(1, 17, 48000, 16, 0, make([]byte, 340))),
		string(wavOf(1, 2, 48000, 16, 0, make([]byte, 64))))
	drawn.Bytes(f, seeds, func(t testing.TB, file []byte) {
		rate, channels, err := ReadChannels(bytes.NewReader(file))
		if err != nil {
			return
		}
		if rate <= 0 || len(channels) == 0 || len(channels) > mostChannels {
			t.Fatalf("%d Hz, %d channels", rate, len(channels))
		}
		for _, c := range channels {
			if len(c) != len(channels[0]) {
				t.Fatalf("%d samples, %d in another channel", len(c), len(channels[0]))
			}
			for _, v := range c {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%v in a channel", v)
				}
			}
		}
	})
}
