package main

import (
	"math"
	"runtime"
	"runtime/debug"
	"testing"
	"time"
)

// TestLimitMemory: the limit follows what is in use, up and down again, and is never under what it begins with.
func TestLimitMemory(t *testing.T) {
	for live, want := range map[uint64]int64{0: memory, 60 << 20: memory, 400 << 20: 1000 << 20} {
		if got := limitFor(live); got != want {
			t.Errorf("%d bytes in use: %d, want %d", live, got, want)
		}
	}
	was := debug.SetMemoryLimit(math.MaxInt64)
	l := limitMemory()
	t.Cleanup(func() {
		l.done.Store(true)
		debug.SetMemoryLimit(was)
	})
	until := func(what string, holds func(limit int64) bool) {
		for range 500 {
			runtime.GC()
			if holds(debug.SetMemoryLimit(-1)) {
				return
			}
			time.Sleep(time.Millisecond) // cleanups run by themselves
		}
		t.Errorf("%s: the limit is %d", what, debug.SetMemoryLimit(-1))
	}
	much := make([]byte, 1<<30)
	until("a GiB in use", func(limit int64) bool { return limit >= 1<<30/2*5 })
	runtime.KeepAlive(much)
	until("nothing in use", func(limit int64) bool { return limit < 1<<30 })
}
