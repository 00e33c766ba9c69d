package dampinglog

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"pappus/layout/design"
	"pappus/layout/prose"

	"github.com/pelletier/go-toml/v2"
)

const (
	maxSize    = 1 << 20 // bytes
	mostTrials = 1000
	longest    = 200 // letters of a remark or a path
)

// Read reads a log. Where there is no such file the log is empty. Any error is a
// *design.Error.
func Read(path string) (*Log, error) {
	data, err := design.ReadFile(path, maxSize)
	if errors.Is(err, fs.ErrNotExist) {
		return &Log{Path: path, Fits: unsaid()}, nil
	}
	if err != nil {
		return nil, err
	}
	return Parse(path, data)
}

// Parse checks a log that has been read already. Any error is a *design.Error.
func Parse(name string, data []byte) (*Log, error) {
	if len(data) > maxSize {
		return nil, &design.Error{File: name, Reason: fmt.Sprintf("too large; must be at most %d bytes", maxSize), Err: design.ErrTooLarge}
	}
	text := bytes.TrimPrefix(data, []byte("\ufeff"))
	var in map[string]any
	if err := toml.Unmarshal(text, &in); err != nil {
		return nil, malformed(name, err)
	}
	r := reader{Log: Log{Path: name, Fits: unsaid()}, lines: findLines(text)}
	r.top(in)
	if len(r.faults) > 0 {
		return nil, slices.MinFunc(r.faults, func(a, b *design.Error) int { return a.Line - b.Line })
	}
	return &r.Log, nil
}

// malformed is the error for a text that is not TOML.
func malformed(name string, err error) error {
	e := &design.Error{File: name, Err: design.ErrSyntax}
	var d *toml.DecodeError
	if errors.As(err, &d) {
		e.Line, _ = d.Position()
	}
	reason := []rune(strings.TrimPrefix(err.Error(), "toml: "))
	e.Reason = "not readable as TOML: " + string(reason[:min(len(reason), longest)])
	return e
}

// reader fills a log and gathers what is wrong.
type reader struct {
	Log
	lines  map[string]int
	faults []*design.Error
}

func (r *reader) fault(path string, v any, reason string, kind error) {
	line, ok := r.lines[path]
	if !ok { // a row of a list on one line
		name, _, _ := strings.Cut(path, "[")
		line = r.lines[name]
	}
	r.faults = append(r.faults, &design.Error{File: r.Path, Line: line, Key: path, Value: written(v), Reason: reason, Err: kind})
}

// written gives a value about as the file has it; nothing for nil.
func written(v any) string {
	switch v := v.(type) {
	case nil:
		return ""
	case string:
		s := []rune(v)
		return strconv.Quote(string(s[:min(len(s), 40)]))
	case int64, float64, bool:
		return fmt.Sprint(v)
	}
	return "…"
}

func (r *reader) top(in map[string]any) {
	for _, name := range slices.Sorted(maps.Keys(in)) {
		switch name {
		case "fits":
			r.table(name, in[name], r.Fits.keys())
		case "trial":
			r.trials(in[name])
		default:
			r.fault(clip(name), nil, "not a known key; known here: [fits], [[trial]]", design.ErrUnknownKey)
		}
	}
}

func clip(name string) string {
	s := []rune(name)
	return string(s[:min(len(s), 60)])
}

func (r *reader) trials(v any) {
	rows, ok := v.([]any)
	if !ok {
		r.fault("trial", nil, "must be tables that begin with [[trial]]", design.ErrType)
		return
	}
	for i, row := range rows {
		at := fmt.Sprintf("trial[%d]", i+1)
		if i == mostTrials {
			r.fault(at, nil, fmt.Sprintf("too many trials; must be at most %d", mostTrials), design.ErrRange)
			return
		}
		var t Trial
		if !r.table(at, row, t.keys()) {
			continue
		}
		if t.Vents > 0 && t.VentMM == 0 {
			r.fault(at, nil, "vent_mm is missing; must be from 0.5 to 200 where there are vents", design.ErrMissing)
		}
		if t.Impedance == "" {
			r.fault(at, nil, "impedance is missing; must be the name of a table", design.ErrMissing)
		}
		if t.Vents == 0 {
			t.VentMM = 0
		}
		if t.StuffingG == 0 {
			t.DepthMM = 0
		}
		r.Trials = append(r.Trials, t)
	}
}

// table reads the keys of one table, and tells whether it is one.
func (r *reader) table(at string, v any, keys []key) bool {
	in, ok := v.(map[string]any)
	if !ok {
		r.fault(at, nil, "must be a table", design.ErrType)
		return false
	}
	for _, name := range slices.Sorted(maps.Keys(in)) {
		i := slices.IndexFunc(keys, func(k key) bool { return k.name == name })
		path := at + "." + clip(name)
		if i < 0 {
			names := make([]string, len(keys))
			for i, k := range keys {
				names[i] = k.name
			}
			r.fault(path, nil, "not a known key; known here: "+strings.Join(names, ", "), design.ErrUnknownKey)
			continue
		}
		if err := keys[i].set(in[name]); err != nil {
			r.fault(path, in[name], "must be "+keys[i].allowed, err)
		}
	}
	return true
}

// key is one key of a table: what it may be, and where it goes. set gives
// design.ErrType or design.ErrRange.
type key struct {
	name, allowed string
	set           func(v any) error
}

func (f *Fits) keys() []key {
	return []key{
		number("stuffing_g", &f.StuffingG, 0, 100000),
		number("depth_mm", &f.DepthMM, 0, 5000),
		whole("vents", &f.Vents, 0, 1000),
	}
}

func (t *Trial) keys() []key {
	across := number("vent_mm", &t.VentMM, 0, 200)
	any0, across0 := across.set, "0 without vents, or a number from 0.5 to 200"
	across.allowed = across0
	across.set = func(v any) error {
		if err := any0(v); err != nil {
			return err
		}
		if t.VentMM > 0 && t.VentMM < 0.5 {
			return design.ErrRange
		}
		return nil
	}
	return []key{
		{"date", "a date such as 2025-03-01, without quotes", func(v any) error {
			d, ok := v.(toml.LocalDate)
			if !ok {
				return design.ErrType
			}
			t.Date = d.String()
			return nil
		}},
		whole("vents", &t.Vents, 0, 1000),
		across,
		number("stuffing_g", &t.StuffingG, 0, 100000),
		number("depth_mm", &t.DepthMM, 0, 5000),
		text("impedance", &t.Impedance), text("response", &t.Response), text("remark", &t.Remark),
	}
}

func number(name string, to *float64, low, high float64) key {
	return key{name, prose.Sprintf("a number from %g to %g", low, high), func(v any) error {
		var n float64
		switch v := v.(type) {
		case float64:
			n = v
		case int64:
			n = float64(v)
		default:
			return design.ErrType
		}
		if !(n >= low && n <= high) {
			return design.ErrRange
		}
		*to = n
		return nil
	}}
}

func whole(name string, to *int, low, high int64) key {
	return key{name, fmt.Sprintf("a whole number from %d to %d", low, high), func(v any) error {
		n, ok := v.(int64)
		if !ok {
			return design.ErrType
		}
		if n < low || n > high {
			return design.ErrRange
		}
		*to = int(n)
		return nil
	}}
}

func text(name string, to *string) key {
	return key{name, fmt.Sprintf("text in quotes, 1 to %d letters on one line", longest), func(v any) error {
		s, ok := v.(string)
		if !ok {
			return design.ErrType
		}
		if strings.TrimSpace(s) == "" || len([]rune(s)) > longest || strings.ContainsFunc(s, func(c rune) bool { return !unicode.IsPrint(c) }) {
			return design.ErrRange
		}
		*to = s
		return nil
	}}
}
