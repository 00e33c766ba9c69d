package decode

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	beepwav "github.com/gopxl/beep/v2/wav"
	"pgregory.net/rapid"
)

// tones are the files of testdata and what their codecs may do to a level.
var tones = []struct {
	file, kind     string
	rate, channels int
	db             float64
}{
	{"tone16.wav", "WAV", 16000, 1, 0.001},
	{"tone24.wav", "WAV", 16000, 1, 0.001},
	{"tone_float.wav", "WAV", 16000, 1, 0.001},
	{"tone.flac", "FLAC", 16000, 2, 0.001},
	{"tone.ogg", "Ogg Vorbis", 32000, 1, 0.5},
	{"tone.mp3", "MP3", 32000, 2, 0.5},
}

// rest streams what is left, in pieces of an odd size.
func rest(t testing.TB, s *Stream) []float64 {
	t.Helper()
	var mono []float64
	samples := make([][2]float64, 777)
	for {
		n, ok := s.Stream(samples)
		if !ok {
			return mono
		}
		for _, v := range samples[:n] {
			if v[0] != v[1] {
				t.Fatalf("%v: left and right differ", v)
			}
			mono = append(mono, v[0])
		}
	}
}

func open(t testing.TB, path string, rate int) *Stream {
	t.Helper()
	s, err := Open(path, rate)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func tone(name string) string { return filepath.Join("testdata", name) }

func content(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(tone(name))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// measure returns the magnitude and the frequency of a tone near 997 Hz, from two
// windows of raised cosine in the middle of x (the frequency from the phase that
// it gains between them).
func measure(x []float64, rate int) (magnitude, frequency float64) {
	const near = 997.0
	window := rate / 10
	at := func(start int) (float64, float64) {
		var re, im, sum float64
		for i := range window {
			w := 1 - math.Cos(2*math.Pi*float64(i)/float64(window))
			sin, cos := math.Sincos(2 * math.Pi * near * float64(start+i) / float64(rate))
			re += w * x[start+i] * cos
			im -= w * x[start+i] * sin
			sum += w
		}
		return 2 * math.Hypot(re, im) / sum, math.Atan2(im, re)
	}
	first := (len(x) - window - window/5) / 2
	magnitude, before := at(first)
	_, after := at(first + window/5)
	turn := math.Remainder(after-before, 2*math.Pi)
	return magnitude, near + turn/(2*math.Pi)*float64(rate)/float64(window/5)
}

func checkTone(t *testing.T, x []float64, rate int, level, db float64) {
	t.Helper()
	magnitude, frequency := measure(x, rate)
	if off := 20 * math.Log10(magnitude/level); math.Abs(off) > db {
		t.Errorf("magnitude %.5f, %+.4f dB off", magnitude, off)
	}
	if math.Abs(frequency-997) > 0.2 {
		t.Errorf("%.3f Hz, want 997", frequency)
	}
}

// The tone must come out of each kind of file at any rate as it went in: 997 Hz,
// 6.02 dB below full scale, a fifth of a second.
func TestTones(t *testing.T) {
	for _, c := range tones {
		for _, rate := range []int{8000, 16000, 32000, 44100, 48000, 384000} {
			t.Run(fmt.Sprint(c.file, rate), func(t *testing.T) {
				s := open(t, tone(c.file), rate)
				if own, channels := s.Format(); s.Kind() != c.kind || own != c.rate || channels != c.channels {
					t.Errorf("%s of %d Hz, %d channels", s.Kind(), own, channels)
				}
				x := rest(t, s)
				if s.Err() != nil {
					t.Fatal(s.Err())
				}
				if len(x) != s.Len() || s.Position() != s.Len() {
					t.Errorf("%d samples, at %d, of %d", len(x), s.Position(), s.Len())
				}
				seconds := float64(len(x)) / float64(rate)
				// An MP3 is whole frames, and its coder's delay is left in it.
				if seconds < 0.2 || seconds > 0.2+1/float64(rate) && c.kind != "MP3" || seconds > 0.3 {
					t.Errorf("%g s", seconds)
				}
				checkTone(t, x, rate, 0.5, c.db)
			})
		}
	}
}

// Beep's own decoder must give the same numbers where it can read the file.
func TestSameAsBeep(t *testing.T) {
	for _, name := range []string{"tone16.wav", "tone24.wav"} {
		theirs, _, err := beepwav.Decode(bytes.NewReader(content(t, name)))
		if err != nil {
			t.Fatal(err)
		}
		have := rest(t, open(t, tone(name), 16000))
		want := make([][2]float64, len(have))
		theirs.Stream(want)
		for i, v := range have {
			if v != want[i][0] {
				t.Fatalf("%s: sample %d is %g, want %g", name, i, v, want[i][0])
			}
		}
	}
}

func TestSeek(t *testing.T) {
	for _, c := range tones {
		for _, rate := range []int{c.rate, 44100} {
			s := open(t, tone(c.file), rate)
			whole := rest(t, s)
			rapid.Check(t, func(r *rapid.T) {
				p := rapid.IntRange(0, len(whole)).Draw(r, "sample")
				if err := s.Seek(p); err != nil {
					r.Fatal(err)
				}
				if s.Position() != p {
					r.Fatalf("at %d, want %d", s.Position(), p)
				}
				samples := make([][2]float64, rapid.IntRange(1, 3000).Draw(r, "count"))
				n, _ := s.Stream(samples)
				if want := min(len(samples), len(whole)-p); n != want {
					r.Fatalf("%d samples, want %d", n, want)
				}
				for i, v := range samples[:n] {
					if v[0] != whole[p+i] {
						r.Fatalf("sample %d after %d is %g, want %g", i, p, v[0], whole[p+i])
					}
				}
			})
			for _, p := range []int{-1, len(whole) + 1} {
				if s.Seek(p) == nil {
					t.Errorf("%s: no error for sample %d", c.file, p)
				}
			}
		}
	}
}

// Tags before and after the sound must change nothing.
func TestTags(t *testing.T) {
	before := append([]byte("ID3\x04\x00\x00\x00\x00\x01\x02"), make([]byte, 130)...)
	ape := append([]byte("APETAGEX\xd0\x07\x00\x00\x28\x00\x00\x00"), make([]byte, 16)...)
	last := append([]byte("TAG"), bytes.Repeat([]byte{0xff, 0xfb}, 62)...)
	last = append(last, 0)
	for _, name := range []string{"tone.mp3", "tone.flac", "tone16.wav"} {
		file := content(t, name)
		want := rest(t, open(t, tone(name), 48000))
		for what, tagged := range map[string][]byte{
			"before": append(before, file...),
			"last":   bytes.Join([][]byte{file, last}, nil),
			"both":   bytes.Join([][]byte{before, before, file, make([]byte, 8), ape, last}, nil),
		} {
			s, err := Read(bytes.NewReader(tagged), 48000)
			if err != nil {
				t.Fatalf("%s, %s: %v", name, what, err)
			}
			if diff := cmp.Diff(want, rest(t, s)); diff != "" || s.Err() != nil {
				t.Errorf("%s, %s: %v %s", name, what, s.Err(), diff)
			}
		}
	}
}

func TestErrors(t *testing.T) {
	flacOf := func(change func(b []byte)) []byte {
		b := content(t, "tone.flac")
		change(b)
		return b
	}
	for name, c := range map[string]struct {
		file []byte
		want error
	}{
		"empty":                 {nil, ErrEmpty},
		"text":                  {[]byte("Once upon a time there was a lantern."), ErrFormat},
		"a picture":             {[]byte("\x89PNG\r\n\x1a\n"), ErrFormat},
		"one byte":              {[]byte{0xff}, ErrFormat},
		"a tag alone":           {[]byte("ID3\x04\x00\x00\x00\x00\x7f\x7f"), ErrFormat},
		"AIFF":                  {[]byte("FORM\x00\x00\x00\x10AIFFCOMM"), ErrUnsupported},
		"MPEG-4":                {[]byte("\x00\x00\x00\x20ftypM4A "), ErrUnsupported},
		"Ogg Opus":              {append([]byte("OggS\x00\x02"), append(make([]byte, 22), "OpusHead"...)...), ErrUnsupported},
		"MPEG layer 2":          {[]byte{0xff, 0xfd, 0x90, 0x00, 0, 0, 0, 0}, ErrUnsupported},
		"MP3 of 8 kHz":          {[]byte{0xff, 0xe3, 0x18, 0xc4, 0, 0, 0, 0}, ErrUnsupported},
		"MP3 of free bit rate":  {[]byte{0xff, 0xfb, 0x00, 0xc4, 0, 0, 0, 0}, ErrUnsupported},
		"MP3 header alone":      {[]byte{0xff, 0xfb, 0x90, 0xc4}, ErrShort},
		"FLAC without samples":  {content(t, "tone.flac")[:42], ErrShort},
		"FLAC header cut":       {content(t, "tone.flac")[:20], ErrShort},
		"FLAC, a picture first": {[]byte("fLaC\x86\xff\xff\xff\x00\x00\x00\x03\xff\xff\xff\x7f\xff\xff"), ErrBroken},
		"FLAC of 4 kHz":         {flacOf(func(b []byte) { b[18], b[19] = 0, 0xfa }), ErrUnsupported},
		"Vorbis headers cut":    {content(t, "tone.ogg")[:2000], ErrShort},
		"Vorbis with bad sum":   {append(append([]byte{}, content(t, "tone.ogg")[:40]...), make([]byte, 4000)...), ErrBroken},
		"WAV header alone":      {content(t, "tone16.wav")[:44], ErrShort},
		"WAV header cut":        {content(t, "tone16.wav")[:30], ErrBroken},
		"WAV without data":      {content(t, "tone16.wav")[:36], ErrShort},
		"WAV without format":    {riff(chunk("data", make([]byte, 64))), ErrBroken},
		"WAV of no samples":     {wavOf(1, 1, 48000, 16, 0, nil), ErrEmpty},
		"WAV of 7999 Hz":        {wavOf(1, 1, 7999, 16, 0, make([]byte, 64)), ErrUnsupported},
		"WAV of 384001 Hz":      {wavOf(1, 1, 384001, 16, 0, make([]byte, 64)), ErrUnsupported},
		"WAV of no channels":    {wavOf(1, 0, 48000, 16, 0, make([]byte, 64)), ErrUnsupported},
		"WAV of 65 channels":    {wavOf(1, 65, 48000, 16, 0, make([]byte, 640)), ErrUnsupported},
		"WAV of 64 bit numbers": {wavOf(1, 1, 48000, 64, 0, make([]byte, 64)), ErrUnsupported},
		"WAV of 16 bit floats":  {wavOf(3, 1, 48000, 16, 0, make([]byte, 64)), ErrUnsupported},
		"WAV of u-law":          {wavOf(7, 1, 48000, 8, 0, make([]byte, 64)), ErrUnsupported},
	} {
		t.Run(name, func(t *testing.T) {
			s, err := Read(bytes.NewReader(c.file), 48000)
			if err == nil {
				rest(t, s)
				err = s.Err()
			}
			if !errors.Is(err, c.want) {
				t.Fatalf("%v, want %v", err, c.want)
			}
			if bytes.ContainsAny([]byte(err.Error()), "\n\r") {
				t.Errorf("more than a line: %q", err)
			}
		})
	}
	for _, rate := range []int{0, 7999, 384001} {
		if _, err := Open(tone("tone16.wav"), rate); err == nil {
			t.Errorf("no error for a wanted rate of %d", rate)
		}
	}
	if _, err := Open(tone("none.wav"), 48000); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no such file: %v", err)
	}
	if _, err := Open("testdata", 48000); !errors.Is(err, ErrFormat) {
		t.Errorf("a folder: %v", err)
	}
}

// What was read before a file ends too soon is heard; then the error says so.
func TestCutShort(t *testing.T) {
	for _, c := range tones {
		whole := rest(t, open(t, tone(c.file), c.rate))
		file := content(t, c.file)
		s, err := Read(bytes.NewReader(file[:len(file)-len(file)/50-2]), c.rate)
		// So short a Vorbis or FLAC file is a single page or frame, which a sum
		// guards.
		if c.kind == "Ogg Vorbis" && errors.Is(err, ErrShort) {
			continue
		}
		if err != nil {
			t.Fatalf("%s: %v", c.file, err)
		}
		x := rest(t, s)
		if !errors.Is(s.Err(), ErrShort) {
			t.Errorf("%s: %v", c.file, s.Err())
		}
		if c.kind == "WAV" && len(x) < len(whole)*9/10 {
			t.Errorf("%s: %d of %d samples", c.file, len(x), len(whole))
		}
		for i, v := range x {
			if v != whole[i] {
				t.Fatalf("%s: sample %d is %g, want %g", c.file, i, v, whole[i])
			}
		}
		if err := s.Seek(0); err != nil || s.Err() != nil {
			t.Errorf("%s: back to the beginning: %v %v", c.file, err, s.Err())
		}
	}
}

func TestDamaged(t *testing.T) {
	file := content(t, "tone.flac")
	file[len(file)-100] ^= 0x55
	s, err := Read(bytes.NewReader(file), 48000)
	if err == nil {
		rest(t, s)
		err = s.Err()
	}
	if !errors.Is(err, ErrBroken) {
		t.Error(err)
	}
}

func TestSilent(t *testing.T) {
	s, err := Read(bytes.NewReader(wavOf(1, 2, 44100, 16, 0, make([]byte, 40000))), 48000)
	if err != nil {
		t.Fatal(err)
	}
	if x := rest(t, s); len(x) != s.Len() {
		t.Errorf("%d samples of %d", len(x), s.Len())
	}
	if !errors.Is(s.Err(), ErrSilent) {
		t.Error(s.Err())
	}
}

// Two channels that are each other turned over are no silence: it is the mono sum
// that holds nothing.
func TestCancels(t *testing.T) {
	frames := make([]byte, 40000)
	for i := 0; i < len(frames); i += 4 {
		v := int16(10000 * math.Sin(float64(i)/50))
		binary.LittleEndian.PutUint16(frames[i:], uint16(v))
		binary.LittleEndian.PutUint16(frames[i+2:], uint16(-v))
	}
	s, err := Read(bytes.NewReader(wavOf(1, 2, 44100, 16, 0, frames)), 48000)
	if err != nil {
		t.Fatal(err)
	}
	rest(t, s)
	if !errors.Is(s.Err(), ErrCancels) {
		t.Error(s.Err())
	}
}

// A decoder that panics must not take the program with it.
func TestPanics(t *testing.T) {
	s := open(t, tone("tone16.wav"), 16000)
	s.sound.decoder = panics{}
	rest(t, s)
	if !errors.Is(s.Err(), ErrBroken) {
		t.Error(s.Err())
	}
	s.open = func(*window) (sound, error) { panic("so it opens") }
	if err := s.Seek(0); !errors.Is(err, ErrBroken) {
		t.Error(err)
	}
}

type panics struct{}

func (panics) read([]float64) (int, error) { panic("so it reads") }

// The sums of BS.775 for one front channel, scaled to add up to 1.
func TestWeights(t *testing.T) {
	for name, c := range map[string]struct {
		have, want []float64
	}{
		"mono":            {weights(1, nil), []float64{1}},
		"stereo":          {weights(2, []place{left, right}), []float64{0.5, 0.5}},
		"stereo, nowhere": {weights(2, nil), []float64{0.5, 0.5}},
		"three and two":   {weights(5, flacPlaces[5]), []float64{0.7071 / 3.4142, 0.7071 / 3.4142, 1 / 3.4142, 0.5 / 3.4142, 0.5 / 3.4142}},
		"five and one":    {weights(6, vorbisPlaces[6])[5:], []float64{0}},
		"effects alone":   {weights(1, []place{effects}), []float64{1}},
		"too few places":  {weights(4, []place{left}), []float64{0.25, 0.25, 0.25, 0.25}},
	} {
		for i, v := range c.want {
			if math.Abs(c.have[i]-v) > 1e-12 {
				t.Errorf("%s: channel %d has %g, want %g", name, i, c.have[i], v)
			}
		}
	}
}

func BenchmarkStream(b *testing.B) {
	for _, c := range tones {
		for _, rate := range []int{c.rate, 48000} {
			b.Run(fmt.Sprintf("%s_%d", c.file, rate), func(b *testing.B) {
				s := open(b, tone(c.file), rate)
				samples := make([][2]float64, 512)
				b.ReportAllocs()
				total := 0
				for b.Loop() {
					n, ok := s.Stream(samples)
					total += n
					if !ok {
						if err := s.Seek(0); err != nil {
							b.Fatal(err)
						}
					}
				}
				b.ReportMetric(float64(total)/float64(rate)/b.Elapsed().Seconds(), "times_real")
			})
		}
	}
}

func ExampleOpen() {
	s, err := Open("testdata/tone.flac", 48000)
	if err != nil {
		fmt.Println(err)
		return
	}
	defer s.Close()
	rate, channels := s.Format()
	fmt.Printf("%s, %d Hz, %d channels, %d samples at 48 kHz\n", s.Kind(), rate, channels, s.Len())
	// Output: FLAC, 16000 Hz, 2 channels, 9600 samples at 48 kHz
}
