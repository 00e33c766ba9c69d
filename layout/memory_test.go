package layout

import (
	"strconv"
	"sync"
	"testing"
)

func TestMemory(t *testing.T) {
	var m memory[int]
	asked := 0
	get := func(key int) int {
		return m.get(strconv.Itoa(key), func() int { asked++; return 10 * key })
	}
	for range 3 {
		if got := get(1); got != 10 || asked != 1 {
			t.Fatalf("got %d, computed %d times", got, asked)
		}
	}
	for key := range mostKept + 1 { // 1 is among them, and is the oldest
		get(key)
	}
	if len(m.keys) != mostKept || len(m.values) != mostKept {
		t.Errorf("keeps %d keys and %d values", len(m.keys), len(m.values))
	}
	before := asked
	if get(1); asked != before+1 {
		t.Error("the oldest is kept for ever")
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
