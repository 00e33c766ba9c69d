package layout_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

// woofer gives the table of a woofer at a place, with a few lines more.
func woofer(place string, lines ...string) string {
	return "[woofer]\n" + place + "\ncrossover_hz = 200\n" + strings.Join(lines, "\n") + "\n"
}

func TestWoofer(t *testing.T) {
	const place = "x_m = -0.5\ny_m = 0.25\nz_m = 0.125"
	if got := build(t, with(cube, "", small)).Woofer; got != (layout.Woofer{}) {
		t.Errorf("without: %+v", got)
	}
	for _, c := range []struct {
		name, text string
		want       layout.Woofer
	}{
		{"defaults", woofer(place), layout.Woofer{Present: true, At: r3.Vec{X: -0.5, Y: 0.25, Z: 0.125}, Crossover: 200, Order: 4, Sensitivity: math.NaN()}},
		{"all", woofer(place, "order = 2", "sensitivity_db = 87", "gain_db = -3", "invert = true"),
			layout.Woofer{Present: true, At: r3.Vec{X: -0.5, Y: 0.25, Z: 0.125}, Crossover: 200, Order: 2, Sensitivity: 87, Gain: -3, Invert: true}},
	} {
		if d := cmp.Diff(c.want, build(t, with(cube, "", small+c.text)).Woofer, cmpopts.EquateNaNs()); d != "" {
			t.Errorf("%s: %s", c.name, d)
		}
	}
}

func TestWooferFaults(t *testing.T) {
	const room = "[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 2, 1]\nabsorption = 0.2\n"
	for _, c := range []struct {
		name, text string
		kind       error
		want       string
	}{
		{"inside the body", woofer("x_m = 0\ny_m = 0\nz_m = 0.02"), layout.ErrInside,
			"a.toml:12: woofer: the woofer is 0.02 m from the body's centre, inside the body; must be outside"},
		{"below the table", woofer("x_m = 0\ny_m = 0\nz_m = -0.5") + "[surface]\n", layout.ErrBelowSurface,
			"a.toml:15: woofer.z_m = -0.5: the woofer is below the surface; must be at least -0.1732, or give a [room] in place of the surface"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := layout.Build(parse(t, "a.toml", with(cube, "", small+c.text)))
			if !errors.Is(err, c.kind) || err.Error() != c.want {
				t.Errorf("\n got %v\nwant %s", err, c.want)
			}
		})
	}
	d := parse(t, "a.toml", with(cube, "", small+room+woofer("x_m = 0\ny_m = 1\nz_m = 0")))
	d.Woofer.At.Y = 3
	if _, err := layout.Build(d); !errors.Is(err, layout.ErrOutsideRoom) {
		t.Errorf("outside the room: %v", err)
	}
}

func TestWooferWarnings(t *testing.T) {
	const place = "x_m = -0.5\ny_m = 0\nz_m = 0"
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"well above", "resonance_hz = 100\n[protection]\ncorner_hz = 150\n", nil},
		{"at the corner", "[protection]\ncorner_hz = 200\n", nil},
		{"below the resonance", "resonance_hz = 230\n", []string{
			"the crossover at 200 Hz is below the drivers' resonance in the body at 230 Hz, where the array is weak and out of step with the woofer: set it to 460 Hz or above, an octave higher"}},
		{"below the high-pass", "[protection]\ncorner_hz = 250\n", []string{
			"the crossover at 200 Hz is below the high-pass that protects the drivers at 250 Hz, where the array is weak and out of step with the woofer: set it to 500 Hz or above, an octave higher"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if d := cmp.Diff(c.want, advice.Lines(build(t, with(cube, "", small+c.text+woofer(place))).Warnings), cmpopts.EquateEmpty()); d != "" {
				t.Error(d)
			}
			if got := build(t, with(cube, "", small+c.text)).Warnings; got != nil {
				t.Errorf("without a woofer: %q", got)
			}
		})
	}
}
