package space

import (
	"math"
	"slices"

	"pappus/layout/design"
)

// Where a range has no step, numbers above 0 go up by a fourteenth at a time, in rangeSteps steps
// at most; others, and those that begin at 0 or below, are parted into fewSteps.
const (
	rangeSteps = 16
	fewSteps   = 4
)

// values lists what a key may be.
func values(v design.Vary) []any {
	if v.Choices != nil {
		return v.Choices
	}
	var out []any
	for _, n := range numbers(v) {
		if v.Whole {
			out = append(out, int(n))
			continue
		}
		out = append(out, n)
	}
	return out
}

// numbers lists those of a range, both ends among them where there is no step.
func numbers(v design.Vary) []float64 {
	var out []float64
	add := func(n float64) {
		if v.Whole {
			n = math.Round(n)
		}
		if len(out) == 0 || n > out[len(out)-1] {
			out = append(out, n)
		}
	}
	switch {
	case v.Step > 0:
		for i := 0; ; i++ {
			n := v.From + float64(i)*v.Step
			if n > v.To+1e-9*v.Step {
				return out
			}
			add(min(n, v.To))
		}
	case v.Whole && v.To-v.From < rangeSteps:
		for n := v.From; n <= v.To; n++ {
			add(n)
		}
	case v.From > 0:
		steps := min(rangeSteps, math.Ceil(math.Log(v.To/v.From)/math.Log(1+radiusStep)))
		for i := range int(steps) + 1 {
			add(between(v, math.Pow(v.To/v.From, float64(i)/max(steps, 1))*v.From))
		}
	default:
		for i := range fewSteps + 1 {
			add(between(v, v.From+(v.To-v.From)*float64(i)/fewSteps))
		}
	}
	return out
}

// between rounds a number within a range to four digits, and keeps it in.
func between(v design.Vary, n float64) float64 {
	if size := math.Abs(n); size > 0 {
		unit := math.Pow(10, math.Floor(math.Log10(size))-3)
		n = math.Round(n/unit) * unit
	}
	return min(max(n, v.From), v.To)
}

// gates are the keys that others go with: each of their values has a block of its own, which
// leaves out what would have no use.
var gates = []string{"body.shape", "mounts.on"}

// chosen returns the blocks of the choices that a design gives.
func chosen(d *design.Design) []block {
	blocks := [][]design.Setting{nil}
	for _, gate := range gates {
		i := slices.IndexFunc(d.Search.Vary, func(v design.Vary) bool { return v.Key == gate })
		if i < 0 {
			continue
		}
		var next [][]design.Setting
		for _, b := range blocks {
			for _, v := range values(d.Search.Vary[i]) {
				next = append(next, append(slices.Clone(b), design.Setting{Key: gate, Value: v}))
			}
		}
		blocks = next
	}
	var out []block
	for _, b := range blocks {
		out = append(out, chosenBlock(d, b))
	}
	return out
}

// chosenBlock is the block of some choices of the gates.
func chosenBlock(d *design.Design, gated []design.Setting) block {
	b := block{always: slices.Clone(gated)}
	is := func(key string) string {
		for _, s := range b.always {
			if s.Key == key {
				text, _ := s.Value.(string)
				return text
			}
		}
		text, _ := d.Get(key).(string)
		return text
	}
	idle := idleKeys(d, is)
	for _, v := range d.Search.Vary {
		if slices.Contains(gates, v.Key) || slices.Contains(idle, v.Key) {
			continue
		}
		var a axis
		for _, value := range values(v) {
			a = append(a, []design.Setting{{Key: v.Key, Value: value}})
		}
		b.axes = append(b.axes, a)
	}
	b.always = append(b.always, b.loose(d, idle)...)
	return b
}

// idleKeys are the keys without use for a shape and a way to place drivers.
func idleKeys(d *design.Design, is func(string) string) []string {
	shape, on := is("body.shape"), is("mounts.on")
	varied := func(key string) bool {
		return slices.ContainsFunc(d.Search.Vary, func(v design.Vary) bool { return v.Key == key })
	}
	var out []string
	idle := func(yes bool, keys ...string) {
		if yes {
			out = append(out, keys...)
		}
	}
	idle(shape != "geodesic", "body.base", "body.subdivision", "body.m", "body.n")
	idle(shape != "prism" && shape != "antiprism", "body.sides", "body.height_mm")
	idle(shape != "file", "body.file")
	idle(shape == "ball", "body.dual")
	idle(varied("body.m"), "body.subdivision")
	idle(varied("body.subdivision") && !varied("body.m"), "body.m", "body.n")
	even := on == "even" || shape == "ball" && !varied("mounts.on")
	idle(!even, "mounts.count", "mounts.over", "mounts.symmetry")
	idle(on != "list", "mounts.list")
	return out
}

// loose settles what the choices of a block leave open: keys without use go, a ball has even
// places, numbers of places that were another body's go, and all channels are used.
func (b block) loose(d *design.Design, idle []string) []design.Setting {
	var out []design.Setting
	set := func(key string) bool {
		is := func(s design.Setting) bool { return s.Key == key }
		return slices.ContainsFunc(b.always, is) || slices.ContainsFunc(b.axes, func(a axis) bool { return slices.ContainsFunc(a[0], is) })
	}
	for _, key := range idle {
		if given(d, key) && !set(key) {
			out = append(out, design.Setting{Key: key})
		}
	}
	ball := slices.ContainsFunc(b.always, func(s design.Setting) bool { return s.Key == "body.shape" && s.Value == "ball" })
	if on := d.Mounts.On; ball && !set("mounts.on") && on != "even" && on != "list" {
		out = append(out, design.Setting{Key: "mounts.on", Value: "even"})
	}
	even := !slices.Contains(idle, "mounts.count")
	if even && !set("mounts.count") && d.Mounts.Count == 0 {
		out = append(out, design.Setting{Key: "mounts.count", Value: d.Search.Drivers})
	}
	if moves(d) {
		for _, key := range []string{"mounts.skip", "channel"} {
			if given(d, key) && !set(key) {
				out = append(out, design.Setting{Key: key})
			}
		}
	}
	if k := d.Search.Channels; k > 0 && !set("wiring.channels") && k != d.Wiring.Channels && (moves(d) || len(d.Channels) == 0) {
		out = append(out, design.Setting{Key: "wiring.channels", Value: k})
	}
	return out
}

// moves tells whether choices change which places there are.
func moves(d *design.Design) bool {
	for _, v := range d.Search.Vary {
		for _, key := range []string{"body.shape", "body.base", "body.subdivision", "body.m", "body.n", "body.sides", "body.file", "body.dual",
			"body.cut_height_mm", "mounts.on", "mounts.count", "mounts.over", "mounts.symmetry", "mounts.list"} {
			if v.Key == key {
				return true
			}
		}
	}
	return false
}
