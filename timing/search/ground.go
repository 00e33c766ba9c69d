package search

import (
	"fmt"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/space"
	"pappus/timing/radiate"
)

// array lays out what settings make of the design.
func (r *run) array(set []Setting) (*layout.Array, error) {
	d, err := r.Job.Design.With(set...)
	if err != nil {
		return nil, err
	}
	return byBall(layout.Screen(d))
}

// byBall is an array as a search hears it: by the ball that stands for the body, whatever the
// design says. To solve for each body would take minutes.
func byBall(a *layout.Array, err error) (*layout.Array, error) {
	if err == nil && a.Timing.Model == radiate.BodyModel {
		a.Timing.Model = radiate.SphereModel
	}
	return a, err
}

// file is what the design file of settings is when it is read.
func (r *run) file(set []Setting) (*layout.Array, error) {
	text, err := (space.Variant{Settings: set}).Text(r.Job.Text)
	if err != nil {
		return nil, err
	}
	d, err := design.Parse(r.Job.Design.Path, text)
	if err != nil {
		return nil, err
	}
	return byBall(layout.Build(d))
}

// named is the design file of settings with a name for the array that they make, which it names,
// too; that of the design given stays.
func (r *run) named(set []Setting, a *layout.Array) ([]byte, error) {
	text, err := (space.Variant{Settings: set}).Text(r.Job.Text)
	if err != nil || len(set) == 0 {
		return text, err
	}
	a.Name = nameOf(a)
	return design.Set(text, "name", a.Name)
}

// nameOf names a design by what it is: "Ball dome of radius 121 mm, 31 drivers on 4
// channels".
func nameOf(a *layout.Array) string {
	body := a.Body.Name
	if a.Body.IsCut {
		body += " dome"
	}
	text := body + prose.Sprintf(" of radius %.4g mm, ", 1000*a.Body.Radius) + prose.Count(len(a.Mounts), "driver", "drivers")
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
