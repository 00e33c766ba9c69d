package intake

import (
	"cmp"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"pappus/layout/prose"
	"pappus/layout/regular"
	"pappus/timing/cores"
	"pappus/timing/impedancefit"
	"pappus/timing/recording"
	"pappus/timing/sweep"
)

// heardSuffix ends the name of what a microphone heard of a driver; else a recording is of its
// impedance.
const heardSuffix = "_heard"

// Source is where drivers were measured, and how.
type Source struct {
	Folder    string
	Impedance impedancefit.Reader
	Sweep     sweep.Sweep // that a microphone heard
	Options   recording.Options
	Reference int // which side of a recording has the player's signal: 0 left, 1 right; below 0: none
}

// Lot is all drivers of a folder, in the order of their names, numbers by their size.
type Lot struct {
	Drivers []Driver
	Ignored []string // files that are neither tables nor recordings
	Middles [values]Middle
	// OffDesign are values whose middle is far from the design's, which is Want.
	OffDesign []Reason

	bands [][]recording.Band // of each driver; nil: none
	at    []float64          // s, of each driver; NaN: not known
	sign  []int              // of the strongest sound: 1, -1, 0 not known
}

// ErrNone is when a folder has nothing to judge.
var ErrNone = errors.New("no measured drivers")

// IsHeard tells whether a folder has recordings of the sweep, so that the sweep must be known;
// what is wrong with the folder Read says.
func IsHeard(folder string) bool {
	all, _, _ := Source{Folder: folder}.list()
	return slices.ContainsFunc(all, func(f files) bool { return f.heard != "" })
}

// files are those of one driver.
type files struct {
	name             string
	impedance, heard string
	second           []string
}

// Read reads a folder. One driver that cannot be read is named, and the others are judged;
// without any that can the first one's error is returned.
func (s Source) Read(ctx context.Context) (*Lot, error) {
	all, ignored, err := s.list()
	if err != nil {
		return nil, err
	}
	n := len(all)
	l := &Lot{Drivers: make([]Driver, n), Ignored: ignored, bands: make([][]recording.Band, n), at: make([]float64, n), sign: make([]int, n)}
	sums := make([][sha256.Size]byte, n)
	cores.Each(n, func(_, i int) {
		if ctx.Err() == nil {
			s.read(l, i, all[i], &sums[i])
		}
	})
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	l.copies(all, sums)
	for _, d := range l.Drivers {
		if d.Fit != nil || d.Heard != nil {
			return l, nil
		}
	}
	return nil, l.Drivers[0].Reasons[0].Err
}

// list finds the files of each driver.
func (s Source) list() (all []files, ignored []string, err error) {
	entries, err := os.ReadDir(s.Folder)
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", prose.Path(s.Folder), prose.Reason(err))
	}
	at := map[string]int{}
	for _, e := range entries {
		name := e.Name()
		ext := strings.ToLower(filepath.Ext(name))
		base := strings.TrimSuffix(name, filepath.Ext(name))
		isWave := ext == ".wav"
		if e.IsDir() || strings.HasPrefix(name, ".") || !isWave && !slices.Contains([]string{".csv", ".zma", ".txt"}, ext) {
			ignored = append(ignored, name)
			continue
		}
		driver, isHeard := strings.CutSuffix(base, heardSuffix)
		if !isHeard || !isWave {
			driver, isHeard = base, false
		}
		i, known := at[driver]
		if !known {
			i, at[driver] = len(all), len(all)
			all = append(all, files{name: driver})
		}
		to := &all[i].impedance
		if isHeard {
			to = &all[i].heard
		}
		if *to != "" {
			all[i].second = append(all[i].second, name)
			continue
		}
		*to = name
	}
	if len(all) == 0 {
		return nil, nil, fmt.Errorf("%s: %w: has no table (.csv, .zma, .txt) and no recording (.wav)", prose.Path(s.Folder), ErrNone)
	}
	slices.SortFunc(all, func(a, b files) int { return natural(a.name, b.name) })
	return all, ignored, nil
}

// natural compares names with the numbers in them by their size: 2 before 10.
func natural(a, b string) int {
	number := func(s string) (digits, rest string) {
		i := 0
		for i < len(s) && s[i] >= '0' && s[i] <= '9' {
			i++
		}
		return strings.TrimLeft(s[:i], "0"), s[i:]
	}
	for x, y := a, b; x != "" && y != ""; {
		one, restX := number(x)
		two, restY := number(y)
		if len(restX) < len(x) && len(restY) < len(y) {
			if c := cmp.Or(cmp.Compare(len(one), len(two)), cmp.Compare(one, two)); c != 0 {
				return c
			}
			x, y = restX, restY
			continue
		}
		if x[0] != y[0] {
			break
		}
		x, y = x[1:], y[1:]
	}
	return cmp.Compare(a, b)
}

// read reads what was measured of one driver.
func (s Source) read(l *Lot, i int, f files, sum *[sha256.Size]byte) {
	d := &l.Drivers[i]
	d.Name, l.at[i] = f.name, nan
	fail := func(err error) { d.Reasons = append(d.Reasons, Reason{Code: Unreadable, Err: err}) }
	for _, name := range []string{f.impedance, f.heard} {
		if name != "" {
			d.Files = append(d.Files, name)
		}
	}
	for _, name := range f.second {
		d.Notes = append(d.Notes, Reason{Code: Second, Other: name})
	}
	if f.impedance != "" {
		path := filepath.Join(s.Folder, f.impedance)
		study, err := impedancefit.NewStudy(s.Impedance, path)
		if err == nil {
			*sum, err = sumOf(path)
		}
		if err != nil {
			fail(err)
		} else {
			d.Fit, d.Henry = &study.Fit, max(0, study.Fit.InductanceAt(1000).Value) // free: makers give it at 1 kHz (common practice); that of a small coil hardly changes
		}
	}
	if f.heard != "" {
		if err := s.hear(l, i, filepath.Join(s.Folder, f.heard)); err != nil {
			fail(err)
		}
	}
}

// sumOf returns what tells a file's content from others'.
func sumOf(path string) (sum [sha256.Size]byte, err error) {
	f, err := regular.Open(path)
	if err != nil {
		return sum, err
	}
	defer f.Close()
	h := sha256.New()
	_, err = io.Copy(h, f)
	h.Sum(sum[:0])
	return sum, err
}

// hear reads what a microphone heard of a driver.
func (s Source) hear(l *Lot, i int, path string) error {
	rate, channels, err := s.Impedance.Decode(path)
	if err != nil {
		return err
	}
	t := recording.Take{Rate: float64(rate), Samples: channels[0]}
	switch {
	case len(channels) > 2:
		return fmt.Errorf("%s: %s, must be 1 or 2: the microphone, and a wire from the player", path, prose.Count(len(channels), "channel", "channels"))
	case len(channels) == 2 && s.Reference >= 0:
		t.Samples, t.Reference = channels[1-s.Reference], channels[s.Reference]
	}
	m, err := recording.Analyse(t, s.Sweep, s.Options)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	l.bands[i], l.sign[i] = m.Bands, 1
	if m.Inverted {
		l.sign[i] = -1
	}
	if m.Absolute {
		l.at[i] = m.At
	}
	l.Drivers[i].Heard = &Heard{Late: nan}
	return nil
}

// copies rejects drivers whose table is that of another: nobody measures the same twice.
func (l *Lot) copies(all []files, sums [][sha256.Size]byte) {
	first := map[[sha256.Size]byte]string{}
	for i := range l.Drivers {
		d := &l.Drivers[i]
		if all[i].impedance == "" || d.Fit == nil {
			continue
		}
		if name, known := first[sums[i]]; known {
			d.Reasons = append(d.Reasons, Reason{Code: Copy, Other: name})
			continue
		}
		first[sums[i]] = d.Name
	}
}
