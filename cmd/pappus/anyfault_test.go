package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
)

// spoilt are values that no key takes, or few do.
var spoilt = []string{"1e9", "-1e9", "nan", "inf", "-0.5", "12", "true", `"nonsense"`, `""`, "[]", "[1, 2]", `["a"]`, "[[1]]", "{}", "{from = 1}", "1979-05-27", "0x10", `"1,5"`, `"none.csv"`,
	"1.5.2", "abc", `"open`, "[1, 2", ""}

// spoil changes one thing of a sketch: a value, a name, or a table.
func (d *drawer) spoil(s sketch) sketch {
	out := make(sketch, len(s))
	copy(out, s)
	i := d.IntN(len(out))
	for len(out[i].keys) == 0 {
		i = d.IntN(len(out))
	}
	keys := append([]given{}, out[i].keys...)
	k := d.IntN(len(keys))
	switch d.IntN(8) {
	case 0:
		keys[k].name = keys[k].name[1:] + "x"
	case 1:
		keys = append(keys, keys[k])
	case 2:
		keys = append(keys[:k], keys[k+1:]...)
	case 3:
		out[i].path = strings.TrimSuffix(out[i].path+"x", "]x")
	default:
		keys[k].value = spoilt[d.IntN(len(spoilt))]
	}
	out[i].keys = keys
	return out
}

// TestAnyFault: a design with one fault is laid out all the same, or refused with the file, the line
// and, but for what is no TOML and for keys that are not known, the key and what must stand there.
func TestAnyFault(t *testing.T) {
	folder := t.TempDir()
	writeFiles(t, folder)
	path := filepath.Join(folder, "any.toml")
	refused := 0
	for seed := *designSeed; seed < *designSeed+uint64(*designs); seed++ {
		d := newDrawer(seed)
		good, _ := d.good(path)
		for range 5 {
			s := d.spoil(good)
			why, fault := laidOut(path, s.String())
			if why != nil {
				refused++
			}
			if fault != nil {
				t.Errorf("seed %d: %v\n%s", seed, fault, s)
			}
		}
	}
	t.Logf("%d designs, %d refused", 5**designs, refused)
}

// laidOut lays a design out: why it cannot be, and what is wrong with that answer.
func laidOut(path, text string) (why, fault error) {
	defer func() {
		if p := recover(); p != nil {
			fault = fmt.Errorf("panic: %v", p)
		}
	}()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		return nil, err
	}
	got, err := design.Read(path)
	if err == nil {
		_, err = layout.Build(got)
	}
	if err == nil {
		return nil, nil
	}
	var e *design.Error
	if errors.As(err, &e) && (errors.Is(err, design.ErrSyntax) || errors.Is(err, design.ErrUnknownKey)) && e.File == path && e.Line > 0 && e.Reason != "" {
		return err, nil // which key, and what it must be, nobody knows
	}
	return err, helps(path, text, err)
}
