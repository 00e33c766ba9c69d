package search

import (
	"fmt"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/space"
)

// array lays out what settings make of the design.
func (r *run) array(set []Setting) (*layout.Array, error) {
	d, err := r.Job.Design.With(set...)
	if err != nil {
		return nil, err
	}
	return layout.Screen(d)
}

// file returns the design file of settings, with a name, and what it is when it is read.
func (r *run) file(set []Setting) (text []byte, a *layout.Array, err error) {
	if text, err = (space.Variant{Settings: set}).Text(r.Job.Text); err != nil {
		return nil, nil, err
	}
	if len(set) > 0 {
		if a, err = parsed(r.Job.Design.Path, text); err != nil {
			return nil, nil, err
		}
		if text, err = design.Set(text, "name", nameOf(a)); err != nil {
			return nil, nil, err
		}
	}
	a, err = parsed(r.Job.Design.Path, text)
	return text, a, err
}

func parsed(path string, text []byte) (*layout.Array, error) {
	d, err := design.Parse(path, text)
	if err != nil {
		return nil, err
	}
	return layout.Build(d)
}

// nameOf names a design by what it is: "Dodecahedron 240 mm across, 12 drivers on 4 channels".
func nameOf(a *layout.Array) string {
	across := 2000 * a.Body.Radius
	cut := ""
	if a.Body.IsCut {
		cut = "cut "
	}
	text := prose.Sprintf("%s%s %.0f mm across, ", cut, a.Body.Name, across) + prose.Count(len(a.Mounts), "driver", "drivers")
	if n := a.Wiring.Channels; n > 0 {
		text += " on " + prose.Count(n, "channel", "channels")
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// setTo returns settings with one of them, or one more.
func setTo(set []Setting, key string, value any) []Setting {
	out := make([]Setting, 0, len(set)+1)
	for _, s := range set {
		if s.Key != key {
			out = append(out, s)
		}
	}
	return append(out, Setting{Key: key, Value: value})
}

// keyOf tells settings from others.
func keyOf(set []Setting) string {
	text := make([]string, len(set))
	for i, s := range set {
		text[i] = fmt.Sprint(s.Key, "=", s.Value)
	}
	return strings.Join(text, ";")
}
