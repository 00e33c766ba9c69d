package proof

import (
	"context"
	"flag"
	"fmt"
	"io"
	"math"
	"slices"
	"testing"

	"pappus/layout/design"
	"pappus/testdata/thorough"
	"pappus/timing/search"
	"pappus/timing/search/pareto"
)

// What the search must find of the front of all designs that are 10 dB or less under the
// loudest, by at most how many full figures.
const (
	leastOfFront  = 0.90 // of its designs
	leastOfVolume = 0.99 // of its hypervolume
	mostInFull    = 0.05 // of the space
	fewSeeds      = 3    // of an ordinary test
	underLoudest  = 10.0 // dB
)

// seeds is how many seeds are tried where THOROUGH is set. Ten, by -seeds 10, take a quarter of an hour.
var seeds = flag.Int("seeds", 1, "how many seeds the whole spaces are searched with")

// TestFindsTheFront searches the whole of each space where THOROUGH is set, and else a quarter
// of the bodies: of much smaller spaces one in twenty is fewer than there are on the front.
func TestFindsTheFront(t *testing.T) {
	for _, name := range spaces {
		t.Run(name, func(t *testing.T) {
			whole := readSpace(t, name)
			rows, s := table(t, whole), whole
			if !thorough.Set {
				if name != "bodies" {
					t.Skip("takes minutes")
				}
				s = whole.only("placing.yaw_deg", 0).only("body.radius_mm", 80, 100, 120)
				rows = s.part(whole, rows)
			}
			front := frontOf(s, rows)
			known := &memory{}
			n := *seeds
			if !thorough.Set {
				n = fewSeeds
			}
			for seed := range uint64(n) {
				r := s.search(t, seed, known)
				found := found(r)
				share, volume := shareOf(front, found), volumeOf(front, found)
				t.Logf("seed %d: %d designs, %d fit, %d in full, front of %d: %.3f, hypervolume %.4f", seed, r.Space, r.Fit, r.Full, len(front), share, volume)
				if share < leastOfFront || volume < leastOfVolume || float64(r.Full) > mostInFull*float64(r.Space) {
					t.Errorf("seed %d: found %.3f of the front and %.4f of its hypervolume with %d of %d in full", seed, share, volume, r.Full, r.Space)
				}
				if seed == 0 {
					missed(t, s, rows, front, found)
				}
			}
		})
	}
}

// missed tells which designs of the front were not found.
func missed(t *testing.T, s *space, rows []row, front, found [][]float64) {
	for i, r := range rows {
		if p := r.point(); r.whyNot == "" && slices.ContainsFunc(front, func(q []float64) bool { return slices.Equal(p, q) }) && shareOf([][]float64{p}, found) == 0 {
			t.Logf("missed %v: %v", s.settings(i), r)
		}
	}
}

// point is a row as aims to be made small.
func (r row) point() []float64 { return []float64{r.loss, -r.level, float64(r.drivers)} }

// frontOf returns the front of rows that can be built from the stock and are loud enough, none
// twice.
func frontOf(s *space, rows []row) [][]float64 {
	loudest := math.Inf(-1)
	rows = slices.DeleteFunc(slices.Clone(rows), func(r row) bool { return r.whyNot != "" || r.drivers > s.stock })
	for _, r := range rows {
		loudest = max(loudest, r.level)
	}
	var all, front [][]float64
	for _, r := range rows {
		if r.level >= loudest-underLoudest {
			all = append(all, r.point())
		}
	}
	for i, l := range pareto.Layers(all) {
		if l == 0 && !slices.ContainsFunc(front, func(p []float64) bool { return slices.Equal(p, all[i]) }) {
			front = append(front, all[i])
		}
	}
	return front
}

// found are all designs with full figures as points.
func found(r *search.Result) (out [][]float64) {
	for _, p := range r.Tried {
		if p.Full {
			out = append(out, []float64{p.Loss, -p.Level, float64(p.Drivers)})
		}
	}
	return out
}

// shareOf is which part of a front was found: itself, or what is nowhere worse.
func shareOf(front, found [][]float64) float64 {
	n := 0
	for _, q := range front {
		if slices.ContainsFunc(found, func(p []float64) bool { return noWorse(p, q) }) {
			n++
		}
	}
	return float64(n) / float64(len(front))
}

// noWorse tells whether a point is nowhere greater than another, to the digits of the tables.
func noWorse(p, q []float64) bool {
	for a := range p {
		if p[a] > q[a]+1e-8*math.Abs(q[a]) {
			return false
		}
	}
	return true
}

// volumeOf is which part of a front's hypervolume was found, each aim over its range on the
// front, up to a ninth of that beyond.
func volumeOf(front, found [][]float64) float64 {
	low, span := slices.Clone(front[0]), make([]float64, len(front[0]))
	for _, p := range front {
		for a, v := range p {
			low[a] = min(low[a], v)
		}
	}
	for _, p := range front {
		for a, v := range p {
			span[a] = max(span[a], v-low[a])
		}
	}
	unit := func(points [][]float64) (out [][]float64) {
		for _, p := range points {
			u := make([]float64, len(p))
			for a, v := range p {
				u[a] = (v - low[a]) / span[a]
			}
			out = append(out, u)
		}
		return out
	}
	reference := slices.Repeat([]float64{1 + 1.0/9}, len(low))
	return pareto.Hypervolume(unit(found), reference) / pareto.Hypervolume(unit(front), reference)
}

// job is a space's.
func (s *space) job(t testing.TB, seed uint64) search.Job {
	text := s.text()
	d, err := design.Parse(s.name+".toml", text)
	if err != nil {
		t.Fatal(err)
	}
	return search.Job{Design: d, Text: text, Seed: seed}
}

// search searches a space with what is known of its designs from other seeds, and adds to it.
func (s *space) search(t testing.TB, seed uint64, known *memory) *search.Result {
	job, j := s.job(t, seed), &memory{}
	ended, end := context.WithCancel(context.Background())
	end()
	if _, err := search.Run(ended, job, j, nil); err != nil { // writes what a journal begins with
		t.Fatal(err)
	}
	j.data = append(j.data, known.lines()...)
	r, err := search.Run(context.Background(), job, j, nil)
	if err != nil {
		t.Fatal(err)
	}
	*known = *j
	return r
}

// memory is a journal in memory.
type memory struct {
	data []byte
	at   int
}

func (m *memory) Read(p []byte) (int, error) {
	if m.at >= len(m.data) {
		return 0, io.EOF
	}
	n := copy(p, m.data[m.at:])
	m.at += n
	return n, nil
}

func (m *memory) Write(p []byte) (int, error) {
	m.data = append(m.data[:m.at], p...)
	m.at = len(m.data)
	return len(p), nil
}

func (m *memory) Seek(offset int64, whence int) (int64, error) {
	if whence != io.SeekStart {
		return 0, fmt.Errorf("seeks from the start alone")
	}
	m.at = int(offset)
	return offset, nil
}

func (m *memory) Truncate(size int64) error {
	m.data = m.data[:size]
	return nil
}

// lines are all that stands behind the first two lines.
func (m *memory) lines() []byte {
	out := m.data
	for range 2 {
		for i, c := range out {
			if c == '\n' {
				out = out[i+1:]
				break
			}
		}
	}
	return out
}
