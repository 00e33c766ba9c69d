package page

import (
	"fmt"
	"path/filepath"

	"pappus/layout/design"
)

// outside tells of files that a design names and that are not in its folder or below: a text
// that somebody opens on the page is not to read, nor to tell of, what is elsewhere on the
// machine. What the design's own file names it may have from anywhere, since it is what the
// program was started for.
func (p *plans) outside(d *design.Design) (found []*design.Error) {
	if d == nil {
		return nil
	}
	values := d.Values()
	for _, key := range namers {
		if name, ok := values[key].(string); ok && p.elsewhere(name) {
			found = append(found, p.notHere(key, name))
		}
	}
	return found
}

// elsewhere tells whether a name leads out of the design's folder and is none of its own.
func (p *plans) elsewhere(name string) bool {
	return name != "" && !filepath.IsLocal(filepath.FromSlash(name)) && (p.own == nil || !p.own(name))
}

// notHere is the error of a name that leads out of the folder.
func (p *plans) notHere(key, name string) *design.Error {
	return &design.Error{File: p.name, Key: key, Value: name,
		Reason: "must name a file in the design's folder or below it: the page reads no other; copy the file there"}
}

// refuse is the faults of a text, and of changes to it, that name files elsewhere; nil: none.
func (p *plans) refuse(text string, set []change) error {
	d, _ := design.Examine(p.name, []byte(text))
	found := p.outside(d)
	for _, c := range set {
		for _, key := range namers {
			if name := fmt.Sprint(c.Value); c.Key == key && c.Value != nil && p.elsewhere(name) {
				found = append(found, p.notHere(key, name))
			}
		}
	}
	if len(found) == 0 {
		return nil
	}
	out := faultyFor()
	for _, f := range found {
		out.Faults = append(out.Faults, faultOf(f))
	}
	return out
}

// namesOf are the files that a text names.
func namesOf(text []byte) map[string]bool {
	out := map[string]bool{}
	d, _ := design.Examine("", text)
	if d == nil {
		return out
	}
	values := d.Values()
	for _, key := range namers {
		if name, ok := values[key].(string); ok {
			out[name] = true
		}
	}
	return out
}
