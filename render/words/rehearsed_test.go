package words_test

import (
	"slices"
	"strings"
	"testing"

	"pappus/render/words"
	"pappus/testdata/jargon"
	"pappus/testdata/planned"
	"pappus/timing/rehearsal"
)

// TestRehearsed: each kind of fault is said in words of its own, with the channel that has it.
func TestRehearsed(t *testing.T) {
	p := planned.Demo(t, nil)
	var said []string
	for _, kind := range rehearsal.Kinds {
		fault, possible := rehearsal.DrawFault(p, kind, 5)
		if !possible {
			t.Errorf("the built-in design has no room for: %s", kind)
		}
		s := rehearsal.NewSession(p, rehearsal.Draw(p, 5), fault, rehearsal.Setting{})
		text := words.Rehearsed(p, s)
		first, _, _ := strings.Cut(text, ".")
		if slices.Contains(said, first) {
			t.Errorf("%s: %q is said of something else, too", kind, first)
		}
		said = append(said, first)
		if word := jargon.In(text); word != "" {
			t.Errorf("%s: %q has %q", kind, text, word)
		}
	}
	want := "The microphone stands 24 mm off, the air is 3.3 K colder than planned"
	if text := words.Rehearsed(p, rehearsal.NewDrawn(p, 48000, 5)); !strings.Contains(text, want) {
		t.Errorf("%q has not %q", text, want)
	}
}
