package play

import (
	"bufio"
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/gopxl/beep/v2"
)

// A process opens a device only once, so that each test of the real way plays in
// a process of its own: this test binary, told so by helperVariable.
const helperVariable = "PAPPUS_TEST_PLAY"

func TestMain(m *testing.M) {
	if os.Getenv(helperVariable) == "" {
		os.Exit(m.Run())
	}
	// Twice, for a device must serve again.
	for range 2 {
		if err := Play(context.Background(), rate, counted(), DefaultLevel); err != nil {
			fmt.Println(err)
			if errors.Is(err, ErrNoDevice) {
				os.Exit(3)
			}
			os.Exit(1)
		}
	}
}

// counted is a fifth of a second of sound without a silent sample.
func counted() beep.Streamer {
	const n = 9600
	at := 0
	return beep.StreamerFunc(func(dst [][2]float64) (int, bool) {
		m := min(len(dst), n-at)
		for i := range dst[:m] {
			v := 0.6 * (1 + float64((at+i)%1000)) / 1000
			dst[i] = [2]float64{v, -v}
		}
		at += m
		return m, m > 0
	})
}

// play runs the helper with an ALSA configuration and no other sound server, and
// returns what it wrote and its exit code.
func play(t *testing.T, config string) (output string, code int, took time.Duration) {
	t.Helper()
	dir := t.TempDir()
	name := filepath.Join(dir, "asound.conf")
	if err := os.WriteFile(name, []byte(config), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 30*time.Second)
	defer cancel()
	cmd := exec.CommandContext(ctx, os.Args[0])
	for _, v := range os.Environ() {
		if !strings.HasPrefix(v, "PULSE_") && !strings.HasPrefix(v, "XDG_") && !strings.HasPrefix(v, "HOME=") {
			cmd.Env = append(cmd.Env, v)
		}
	}
	cmd.Env = append(cmd.Env, helperVariable+"=1", "ALSA_CONFIG_PATH="+name,
		"PULSE_SERVER=unix:"+filepath.Join(dir, "nobody"), "HOME="+dir, "XDG_RUNTIME_DIR="+dir)
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	begin := time.Now()
	err := cmd.Run()
	if ctx.Err() != nil {
		t.Fatalf("still not done: %s", out.String())
	}
	if exit := (*exec.ExitError)(nil); err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return out.String(), cmd.ProcessState.ExitCode(), time.Since(begin)
}

// Without any device the answer must come soon, in one line, and nothing else
// may be printed.
func TestNoDevice(t *testing.T) {
	out, code, took := play(t, "pcm.unused { type null }\n")
	if code != 3 || out != ErrNoDevice.Error()+"\n" {
		t.Errorf("code %d, printed %q", code, out)
	}
	if took > 10*time.Second {
		t.Errorf("took %v", took)
	}
}

// A default device of type file leaves the very samples that were played. It
// takes sound faster than it is fed, and fills up with silence, so silent
// samples do not count; a pipe for the file keeps that from piling up.
func TestPlaysToALSA(t *testing.T) {
	name := filepath.Join(t.TempDir(), "played")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Skip(err)
	}
	pipe, err := os.OpenFile(name, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer pipe.Close()
	heard := make(chan [][2]float32)
	go func() { heard <- loudSamples(pipe) }()
	out, code, _ := play(t, fmt.Sprintf(
		"pcm.!default {\n type file\n slave.pcm { type null }\n file %q\n format raw\n}\n", name))
	if err := pipe.SetReadDeadline(time.Now().Add(time.Second)); err != nil {
		t.Fatal(err)
	}
	have := <-heard
	if code == 3 {
		t.Skip("no libasound here")
	}
	if code != 0 {
		t.Fatalf("code %d: %s", code, out)
	}
	want := append(expected(), expected()...)
	if len(have) != len(want) {
		t.Fatalf("%d samples with sound, want %d", len(have), len(want))
	}
	for i := range want {
		if have[i] != want[i] {
			t.Fatalf("sample %d is %v, want %v", i, have[i], want[i])
		}
	}
}

// loudSamples reads to the end and returns the samples that are not silent.
func loudSamples(r io.Reader) (loud [][2]float32) {
	frames := bufio.NewReaderSize(r, 1<<16)
	var frame [frameBytes]byte
	for {
		if _, err := io.ReadFull(frames, frame[:]); err != nil {
			return loud
		}
		v := [2]float32{
			math.Float32frombits(binary.LittleEndian.Uint32(frame[:])),
			math.Float32frombits(binary.LittleEndian.Uint32(frame[4:])),
		}
		if v != [2]float32{} {
			loud = append(loud, v)
		}
	}
}

// expected is what Play makes of counted: 20 dB down, rising for 2 s as half a
// raised cosine and falling in the last 30 ms as another.
func expected() (all [][2]float32) {
	s := counted()
	buffer := make([][2]float64, 9600)
	n, _ := s.Stream(buffer)
	position := 0.0
	for i, v := range buffer[:n] {
		gain := (1 - math.Cos(math.Pi*position)) / 2
		if left := float64(n-i) * (1.0 / 1440); left < 1 {
			gain *= (1 - math.Cos(math.Pi*left)) / 2
		}
		for c := range v {
			v[c] = v[c] * math.Pow(10, -1) * gain
		}
		position += 1.0 / 96000
		if f := [2]float32{float32(v[0]), float32(v[1])}; f != [2]float32{} {
			all = append(all, f)
		}
	}
	return all
}
