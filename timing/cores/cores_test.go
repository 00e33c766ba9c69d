package cores_test

import (
	"runtime"
	"testing"

	"pappus/timing/cores"
)

// TestEach: every index once, by a goroutine below Count, on any number of cores.
func TestEach(t *testing.T) {
	before := runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(before)
	for _, procs := range []int{1, 2, 5} {
		runtime.GOMAXPROCS(procs)
		for _, n := range []int{0, 1, 2, 1000} {
			seen := make([]int, n)
			cores.Each(n, func(worker, i int) {
				if worker < 0 || worker >= cores.Count() {
					t.Errorf("goroutine %d of %d", worker, cores.Count())
				}
				seen[i]++
			})
			for i, times := range seen {
				if times != 1 {
					t.Errorf("%d cores, %d of %d: %d times", procs, i, n, times)
				}
			}
		}
	}
}
