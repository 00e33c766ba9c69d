package decode_test

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/preview/decode"
	"pappus/preview/wave"

	"github.com/gopxl/beep/v2"
)

// TestChannels: what is written left and right comes back apart, at every depth.
func TestChannels(t *testing.T) {
	const n = 5000
	for _, depth := range []wave.Depth{wave.PCM16, wave.PCM24, wave.Float32} {
		path := filepath.Join(t.TempDir(), "two.wav")
		f, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		at := 0
		tone := beep.Take(n, beep.StreamerFunc(func(s [][2]float64) (int, bool) {
			for i := range s {
				s[i] = [2]float64{0.5 * math.Sin(0.1*float64(at)), -0.25 * math.Cos(0.3*float64(at))}
				at++
			}
			return len(s), true
		}))
		if err := errors.Join(wave.Write(f, tone, wave.Format{Rate: 44100, Channels: 2, Depth: depth}), f.Close()); err != nil {
			t.Fatal(err)
		}
		rate, channels, err := decode.Channels(path)
		if err != nil || rate != 44100 || len(channels) != 2 || len(channels[0]) != n || len(channels[1]) != n {
			t.Fatalf("%d Hz, %d channels, %v", rate, len(channels), err)
		}
		for i := range n {
			left, right := 0.5*math.Sin(0.1*float64(i)), -0.25*math.Cos(0.3*float64(i))
			if math.Abs(channels[0][i]-left) > 1e-4 || math.Abs(channels[1][i]-right) > 1e-4 {
				t.Fatalf("sample %d: %g %g, want %g %g", i, channels[0][i], channels[1][i], left, right)
			}
		}
	}
	if _, _, err := decode.Channels("testdata/tone.flac"); !errors.Is(err, decode.ErrUnsupported) {
		t.Errorf("a FLAC: %v", err)
	}
	if _, _, err := decode.Channels("testdata/none.wav"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	wide := filepath.Join(t.TempDir(), "wide.wav")
	head := []byte("RIFF\x46\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x11\x00\x80\xbb\x00\x00\x00\xe8\x18\x00\x22\x00\x10\x00data\x22\x00\x00\x00")
	if err := os.WriteFile(wide, append(head, make([]byte, 34)...), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := decode.Channels(wide); !errors.Is(err, decode.ErrUnsupported) || !strings.Contains(err.Error(), "17 channels") {
		t.Errorf("17 channels: %v", err)
	}
	cut := filepath.Join(t.TempDir(), "cut.wav")
	data, err := os.ReadFile("testdata/tone16.wav")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(cut, data[:len(data)/2], 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := decode.Channels(cut); !errors.Is(err, decode.ErrShort) {
		t.Errorf("cut short: %v", err)
	}
}
