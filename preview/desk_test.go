package preview

import (
	"slices"
	"testing"

	"github.com/gopxl/beep/v2"
)

// TestDeskEnds after its turns, and not at all once a source is chosen.
func TestDeskEnds(t *testing.T) {
	desk := func(told *[]int) *Desk {
		sources := []beep.Streamer{ramp(0, 10000), ramp(1, 10000), ramp(2, 10000)}
		return NewDesk(NewSwitch(sources, 10), 100, 4, func(i int) { *told = append(*told, i) })
	}
	var told []int
	if n := len(drain(desk(&told), 64)); n != 400 || !slices.Equal(told, []int{0, 1, 2, 0}) {
		t.Errorf("%d samples, %v; want four turns of 100", n, told)
	}
	told = nil
	d := desk(&told)
	buffer := make([][2]float64, 150)
	d.Stream(buffer)
	d.Choose(2)
	d.Choose(7) // is not there
	if n := len(drain(d, 64)); n != 10000-150 {
		t.Errorf("%d samples more, want all", n)
	}
	if !slices.Equal(told, []int{0, 1, 2}) {
		t.Errorf("told %v", told)
	}
}

// TestDeskAlone: with nobody to choose any more a chosen source ends with the turns.
func TestDeskAlone(t *testing.T) {
	d := NewDesk(NewSwitch([]beep.Streamer{ramp(0, 10000), ramp(1, 10000)}, 10), 100, 4, nil)
	d.Choose(1)
	d.Stream(make([][2]float64, 150))
	d.Alone()
	if n := len(drain(d, 64)); n != 250 || d.Given() != 400 {
		t.Errorf("%d samples more, %d in all, want 250 and 400", n, d.Given())
	}
}

// TestDeskKeys: next goes round, back goes to and fro between two.
func TestDeskKeys(t *testing.T) {
	var told []int
	d := NewDesk(NewSwitch([]beep.Streamer{ramp(0, 9), ramp(1, 9), ramp(2, 9)}, 10), 100, 0, func(i int) { told = append(told, i) })
	for _, press := range []func(){d.Next, d.Next, d.Back, d.Back, d.Next, d.Back} {
		press()
	}
	if want := []int{1, 2, 1, 2, 0, 2}; !slices.Equal(told, want) {
		t.Errorf("told %v, want %v", told, want)
	}
}
