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
	_, faults := Examine(name, data)
	return faults
}

// Examine returns what Faults does, and the design as far as it can be read: what is
// wrong has its default or stands as it is. It is nil where the text is no TOML.
func Examine(name string, data []byte) (*Design, []*Error) {
	if len(data) > maxSize {
		return nil, []*Error{tooLarge(name, maxSize)}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	var in map[string]any
	if err := toml.Unmarshal(data, &in); err != nil {
		return nil, []*Error{malformed(name, data, err, aboutKeys)}
	}
	r := reader{Design: defaults(), file: name, lines: findLines(data)}
	r.Path = name
	r.top(in)
	r.fill()
	if len(r.faults) == 0 {
		r.check()
	}
	slices.SortStableFunc(r.faults, func(a, b *Error) int { return a.Line - b.Line })
	return r.Design, r.faults
}
