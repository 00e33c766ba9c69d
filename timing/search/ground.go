package search

import (
	"fmt"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
)

// space is what there is to choose from, by index in mixed radix.
type space struct {
	design *design.Design
	text   []byte
	vary   []vary
}

// vary is a key and what it may be.
type vary struct {
	key    string
	values []any
}

// spaceOf returns a job's space: balls with even places.
func spaceOf(job Job) (*space, error) {
	s := &space{design: job.Design, text: job.Text}
	for _, kv := range []Setting{{"mounts.skip", nil}, {"body.base", nil}, {"body.subdivision", nil}, {"body.shape", "ball"}, {"mounts.on", "even"}} {
		var err error
		if s.text, err = design.Set(s.text, kv.Key, kv.Value); err != nil {
			return nil, err
		}
	}
	s.vary = []vary{
		{"mounts.count", []any{24, 36, 48, 60, 72, 96}},
		{"body.radius_mm", []any{90, 105, 120, 135, 150}},
		{"body.cut_height_mm", []any{-60, -30, 0}},
		{"placing.yaw_deg", []any{0, 10, 20}},
		{"wiring.channels", []any{2, 4, 6}},
	}
	return s, nil
}

func (s *space) Len() int {
	n := 1
	for _, v := range s.vary {
		n *= len(v.values)
	}
	return n
}

// at returns the settings of a candidate.
func (s *space) at(i int) []Setting {
	out := make([]Setting, len(s.vary))
	for k := len(s.vary) - 1; k >= 0; k-- {
		v := s.vary[k]
		out[k] = Setting{v.key, v.values[i%len(v.values)]}
		i /= len(v.values)
	}
	return out
}

// file returns the design file of settings.
func (s *space) file(set []Setting) ([]byte, error) {
	text := s.text
	for _, v := range set {
		var err error
		if text, err = design.Set(text, v.Key, v.Value); err != nil {
			return nil, err
		}
	}
	return text, nil
}

// array lays settings out.
func (s *space) array(set []Setting) (*layout.Array, []byte, error) {
	text, err := s.file(set)
	if err != nil {
		return nil, nil, err
	}
	d, err := design.Parse(s.design.Path, text)
	if err != nil {
		return nil, nil, err
	}
	a, err := layout.Build(d)
	return a, text, err
}

// name says what settings make in a few words.
func (s *space) name(a *layout.Array) string {
	return strings.TrimSpace(fmt.Sprintf("%s, %d drivers on %d channels", a.Name, len(a.Mounts), a.Wiring.Channels))
}
