package seats_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/path"
	"pappus/timing/seats"
	"pappus/timing/split"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestArrivals: drivers are heard when sound has gone round the body, in the deep shadow
// too, where their phases are confused; on large bodies, and with few frequencies.
func TestArrivals(t *testing.T) {
	few := band.Frequencies(band.Octaves()[3:], 1, 5)
	many, _, _ := seats.Frequencies()
	for _, test := range []struct {
		name      string
		array     *layout.Array
		place     []r3.Vec
		frequency []float64
		rms       float64 // s
	}{
		{"a ball", evenBall(t, 60, 0.16), allRound(0), many, 25e-6},
		{"with few frequencies", evenBall(t, 60, 0.16), allRound(0), few, 25e-6},
		{"more drivers", evenBall(t, 300, 0.3), five(0), many, 35e-6},
		{"a ball of 2 m", evenBall(t, 300, 1), circle(0, -60, 0, 30), many, 80e-6},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := test.array
			f := &seats.Field{Frequency: test.frequency, Ends: []int{len(test.frequency)}, Drivers: len(a.Mounts), Place: hear(t, a, test.frequency, test.place)}
			late, span := seats.Arrivals(f)
			const speed = 344. // m/s, at 21 degrees
			square, longest := 0.0, 0.0
			for s, at := range test.place {
				first, shortest := 0, math.Inf(1)
				length := make([]float64, len(a.Mounts))
				for m, mount := range a.Mounts {
					if length[m], _, _ = path.Between(mount.Point, at); length[m] < shortest {
						first, shortest = m, length[m]
					}
				}
				for m := range a.Mounts {
					way := (length[m] - shortest) / speed
					off := late[m][s] - late[first][s] - way
					square, longest = square+off*off/float64(len(a.Mounts)*len(test.place)), max(longest, way)
				}
			}
			if rms := math.Sqrt(square); rms > test.rms {
				t.Errorf("%.0f us off, want no more than %.0f", rms*1e6, test.rms*1e6)
			}
			if math.Abs(span/longest-1) > 0.1 {
				t.Errorf("from the first to the last %.2f ms, by the paths %.2f ms", span*1e3, longest*1e3)
			}
		})
	}
}

// TestAround: a head goes as far in all directions, and its seat comes first.
func TestAround(t *testing.T) {
	if got := seats.Around(0); len(got) != 1 || got[0] != (r3.Vec{}) {
		t.Errorf("a head that does not move goes to %v", got)
	}
	var sum r3.Vec
	for i, v := range seats.Around(0.15) {
		sum = r3.Add(sum, v)
		if want := 0.15; i > 0 && math.Abs(r3.Norm(v)-want) > 1e-15 || i == 0 && v != (r3.Vec{}) {
			t.Errorf("place %d is %g m off", i, r3.Norm(v))
		}
	}
	if sum != (r3.Vec{}) {
		t.Errorf("a head leans to %v", sum)
	}
}

// bySplit judges the exact split of a seat's arrivals, all in step by their mean.
func bySplit(f *seats.Field, count int) seats.Figures {
	late, _ := seats.Arrivals(f)
	time, weight := make([]float64, f.Drivers), make([]float64, f.Drivers)
	n := len(f.Frequency)
	for d := range time {
		time[d] = late[d][0]
		for _, v := range f.Place[0][d*n : (d+1)*n] {
			weight[d] += real(v)*real(v) + imag(v)*imag(v)
		}
	}
	groups := split.NewSplits(time, weight, func(int) bool { return true }).Groups(count)
	delay := make([]float64, count)
	for g, group := range groups {
		sum, total := 0.0, 0.0
		for _, d := range group {
			sum, total = sum+weight[d]*time[d], total+weight[d]
		}
		delay[g] = -sum / total
	}
	first := slices.Min(delay)
	for g := range delay {
		delay[g] = sample * math.Round((delay[g]-first)/sample)
	}
	return f.Judge(groups, nil, delay)
}
