package figure_test

import (
	"bytes"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/render/figure"
	"pappus/timing"
)

// line finds straight lines in a picture: both ends and the style.
var line = regexp.MustCompile(`M(-?[0-9.]+),(-?[0-9.]+)L(-?[0-9.]+),(-?[0-9.]+)" style="([^"]*)"`)

// counted plans one to n channels with values that are easy to tell apart.
func counted(onset ...float64) *timing.Plan {
	d, _ := lantern()
	p := *d.plan
	p.Counts, p.Channels = nil, p.Channels[:2]
	for k, f := range onset {
		p.Counts = append(p.Counts, timing.Count{Channels: k + 1, Smear: 1e-3 / float64(k+1), Plain: 2e-3 / float64(k+1), CombOnset: f})
	}
	return &p
}

// TestFrontLabels: every split is named with its load, the plan's own and one out of
// step are told, no label is written over another, and one split alone draws nothing.
func TestFrontLabels(t *testing.T) {
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	p := *d.plan
	p.Front = []timing.Strung{
		{Longest: 1, Smear: 40e-6, Louder: 9, LeastOhm: 7.1},
		{Longest: 2, Smear: 30e-6, Louder: 8.9, LeastOhm: 4.73, InStep: true, Chosen: true},
		{Longest: 5, Smear: 29e-6, LeastOhm: 5.32, InStep: true},
	}
	var b bytes.Buffer
	if err := figure.Front(&b, figure.SVG, &p); err != nil {
		t.Fatal(err)
	}
	place := regexp.MustCompile(`<text x="([-0-9.]+)" y="([-0-9.]+)"[^>]*>([^<]*in a string[^<]*)</text>`)
	var names []string
	var at []float64
	for _, m := range place.FindAllStringSubmatch(b.String(), -1) {
		y, _ := strconv.ParseFloat(m[2], 64)
		names, at = append(names, m[3]), append(at, y)
	}
	want := []string{"up to 5 in a string, 5.32 ohm", "up to 2 in a string, 4.73 ohm, as planned", "1 in a string, 7.1 ohm, an octave out of step"}
	if !slices.Equal(names, want) {
		t.Fatalf("%q, want %q\n", names, want)
	}
	for i := 1; i < len(at); i++ {
		if math.Abs(at[i]-at[i-1]) < 12 { // points
			t.Errorf("%q is written over %q", names[i], names[i-1])
		}
	}
	p.Front = p.Front[:1]
	if err := figure.Front(&b, figure.SVG, &p); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("one split: %v", err)
	}
}

// TestCountPanels: both panels begin at one x and mark the plan's own number of
// channels at one x, whatever their labels, and a panel without any onset says so.
func TestCountPanels(t *testing.T) {
	if _, err := lantern(); err != nil {
		t.Fatal(err)
	}
	none := math.Inf(1)
	tests := []struct {
		name   string
		plan   *timing.Plan
		panels int // in which the plan is marked
		has    []string
	}{
		{"narrow labels below", counted(300, 800, 820), 2, []string{"as planned, 2", "more hardly pay"}},
		{"none from two on", counted(300, none, none), 2, []string{"as planned, 2"}},
		{"none at all", counted(none, none, none), 1, []string{"no comb onset with any number of channels"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var b bytes.Buffer
			if err := figure.Counts(&b, figure.SVG, test.plan); err != nil {
				t.Fatal(err)
			}
			for _, text := range test.has {
				if !strings.Contains(b.String(), text) {
					t.Errorf("no %q", text)
				}
			}
			var axes, own []float64 // x of upright lines
			for _, m := range line.FindAllStringSubmatch(b.String(), -1) {
				x, _ := strconv.ParseFloat(m[1], 64)
				low, _ := strconv.ParseFloat(m[2], 64)
				high, _ := strconv.ParseFloat(m[4], 64)
				switch {
				case m[1] != m[3] || high-low < 50:
				case strings.Contains(m[5], "#696969;stroke-width:0.6"):
					axes = append(axes, x)
				case strings.Contains(m[5], "#282828"):
					own = append(own, x)
				}
			}
			if len(axes) != 2 || math.Abs(axes[0]-axes[1]) > 0.5 { // points
				t.Errorf("the panels begin at %v", axes)
			}
			if len(own) != test.panels || slices.Max(own)-slices.Min(own) > 0.5 {
				t.Errorf("the plan is marked at %v", own)
			}
		})
	}
}
