package layout

import (
	"strconv"
	"sync"
	"testing"
)

func TestMemory(t *testing.T) {
	m := newMemory[int](mostKept)
	asked := 0
	get := func(key int) int {
		return m.get(strconv.Itoa(key), func() int { asked++; return 10 * key })
	}
	for range 3 {
		if got := get(1); got != 10 || asked != 1 {
			t.Fatalf("got %d, computed %d times", got, asked)
		}
	}
	for key := range mostKept + 1 { // 0 is asked for longest ago
		get(key)
	}
	if m.Len() != mostKept {
		t.Errorf("keeps %d values", m.Len())
	}
	before := asked
	if get(0); asked != before+1 {
		t.Error("what was asked for longest ago is kept for ever")
	}
	var group sync.WaitGroup
	for i := range 50 {
		group.Go(func() {
			key := i % 20
			if got := m.get(strconv.Itoa(key), func() int { return 10 * key }); got != 10*key {
				t.Errorf("%d gives %d", key, got)
			}
		})
	}
	group.Wait()
}
