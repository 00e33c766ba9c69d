package dampinglog

import (
	"math"
	"path/filepath"
	"strings"
)

// Log is what a damping log holds.
type Log struct {
	Path   string // for messages; files of trials are looked for beside it
	Fits   Fits
	Trials []Trial
}

// Fits is the most that there is room for. NaN, or -1 vents: not said.
type Fits struct {
	StuffingG float64
	DepthMM   float64
	Vents     int
}

// unsaid is when nothing is said of what fits.
func unsaid() Fits { return Fits{math.NaN(), math.NaN(), -1} }

// Said tells whether anything is said of what fits.
func (f Fits) Said() bool { return !math.IsNaN(f.StuffingG) || !math.IsNaN(f.DepthMM) || f.Vents >= 0 }

// Trial is one state of the box, and what was measured then.
type Trial struct {
	Date      string  // as 2025-03-01; empty: not noted
	Vents     int     // openings, 0 to 1000
	VentMM    float64 // across each, 0.5 to 200; 0 where there are none
	FillG     float64 // of filling in each, 0 to 10000; 0: none, as without vents
	StuffingG float64 // 0 to 100000
	DepthMM   float64 // of the stuffing as packed, 0 to 5000; 0: not measured
	Impedance string  // path of a table beside the log
	Response  string  // path of a table beside the log; empty: none
	Remark    string
}

// Beside returns the log's path for a design's: mine.damping.toml for mine.toml.
func Beside(design string) string {
	return strings.TrimSuffix(design, filepath.Ext(design)) + ".damping.toml"
}

// File returns the path of a file that a trial names.
func (l *Log) File(name string) string {
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(filepath.Dir(l.Path), name)
}

// Seen returns a file's path as seen from the log, which File turns back.
func (l *Log) Seen(name string) (string, error) {
	folder, err := filepath.Abs(filepath.Dir(l.Path))
	if err != nil {
		return "", err
	}
	file, err := filepath.Abs(name)
	if err != nil {
		return "", err
	}
	relative, err := filepath.Rel(folder, file)
	return filepath.ToSlash(relative), err
}
