package omni_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/timing/band"
	"pappus/timing/omni"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const degree = math.Pi / 180

// round returns n angles evenly round the circle from -180 degrees.
func round(n int) []float64 {
	angle := make([]float64, n)
	for i := range angle {
		angle[i] = 2 * math.Pi * (float64(i)/float64(n) - 0.5)
	}
	return angle
}

// levels returns the levels of a pattern of energy over angle.
func levels(angle []float64, energy func(float64) float64) []float64 {
	out := make([]float64, len(angle))
	for i, a := range angle {
		out[i] = 60 + 10*math.Log10(energy(a))
	}
	return out
}

func deviation(angle, level []float64) float64 {
	return omni.Check([]float64{1000}, angle, [][]float64{level})[0].Deviation
}

// TestClosedForms: the mean of cos(n a) over an arc w round a is cos(n a) times
// sin(n w/2)/(n w/2).
func TestClosedForms(t *testing.T) {
	arcs := func(n float64) float64 { x := n * 15 * degree; return math.Sin(x) / x }
	tests := []struct {
		name   string
		energy func(a float64) float64
		want   float64 // dB
	}{
		{"even", func(float64) float64 { return 3 }, 0},
		{"one lobe", func(a float64) float64 { return 1 + 0.6*math.Cos(a-0.3) }, 10 * math.Log10(1-0.6*arcs(1))},
		{"silent behind", func(a float64) float64 { return 1 + math.Cos(a) }, 10 * math.Log10(1-arcs(1))},
		{"two lobes", func(a float64) float64 { return 1 - 0.4*math.Cos(2*a) }, 10 * math.Log10(1-0.4*arcs(2))},
		{"six lobes", func(a float64) float64 { return 1 + 0.9*math.Cos(6*a+0.1) }, 10 * math.Log10(1-0.9*arcs(6))},
		{"a lobe in each arc", func(a float64) float64 { return 1 + 0.9*math.Cos(12*a) }, 0},
		{"a beam, sum of two", func(a float64) float64 { return 1 + 0.5*math.Cos(a) + 0.3*math.Cos(2*a) },
			10 * math.Log10(1+0.5*arcs(1)+0.3*arcs(2))},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			angle := round(1440)
			got := deviation(angle, levels(angle, test.energy))
			// Straight lines between angles a quarter of a degree apart change a lobe by
			// its share (n step)^2/12 of itself.
			if math.Abs(got-test.want) > 2e-3 {
				t.Errorf("got %.6f dB, want %.6f", got, test.want)
			}
		})
	}
}

// TestSpike: a triangle of energy on silence, in closed form: an arc that holds
// all of it has 12 times the circle's mean.
func TestSpike(t *testing.T) {
	angle := round(72)
	for at := range angle {
		level := levels(angle, func(float64) float64 { return 0 })
		level[at] = 70
		if got, want := deviation(angle, level), math.Inf(-1); got != want {
			t.Errorf("at %d: got %g dB, want silence elsewhere to count", at, got)
		}
	}
	// On a floor of 1 the triangle of height h and base 10 degrees adds h 5 degrees:
	// high (30+5h)/30, low 1, mean (360+5h)/360.
	const h = 100.0
	level := levels(angle, func(float64) float64 { return 1 })
	level[40] += 10 * math.Log10(1+h)
	mean := (360 + 5*h) / 360
	if got, want := deviation(angle, level), 10*math.Log10((30+5*h)/30/mean); math.Abs(got-want) > 1e-9 {
		t.Errorf("got %.9f dB, want %.9f", got, want)
	}
}

// TestVertex: with few angles the strongest arc begins and ends between them.
// Energy 2 at 0 and 1 at all other corners of a decagon; the arc of 30 degrees
// round 0 holds 2*(15*2 - 15*15/36/2) degrees, the circle 360 + 36.
func TestVertex(t *testing.T) {
	angle := round(10)
	level := levels(angle, func(a float64) float64 {
		if math.Abs(a) < 0.1 {
			return 2
		}
		return 1
	})
	want := 10 * math.Log10(2*(15*2-15*15/36.0/2)/30/(396/360.0))
	if got := deviation(angle, level); math.Abs(got-want) > 1e-9 {
		t.Errorf("got %.9f dB, want %.9f", got, want)
	}
}

// TestTurning: the mean glides, so nothing depends on where the circle begins or
// how it is turned; and uneven angles serve as well.
func TestTurning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(12, 80).Draw(t, "n")
		level := make([]float64, n)
		angle := make([]float64, n)
		at := rapid.Float64Range(-7, 7).Draw(t, "start")
		for i := range level {
			level[i] = rapid.Float64Range(60, 80).Draw(t, "level")
			angle[i] = at
			at += 2 * math.Pi / float64(n) * rapid.Float64Range(0.3, 0.999).Draw(t, "step")
		}
		want := deviation(angle, level)
		turn := rapid.Float64Range(-3, 3).Draw(t, "turn")
		first := rapid.IntRange(0, n-1).Draw(t, "first")
		turned, shifted := make([]float64, n), make([]float64, n)
		for i := range level {
			j := (i + first) % n
			turned[i], shifted[i] = angle[j]+turn, level[j]+3
			if j < first {
				turned[i] += 2 * math.Pi
			}
		}
		if got := deviation(turned, shifted); math.Abs(got-want) > 1e-6 {
			t.Errorf("%.9f dB turned, %.9f before", got, want)
		}
		// Levels 20 dB and a degree apart, the search's twentieths of a degree and the
		// square of what they blur leave it a fiftieth of a dB.
		if most := search(angle, level); math.Abs(math.Abs(most)-math.Abs(want)) > 0.02 {
			t.Errorf("an arc of %.6f dB, Check finds %.6f", most, want)
		}
	})
}

// search returns the furthest of many arcs, summed in small steps.
func search(angle, level []float64) float64 {
	energy := func(a float64) float64 {
		a = math.Mod(math.Mod(a-angle[0], 2*math.Pi)+2*math.Pi, 2*math.Pi) + angle[0]
		i := 0
		for i+1 < len(angle) && angle[i+1] <= a {
			i++
		}
		next, end := (i+1)%len(angle), angle[0]+2*math.Pi
		if next > 0 {
			end = angle[next]
		}
		from, to := math.Pow(10, level[i]/10), math.Pow(10, level[next]/10)
		return from + (to-from)*(a-angle[i])/(end-angle[i])
	}
	const steps, wide = 7200, 600 // round the circle and along an arc
	var sum [steps + wide + 1]float64
	for i := range steps + wide {
		sum[i+1] = sum[i] + energy(2*math.Pi*(float64(i)+0.5)/steps)
	}
	most := 0.0
	for i := range steps {
		mean := (sum[i+wide] - sum[i]) / wide
		if d := 10 * math.Log10(mean*steps/sum[steps]); math.Abs(d) > math.Abs(most) {
			most = d
		}
	}
	return most
}

// TestLimits: the table of the standard, by nominal and exact centres, and a
// source that is just within and just outside of each.
func TestLimits(t *testing.T) {
	want := []float64{1, 1, 1, 3, 5, 6}
	nominal := []float64{125, 250, 500, 1000, 2000, 4000}
	exact := band.Octaves()
	arcs := math.Sin(15*degree) / (15 * degree)
	angle := round(1440)
	for b, l := range want {
		for _, centre := range []float64{nominal[b], exact[b]} {
			for _, beside := range []float64{-0.01, 0.01} {
				depth := (1 - math.Pow(10, -(l+beside)/10)) / arcs
				level := levels(angle, func(a float64) float64 { return 1 + depth*math.Cos(a) })
				got := omni.Check([]float64{centre}, angle, [][]float64{level})
				if len(got) != 1 || got[0].Limit != l || got[0].Band != centre {
					t.Fatalf("%g Hz: %+v, want a limit of %g dB", centre, got, l)
				}
				if got[0].Pass != (beside < 0) {
					t.Errorf("%g Hz: %+v, %g dB beside the limit", centre, got[0], beside)
				}
			}
		}
	}
	for _, centre := range []float64{exact[6], 63, 8000, 1250, 1600, 0, -1, math.NaN(), math.Inf(1)} {
		if _, ok := omni.Limit(centre); ok {
			t.Errorf("%g Hz has a limit", centre)
		}
	}
}

func TestNothingToJudge(t *testing.T) {
	angle := round(36)
	level := levels(angle, func(float64) float64 { return 1 })
	level[7] = math.NaN()
	silence := levels(angle, func(float64) float64 { return 0 })
	for name, level := range map[string][]float64{"a place inside": level, "silence": silence} {
		got := omni.Check([]float64{500, 8000}, angle, [][]float64{level, level})
		if len(got) != 1 || !math.IsNaN(got[0].Deviation) || got[0].Pass {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

func TestPanics(t *testing.T) {
	level := [][]float64{{1, 2, 3}}
	tests := []struct {
		name  string
		angle []float64
		level [][]float64
	}{
		{"bands", []float64{0, 1, 2}, nil},
		{"levels", []float64{0, 1, 2, 3}, level},
		{"two angles", []float64{0, 1}, [][]float64{{1, 2}}},
		{"falling", []float64{0, 2, 1}, level},
		{"more than a turn", []float64{0, 2, 7}, level},
		{"the first again", []float64{0, 2, 2 * math.Pi}, level},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("no panic")
				}
			}()
			omni.Check([]float64{1000}, test.angle, test.level)
		})
	}
}

func TestOrder(t *testing.T) {
	angle := round(36)
	even := levels(angle, func(float64) float64 { return 1 })
	got := omni.Check([]float64{4000, 8000, 125}, angle, [][]float64{even, even, even})
	want := []omni.Result{{Band: 4000, Limit: 6, Pass: true}, {Band: 125, Limit: 1, Pass: true}}
	for i := range got {
		got[i].Deviation = math.Round(got[i].Deviation*1e9) / 1e9
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func ExampleCheck() {
	angle := round(72)
	lobes := levels(angle, func(a float64) float64 { return 1 + 0.5*math.Cos(3*a) })
	for _, r := range omni.Check([]float64{500, 2000}, angle, [][]float64{lobes, lobes}) {
		fmt.Printf("%g Hz: %+.1f dB of %g, pass %v\n", r.Band, r.Deviation, r.Limit, r.Pass)
	}
	// Output:
	// 500 Hz: -2.6 dB of 1, pass false
	// 2000 Hz: -2.6 dB of 5, pass true
}

func BenchmarkCheck(b *testing.B) {
	b.ReportAllocs()
	angle := round(360)
	level := levels(angle, func(a float64) float64 { return 1 + 0.5*math.Cos(3*a) })
	octaves := band.Octaves()
	table := make([][]float64, len(octaves))
	for i := range table {
		table[i] = level
	}
	for b.Loop() {
		omni.Check(octaves, angle, table)
	}
}
