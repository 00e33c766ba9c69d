package layout

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"

	"pappus/layout/csvtable"
	"pappus/layout/design"
	"pappus/layout/prose"
)

const (
	leastMeasured     = 2      // lines
	mostMeasured      = 100000 // lines
	mostMeasuredBytes = 8 << 20
)

// WeightLowHz and WeightHighHz are the band in which drivers are compared and their sound
// weighed: the ear is keen in it. What a measured response must cover some of, too.
const WeightLowHz, WeightHighHz = 500, 4000

// MicrophonePoint is one line of a microphone's correction.
type MicrophonePoint struct {
	Frequency float64 // Hz
	Level     float64 // dB by which the microphone reads too high
}

// ReadImpedance reads a measured impedance from a CSV table of frequency in Hz, rising,
// magnitude in ohm and phase in degrees. Any error is a *design.Error that names the file,
// and the line where one is to blame.
func ReadImpedance(path string) ([]ImpedancePoint, error) {
	return measured(path, parseImpedance)
}

// parseImpedance is ReadImpedance of a file that has been read.
func parseImpedance(path string, data []byte) ([]ImpedancePoint, error) {
	return rising(path, data, func(v []float64) ImpedancePoint { return ImpedancePoint{Frequency: v[0], Ohm: v[1], Degrees: v[2]} },
		csvtable.Column{Name: "ohm", Low: 0.001, High: 1e9}, csvtable.Column{Name: "degrees", Low: -90, High: 90})
}

// ReadResponse reads a measured response from a CSV table of frequency in Hz, level in dB
// and phase in degrees, wrapped or not, as ReadImpedance does.
func ReadResponse(path string) ([]ResponsePoint, error) {
	return measured(path, parseResponse)
}

// parseResponse is ReadResponse of a file that has been read.
func parseResponse(path string, data []byte) ([]ResponsePoint, error) {
	out, err := rising(path, data, func(v []float64) ResponsePoint {
		return ResponsePoint{Frequency: v[0], Level: v[1], Phase: v[2] * math.Pi / 180}
	},
		csvtable.Column{Name: "level_db", Low: -500, High: 500}, csvtable.Column{Name: "phase_deg", Low: -1e6, High: 1e6})
	if err != nil {
		return nil, err
	}
	if low, high := out[0].Frequency, out[len(out)-1].Frequency; high <= WeightLowHz || low >= WeightHighHz {
		return nil, csvtable.Table{File: path}.Fault(0, "", prose.Sprintf("from %.10g to %.10g Hz; must cover some of %d to %d Hz",
			low, high, WeightLowHz, WeightHighHz), design.ErrRange)
	}
	return out, nil
}

// ReadMicrophone reads a microphone's correction from a CSV table of frequency in Hz and by
// how many dB the microphone reads too high there, as ReadImpedance does.
func ReadMicrophone(path string) ([]MicrophonePoint, error) {
	return measured(path, parseMicrophone)
}

// parseMicrophone is ReadMicrophone of a file that has been read.
func parseMicrophone(path string, data []byte) ([]MicrophonePoint, error) {
	return rising(path, data, func(v []float64) MicrophonePoint { return MicrophonePoint{v[0], v[1]} },
		csvtable.Column{Name: "level_db", Low: -100, High: 100})
}

// named reads a table that the design names at a key; nil where it names none.
func named[T any](d *design.Design, key, name string, read func(path string) ([]T, error)) ([]T, error) {
	if name == "" {
		return nil, nil
	}
	out, err := read(beside(d, name))
	return out, ofFile(d, key, name, err)
}

// ofFile says of an error of a file which key of the design names it, on which line, and what to
// name where there is no such file; nil for none.
func ofFile(d *design.Design, key, name string, err error) error {
	if err == nil {
		return nil
	}
	reason := prose.Error(err)
	if errors.Is(err, fs.ErrNotExist) && !strings.HasSuffix(reason, "?") { // which asks for one that is there
		reason += "; must be a file's name, beside the design or with its folder"
	}
	return fault(d, key, strconv.Quote(name), reason, err)
}

// measured reads a file of at most mostMeasuredBytes.
func measured[T any](path string, parse func(path string, data []byte) ([]T, error)) ([]T, error) {
	data, err := design.ReadFile(path, mostMeasuredBytes)
	if err != nil {
		return nil, err
	}
	return parse(path, data)
}

// rising reads a table of two lines or more whose first column is a frequency that rises
// from line to line.
func rising[T any](path string, data []byte, point func(v []float64) T, columns ...csvtable.Column) ([]T, error) {
	t := csvtable.Table{File: path, Columns: append([]csvtable.Column{{Name: "frequency_hz", Low: 1, High: 100000}}, columns...)}
	data, more := withNames(path, data, t.Columns)
	var out []T
	last := math.Inf(-1)
	err := t.Read(data, func(line int, v []float64) error {
		if len(out) == mostMeasured {
			return t.Fault(line, "", fmt.Sprintf("too many lines; must be at most %d", mostMeasured), design.ErrRange)
		}
		if math.Log(v[0]) <= math.Log(last) { // curves run over the logarithm
			e := t.Fault(line, t.Columns[0].Name, prose.Sprintf("must be above the one before, %.10g", last), design.ErrRange)
			e.Value = prose.Sprintf("%.10g", v[0])
			return e
		}
		last = v[0]
		out = append(out, point(v))
		return nil
	})
	if fault := (*design.Error)(nil); more > 0 && errors.As(err, &fault) && fault.Line > 0 {
		fault.Line -= more
	}
	if err == nil && len(out) < leastMeasured {
		err = t.Fault(0, "", fmt.Sprintf("%s; must be at least %d", prose.Count(len(out), "line of numbers", "lines of numbers"), leastMeasured), design.ErrRange)
	}
	return out, err
}
