package main

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"sync/atomic"
)

// memory is where the garbage collector begins to work harder, in bytes: a plan
// should run beside other programs on a small machine.
const memory = 180 << 20

// limitFor returns the limit where so many bytes are in use: memory, until that is less than the twice of
// what is in use at which Go collects by itself. For then the collector runs all the time: a kit of 300
// drivers took 65 s under 180 MiB at all times, and takes 40 s so.
func limitFor(live uint64) int64 { return max(memory, int64(live)/2*5) }

// ceiling sets the limit after each collection.
type ceiling struct{ done atomic.Bool }

// limitMemory sets it from now on.
func limitMemory() *ceiling {
	c := new(ceiling)
	c.set()
	return c
}

func (c *ceiling) set() {
	if c.done.Load() {
		return
	}
	debug.SetMemoryLimit(limitFor(inUse()))
	runtime.AddCleanup(new([16]byte), (*ceiling).set, c) // by the next collection
}

// inUse is how many bytes the last collection found in use.
func inUse() uint64 {
	sample := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(sample)
	return sample[0].Value.Uint64()
}
