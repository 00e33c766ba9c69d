package repair

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"pappus/layout"
	"pappus/layout/design"
)

// bodyRules are for faults of [body].
func bodyRules(p *patient, now state, f *design.Error) []remedy {
	b := now.design.Body
	switch f.Key {
	case "body.radius_mm":
		return p.radii()
	case "body.sides":
		return []remedy{to(f.Key, begin[f.Key], article(b.Shape)+" needs a number of sides")}
	case "body.m":
		return []remedy{
			out("body.subdivision", "a geodesic is divided by it, or by m and n"),
			out("body.m", "a geodesic is divided by it and n, or by subdivision"),
		}
	case "body.n":
		return stepRules(b)
	case "body.dual":
		return []remedy{
			out("body.cut_height_mm", "only a whole body has a dual").asked(),
			out("body.dual", "a ball, or a body that is cut, has none"),
		}
	case "body.cut_height_mm":
		return cutRules(p, now)
	case "body.wall_mm":
		return []remedy{to(f.Key, min(3, tenthDown(b.RadiusMM/10)), "a wall must be thinner than the body's radius")}
	case "body.shape":
		return []remedy{
			out("body.height_mm", "of this height it cannot be"),
			to(f.Key, "geodesic", "the shape that stood there cannot be made so").asked(),
		}
	}
	return nil
}

// radii gives the least of some radii that the drivers have room on.
func (p *patient) radii() []remedy {
	const key = "body.radius_mm"
	for r := 20.0; r < 5000; r *= 1.5 {
		trial := patient{name: p.name, text: p.text}
		if trial.set(Change{key, math.Round(r)}) == nil && trial.examine().fault() == nil {
			return []remedy{to(key, math.Round(r), "the drivers need room").asked()}
		}
	}
	return nil
}

// stepRules are for a geodesic's steps.
func stepRules(b design.Body) []remedy {
	if b.M == 0 {
		return []remedy{
			{set: []Change{{"body.subdivision", nil}, {"body.m", max(b.Subdivision, 1)}}, why: "a geodesic with steps to the side is divided by m and n"},
			out("body.n", "no m goes with it"),
		}
	}
	const why = "together they are at most 16"
	return []remedy{to("body.n", 16-b.M, why), to("body.m", max(16-b.N, 1), why)}
}

// cutRules are for a cut that leaves nothing, or is beyond the body.
func cutRules(p *patient, now state) []remedy {
	const why = "the body ends below that height"
	var list []remedy
	if was := p.before().design; was != nil && was.Body.HasCut && was.Body.RadiusMM > 0 {
		scaled := tenthDown(was.Body.CutHeightMM * now.design.Body.RadiusMM / was.Body.RadiusMM)
		list = append(list, to("body.cut_height_mm", scaled, "as far up the body as before"))
	}
	return append(list, to("body.cut_height_mm", 0.0, why), out("body.cut_height_mm", why))
}

// mountRules are for faults of [mounts].
func mountRules(p *patient, now state, f *design.Error) []remedy {
	switch {
	case f.Key == "mounts.on":
		return []remedy{evenly(p, now, "a ball has no faces, corners or edges, so the drivers are spread evenly")}
	case f.Key == "mounts.over":
		return []remedy{
			to("body.cut_height_mm", 0.0, "a dome is a body that is cut").asked(),
			out("mounts.over", "a body without a cut is no dome"),
		}
	case errors.Is(f.Err, layout.ErrNoMounts):
		const why = "else no driver is left"
		return given(now, why, "mounts.skip", "mounts.keep_clear_below_deg", "mounts.keep_clear_deg", "body.cut_height_mm")
	case errors.Is(f.Err, layout.ErrTooManyMounts):
		return p.fewer(now, fmt.Sprintf("more would be over %d drivers", design.MaxDrivers))
	}
	return nil
}

// given takes one of the keys out that there are, or the first two at once.
func given(now state, why string, keys ...string) []remedy {
	values := now.design.Values()
	var list []remedy
	for _, key := range keys {
		v := values[key]
		if l, ok := v.([]any); v == nil || ok && len(l) == 0 {
			continue
		}
		list = append(list, out(key, why))
	}
	return list
}

// fewer places fewer drivers: the most that can be.
func (p *patient) fewer(now state, why string) []remedy {
	b := now.design.Body
	var list []remedy
	for _, way := range []struct {
		key string
		n   int
	}{{"body.subdivision", b.Subdivision}, {"body.m", b.M}, {"mounts.count", now.design.Mounts.Count}} {
		if way.n > 1 {
			if n := p.most(way.key, way.n); n > 0 {
				list = append(list, to(way.key, n, why).asked())
			}
		}
	}
	return append(list, to("mounts.on", "faces", why).asked(), out("body.n", why).asked())
}

// most returns the most below n that a key may be for the design to be laid out; 0 where
// none is. More drivers never fit better.
func (p *patient) most(key string, n int) int {
	fails := func(n int) bool {
		trial := patient{name: p.name, text: p.text}
		return trial.set(Change{key, n}) != nil || trial.examine().fault() != nil
	}
	return sort.Search(n-1, func(i int) bool { return fails(i + 1) })
}

// evenly spreads as many drivers as there were over what there is of the body.
func evenly(p *patient, now state, why string) remedy {
	r := remedy{why: why}
	if now.design.Mounts.On != "even" {
		r.set = append(r.set, Change{"mounts.on", "even"})
	}
	r.set = append(r.set, Change{"mounts.count", p.many(now)})
	if now.design.Body.HasCut {
		r.set = append(r.set, Change{"mounts.over", "dome"}) // else those under the cut would be lost
	}
	return r
}

// fewDrivers is how many are spread where nothing tells how many there were: as many
// as the starter's remark has.
const fewDrivers = 60

// many returns how many drivers there were, or how many the body has places for.
func (p *patient) many(now state) int {
	if n := p.before().drivers(); n > 0 {
		return n
	}
	trial := patient{name: p.name, text: p.text}
	for _, key := range []string{"mounts.on", "mounts.count", "mounts.over", "mounts.list", "mounts.symmetry", "mounts.skip"} {
		_ = trial.set(Change{key, nil})
	}
	if n := trial.examine().drivers(); n > 0 {
		return n
	}
	return fewDrivers
}

// countRules are for even places without a number, or with one that cannot be.
func countRules(p *patient, now state, f *design.Error) []remedy {
	if errors.Is(f.Err, design.ErrMissing) || errors.Is(f.Err, design.ErrRange) {
		return []remedy{evenly(p, now, "even places need a number; there were as many drivers before")}
	}
	list := []remedy{out("mounts.symmetry", f.Reason)}
	return append(list, given(now, f.Reason, "mounts.keep_clear_deg")...)
}

// fileRules are for files that are missing or not good: only a person has them, so
// what needs none takes their place, if it is wished.
func fileRules(p *patient, now state, f *design.Error) []remedy {
	why := "there is no file for it yet: put one beside the design and its name here"
	if f.Key == "" {
		why = f.Reason
	}
	b, m, d := now.design.Body, now.design.Mounts, now.design.Driver
	var list []remedy
	if b.Shape == "file" {
		list = append(list, remedy{set: append([]Change{{"body.shape", "geodesic"}}, taken("body.file", b.File)...), why: why})
	}
	if m.On == "list" {
		on := Change{"mounts.on", "faces"}
		if b.Shape == "ball" {
			on.Value = "even"
		}
		list = append(list, remedy{set: append([]Change{on}, taken("mounts.list", m.List)...), why: why})
	}
	for _, named := range [][2]string{{"driver.response", d.Response}, {"driver.impedance", d.Impedance}} {
		if named[1] != "" {
			list = append(list, out(named[0], why))
		}
	}
	for i := range list {
		list[i].ask = true
	}
	return list
}

// taken takes a key out that has a value.
func taken(key, value string) []Change {
	if value == "" {
		return nil
	}
	return []Change{{key, nil}}
}
