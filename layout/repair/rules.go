package repair

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"pappus/layout/design"
)

// rule gives the remedies for a fault, the best first.
type rule func(p *patient, now state, f *design.Error) []remedy

// byKey are the rules for faults of a key; where there is none, that of its table.
var byKey = map[string]rule{
	"body":                bodyRules,
	"mounts":              mountRules,
	"driver":              driverRules,
	"timing":              timingRules,
	"protection":          highPassRules,
	"processor":           highPassRules,
	"surface":             surroundingRules,
	"room":                surroundingRules,
	"spot":                spotRules,
	"woofer":              wooferRules,
	"wiring":              channelRules,
	"channel":             channelRules,
	"mounts.skip":         skipRules,
	"body.file":           fileRules,
	"mounts.list":         fileRules,
	"mounts.count":        countRules,
	"timing.field_low_hz": timingRules,
}

var row = regexp.MustCompile(`\[[0-9]+\]`)

// remedies gives the remedies for a fault.
func remedies(p *patient, now state, f *design.Error) []remedy {
	if now.design == nil {
		return nil // no TOML
	}
	var list []remedy
	table, _, _ := strings.Cut(row.ReplaceAllString(f.Key, ""), ".")
	switch {
	case errors.Is(f.Err, design.ErrIdle):
		list = append(list, idle(now, f))
	case f.Key == "" && f.File != p.name: // of a file that the design names
		list = append(list, fileRules(p, now, f)...)
	case byKey[f.Key] != nil:
		list = append(list, byKey[f.Key](p, now, f)...)
	case byKey[table] != nil:
		list = append(list, byKey[table](p, now, f)...)
	}
	return append(list, plainRules(f)...)
}

// idle takes all keys out that go with the same other choice.
func idle(now state, f *design.Error) remedy {
	why, _, _ := strings.Cut(f.Reason, ";")
	r := remedy{why: why}
	for _, g := range now.faults {
		if errors.Is(g.Err, design.ErrIdle) && g.Reason == f.Reason {
			r.set = append(r.set, Change{g.Key, nil})
		}
	}
	return r
}

// plainRules are for a value that is none or out of its range: the nearest possible
// one, or the starter's. Somebody has typed it, so it is for them to say.
func plainRules(f *design.Error) []remedy {
	at := slices.IndexFunc(keys, func(k design.Key) bool { return k.Path == row.ReplaceAllString(f.Key, "") })
	if at < 0 {
		return nil
	}
	k := keys[at]
	if k.Table == "channel" {
		return []remedy{out("channel", "a channel that is laid out by hand needs good values").asked()}
	}
	var list []remedy
	if v, ok := number(f.Value); ok && errors.Is(f.Err, design.ErrRange) && k.High > k.Low && (k.Kind == design.Number || k.Kind == design.Whole) {
		near := min(max(v, k.Low), k.High)
		list = append(list, to(f.Key, plain(k.Kind, near), f.Reason).asked())
	}
	if v, ok := begin[f.Key]; ok && k.Needed {
		return append(list, to(f.Key, v, "a design needs it; set your own").asked())
	}
	if !k.Needed && (errors.Is(f.Err, design.ErrRange) || errors.Is(f.Err, design.ErrType) || errors.Is(f.Err, design.ErrConflict)) {
		list = append(list, out(f.Key, f.Reason).asked())
	}
	return list
}

var keys = design.Keys()

// number reads a value as a file has it.
func number(text string) (float64, bool) {
	var v float64
	_, err := fmt.Sscanf(text, "%g", &v)
	return v, err == nil
}

// plain is a number as Set takes it for a key.
func plain(kind design.Kind, v float64) any {
	if kind == design.Whole {
		return int(math.Round(v))
	}
	return v
}

// tenth rounds a number up, or down, to a tenth.
func tenthUp(v float64) float64   { return math.Ceil(10*v-1e-9) / 10 }
func tenthDown(v float64) float64 { return math.Floor(10*v+1e-9) / 10 }

// begin holds what keys begin with that a table needs: those of the starter, and of
// the things that it shows in remarks.
var begin = func() map[string]any {
	starter, err := design.Parse("starter", design.DefaultTOML())
	if err != nil {
		return nil // the starter's own test would have failed
	}
	out := map[string]any{}
	values := starter.Values()
	for _, k := range keys {
		if v := values[k.Path]; k.Needed && v != nil {
			out[k.Path] = v
		}
	}
	for k, v := range map[string]any{
		"room.size_m": []any{6.0, 4.5, 2.7}, "room.body_at_m": []any{2.0, 2.2, 0.8}, "room.absorption": 0.2,
		"woofer.x_m": -0.5, "woofer.y_m": 0.3, "woofer.z_m": 0.1, "woofer.crossover_hz": 450.0,
		"body.sides": 6,
	} {
		out[k] = v
	}
	return out
}()

// missing puts in what a thing needs that has just come in.
func missing(now state, f *design.Error) []remedy {
	if !errors.Is(f.Err, design.ErrMissing) {
		return nil
	}
	table, _, _ := strings.Cut(f.Key, ".")
	r := remedy{why: article(table) + " needs them; set your own"}
	for _, g := range now.faults {
		of, _, _ := strings.Cut(g.Key, ".")
		if v, ok := begin[g.Key]; ok && of == table && errors.Is(g.Err, design.ErrMissing) {
			r.set = append(r.set, Change{g.Key, v})
		}
	}
	if len(r.set) == 0 {
		return nil
	}
	return []remedy{r}
}

// drivers counts those of a layout; 0 where there is none.
func (s state) drivers() int {
	if s.array == nil {
		return 0
	}
	return len(s.array.Mounts)
}
