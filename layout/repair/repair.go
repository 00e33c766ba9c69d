package repair

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/prose"
)

// Change is a key's new value, as design.Set takes it; nil takes the key out.
type Change struct {
	Key   string
	Value any
}

// Result is a design's text after changes and what was mended in it.
type Result struct {
	Text []byte
	// Mended has one sentence for each thing that was mended, without a full stop: what
	// became of which key, and why; of a cure, what will become of it.
	Mended []string
}

// mostRemedies is how many remedies one change may take: more than there are keys that
// hang on another.
const mostRemedies = 40

// Edit makes changes to the text of a design and mends what they break elsewhere in
// it. What cannot be mended without touching the changes themselves stays a fault of
// the text, as does what was wrong before; name stands for its file, beside which the
// files that it names are looked for. An error is that of design.Set.
func Edit(name string, text []byte, changes []Change) (Result, error) {
	p := patient{name: name, text: text, former: text, mine: map[string]bool{}, done: map[string]int{}}
	for _, c := range changes {
		if err := p.set(c); err != nil {
			return Result{}, err
		}
		p.mine[c.Key] = true
	}
	if !slices.ContainsFunc(changes, bearing) {
		return Result{Text: p.text}, nil
	}
	p.mend()
	p.checkNumbers()
	return Result{p.text, p.said}, nil
}

// mostTimes is how often remedies may set one key: a radius that is brought into its
// range may have to be larger still for the drivers. More would go round in a ring.
const mostTimes = 2

// bearing tells whether a change may break anything: a chair or a seat that is moved, or
// another name, does not.
func bearing(c Change) bool {
	table, _, _ := strings.Cut(row.ReplaceAllString(c.Key, ""), ".")
	return !slices.Contains([]string{"name", "spot", "seat", "air"}, table)
}

// Cure returns a text that can be laid out for one that cannot, and what is mended in
// it; false where there is nothing to mend, or no way.
func Cure(name string, text []byte) (Result, bool) {
	p := patient{name: name, text: text, cure: true, done: map[string]int{}}
	if p.examine().first() == nil {
		return Result{}, false
	}
	p.mend()
	return Result{p.text, p.said}, len(p.said) > 0 && p.examine().first() == nil
}

// patient is a text under repair.
type patient struct {
	name   string
	text   []byte
	former []byte          // the text before the changes; nil: none
	was    *state          // of that text, once it is asked for
	is     *state          // of the text, as long as it is the same
	mine   map[string]bool // keys that a person has just set
	cure   bool            // somebody will see what is proposed before it is done
	done   map[string]int  // how often a remedy has set a key
	said   []string
}

// state is what a text comes to.
type state struct {
	design *design.Design // as far as it can be read
	faults []*design.Error
	array  *layout.Array // nil where it cannot be laid out
}

// before is what the text came to before the changes.
func (p *patient) before() state {
	if p.was == nil {
		p.was = &state{}
		if p.former != nil {
			*p.was = examine(p.name, p.former)
		}
	}
	return *p.was
}

// examine is what the text comes to.
func (p *patient) examine() state {
	if p.is == nil {
		s := examine(p.name, p.text)
		p.is = &s
	}
	return *p.is
}

// examine reads and lays out a text: for a large body a matter of some tenths of a
// second, so that it is done once for each text.
func examine(name string, text []byte) state {
	var s state
	s.design, s.faults = design.Examine(name, text)
	if len(s.faults) > 0 {
		return s
	}
	var err error
	if s.array, err = layout.Build(s.design); err != nil {
		s.faults = []*design.Error{asFault(err)}
	}
	return s
}

// asFault is an error of layout as a fault of the design.
func asFault(err error) *design.Error {
	var e *design.Error
	if errors.As(err, &e) {
		return e
	}
	return &design.Error{Reason: err.Error(), Err: err}
}

// drivers counts those of a layout; 0 where there is none.
func (s state) drivers() int {
	if s.array == nil {
		return 0
	}
	return len(s.array.Own())
}

// first returns the first fault, nil where there is none.
func (s state) first() *design.Error {
	if len(s.faults) == 0 {
		return nil
	}
	return s.faults[0]
}

// has tells whether a state has a fault of that key and kind.
func (s state) has(f *design.Error) bool {
	return slices.ContainsFunc(s.faults, func(g *design.Error) bool { return g.Key == f.Key && errors.Is(g, f.Err) })
}

// set makes one change.
func (p *patient) set(c Change) error {
	text, err := design.Set(p.text, c.Key, c.Value)
	if err == nil {
		p.text, p.is = text, nil
	}
	return err
}

// mend mends one fault after another, until there is none or none that can be.
func (p *patient) mend() {
	for range mostRemedies {
		now := p.examine()
		if !slices.ContainsFunc(now.faults, func(f *design.Error) bool { return p.try(now, f) }) {
			return
		}
	}
}

// try mends one fault by the first of its remedies that does, and tells whether any did.
func (p *patient) try(now state, f *design.Error) bool {
	if !p.cure && p.before().has(f) {
		return false // it was so before: not for this change to mend
	}
	for _, r := range (condition{p, now, f}).remedies() {
		if !p.may(r) {
			continue
		}
		trial, ok := p.with(r.set...)
		if !ok || bytes.Equal(trial.text, p.text) || trial.examine().has(f) {
			continue
		}
		p.said = append(p.said, r.words(p.text, now.design, p.cure))
		p.text, p.is = trial.text, trial.is
		for _, c := range r.set {
			p.done[c.Key]++
		}
		return true
	}
	return false
}

// with is a patient with changes, and whether they can be made.
func (p *patient) with(changes ...Change) (*patient, bool) {
	trial := &patient{name: p.name, text: p.text}
	return trial, !slices.ContainsFunc(changes, func(c Change) bool { return trial.set(c) != nil })
}

// cures tells whether a change leaves no fault.
func (p *patient) cures(c Change) bool {
	trial, ok := p.with(c)
	return ok && trial.examine().first() == nil
}

// may tells whether a remedy is for this patient: none undoes what a person has set.
func (p *patient) may(r remedy) bool {
	if slices.ContainsFunc(r.set, func(c Change) bool { return p.done[c.Key] >= mostTimes }) {
		return false // else two remedies could undo each other for ever
	}
	return p.cure || !r.ask && !slices.ContainsFunc(r.set, func(c Change) bool { return p.owns(c.Key) })
}

// owns tells whether a person has set a key, or one in a table of that name.
func (p *patient) owns(key string) bool {
	for own := range p.mine {
		if own == key || strings.HasPrefix(own, key+".") || strings.HasPrefix(own, key+"[") {
			return true
		}
	}
	return false
}

// remedy is a way to mend a fault.
type remedy struct {
	set []Change
	why string
	ask bool // only with somebody's consent
}

func to(key string, value any, why string) remedy {
	return remedy{set: []Change{{key, value}}, why: why}
}

func out(key, why string) remedy { return to(key, nil, why) }

// asked is a remedy that takes consent.
func (r remedy) asked() remedy {
	r.ask = true
	return r
}

// words says in one sentence what became of a text, which had these values, or will be.
func (r remedy) words(text []byte, d *design.Design, will bool) string {
	was, were, turned := "was", "were", "became"
	if will {
		was, were, turned = "is", "are", "becomes"
	}
	verb := func(of []string) string {
		if len(of) == 1 {
			return " " + was
		}
		return " " + were
	}
	values, given := d.Values(), design.Given(text)
	var taken, put, became []string
	for _, c := range r.set {
		name := c.Key[strings.Index(c.Key, ".")+1:]
		there := slices.Contains(given, c.Key)
		switch {
		case c.Value == nil && there:
			taken = append(taken, name+" = "+design.Literal(values[c.Key]))
		case c.Value == nil:
			taken = append(taken, "["+strings.NewReplacer("[", " ", "]", "").Replace(name)+"]")
		case !there:
			put = append(put, name+" = "+design.Literal(c.Value))
		case design.Literal(values[c.Key]) == "": // what stands there is no value
			became = append(became, name+" "+turned+" "+design.Literal(c.Value))
		default:
			became = append(became, fmt.Sprintf("%s %s %s in place of %s", name, turned, design.Literal(c.Value), design.Literal(values[c.Key])))
		}
	}
	parts := became
	if len(taken) > 0 {
		parts = append(parts, prose.Each(taken)+verb(taken)+" taken out")
	}
	if len(put) > 0 {
		parts = append(parts, prose.Each(put)+verb(put)+" put in")
	}
	return prose.Each(parts) + ": " + r.why
}
