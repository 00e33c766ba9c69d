package design

import (
	"reflect"
	"strings"
)

// Values returns what every key comes to, by its full name: numbers, words, flags
// and lists as the file would have them; nil where there is none. Keys of a table
// that stands for a thing that is not there are left out. Of each [[channel]] the
// row is in the name: channel[2].gain_db.
func (d *Design) Values() map[string]any {
	out := map[string]any{}
	add := func(prefix, table string, keys []key, holder any) {
		for _, k := range keys {
			path := k.name
			if prefix != "" {
				path = prefix + "." + k.name
			}
			v := valueOf(holder, table, k.name)
			if _, plain := v.([]any); !plain && !settled(k, v) {
				v = nil
			}
			out[path] = v
		}
	}
	there := map[string]bool{"surface": d.Surface.Present, "room": d.Room.Present, "woofer": d.Woofer.Present}
	for _, t := range defaults().tables() {
		if !t.optional || there[t.name] {
			add(t.name, t.name, t.keys, *d)
		}
	}
	for i, c := range d.Channels {
		add(nth("channel", i+1), "channel", new(Channel).keys(), c)
	}
	return out
}

// valueOf returns the value of a key in a Design, or in a Channel. A field is
// named as its key is, without the underscores.
func valueOf(holder any, table, name string) any {
	v := reflect.ValueOf(holder)
	if d, ok := holder.(Design); ok {
		switch {
		case table == "body" && name == "cut_height_mm" && !d.Body.HasCut:
			return nil
		case table == "mounts" && name == "keep_clear_deg":
			return zoneValues(d.Mounts.KeepClear)
		case table == "room" && name == "absorption":
			return octaveValue(d.Room.Absorption[0])
		case table == "room" && strings.HasSuffix(name, "_absorption"):
			for i, wall := range walls {
				if name == wall+"_absorption" {
					return octaveValue(d.Room.Absorption[i])
				}
			}
		case table != "":
			v = field(v, table)
		}
	}
	return plainValue(field(v, name))
}

// field returns the field of a name, or none.
func field(v reflect.Value, name string) reflect.Value {
	name = strings.ReplaceAll(name, "_", "")
	return v.FieldByNameFunc(func(f string) bool { return strings.EqualFold(f, name) })
}

// plainValue returns a field's value as a file would have it.
func plainValue(v reflect.Value) any {
	if !v.IsValid() {
		return nil
	}
	if o, ok := v.Interface().(Octaves); ok {
		return octaveValue(o)
	}
	switch v.Kind() {
	case reflect.Pointer:
		return plainValue(v.Elem())
	case reflect.Slice, reflect.Array:
		out := make([]any, v.Len())
		for i := range out {
			out[i] = plainValue(v.Index(i))
		}
		return out
	}
	return v.Interface()
}

// octaveValue returns one number where all octaves are alike, else all seven.
func octaveValue(o Octaves) any {
	list, alike := make([]any, len(o)), true
	for i, v := range o {
		list[i] = v
		alike = alike && v == o[0]
	}
	if alike {
		return o[0]
	}
	return list
}

func zoneValues(zones []Zone) any {
	out := make([]any, len(zones))
	for i, z := range zones {
		out[i] = []any{z.AzimuthDeg, z.ElevationDeg, z.HalfAngleDeg}
	}
	return out
}
