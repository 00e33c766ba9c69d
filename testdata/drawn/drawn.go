// Package drawn gives fuzz targets many more inputs than the fuzzing engine can: mutated in
// the test's own process, without its instruments and its pipes between processes.
//
// A target takes any bytes. It is fuzzed by the engine as any other (go test -fuzz); with
// -drawn 1e7 its seeds, and what the engine has found where -drawnfrom names its folder, are
// mutated ten million times over, and the slowest input is told beside the speed. The same
// -drawnseed draws the same inputs on as many cores.
package drawn

import (
	"cmp"
	"flag"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

var (
	runs  = flag.Float64("drawn", 0, "inputs that each fuzz target is given in the test's own process")
	seed  = flag.Uint64("drawnseed", 1, "what those inputs are drawn by")
	cores = flag.Int("drawncores", 1, "cores to draw them on, each its share, for targets that keep nothing from one input to the next")
	from  = flag.String("drawnfrom", "", "folder with a fuzz target's corpus to draw from beside its seeds")
)

// roomy is by how many percent the heap may grow before it is swept: a target holds little from
// one input to the next, so that sweeping as often as usual, at 100, is most of the work.
const roomy = 1600

// Bytes adds a target's seeds and makes it what the engine fuzzes. It must not keep or change
// what it is given. Where -drawn asks for it, the target has that many inputs first.
func Bytes(f *testing.F, seeds []string, target func(t testing.TB, data []byte)) {
	for _, s := range seeds {
		f.Add([]byte(s))
	}
	if *runs > 0 {
		draw(f, append(seeds, corpus(f)...), int(*runs), target)
	}
	f.Fuzz(func(t *testing.T, data []byte) { target(t, data) })
}

// draw gives a target n inputs, a share of them on each core, and tells which one it fails at.
func draw(f *testing.F, seeds []string, n int, target func(t testing.TB, data []byte)) {
	defer debug.SetGCPercent(debug.SetGCPercent(roomy))
	begun := time.Now()
	shares := make([]share, max(*cores, 1))
	var all sync.WaitGroup
	for i := range shares {
		all.Go(func() {
			shares[i].draw(f, newMutator(seeds, *seed, uint64(i)), n*(i+1)/len(shares)-n*i/len(shares), target)
		})
	}
	all.Wait()
	if f.Failed() {
		return
	}
	slow := slices.MaxFunc(shares, func(a, b share) int { return cmp.Compare(a.longest, b.longest) })
	took := time.Since(begun).Seconds()
	f.Logf("%d inputs of seed %d on %d cores in %.1f s, %.0f a second; the slowest took %v: %.300q",
		n, *seed, len(shares), took, float64(n)/took, slow.longest, slow.slowest)
}

// share is what one core draws.
type share struct {
	longest time.Duration
	slowest []byte // the input that took so long
}

// draw gives a target n inputs; where it fails, by a panic or by leaving, too, it tells of which.
func (s *share) draw(f *testing.F, m *mutator, n int, target func(t testing.TB, data []byte)) {
	var data []byte
	done := 0
	defer func() {
		if done < n && data != nil {
			f.Logf("input %d of seed %d, core %d: %q", done+1, *seed, m.core, data)
		}
	}()
	for ; done < n && !f.Failed(); done++ {
		data = m.next()
		at := time.Now()
		if target(f, data); f.Failed() {
			return
		}
		if took := time.Since(at); took > s.longest {
			s.longest, s.slowest = took, append(s.slowest[:0], data...)
		}
	}
}

// corpus are the inputs of one value in a folder of the engine's.
func corpus(f *testing.F) []string {
	if *from == "" {
		return nil
	}
	paths, err := filepath.Glob(filepath.Join(*from, "*"))
	if err != nil {
		f.Fatal(err)
	}
	var out []string
	for _, path := range paths {
		file, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		lines := strings.Split(strings.TrimSpace(string(file)), "\n")
		if len(lines) != 2 {
			continue
		}
		quoted := strings.TrimSuffix(strings.TrimPrefix(lines[1], "[]byte("), ")")
		if text, err := strconv.Unquote(quoted); err == nil {
			out = append(out, text)
		}
	}
	return out
}
