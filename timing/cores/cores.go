// Package cores spreads work over all processors, with results that are the same to the
// bit for any number of them.
package cores

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls work for each index below n, on as many goroutines as there are cores. work
// gets the index of its goroutine too, below Count(), to find its own scratch space.
// Indices are handed out one by one, and what work does for an index may not depend on
// which goroutine does it: then results are the same to the bit for any number of cores.
func Each(n int, work func(worker, index int)) {
	var next atomic.Int64
	var group sync.WaitGroup
	for w := range min(Count(), n) {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(w, i)
			}
		})
	}
	group.Wait()
}

// Count is how many goroutines Each uses at most.
func Count() int { return runtime.GOMAXPROCS(0) }
