package repair

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"sort"
	"strings"

	"pappus/layout"
	"pappus/layout/box"
	"pappus/layout/design"
	"pappus/layout/prose"
)

// condition is a text with a fault, as a rule sees it.
type condition struct {
	*patient
	state
	fault *design.Error
}

// rule gives the remedies for a fault of a key, or of any key of a table, that is of a
// kind, or of any; the best first.
type rule struct {
	key      string // empty: any
	kind     error  // nil: any
	remedies func(condition) []remedy
}

// aFile is the key of a rule for a fault in a file that the design names.
const aFile = "a file"

// rules are all there are; for a fault it is the first that it falls under.
var rules = []rule{
	{"", design.ErrIdle, idle},
	{"surface", design.ErrMissing, missing},
	{"room", design.ErrMissing, missing},
	{"spot", design.ErrMissing, missing},
	{"woofer", design.ErrMissing, missing},
	{aFile, nil, withoutFiles},
	{"body.file", nil, withoutFiles},
	{"mounts.list", nil, withoutFiles},

	{"body.radius_mm", box.ErrFull, airless},
	{"body.radius_mm", nil, radii},
	{"body.sides", nil, func(c condition) []remedy {
		return []remedy{to("body.sides", begin["body.sides"], article(c.design.Body.Shape)+" needs a number of sides")}
	}},
	{"body.m", nil, always(
		out("body.subdivision", "a geodesic is divided by it, or by m and n"),
		out("body.m", "a geodesic is divided by it and n, or by subdivision"))},
	{"body.n", nil, steps},
	{"body.dual", nil, always(
		out("body.cut_height_mm", "only a whole body has a dual").asked(),
		out("body.dual", "a ball, or a body that is cut, has none"))},
	{"body.cut_height_mm", nil, cutElsewhere},
	{"body.wall_mm", nil, func(c condition) []remedy {
		return []remedy{to("body.wall_mm", min(3, tenthDown(c.number("body.radius_mm")/10)), "a wall must be thinner than the body's radius")}
	}},
	{"body.shape", nil, always(
		out("body.height_mm", "of this height it cannot be"),
		to("body.shape", "geodesic", "the shape that stood there cannot be made so").asked())},

	{"mounts.on", nil, func(c condition) []remedy {
		return []remedy{c.evenly("a ball has no faces, corners or edges, so the drivers are spread evenly")}
	}},
	{"mounts.over", nil, always(
		to("body.cut_height_mm", 0.0, "a dome is a body that is cut").asked(),
		out("mounts.over", "a body without a cut is no dome"))},
	{"mounts.count", design.ErrMissing, counted},
	{"mounts.count", design.ErrRange, counted},
	{"mounts.count", nil, func(c condition) []remedy {
		return append([]remedy{out("mounts.symmetry", c.fault.Reason)}, c.given(c.fault.Reason, "mounts.keep_clear_deg")...)
	}},
	{"mounts.skip", layout.ErrNoSuchMount, knownNumbers},
	{"mounts", layout.ErrNoMounts, func(c condition) []remedy {
		return c.given("else no driver is left", "mounts.skip", "mounts.keep_clear_below_deg", "mounts.keep_clear_deg", "body.cut_height_mm")
	}},
	{"mounts", layout.ErrTooManyMounts, func(c condition) []remedy {
		return c.fewer(fmt.Sprintf("more would be over %d drivers", design.MaxDrivers))
	}},

	{"driver.diameter_mm", nil, wider},
	{"driver.cutout_mm", nil, wider},
	{"driver.flange_mm", nil, wider},
	{"driver.magnet_height_mm", nil, func(c condition) []remedy {
		return []remedy{to("driver.magnet_height_mm", c.number("driver.depth_mm"), "a magnet is no deeper than its driver")}
	}},
	{"driver.dc_ohm", nil, func(c condition) []remedy {
		return []remedy{out("driver.dc_ohm", prose.Sprintf("it cannot be that of a voice coil of %g ohm; measure it with a meter", c.design.Driver.NominalOhm))}
	}},
	{"driver", nil, airless},
	{"box.braces_l", box.ErrFull, always(out("box.braces_l", noAir))},

	{"timing", nil, band},
	{"protection.order", nil, order},
	{"processor.rate_hz", nil, always(out("protection.corner_hz", "the processor does not reach so high a corner").asked())},

	{"surface", nil, always(
		out("surface", "a room has its own floor, walls and ceiling"),
		out("room", "the body is fixed to a surface"))},
	{"room.size_m", nil, func(c condition) []remedy {
		return []remedy{to("room.size_m", larger(c.design), "the body must fit in").asked()}
	}},
	{"room.body_at_m", nil, func(c condition) []remedy {
		return []remedy{to("room.body_at_m", inside(c.design), "the body must be inside the room")}
	}},
	{"seat", design.ErrMissing, missing},
	{"area", design.ErrMissing, missing},
	{"body_at", design.ErrMissing, missing},
	{"body_at", nil, func(c condition) []remedy {
		table, _, _ := strings.Cut(c.fault.Key, ".")
		return []remedy{out(table, c.fault.Reason).asked()}
	}},
	{"spot", design.ErrConflict, func(c condition) []remedy {
		if c.fault.Key == "spot" {
			return []remedy{out("spot", "one seat is the spot").asked()}
		}
		return elsewhere(c)
	}},
	{"spot", nil, elsewhere},
	{"seat", nil, seat},
	{"seats", design.ErrConflict, always(out("seats.aim", "nobody sits all round several bodies"), out("body_at", "nobody sits all round several bodies").asked())},
	{"seats", layout.ErrBehindWall, always(out("seats.aim", "behind a wall nobody sits all round the body"))},
	{"area", nil, func(c condition) []remedy {
		if !strings.Contains(c.fault.Key, ".") {
			return []remedy{out(c.fault.Key, c.fault.Reason).asked()}
		}
		return nil
	}},
	{"woofer", nil, elsewhere},

	{"wiring", nil, channels},
	{"channel", nil, channels},
}

// remedies gives the remedies for a fault; those for a value of its kind come last.
func (c condition) remedies() []remedy {
	if c.design == nil {
		return nil // no TOML
	}
	key := c.fault.Key
	if key == "" && c.fault.File != c.name {
		key = aFile
	}
	table, _, _ := strings.Cut(row.ReplaceAllString(key, ""), ".")
	under := func(r rule) bool {
		return (r.key == "" || r.key == key || r.key == table) && (r.kind == nil || errors.Is(c.fault, r.kind))
	}
	var list []remedy
	if at := slices.IndexFunc(rules, under); at >= 0 {
		list = rules[at].remedies(c)
	}
	return append(list, plain(c.fault)...)
}

// number is the value of a key in its unit.
func (c condition) number(key string) float64 { return c.design.Number(key) }

// always gives remedies that hang on nothing.
func always(list ...remedy) func(condition) []remedy {
	return func(condition) []remedy { return slices.Clone(list) }
}

var row = regexp.MustCompile(`\[[0-9]+\]`)

var keys = design.Keys()

// plain are remedies for a value that is none or out of its range: the nearest possible
// one, or the starter's. Somebody has typed it, so it is for them to say.
func plain(f *design.Error) []remedy {
	at := slices.IndexFunc(keys, func(k design.Key) bool { return k.Path == row.ReplaceAllString(f.Key, "") })
	if at < 0 {
		return nil
	}
	k := keys[at]
	if k.Table == "channel" {
		return []remedy{out("channel", "a channel that is laid out by hand needs good values").asked()}
	}
	var list []remedy
	var v float64
	ranged := errors.Is(f, design.ErrRange) && k.High > k.Low && (k.Kind == design.Number || k.Kind == design.Whole)
	if _, err := fmt.Sscanf(f.Value, "%g", &v); err == nil && ranged {
		near := any(min(max(v, k.Low), k.High))
		if k.Kind == design.Whole {
			near = int(math.Round(near.(float64)))
		}
		list = append(list, to(f.Key, near, f.Reason).asked())
	}
	switch v, known := begin[k.Path]; {
	case known && k.Needed:
		list = append(list, to(f.Key, v, "a design needs it; set your own").asked())
	case !k.Needed && (errors.Is(f, design.ErrRange) || errors.Is(f, design.ErrType) || errors.Is(f, design.ErrConflict)):
		list = append(list, out(f.Key, f.Reason).asked())
	}
	return list
}

// begin holds what keys begin with that a table needs: those of the starter, and of
// the things that it shows in remarks.
var begin = func() map[string]any {
	out := map[string]any{
		"room.size_m": []any{6.0, 4.5, 2.7}, "room.body_at_m": []any{2.0, 2.2, 0.8}, "room.absorption": 0.2,
		"woofer.x_m": -0.5, "woofer.y_m": 0.3, "woofer.z_m": 0.1, "woofer.crossover_hz": 450.0,
		"seat.x_m": 1.7, "seat.y_m": -1.0, "seat.z_m": 0.6,
		"area.shape": "ring", "area.count": 5, "area.radius_m": 2.0, "area.z_m": 0.6, "area.from_deg": -60.0, "area.to_deg": 60.0,
		"body_at.x_m": 0.0, "body_at.y_m": -1.5, "body_at.z_m": 0.0,
		"area.from_m": []any{1.5, -1.0, 0.6}, "area.to_m": []any{2.5, 1.0, 0.6},
		"body.sides": 6,
	}
	values := design.Default().Values()
	for _, k := range keys {
		if v := values[k.Path]; k.Needed && v != nil {
			out[k.Path] = v
		}
	}
	return out
}()

// idle takes all keys out that go with the same other choice.
func idle(c condition) []remedy {
	why, _, _ := strings.Cut(c.fault.Reason, ";")
	r := remedy{why: why}
	for _, g := range c.faults {
		if errors.Is(g, design.ErrIdle) && g.Reason == c.fault.Reason {
			r.set = append(r.set, Change{g.Key, nil})
		}
	}
	return []remedy{r}
}

// missing puts in what a thing needs that has just come in.
func missing(c condition) []remedy {
	table, _, _ := strings.Cut(c.fault.Key, ".")
	r := remedy{why: article(row.ReplaceAllString(table, "")) + " needs them; set your own"}
	for _, g := range c.faults {
		of, _, _ := strings.Cut(g.Key, ".")
		if v, ok := begin[row.ReplaceAllString(g.Key, "")]; ok && of == table && errors.Is(g, design.ErrMissing) {
			r.set = append(r.set, Change{g.Key, v})
		}
	}
	if len(r.set) == 0 {
		return nil
	}
	return []remedy{r}
}

// withoutFiles is for files that are missing or not good: only a person has them, so
// what needs none takes their place, if it is wished.
func withoutFiles(c condition) []remedy {
	why := "there is no file for it yet: put one beside the design and its name here"
	if c.fault.Key == "" {
		why = c.fault.Reason
	}
	b, m, d := c.design.Body, c.design.Mounts, c.design.Driver
	var list []remedy
	instead := func(key, word, fileKey, file string) {
		r := to(key, word, why)
		if file != "" {
			r.set = append(r.set, Change{fileKey, nil})
		}
		list = append(list, r.asked())
	}
	if b.Shape == "file" {
		instead("body.shape", "geodesic", "body.file", b.File)
	}
	if m.On == "list" {
		on := "faces"
		if b.Shape == "ball" {
			on = "even"
		}
		instead("mounts.on", on, "mounts.list", m.List)
	}
	if d.ResponseFile != "" {
		list = append(list, out("driver.response", why).asked())
	}
	if d.ImpedanceFile != "" {
		list = append(list, out("driver.impedance", why).asked())
	}
	return list
}

// radii gives the least of some radii that the drivers have room on.
func radii(c condition) []remedy {
	const key = "body.radius_mm"
	for r := 20.0; r < 5000; r *= 1.5 {
		if c.cures(Change{key, math.Round(r)}) {
			return []remedy{to(key, math.Round(r), "the drivers need room").asked()}
		}
	}
	return nil
}

// steps are a geodesic's.
func steps(c condition) []remedy {
	b := c.design.Body
	if b.M == 0 {
		return []remedy{
			{set: []Change{{"body.subdivision", nil}, {"body.m", max(b.Subdivision, 1)}}, why: "a geodesic with steps to the side is divided by m and n"},
			out("body.n", "no m goes with it"),
		}
	}
	const why = "together they are at most 16"
	return []remedy{to("body.n", 16-b.M, why), to("body.m", max(16-b.N, 1), why)}
}

// cutElsewhere is for a cut that leaves nothing, or is beyond the body.
func cutElsewhere(c condition) []remedy {
	const key, why = "body.cut_height_mm", "the body ends below that height"
	var list []remedy
	if was := c.before().design; was != nil && was.Body.HasCut && was.Body.Radius > 0 {
		scaled := tenthDown(was.Number(key) * c.design.Body.Radius / was.Body.Radius)
		list = append(list, to(key, scaled, "as far up the body as before"))
	}
	return append(list, to(key, 0.0, why), out(key, why))
}

// given takes one of the keys out that there are.
func (c condition) given(why string, keys ...string) []remedy {
	values := c.design.Values()
	var list []remedy
	for _, key := range keys {
		if l, ok := values[key].([]any); values[key] != nil && (!ok || len(l) > 0) {
			list = append(list, out(key, why))
		}
	}
	return list
}

// fewer places fewer drivers: the most that can be.
func (c condition) fewer(why string) []remedy {
	b := c.design.Body
	var list []remedy
	for _, way := range []struct {
		key string
		now int
	}{{"body.subdivision", b.Subdivision}, {"body.m", b.M}, {"mounts.count", c.design.Mounts.Count}} {
		// More drivers never fit better.
		most := sort.Search(max(way.now-1, 0), func(n int) bool { return !c.cures(Change{way.key, n + 1}) })
		if most > 0 {
			list = append(list, to(way.key, most, why).asked())
		}
	}
	return append(list, to("mounts.on", "faces", why).asked(), out("body.n", why).asked())
}

// evenly spreads as many drivers as there were over what there is of the body.
func (c condition) evenly(why string) remedy {
	r := remedy{why: why}
	if c.design.Mounts.On != "even" {
		r.set = append(r.set, Change{"mounts.on", "even"})
	}
	r.set = append(r.set, Change{"mounts.count", c.many()})
	if c.design.Body.HasCut {
		r.set = append(r.set, Change{"mounts.over", "dome"}) // else those under the cut would be lost
	}
	return r
}

// fewDrivers is how many are spread where nothing tells how many there were: as many
// as the starter's remark has.
const fewDrivers = 60

// many returns how many drivers there were, or how many the body has places for.
func (p *patient) many() int {
	if n := p.before().drivers(); n > 0 {
		return n
	}
	var bare []Change
	for _, key := range []string{"mounts.on", "mounts.count", "mounts.over", "mounts.list", "mounts.symmetry", "mounts.skip"} {
		bare = append(bare, Change{key, nil})
	}
	if trial, ok := p.with(bare...); ok && trial.examine().drivers() > 0 {
		return trial.examine().drivers()
	}
	return fewDrivers
}

// counted is for even places without a number, or with one that cannot be.
func counted(c condition) []remedy {
	return []remedy{c.evenly("even places need a number; there were as many drivers before")}
}

const noAir = "no air would be left in the body"

// airless is for a body that walls and drivers fill.
func airless(c condition) []remedy {
	return append(c.fewer(noAir), to("body.radius_mm", min(2*c.number("body.radius_mm"), 5000), noAir).asked())
}

// knownNumbers takes out the numbers of places that the body does not have.
func knownNumbers(c condition) []remedy {
	name, places := c.places()
	if name == "" {
		return c.given("it leaves no place for a driver", "mounts.keep_clear_below_deg", "mounts.keep_clear_deg", "body.cut_height_mm")
	}
	var left []any
	for _, id := range c.design.Mounts.Skip {
		if _, there := places[id]; there {
			left = append(left, id)
		}
	}
	why := fmt.Sprintf("%s has %s", name, prose.Count(len(places), "place", "places"))
	if len(left) == 0 {
		return []remedy{out(c.fault.Key, why)}
	}
	return []remedy{to(c.fault.Key, left, why)}
}

// wider is for a driver that is wider than the body, or whose hole or flange is narrower
// than its cone. Nothing of its data sheet is changed for anyone but what follows from
// what was changed: the hole and the flange with the cone, each by as much wider as before.
func wider(c condition) []remedy {
	cone, hole, flange := c.number("driver.diameter_mm"), c.number("driver.cutout_mm"), c.number("driver.flange_mm")
	holeOver, flangeOver := 0.0, 0.0
	if was := c.before().design; was != nil {
		hole := was.Number("driver.cutout_mm")
		holeOver, flangeOver = max(0, hole-was.Number("driver.diameter_mm")), max(0, was.Number("driver.flange_mm")-hole)
	}
	widest := max(cone, hole, flange)
	switch {
	case widest >= 2*c.number("body.radius_mm"):
		// Three quarters of its own width is the least radius on which a driver is one of several.
		return []remedy{to("body.radius_mm", min(math.Ceil(0.75*widest), 5000), "a smaller body is narrower than one driver").asked()}
	case c.fault.Key == "driver.cutout_mm":
		hole := tenthUp(cone + holeOver)
		r := to("driver.cutout_mm", hole, prose.Sprintf("a cone of %g mm does not go through a smaller hole", cone))
		if flange < hole && !c.mine["driver.flange_mm"] {
			r.set = append(r.set, Change{"driver.flange_mm", tenthUp(hole + flangeOver)})
		}
		return []remedy{r}
	case c.fault.Key == "driver.flange_mm":
		return []remedy{to("driver.flange_mm", tenthUp(hole+flangeOver), "a flange is wider than its hole")}
	}
	return nil
}

// band is that of delays by the field.
func band(c condition) []remedy {
	t := c.design.Timing
	const why = "the band is at least one and a half times as high as it is low"
	var list []remedy
	if high := math.Ceil(1.5 * t.FieldLow); high <= 20000 {
		list = append(list, to("timing.field_high_hz", high, why))
	}
	if low := math.Floor(t.FieldHigh / 1.5); low >= 50 {
		list = append(list, to("timing.field_low_hz", low, why))
	}
	return list
}

// order is the nearest that a Linkwitz-Riley filter has; of two as near the steeper one,
// which keeps the cones in.
func order(c condition) []remedy {
	near := min(c.design.Protection.Order/2*2+2, 8)
	return []remedy{to("protection.order", near, "Linkwitz-Riley filters are of orders 2, 4, 6 and 8")}
}

// channels is for channels that are laid out by hand for other drivers than there
// are, or beside a number of channels.
func channels(c condition) []remedy {
	n := len(c.design.Channels)
	switch {
	case n == 0:
		return nil
	case c.fault.Key == "wiring.channels":
		return []remedy{out("channel", "wiring.channels sorts the drivers instead"), out(c.fault.Key, "the channels are laid out by hand")}
	case c.design.Wiring.Channels > 0:
		return []remedy{out("channel", "not all of them are laid out")}
	}
	var list []remedy
	if at, ids := skipped(c.design); at != "" {
		list = append(list, to(at, ids, "their places stay empty"))
	}
	return append(list, remedy{
		set: []Change{{"channel", nil}, {"wiring.channels", n}},
		why: "the channels were laid out by hand for other drivers; as many are sorted anew",
	})
}

// skipped is the first channel that has drivers in places that stay empty, and its
// drivers without them.
func skipped(d *design.Design) (key string, left []any) {
	for i, c := range d.Channels {
		left = nil
		for _, id := range c.Drivers {
			if !slices.Contains(d.Mounts.Skip, id) {
				left = append(left, id)
			}
		}
		if len(left) > 0 && len(left) < len(c.Drivers) {
			return fmt.Sprintf("channel[%d].drivers", i+1), left
		}
	}
	return "", nil
}

// tenthUp and tenthDown round a number to a tenth.
func tenthUp(v float64) float64   { return math.Ceil(10*v-1e-9) / 10 }
func tenthDown(v float64) float64 { return math.Floor(10*v+1e-9) / 10 }
