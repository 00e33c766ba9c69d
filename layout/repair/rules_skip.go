package repair

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

func contains(list []int, v int) bool { return slices.Contains(list, v) }

// skipRules take out the numbers of places that the body does not have.
func skipRules(p *patient, now state, f *design.Error) []remedy {
	if !errors.Is(f.Err, layout.ErrNoSuchMount) {
		return nil
	}
	name, places := p.places()
	if name == "" {
		return given(now, "it leaves no place for a driver", "mounts.keep_clear_below_deg", "mounts.keep_clear_deg", "body.cut_height_mm")
	}
	var left []any
	for _, id := range now.design.Mounts.Skip {
		if _, there := places[id]; there {
			left = append(left, id)
		}
	}
	why := fmt.Sprintf("%s has %s", name, prose.Count(len(places), "place", "places"))
	if len(left) == 0 {
		return []remedy{out(f.Key, why)}
	}
	return []remedy{to(f.Key, left, why)}
}

// places gives the body's name and all its places, as directions by their number,
// those that stay empty too; nothing where they cannot be laid out.
func (p *patient) places() (name string, at map[int]r3.Vec) {
	d, _ := design.Examine(p.name, p.text)
	if d == nil {
		return "", nil
	}
	all := *d
	all.Mounts.Skip, all.Channels, all.Wiring.Channels = nil, nil, 0
	a, err := layout.Build(&all)
	if err != nil {
		return "", nil
	}
	at = make(map[int]r3.Vec, len(a.Mounts))
	for _, m := range a.Mounts {
		at[m.ID] = r3.Unit(m.Point)
	}
	return named(d), at
}

// named is how a body is called.
func named(d *design.Design) string {
	name := article(d.Body.Shape)
	switch {
	case d.Body.Shape == "file":
		name = "the body of " + d.Body.File
	case d.Body.HasCut:
		name += ", cut as this one is,"
	}
	return name
}

// article puts one before a word.
func article(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

// checkNumbers looks after a change whether the numbers that the design names are still
// those of the places that they were. A place that stays empty for a cable must not
// become another one unnoticed.
func (p *patient) checkNumbers() {
	now := p.examine()
	if now.array == nil || len(now.design.Mounts.Skip) == 0 || p.mine["mounts.skip"] || !p.relays() {
		return
	}
	if p.before().array == nil {
		return
	}
	old := patient{name: p.name, text: p.former}
	_, was := old.places()
	_, is := p.places()
	id := moves(now.design.Mounts.Skip, was, is)
	if id == 0 {
		return
	}
	r := out("mounts.skip", fmt.Sprintf("%d is another place on this body", id))
	words := r.words(p.text, now.design, p.cure)
	if p.set(r.set[0]) == nil {
		p.said = append(p.said, words)
		p.mend()
	}
}

// relays tells whether any change is one of the body or of its mounts.
func (p *patient) relays() bool {
	for key := range p.mine {
		if strings.HasPrefix(key, "body.") || strings.HasPrefix(key, "mounts.") || strings.HasPrefix(key, "driver.") {
			return true
		}
	}
	return false
}

// moves gives the first number whose place has moved by more than half of the way to its
// neighbour; 0: none has.
func moves(ids []int, was, is map[int]r3.Vec) int {
	for _, id := range ids {
		from, known := was[id]
		to, there := is[id]
		if !known || !there {
			continue
		}
		nearest := math.Inf(1)
		for other, at := range is {
			if other != id {
				nearest = min(nearest, angle(to, at))
			}
		}
		if angle(from, to) > nearest/2 {
			return id
		}
	}
	return 0
}

func angle(a, b r3.Vec) float64 { return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b)) }
