package page

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// seenAs are, for linear light, normal sight and full protanopia, deuteranopia and tritanopia by
// G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009)
// 1291, table 1.
var seenAs = map[string][3][3]float64{
	"normal":       {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protanopia":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":   {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// oklab is a colour of linear light in the perceptual space of B. Ottosson (2020), where
// distances are about as large as they look.
func oklab(c [3]float64) [3]float64 {
	times := func(m [3][3]float64, v [3]float64) (out [3]float64) {
		for i, row := range m {
			out[i] = row[0]*v[0] + row[1]*v[1] + row[2]*v[2]
		}
		return out
	}
	cones := times([3][3]float64{{0.4122214708, 0.5363325363, 0.0514459929}, {0.2119034982, 0.6806995451, 0.1073969566}, {0.0883024619, 0.2817188376, 0.6299787005}}, c)
	for i, v := range cones {
		cones[i] = math.Cbrt(max(v, 0))
	}
	return times([3][3]float64{{0.2104542553, 0.7936177850, -0.0040720468}, {1.9779984951, -2.4285922050, 0.4505937099}, {0.0259040371, 0.7827717662, -0.8086757660}}, cones)
}

// linear is the linear light of a colour of a screen (IEC 61966-2-1).
func linear(t *testing.T, hex string) (out [3]float64) {
	t.Helper()
	for i := range out {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		if v := float64(n) / 255; v <= 0.04045 {
			out[i] = v / 12.92
		} else {
			out[i] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	return out
}

// TestChannelColours stay as far apart as the eight of Okabe and Ito, to all eyes.
func TestChannelColours(t *testing.T) {
	text, err := os.ReadFile("web/src/colours.ts")
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`(?s)const CHANNELS[^"]*((?:"[0-9a-f ]+"[ +\n]*)+)`).FindString(string(text))
	all := regexp.MustCompile(`\b[0-9a-f]{6}\b`).FindAllString(found, -1)
	if len(all) != 22 || !strings.HasPrefix(strings.Join(all, " "), "e69f00 56b4e9 009e73 f0e442 0072b2 d55e00 cc79a7 3b3b3b") {
		t.Fatalf("%d colours: %v", len(all), all)
	}
	const eight = 0.0760 // the least distance among the first eight
	for sight, m := range seenAs {
		at := make([][3]float64, len(all))
		for i, hex := range all {
			c, seen := linear(t, hex), [3]float64{}
			for k, row := range m {
				seen[k] = min(max(row[0]*c[0]+row[1]*c[1]+row[2]*c[2], 0), 1)
			}
			at[i] = oklab(seen)
		}
		for i := range at {
			for j := range i {
				if d := math.Hypot(math.Hypot(at[i][0]-at[j][0], at[i][1]-at[j][1]), at[i][2]-at[j][2]); d < eight {
					t.Errorf("%s: channels %d and %d, %s and %s, are %.4f apart", sight, j+1, i+1, all[j], all[i], d)
				}
			}
		}
	}
}

// grounds are the custom properties of the page's style sheet, light and dark.
func grounds(t *testing.T) map[string]map[string]string {
	t.Helper()
	text, err := os.ReadFile("web/src/base.css")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]map[string]string{}
	for name, head := range map[string]string{"light": `:root {`, "dark": `:root[data-theme="dark"] {`, "dark of the system": `:root:not([data-theme="light"]) {`} {
		_, rest, ok := strings.Cut(string(text), head)
		if !ok {
			t.Fatalf("no %s", head)
		}
		rest, _, _ = strings.Cut(rest, "}")
		out[name] = map[string]string{}
		for _, found := range regexp.MustCompile(`--([a-z-]+): #([0-9a-f]{6});`).FindAllStringSubmatch(rest, -1) {
			out[name][found[1]] = found[2]
		}
	}
	return out
}

// contrast of two colours by WCAG 2.2.
func contrast(t *testing.T, a, b string) float64 {
	light := func(hex string) float64 {
		c := linear(t, hex)
		return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2] + 0.05
	}
	return max(light(a), light(b)) / min(light(a), light(b))
}

// TestContrast: what is drawn stands out from what is behind it by 3:1 (WCAG 2.2, 1.4.11), and
// words by 4.5:1 (1.4.3). A channel's colour may be like its ground: its edge then stands out from
// that, and its number from the colour.
func TestContrast(t *testing.T) {
	text, err := os.ReadFile("web/src/colours.ts")
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`(?s)const CHANNELS[^"]*((?:"[0-9a-f ]+"[ +\n]*)+)`).FindString(string(text))
	channels := regexp.MustCompile(`\b[0-9a-f]{6}\b`).FindAllString(found, -1)
	rule := regexp.MustCompile(`> ([0-9.]+) \? "#([0-9a-f]{6})" : "#([0-9a-f]{6})"`).FindStringSubmatch(string(text))
	limit, err := strconv.ParseFloat(rule[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range channels {
		number := rule[3]
		if contrast(t, c, "000000")*0.05-0.05 > limit { // its relative luminance
			number = rule[2]
		}
		if has := contrast(t, c, number); has < 4.5 {
			t.Errorf("a number on %s has a contrast of %.2f", c, has)
		}
	}
	for name, g := range grounds(t) {
		for _, on := range []string{"card", "paper"} {
			for _, c := range channels {
				if own, edge := contrast(t, c, g[on]), contrast(t, g["edge"], g[on]); max(own, edge) < 3 {
					t.Errorf("%s: %s on the %s has a contrast of %.2f, and its edge of %.2f", name, c, on, own, edge)
				}
			}
			for line, least := range map[string]float64{"accent": 3, "fault": 4.5, "line-before": 3, "line-best": 3, "line-other": 3, "line-measured": 3, "ink": 4.5, "quiet": 4.5} {
				if has := contrast(t, g[line], g[on]); has < least {
					t.Errorf("%s: %s on the %s has a contrast of %.2f", name, line, on, has)
				}
			}
		}
		if has := contrast(t, g["flange"], g["shell"]); has < 3 {
			t.Errorf("%s: a driver's flange on the shell has a contrast of %.2f", name, has)
		}
	}
}
