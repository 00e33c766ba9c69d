package verdict

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pappus/testdata/planned"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

const bodyText = `
name = "Body"
[body]
shape = "%s"
radius_mm = 150
wall_mm = 3
[mounts]
on = "faces"
[driver]
diameter_mm = 32
flange_mm = 40
nominal_ohm = 8
dc_ohm = 7.1
sensitivity_db = 82
power_w = 2
[timing]
field_low_hz = 500
field_high_hz = 4000
[wiring]
channels = %d
minimum_load_ohm = 2
[spot]
x_m = %.2f
y_m = %.2f
z_m = %.2f
`

// TestBodyErrors: what a ball does wrong for a body with faces is, over channels and twelve places, RMS and
// against the middle channel, one standard error of what the model is said to be off by, in level
// and in time, give or take a tenth: more on the cube, less on the dodecahedron.
func TestBodyErrors(t *testing.T) {
	frequency := make([]float64, 60)
	band.Log(frequency, 500, 4000)
	for _, of := range []struct {
		shape             string
		channels          int
		level, late, room float64 // RMS over the standard error
	}{{"cube", 3, 1.07, 1.03, 0.05}, {"dodecahedron", 4, 0.92, 0.94, 0.05}} {
		var levels, times []float64
		for k := range 12 {
			at := r3.Scale(1.9, r3.Unit(r3.Vec{X: math.Cos(2.4 * float64(k)), Y: math.Sin(2.4 * float64(k)), Z: 0.15 * (float64(k) - 5.5)}))
			p := bodyPlan(t, fmt.Sprintf(bodyText, of.shape, of.channels, at.X, at.Y, at.Z))
			level, late := modelErrors(p, frequency, Setting{})
			x, y := bodyOff(t, p, frequency)
			middle, common := slices.Sorted(slices.Values(x))[len(x)/2], slices.Sorted(slices.Values(y))[(len(y)-1)/2]
			for c := range x {
				levels, times = append(levels, (x[c]-middle)/level), append(times, (y[c]-common)/late)
			}
		}
		level, late := rms(levels), rms(times)
		t.Logf("%s: %.3f of the standard error of level, %.3f of that of time", of.shape, level, late)
		if math.Abs(level-of.level) > of.room || math.Abs(late-of.late) > of.room {
			t.Errorf("%s: %.3f of the standard error of level, %.3f of that of time; want %.2f and %.2f", of.shape, level, late, of.level, of.late)
		}
	}
}

func rms(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v * v / float64(len(x))
	}
	return math.Sqrt(sum)
}

// bodyOff returns by how much in dB and s each channel of a plan is off where its body is heard as it is.
func bodyOff(t *testing.T, p *timing.Plan, frequency []float64) (level, late []float64) {
	t.Helper()
	b, a := *p, *p.Array
	a.Timing.Model = radiate.BodyModel
	b.Array = &a
	there, err := b.At(a.Spot)
	if err != nil {
		t.Fatal(err)
	}
	planned := sums(p.StringTransfers(timing.Aligned, frequency), len(frequency))
	for c, h := range sums(there.StringTransfers(timing.Aligned, frequency), len(frequency)) {
		by, at := measure.Over(frequency, h, planned[c])
		level, late = append(level, by), append(late, at)
	}
	return level, late
}

func bodyPlan(t *testing.T, text string) *timing.Plan {
	t.Helper()
	return planned.Text(t, text)
}
