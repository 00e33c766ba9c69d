package repair_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/repair"
	"pappus/testdata/thorough"
)

// planned tells why a text cannot be laid out; empty: it can.
func planned(text []byte) string {
	if _, faults := design.Examine("lantern.toml", text); len(faults) > 0 {
		return faults[0].Error()
	}
	d, err := design.Parse("lantern.toml", text)
	if err != nil {
		return err.Error()
	}
	if _, err := layout.Build(d); err != nil {
		return err.Error()
	}
	return ""
}

// enumerations lists every key that takes one of a few values, with all of them.
func enumerations() map[string][]any {
	out, many := map[string][]any{}, map[string]bool{}
	for _, t := range design.Tables() {
		many[t.Name] = t.Many
	}
	for _, k := range design.Keys() {
		switch {
		case many[k.Table]:
			k.Path = k.Table + "[1]." + k.Name
			fallthrough
		case true:
			switch {
			case k.Kind == design.Flag:
				out[k.Path] = []any{true, false}
			case k.Kind == design.Choice:
				for _, c := range k.Choices {
					out[k.Path] = append(out[k.Path], c)
				}
			case k.Kind == design.Whole && len(k.Choices) > 0:
				for _, c := range k.Choices {
					n, _ := strconv.Atoi(c)
					out[k.Path] = append(out[k.Path], n)
				}
			case k.Kind == design.Whole && k.High-k.Low <= 16:
				for _, n := range []int{int(k.Low), 3, int(k.High)} {
					out[k.Path] = append(out[k.Path], n)
				}
			}
		}
	}
	for _, table := range []string{"surface", "room", "woofer"} {
		out[table] = []any{true, nil}
	}
	return out
}

// change makes one change, presses the cure where there is need, and tells what was
// mended; the test fails where the design is a dead end.
func change(t *testing.T, text []byte, key string, value any) []byte {
	t.Helper()
	got, err := repair.Edit("lantern.toml", text, []repair.Change{{Key: key, Value: value}})
	if err != nil {
		t.Fatalf("%s = %v: %v", key, value, err)
	}
	why := planned(got.Text)
	if why == "" {
		t.Logf("%s = %v: %s", key, value, strings.Join(got.Mended, "; "))
		return got.Text
	}
	cure, ok := repair.Cure("lantern.toml", got.Text)
	if !ok || planned(cure.Text) != "" {
		t.Errorf("%s = %v is a dead end: %s; cure %v: %s", key, value, why, cure.Mended, planned(cure.Text))
		return text
	}
	t.Logf("%s = %v: %s; cure: %s", key, value, strings.Join(got.Mended, "; "), strings.Join(cure.Mended, "; "))
	return cure.Text
}

// TestEveryChoice: from the starter, whatever is chosen for any key, the design can
// still be laid out, or one press makes it so.
func TestEveryChoice(t *testing.T) {
	all := enumerations()
	if len(all) < 15 || len(all["body.shape"]) < 22 {
		t.Fatalf("%d keys, %d shapes", len(all), len(all["body.shape"]))
	}
	for key, values := range all {
		for _, v := range values {
			if v == 16 && !thorough.Set {
				continue // so many drivers take too long for every day
			}
			t.Run(fmt.Sprint(key, "=", v), func(t *testing.T) { change(t, design.DefaultTOML(), key, v) })
		}
	}
}

// TestChoicesOneAfterAnother: each choice is made in what the ones before it left.
func TestChoicesOneAfterAnother(t *testing.T) {
	all := enumerations()
	var keys []string
	for key := range all {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	for _, way := range []string{"forward", "backward"} {
		if way == "backward" && !thorough.Set {
			break
		}
		t.Run(way, func(t *testing.T) {
			text := design.DefaultTOML()
			for _, key := range keys {
				for _, v := range all[key] {
					if v == 16 {
						continue // so many drivers take too long
					}
					text = change(t, text, key, v)
				}
			}
		})
		slices.Reverse(keys)
	}
}
