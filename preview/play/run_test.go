package play

import (
	"context"
	"encoding/binary"
	"errors"
	"io"
	"math"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"github.com/gopxl/beep/v2"
)

const rate = beep.SampleRate(48000)

// tone is a stream of full scale, n samples long.
type tone struct {
	left int
	err  error
}

func (s *tone) Stream(dst [][2]float64) (int, bool) {
	n := min(len(dst), s.left)
	for i := range dst[:n] {
		dst[i] = [2]float64{1, -1}
	}
	s.left -= n
	return n, n > 0
}
func (s *tone) Err() error { return s.err }

// machine is a device of the tests' own. It takes a period each 20 ms, from
// period number starts on and none from stalls on; it fails once it has failed.
type machine struct {
	starts, stalls, fails int

	mu      sync.Mutex
	source  io.Reader
	buffer  []byte
	heard   []float32
	err     error
	playErr error
	playing bool
	rested  bool
	quit    chan struct{}
}

const period = 960 * frameBytes

func (m *machine) player(r io.Reader) player {
	m.source, m.quit = r, make(chan struct{})
	go m.work()
	return m
}

func (m *machine) work() {
	for i := 0; ; i++ {
		select {
		case <-m.quit:
			return
		case <-time.After(20 * time.Millisecond):
		}
		m.mu.Lock()
		m.fill()
		if i >= m.starts && (m.stalls == 0 || i < m.stalls) {
			m.take()
		}
		if m.fails > 0 && i >= m.fails {
			m.err = errUnplugged
		}
		m.mu.Unlock()
	}
}

func (m *machine) fill() {
	p := make([]byte, 2*period)
	for len(m.buffer) < len(p) {
		n, err := m.source.Read(p)
		m.buffer = append(m.buffer, p[:n]...)
		if err != nil {
			if err != io.EOF {
				m.playErr = err
			}
			m.playing = len(m.buffer) > 0 && m.playErr == nil
			return
		}
	}
}

func (m *machine) take() {
	n := min(period, len(m.buffer))
	for i := 0; i < n; i += 4 {
		m.heard = append(m.heard, math.Float32frombits(binary.LittleEndian.Uint32(m.buffer[i:])))
	}
	m.buffer = m.buffer[n:]
}

func (m *machine) lock() func() { m.mu.Lock(); return m.mu.Unlock }

func (m *machine) Play()             { defer m.lock()(); m.playing = true }
func (m *machine) IsPlaying() bool   { defer m.lock()(); return m.playing }
func (m *machine) BufferedSize() int { defer m.lock()(); return len(m.buffer) }

// Err answers for the device and for the player: the tests never need both.
func (m *machine) Err() error           { defer m.lock()(); return errors.Join(m.err, m.playErr) }
func (m *machine) PauseAndStopReading() { close(m.quit) }
func (m *machine) drain()               {}
func (m *machine) rest()                { m.rested = true }

var (
	errUnplugged = errors.New("unplugged")
	errSource    = errors.New("broken source")
)

func TestRun(t *testing.T) {
	for _, c := range []struct {
		name   string
		device *machine
		source *tone
		stop   time.Duration // 0: never
		want   error
		within time.Duration
	}{
		{"to the end", &machine{}, &tone{left: 48000}, 0, nil, 1200 * time.Millisecond},
		{"nothing to play", &machine{}, &tone{}, 0, nil, 100 * time.Millisecond},
		{"slow to start", &machine{starts: 75}, &tone{left: 48000}, 0, nil, 3 * time.Second},
		{"never starts", &machine{starts: 1 << 30}, &tone{left: 1 << 30}, 0, ErrNoDevice, 2100 * time.Millisecond},
		{"never starts, short sound", &machine{starts: 1 << 30}, &tone{left: 10}, 0, ErrNoDevice, 2100 * time.Millisecond},
		{"stops taking", &machine{stalls: 150}, &tone{left: 1 << 30}, 0, errStalled, 5200 * time.Millisecond},
		{"pulled out", &machine{fails: 150}, &tone{left: 1 << 30}, 0, errUnplugged, 3100 * time.Millisecond},
		{"source breaks", &machine{}, &tone{err: errSource}, 0, errSource, 100 * time.Millisecond},
		{"stopped", &machine{}, &tone{left: 1 << 30}, 3 * time.Second, context.Canceled, 3150 * time.Millisecond},
		{"stopped while stuck", &machine{starts: 1 << 30}, &tone{left: 1 << 30}, time.Second, context.Canceled, 1400 * time.Millisecond},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				ctx, cancel := context.WithCancel(t.Context())
				defer cancel()
				if c.stop > 0 {
					time.AfterFunc(c.stop, cancel)
				}
				begin := time.Now()
				err := run(ctx, c.device, guard(c.source, rate, DefaultLevel))
				if !errors.Is(err, c.want) {
					t.Errorf("error %v, want %v", err, c.want)
				}
				if took := time.Since(begin); took > c.within {
					t.Errorf("took %v, want at most %v", took, c.within)
				}
				if !c.device.rested {
					t.Error("the device was left running")
				}
			})
		})
	}
}

// What is heard must begin at silence, rise over 2 s to the level, and after the
// stop come down to silence without a step.
func TestHeard(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		m := &machine{}
		ctx, cancel := context.WithTimeout(t.Context(), 4*time.Second)
		defer cancel()
		err := run(ctx, m, guard(&tone{left: 1 << 30}, rate, DefaultLevel))
		if !errors.Is(err, context.DeadlineExceeded) {
			t.Fatal(err)
		}
		left := make([]float64, len(m.heard)/2)
		for i := range left {
			left[i] = float64(m.heard[2*i])
			if m.heard[2*i] != -m.heard[2*i+1] {
				t.Fatalf("sample %d: left %g right %g", i, m.heard[2*i], m.heard[2*i+1])
			}
		}
		full := math.Pow(10, DefaultLevel/20)
		for _, c := range []struct {
			second, want float64
		}{{0, 0}, {0.5, full * (0.5 - math.Sqrt2/4)}, {1, full / 2}, {2, full}, {3.5, full}} {
			if have := left[int(c.second*float64(rate))]; math.Abs(have-c.want) > 1e-6 {
				t.Errorf("after %g s: %g, want %g", c.second, have, c.want)
			}
		}
		for i := 1; i < len(left); i++ {
			if step := math.Abs(left[i] - left[i-1]); step > full*math.Pi/2/float64(rate.N(fall))*1.01 {
				t.Fatalf("a step of %g at sample %d", step, i)
			}
		}
		if last := left[len(left)-1]; math.Abs(last) > 1e-6 {
			t.Errorf("ends at %g", last)
		}
	})
}

// What ends by itself comes down to silence without a step too.
func TestEndIsHeardToFall(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		m := &machine{}
		if err := run(t.Context(), m, guard(&tone{left: rate.N(3 * time.Second)}, rate, DefaultLevel)); err != nil {
			t.Fatal(err)
		}
		full, last := math.Pow(10, DefaultLevel/20), 0.0
		for i, v := range append(m.heard, 0, 0) {
			if i%2 == 0 {
				if step := math.Abs(float64(v) - last); step > full*math.Pi/2/float64(rate.N(fall))*1.01 {
					t.Fatalf("a step of %g at sample %d of %d", step, i/2, len(m.heard)/2)
				}
				last = float64(v)
			}
		}
	})
}

func TestLoudIsLimited(t *testing.T) {
	s := guard(&tone{left: 1 << 30}, rate, 60)
	buffer := make([][2]float64, 4800)
	for range 40 {
		n, _ := s.Stream(buffer)
		for _, v := range buffer[:n] {
			if math.Abs(v[0]) > ceiling || math.Abs(v[1]) > ceiling {
				t.Fatalf("%v above %g", v, ceiling)
			}
		}
	}
	if got := buffer[0][0]; got < 0.999*ceiling {
		t.Errorf("%g, want the ceiling", got)
	}
}

func TestDeviceErrorIsKind(t *testing.T) {
	err := noDevice(ErrNoDevice, errUnplugged)
	if err.Error() != ErrNoDevice.Error() {
		t.Errorf("%q", err)
	}
	if !errors.Is(err, ErrNoDevice) || !errors.Is(err, errUnplugged) {
		t.Error("the causes are lost")
	}
}
