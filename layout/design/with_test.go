package design_test

import (
	"slices"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// To set keys in a design is to set them in its text, or both are refused.
func TestWithIsText(t *testing.T) {
	keys := slices.DeleteFunc(design.Keys(), func(k design.Key) bool {
		return inText(k.Path) != k.Path || k.Table == "search" || k.Table == "room"
	})
	starts := []string{string(design.DefaultTOML()), least, string(design.SeatsTOML()), least + "[woofer]\nx_m = 0\ny_m = 0\nz_m = 0.5\ncrossover_hz = 300\n"}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(starts).Draw(t, "text")
		d, err := design.Parse("a.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		var settings []design.Setting
		for range rapid.IntRange(1, 4).Draw(t, "settings") {
			k := rapid.SampledFrom(keys).Draw(t, "key")
			if slices.ContainsFunc(settings, func(s design.Setting) bool { return s.Key == k.Path }) {
				continue
			}
			if k.Table == "woofer" && !d.Woofer.Present || k.Table == "surface" && !d.Surface.Present {
				continue // which would bring the table in
			}
			settings = append(settings, design.Setting{Key: k.Path, Value: possible(t, k)})
		}
		for _, s := range settings {
			text = with(t, text, s.Key, s.Value)
		}
		want, wrong := design.Parse("a.toml", []byte(text))
		got, err := d.With(settings...)
		if (err == nil) != (wrong == nil) {
			t.Fatalf("%v\n%v\n%v", settings, err, wrong)
		}
		if err == nil {
			if diff := cmp.Diff(want, got, cmpopts.IgnoreFields(design.Design{}, "Search")); diff != "" {
				t.Fatalf("%v: %s", settings, diff)
			}
		}
	})
}

// possible draws a value that a key may have, or none.
func possible(t *rapid.T, k design.Key) any {
	if !k.Needed && rapid.IntRange(0, 3).Draw(t, "none") == 0 {
		return nil
	}
	switch {
	case k.Kind == design.Choice:
		return rapid.SampledFrom(k.Choices).Draw(t, "choice")
	case k.Kind == design.Whole:
		return rapid.IntRange(int(k.Low), int(min(k.High, 40))).Draw(t, "whole")
	case k.Kind == design.Number:
		return rapid.Float64Range(k.Low, k.High).Draw(t, "number")
	case k.Kind == design.Flag:
		return rapid.Bool().Draw(t, "flag")
	case k.Kind == design.Text:
		return "some words"
	}
	return anyValue(t)
}

// What the absorption of all walls is, one wall that has its own keeps.
func TestWithRoom(t *testing.T) {
	text := least + "[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 1, 1]\nabsorption = 0.1\nfloor_absorption = 0.5\n"
	d, err := design.Parse("a.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []design.Setting{{Key: "room.absorption", Value: 0.3}, {Key: "room.floor_absorption", Value: 0.2}, {Key: "body.radius_mm", Value: 120}} {
		got, err := d.With(s)
		if err != nil {
			t.Fatal(err)
		}
		want, err := design.Parse("a.toml", []byte(with(t, text, s.Key, s.Value)))
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%v: %s", s, diff)
		}
	}
}

func TestWithRefuses(t *testing.T) {
	d := design.Default()
	for name, c := range map[string]struct {
		set  design.Setting
		want string
	}{
		"stranger": {design.Setting{Key: "body.size", Value: 1}, "body.size: not a known key"},
		"range":    {design.Setting{Key: "body.radius_mm", Value: 1}, "body.radius_mm = 1: must be a number from 20 to 5000"},
		"conflict": {design.Setting{Key: "body.shape", Value: "cube"}, "body.base: only for body.shape = \"geodesic\""},
	} {
		if _, err := d.With(c.set); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", name, err, c.want)
		}
	}
	if d.Body.Shape != "geodesic" || d.Body.Radius != 0.15 {
		t.Error("the design itself changed")
	}
}
