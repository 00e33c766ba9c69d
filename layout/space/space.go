package space

import (
	"fmt"
	"sort"

	"pappus/layout/design"
	"pappus/layout/prose"
)

// Most is the greatest length of a space: ten million candidates are a week of two cores.
const Most = 10_000_000

// Space is all the layouts that a search may try. It holds none of them.
type Space struct {
	blocks []block
	ends   []int // of each block, in candidates
}

// block is a product of axes, the last of which changes fastest.
type block struct {
	always []design.Setting
	axes   []axis
}

// axis is what may stand for one key, or for several that go together.
type axis [][]design.Setting

// Variant is one candidate: by design.With, or as a text.
type Variant struct {
	Index    int
	Settings []design.Setting // what is made of the design, in order
}

// Of returns the space that a design's [search] asks for: the choices in it, or without any
// the usual ones for its driver and the drivers in stock. Errors are *design.Error.
func Of(d *design.Design) (*Space, error) {
	blocks := chosen(d)
	if len(d.Search.Vary) == 0 {
		var err error
		if blocks, err = usual(d); err != nil {
			return nil, err
		}
	}
	s := &Space{}
	for _, b := range blocks {
		n := b.len()
		if n == 0 {
			continue
		}
		if n > Most-s.Len() {
			return nil, &design.Error{File: d.Path, Line: d.Lines["search"], Key: "search", Err: design.ErrRange, Reason: prose.Sprintf(
				"more than %d layouts to try; must be fewer choices, or larger steps", Most)}
		}
		s.blocks, s.ends = append(s.blocks, b), append(s.ends, s.Len()+n)
	}
	if s.Len() == 0 {
		return nil, &design.Error{File: d.Path, Line: d.Lines["search"], Key: "search.drivers", Value: fmt.Sprint(d.Search.Drivers), Err: design.ErrConflict,
			Reason: "no body that is known takes so few of this driver within the width; must be more, or the width"}
	}
	return s, nil
}

// len is how many candidates a block has; Most+1 for any more.
func (b block) len() int {
	n := 1
	for _, a := range b.axes {
		if len(a) == 0 {
			return 0
		}
		if n > Most/len(a) {
			return Most + 1
		}
		n *= len(a)
	}
	return n
}

// Len returns how many candidates there are.
func (s *Space) Len() int {
	if len(s.ends) == 0 {
		return 0
	}
	return s.ends[len(s.ends)-1]
}

// Variant returns the candidate of a number from 0 to below Len.
func (s *Space) Variant(i int) Variant {
	at := sort.SearchInts(s.ends, i+1)
	b := s.blocks[at]
	rest := i
	if at > 0 {
		rest -= s.ends[at-1]
	}
	digits := make([]int, len(b.axes))
	for k := len(b.axes) - 1; k >= 0; k-- {
		digits[k] = rest % len(b.axes[k])
		rest /= len(b.axes[k])
	}
	v := Variant{Index: i, Settings: append([]design.Setting(nil), b.always...)}
	for k, a := range b.axes {
		v.Settings = append(v.Settings, a[digits[k]]...)
	}
	return v
}

// Text returns the text of the design that a candidate is, for that of the design that the
// space was made for: remarks, blank lines and the order of its keys stay.
func (v Variant) Text(base []byte) ([]byte, error) {
	text := base
	for _, s := range v.Settings {
		var err error
		if text, err = design.Set(text, s.Key, s.Value); err != nil {
			return nil, err
		}
	}
	return text, nil
}
