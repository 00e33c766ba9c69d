package decode

import (
	"bytes"
	"cmp"
	"math"
	"testing"

	"pappus/testdata/drawn"
)

// FuzzRead: whatever the bytes, a stream has finite samples, is where it says, and goes back to
// its begin. Of eight, seven are asked for at the rate that they say they have: to make the filter
// for a rate that nobody uses takes as long as to read a thousand files.
func FuzzRead(f *testing.F) {
	var seeds []string
	for _, c := range tones {
		switch file := content(f, c.file); {
		case c.kind == "MP3":
		case len(file) > 5000:
			seeds = append(seeds, string(file[:1500]), string(wavOf(1, 6, 48000, 24, 0x3f, file[:360])))
		default:
			seeds = append(seeds, string(file[:min(len(file), 1500)]), string(file))
		}
	}
	seeds = append(seeds, string(riff(chunk("fmt ", nil), chunk("data", nil))))
	drawn.Bytes(f, seeds, func(t testing.TB, file []byte) {
		rate := rates[len(file)%len(rates)]
		if len(file)%8 != 0 {
			rate = cmp.Or(said(file), rate)
		}
		streams(t, file, rate)
	})
}

// said is the rate that a file says it has; 0 where it cannot be opened.
func said(file []byte) int {
	w, _, open, err := recognise(bytes.NewReader(file))
	if err != nil {
		return 0
	}
	defer guard(&err)
	s, _ := open(w)
	return s.rate
}

// FuzzReadMP3 is FuzzRead for MP3, of which a frame of a hundred bytes takes the library as long
// as ten files of other kinds take here. Its seeds have a frame, two and all.
func FuzzReadMP3(f *testing.F) {
	file := content(f, "tone.mp3")
	drawn.Bytes(f, []string{string(file[:300]), string(file[:500]), string(file)}, func(t testing.TB, file []byte) {
		streams(t, file, rates[len(file)%len(rates)])
	})
}

var rates = []int{16000, 32000, 48000, 16000, 44100}

// streams reads a file to its end, or as far as is enough.
func streams(t testing.TB, file []byte, rate int) {
	samples := make([][2]float64, 512)
	s, err := Read(bytes.NewReader(file), rate)
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
