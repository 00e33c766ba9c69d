package main

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"pappus/preview/wave"

	"github.com/go-audio/wav"
	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/generators"
)

// silenced returns the environment without any sound server, and with ALSA set up
// as said.
func silenced(t *testing.T, config string) []string {
	dir := t.TempDir()
	name := filepath.Join(dir, "asound.conf")
	if err := os.WriteFile(name, []byte(config), 0o600); err != nil {
		t.Fatal(err)
	}
	var env []string
	for _, v := range os.Environ() {
		if !strings.HasPrefix(v, "PULSE_") && !strings.HasPrefix(v, "XDG_") && !strings.HasPrefix(v, "HOME=") {
			env = append(env, v)
		}
	}
	return append(env, "ALSA_CONFIG_PATH="+name, "PULSE_SERVER=unix:"+filepath.Join(dir, "nobody"), "HOME="+dir, "XDG_RUNTIME_DIR="+dir)
}

// TestListenPlaysTheFile: what reaches the sound device after the rise is what the
// WAV file holds, 20 dB down. The device is one of ALSA's that writes into a pipe.
func TestListenPlaysTheFile(t *testing.T) {
	t.Parallel()
	folder := filepath.Join(t.TempDir(), "heard")
	if out, err := exec.Command("pappus", "listen", "-q", "--cases", "aligned", "--bits", "32", "-o", folder).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	want := floatFile(t, filepath.Join(folder, "pink_noise_aligned.wav"))

	name := filepath.Join(t.TempDir(), "played")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Skip(err)
	}
	pipe, err := os.OpenFile(name, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer pipe.Close()
	heard := make(chan []float64)
	go func() { heard <- leftSamples(pipe) }()
	c := exec.Command("pappus", "listen", "--cases", "aligned", "--rounds", "1")
	c.Env = silenced(t, fmt.Sprintf("pcm.!default {\n type file\n slave.pcm { type null }\n file %q\n format raw\n}\n", name))
	out, err := c.CombinedOutput()
	if strings.Contains(string(out), "no sound device") {
		t.Skip("no libasound here")
	}
	if err != nil || !strings.Contains(string(out), "now: 1 aligned") {
		t.Fatalf("%v: %s", err, out)
	}
	if err := pipe.SetReadDeadline(time.Now().Add(time.Second)); err != nil {
		t.Fatal(err)
	}
	have := <-heard

	const from, count = 100000, 80000 // after the rise of 2 s, before the end at 4 s
	if len(have) < from+count {
		t.Fatalf("only %d samples were heard", len(have))
	}
	lag, worst := 0, math.Inf(1)
	for l := range 2000 { // the silence before the first sound is not told apart
		if off := apart(have[from:from+100], want[from+l:from+l+100]); off < worst {
			lag, worst = l, off
		}
	}
	if off := apart(have[from:from+count], want[from+lag:from+lag+count]); off > 1e-6 {
		t.Errorf("off by %g at a lag of %d", off, lag)
	}
}

// TestSignalsStopTheWork: a signal ends matching and writing soon, with nothing left
// behind, and with the exit code that says so.
func TestSignalsStopTheWork(t *testing.T) {
	t.Parallel()
	long := filepath.Join(t.TempDir(), "long.wav")
	file, err := os.Create(long)
	if err != nil {
		t.Fatal(err)
	}
	tone, _ := generators.SineTone(8000, 440)
	format := wave.Format{Rate: 8000, Channels: 1, Depth: wave.PCM16}
	if err := wave.Write(file, beep.Take(30*60*8000, tone), format); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		signal syscall.Signal
		code   int
	}{{syscall.SIGINT, 130}, {syscall.SIGTERM, 143}, {syscall.SIGHUP, 129}} {
		if signal.Ignored(c.signal) { // as under nohup, where the program is to go on
			continue
		}
		folder := filepath.Join(t.TempDir(), "heard")
		var out bytes.Buffer
		p := exec.Command("pappus", "listen", "-o", folder, "--file", long)
		p.Stderr = &out
		if err := p.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Second)
		if err := p.Process.Signal(c.signal); err != nil {
			t.Fatal(err)
		}
		begin := time.Now()
		_ = p.Wait() // its exit code is looked at
		if took := time.Since(begin); took > 3*time.Second {
			t.Errorf("%v: stopped after %v", c.signal, took)
		}
		if code := p.ProcessState.ExitCode(); code != c.code || out.String() != "pappus: stopped before it was done\n" {
			t.Errorf("%v: exit code %d, said %q", c.signal, code, out.String())
		}
		if _, err := os.Stat(folder); err == nil {
			t.Errorf("%v: the folder was left", c.signal)
		}
	}
}

// apart returns the largest difference between what was played, 20 dB down, and
// what was to be.
func apart(have, want []float64) float64 {
	most := 0.0
	for i, v := range have {
		most = max(most, math.Abs(v-want[i]/10))
	}
	return most
}

// leftSamples reads frames of two 32 bit floats to the end and returns those that
// are not silent.
func leftSamples(r io.Reader) (loud []float64) {
	frames := bufio.NewReaderSize(r, 1<<16)
	var frame [8]byte
	for {
		if _, err := io.ReadFull(frames, frame[:]); err != nil {
			return loud
		}
		if v := math.Float32frombits(binary.LittleEndian.Uint32(frame[:])); v != 0 {
			loud = append(loud, float64(v))
		}
	}
}

// floatFile reads a WAV file of 32 bit floats.
func floatFile(t *testing.T, path string) []float64 {
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	d := wav.NewDecoder(f)
	if err := d.FwdToPCM(); err != nil {
		t.Fatal(err)
	}
	raw, err := io.ReadAll(d.PCMChunk)
	if err != nil {
		t.Fatal(err)
	}
	out := make([]float64, len(raw)/4)
	for i := range out {
		out[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(raw[4*i:])))
	}
	return out
}
