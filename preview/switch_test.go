package preview

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/gopxl/beep/v2"
	"pgregory.net/rapid"
)

// ramp tells the instant on the left and its own number on the right.
func ramp(number float64, length int) beep.Streamer {
	at := 0
	return beep.StreamerFunc(func(dst [][2]float64) (int, bool) {
		n := min(len(dst), length-at)
		for i := range dst[:n] {
			dst[i] = [2]float64{float64(at + i), number}
		}
		at += n
		return n, n > 0
	})
}

func drain(s beep.Streamer, size int) (all [][2]float64) {
	buffer := make([][2]float64, size)
	for {
		n, ok := s.Stream(buffer)
		if !ok {
			return all
		}
		all = append(all, buffer[:n]...)
	}
}

// Whatever the buffers, the instant must run on through every change, each
// source must come in its turn, and the change must take the time it should.
func TestDeskTurns(t *testing.T) {
	const length, every, fade = 5000, 1000, 100
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.IntRange(1, 3000).Draw(t, "buffer")
		var told []int
		sw := NewSwitch([]beep.Streamer{ramp(0, length), ramp(1, length), ramp(2, length)}, fade)
		all := drain(NewDesk(sw, every, 0, func(i int) { told = append(told, i) }), size)
		if len(all) != length {
			t.Fatalf("%d samples, want %d", len(all), length)
		}
		for i, v := range all {
			if math.Abs(v[0]-float64(i)) > 1e-9 {
				t.Fatalf("sample %d is instant %g", i, v[0])
			}
			on, since := float64(i/every%3), i%every
			if (i < every || since >= fade-1) && v[1] != on {
				t.Fatalf("sample %d comes from %g, want %g", i, v[1], on)
			}
			if i > 0 && math.Abs(v[1]-all[i-1][1]) > 2*math.Pi/2/fade {
				t.Fatalf("a step at sample %d", i)
			}
		}
		// The end may be found by asking once more.
		if diff := cmp.Diff([]int{0, 1, 2, 0, 1}, told[:5]); diff != "" {
			t.Error(diff)
		}
	})
}

func TestSwitchSelect(t *testing.T) {
	sw := NewSwitch([]beep.Streamer{ramp(0, 4000), ramp(1, 4000)}, 50)
	buffer := make([][2]float64, 1000)
	sw.Stream(buffer)
	if buffer[999] != [2]float64{999, 0} {
		t.Errorf("before: %v", buffer[999])
	}
	sw.Select(1)
	sw.Stream(buffer)
	for i, v := range buffer {
		want := 1.0
		if i < 49 {
			want = (1 - math.Cos(math.Pi*float64(i+1)/50)) / 2
		}
		if math.Abs(v[1]-want) > 1e-12 || math.Abs(v[0]-float64(1000+i)) > 1e-9 {
			t.Fatalf("sample %d: %v, want %g", i, v, want)
		}
	}
}

func TestSwitchEndsWithTheFirst(t *testing.T) {
	sw := NewSwitch([]beep.Streamer{ramp(0, 4000), ramp(1, 700)}, 50)
	if n := len(drain(sw, 512)); n != 700 {
		t.Errorf("%d samples, want 700", n)
	}
}

func TestSwitchAllocatesNothing(t *testing.T) {
	sw := NewDesk(NewSwitch([]beep.Streamer{ramp(0, 1<<40), ramp(1, 1<<40)}, 480), 1000, 0, nil)
	buffer := make([][2]float64, 512)
	if n := testing.AllocsPerRun(50, func() { sw.Stream(buffer) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func ExampleDesk() {
	sources := []beep.Streamer{ramp(0, 96000), ramp(1, 96000)}
	s := NewDesk(NewSwitch(sources, 480), 48000, 0, func(i int) { fmt.Println(Cases[i].Words) })
	for buffer := make([][2]float64, 4096); ; {
		if _, ok := s.Stream(buffer); !ok {
			break
		}
	}
	// Output:
	// as built
	// aligned
	// as built
}
