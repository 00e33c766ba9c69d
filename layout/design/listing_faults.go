package design

import (
	"bytes"
	"slices"

	"github.com/pelletier/go-toml/v2"
)

// Faults reads a design as Parse does and returns all that is wrong with it, in
// the order of the file; none where Parse gives no error. Conflicts between values
// are told only where each value is a possible one.
func Faults(name string, data []byte) []*Error {
	if len(data) > maxSize {
		return []*Error{tooLarge(name, maxSize)}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	var in map[string]any
	if err := toml.Unmarshal(data, &in); err != nil {
		return []*Error{malformed(name, data, err, aboutKeys)}
	}
	r := reader{Design: defaults(), file: name, lines: findLines(data)}
	r.Path = name
	if r.top(in); len(r.faults) == 0 {
		r.fill()
		r.check()
	}
	slices.SortStableFunc(r.faults, func(a, b *Error) int { return a.Line - b.Line })
	return r.faults
}
