package decode

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"log"
	"math"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// soxFile makes a file with sox, or skips where sox cannot.
func soxFile(t *testing.T, name string, args ...string) string {
	t.Helper()
	sox, err := exec.LookPath("sox")
	if err != nil {
		t.Skip("no sox here")
	}
	if strings.HasSuffix(name, "mp3") {
		if help, _ := exec.Command(sox, "--help").Output(); !bytes.Contains(help, []byte(" mp3")) {
			t.Skip("this sox writes no MP3")
		}
	}
	path := filepath.Join(t.TempDir(), name)
	args = append([]string{"-V1", "-R", "-D", "-n"}, args...)
	for i, a := range args {
		if a == "FILE" {
			args[i] = path
		}
	}
	if out, err := exec.Command(sox, args...).CombinedOutput(); err != nil {
		t.Fatalf("sox %v: %v %s", args, err, out)
	}
	return path
}

// soxMono is what sox decodes a file to, all channels summed alike.
func soxMono(t *testing.T, path string) []float64 {
	t.Helper()
	raw, err := exec.Command("sox", "-V1", "-D", path, "-t", "f64", "-L", "-", "remix", "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	x := make([]float64, len(raw)/8)
	if err := binary.Read(bytes.NewReader(raw), binary.LittleEndian, x); err != nil {
		t.Fatal(err)
	}
	return x
}

// Files from another hand, in every kind that a listener may bring: sample by
// sample what sox decodes, and the tone where it was.
func TestSox(t *testing.T) {
	for _, c := range []struct {
		kind, args string
		channels   int
		rates      []int
		tolerance  float64 // of a sample; 0: only the tone is compared
		db         float64
	}{
		{"wav", "-b 8 -e unsigned", 1, []int{48000}, 1e-9, 0.1},
		{"wav", "-b 16", 1, []int{8000, 384000}, 1e-9, 0.001},
		{"wav", "-b 16", 2, []int{44100}, 1e-9, 0.001},
		{"wav", "-b 24", 2, []int{96000}, 1e-9, 0.001},
		{"wav", "-b 32", 2, []int{48000}, 1e-9, 0.001},
		{"wav", "-b 24", 6, []int{48000}, 1e-9, 0.001},
		{"wav", "-b 32 -e float", 2, []int{192000}, 1e-7, 0.001}, // sox works with 32 bit integers
		{"wav", "-b 64 -e float", 1, []int{48000}, 1e-7, 0.001},
		{"flac", "-b 8", 1, []int{48000}, 1e-9, 0.1},
		{"flac", "-b 16", 2, []int{24000, 44100, 176400}, 1e-9, 0.001},
		{"flac", "-b 24 -C 8", 2, []int{48000, 384000}, 1e-9, 0.001},
		{"ogg", "-C 4", 1, []int{16000, 48000}, 1e-4, 0.5},
		{"ogg", "-C 8", 2, []int{44100, 192000}, 1e-4, 0.5},
		{"mp3", "-C 64", 1, []int{16000, 48000}, 0, 0.5},
		{"mp3", "-C 192", 2, []int{32000, 44100}, 0, 0.5},
	} {
		for _, rate := range c.rates {
			t.Run(fmt.Sprint(c.kind, c.args, " ", rate, " ", c.channels), func(t *testing.T) {
				args := fmt.Sprintf("-r %d -c %d %s FILE synth 0.3 sine 997 vol 0.5", rate, c.channels, c.args)
				path := soxFile(t, "tone."+c.kind, strings.Fields(args)...)
				s := open(t, path, rate)
				x := rest(t, s)
				if s.Err() != nil {
					t.Fatal(s.Err())
				}
				if own, _ := s.Format(); own != rate {
					t.Errorf("rate %d", own)
				}
				checkTone(t, x, rate, 0.5, c.db)
				if c.tolerance > 0 {
					compare(t, x, soxMono(t, path), c.tolerance)
				}
			})
		}
	}
}

// The FLAC library's own remarks must not reach the screen.
func TestNothingPrinted(t *testing.T) {
	before := log.Writer()
	defer log.SetOutput(before)
	for _, rate := range []string{"24000", "176400"} {
		path := soxFile(t, "tone.flac", strings.Fields("-r "+rate+" -c 1 -b 16 FILE synth 0.1 sine 997")...)
		var said bytes.Buffer
		log.SetOutput(&said)
		rest(t, open(t, path, 48000))
		if log.Print("back again"); strings.Count(said.String(), "\n") != 1 {
			t.Errorf("printed %q", said.String())
		}
	}
}

func compare(t *testing.T, have, want []float64, tolerance float64) {
	t.Helper()
	if len(have) != len(want) {
		t.Fatalf("%d samples, want %d", len(have), len(want))
	}
	for i, v := range have {
		if math.Abs(v-want[i]) > tolerance {
			t.Fatalf("sample %d is %.9g, want %.9g", i, v, want[i])
		}
	}
}

// Several channels with the tone in one of them: each kind of file has its own
// order, and its decoder must find the same places. Sox hands FLAC and Vorbis its
// channels in the file's own order.
func TestSoxPlaces(t *testing.T) {
	const all = 2*0.7071 + 1 + 2*0.5
	for kind, want := range map[string][]float64{
		"flac": {0.7071 / all, 0.7071 / all, 1 / all, 0, 0.5 / all, 0.5 / all},
		"ogg":  {0.7071 / all, 1 / all, 0.7071 / all, 0.5 / all, 0.5 / all},
	} {
		for c, weight := range want {
			t.Run(fmt.Sprint(kind, c), func(t *testing.T) {
				remix := strings.Fields(strings.Repeat("0 ", len(want)))
				remix[c] = "1"
				args := fmt.Sprintf("-r 48000 -c %d FILE synth 0.3 sine 997 vol 0.5 remix", len(want))
				s := open(t, soxFile(t, "several."+kind, append(strings.Fields(args), remix...)...), 48000)
				x := rest(t, s)
				if weight > 0 {
					checkTone(t, x, 48000, 0.5*weight, 0.5)
					return
				}
				if magnitude, _ := measure(x, 48000); magnitude > 1e-4 {
					t.Errorf("magnitude %g of the effects", magnitude)
				}
			})
		}
	}
}

// The Vorbis library cannot read six channels as the usual coder writes them,
// though it reads five and eight; the error must say so.
func TestSoxSixChannels(t *testing.T) {
	path := soxFile(t, "six.ogg", strings.Fields("-r 48000 -c 6 FILE synth 0.3 sine 997 vol 0.5")...)
	if _, err := Open(path, 48000); !errors.Is(err, ErrUnsupported) {
		t.Error(err)
	}
}

// Sox's own change of rate, at its best, must agree to the samples where both are
// flat.
func TestSoxRate(t *testing.T) {
	path := soxFile(t, "chirp.wav", strings.Fields("-r 44100 -c 1 -b 24 FILE synth 1 sine 100:15000 vol 0.5 fade 0.1 1 0.1")...)
	raw, err := exec.Command("sox", "-V1", "-D", path, "-t", "f64", "-L", "-", "rate", "-v", "48000").Output()
	if err != nil {
		t.Fatal(err)
	}
	want := make([]float64, len(raw)/8)
	if err := binary.Read(bytes.NewReader(raw), binary.LittleEndian, want); err != nil {
		t.Fatal(err)
	}
	compare(t, rest(t, open(t, path, 48000)), want, 1e-5)
}
