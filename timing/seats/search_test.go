package seats_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"pappus/testdata/thorough"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func TestMain(m *testing.M) {
	thorough.Random()
	m.Run()
}

var aims = []seats.Aim{seats.Worst, seats.Mean, seats.Even}

// made is what some places hear of point sources within reach m of each other.
func made(random *rand.Rand, drivers, places int, reach float64) *seats.Field {
	frequency := []float64{500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000}
	f := &seats.Field{Frequency: frequency, Ends: []int{3, 6, 10}, Drivers: drivers}
	for range places {
		var row []complex128
		for range drivers {
			late, loud := reach/344*random.Float64(), 0.5+random.Float64()
			for _, hz := range frequency {
				sin, cos := math.Sincos(-2 * math.Pi * hz * late)
				row = append(row, complex(loud*cos, loud*sin))
			}
		}
		f.Place = append(f.Place, row)
	}
	return f
}

// partitions calls visit with every way to sort n drivers into just count groups.
func partitions(n, count int, visit func(groups [][]int)) {
	groups := make([][]int, count)
	var next func(d, used int)
	next = func(d, used int) {
		if d == n {
			if used == count {
				visit(groups)
			}
			return
		}
		for g := range min(used+1, count) {
			groups[g] = append(groups[g], d)
			next(d+1, max(used, g+1))
			groups[g] = groups[g][:len(groups[g])-1]
		}
	}
	next(0, 0)
}

// TestSmallCasesAreTheBest tries every partition, and every delay up to the latest arrival.
func TestSmallCasesAreTheBest(t *testing.T) {
	const step, reach = 60e-6, 0.18 // s, m: nine steps
	cases := 4
	if thorough.Set {
		cases = 40
	}
	for seed := range cases {
		for _, aim := range aims {
			random := rand.New(rand.NewPCG(uint64(seed), 7))
			f := made(random, 4+seed%2, 2+seed%2, reach)
			count := 2 + seed%2
			least := math.Inf(1)
			steps := int(math.Ceil(reach / 344 / step))
			partitions(f.Drivers, count, func(groups [][]int) {
				delay := make([]float64, count)
				for way := range int(math.Pow(float64(2*steps+1), float64(count-1))) {
					for g, left := 1, way; g < count; g, left = g+1, left/(2*steps+1) {
						delay[g] = float64(left%(2*steps+1)-steps) * step
					}
					least = min(least, aim.Of(f.Judge(groups, nil, delay)))
				}
			})
			a, err := f.Plan(t.Context(), aim, seats.Limits{Channels: count, Step: step})
			if err != nil {
				t.Fatal(err)
			}
			if got := aim.Of(a.Figures); got > least+0.01 {
				t.Errorf("seed %d, %s: %.3f dB, the best of all %.3f", seed, aim, got, least)
			}
		}
	}
}

// shuffled tells of the same seats in another order, and of the drivers in another.
func shuffled(f *seats.Field, seat, driver []int) *seats.Field {
	out := *f
	out.Place, out.Weight, out.Seat = nil, nil, nil
	n := len(f.Frequency)
	for _, p := range seat {
		row := make([]complex128, 0, len(f.Place[p]))
		for _, d := range driver {
			row = append(row, f.Place[p][d*n:(d+1)*n]...)
		}
		out.Place = append(out.Place, row)
		if f.Weight != nil {
			out.Weight = append(out.Weight, f.Weight[p])
		}
	}
	return &out
}

// TestOrderDoesNotMatter: the same seats told in another order, and drivers numbered in
// another, as a mirrored body's are, have the same figures.
func TestOrderDoesNotMatter(t *testing.T) {
	lantern, ball := fieldOf(t, lantern(t), five(0.6)), fieldOf(t, evenBall(t, 60, 0.16), five(0))
	ball.Weight = []float64{1, 2, 1, 2, 1}
	random := rand.New(rand.NewPCG(5, 5))
	for name, f := range map[string]*seats.Field{"lantern": lantern, "ball": ball, "made": made(random, 20, 6, 0.3)} {
		for _, aim := range aims {
			want, err := f.Quick(aim, seats.Limits{Channels: 5, Step: sample})
			if err != nil {
				t.Fatal(err)
			}
			for range 3 {
				seat, driver := random.Perm(len(f.Place)), random.Perm(f.Drivers)
				got, err := shuffled(f, seat, driver).Quick(aim, seats.Limits{Channels: 5, Step: sample})
				if err != nil {
					t.Fatal(err)
				}
				back := make([]float64, len(seat))
				for i, s := range seat {
					back[s] = got.Seat[i]
				}
				for _, c := range [][2]float64{{want.Worst, got.Worst}, {want.Mean, got.Mean}, {want.Between, got.Between}} {
					if math.Abs(c[0]-c[1]) > 1e-9 {
						t.Errorf("%s, %s: %v, in another order %v", name, aim, want.Figures, got.Figures)
						break
					}
				}
				if diff := cmp.Diff(want.Seat, back, cmpopts.EquateApprox(0, 1e-9)); diff != "" && name == "made" {
					t.Errorf("%s, %s: seats: %s", name, aim, diff)
				}
			}
		}
	}
}

// TestMirroredSeats: seats to the left are served as those to the right of a body that is
// alike on both sides.
func TestMirroredSeats(t *testing.T) {
	a := evenBall(t, 32, 0.16)
	for i, m := range a.Mounts[:16] { // the left half is the right one's image
		m.Point.Y, m.Normal.Y = -m.Point.Y, -m.Normal.Y
		m.ID = a.Mounts[16+i].ID
		a.Mounts[16+i] = m
	}
	one, err := fieldOf(t, a, circle(0.2, -70, -20, 35)).Quick(seats.Even, seats.Limits{Channels: 6, Step: sample})
	if err != nil {
		t.Fatal(err)
	}
	other, err := fieldOf(t, a, circle(0.2, -35, 20, 70)).Quick(seats.Even, seats.Limits{Channels: 6, Step: sample})
	if err != nil {
		t.Fatal(err)
	}
	slices.Reverse(other.Seat)
	if diff := cmp.Diff(one.Seat, other.Seat, cmpopts.EquateApprox(0, 1e-6)); diff != "" {
		t.Error(diff)
	}
}

// TestMoreChannelsAreNeverWorse, and the last of all counts is the plan for it.
func TestMoreChannelsAreNeverWorse(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 1))
	small, heads := made(random, 12, 4, 0.25), made(random, 9, 6, 0.25)
	heads.Seat = []int{0, 0, 1, 1, 1, 0}
	for name, f := range map[string]*seats.Field{"seats": small, "heads": heads} {
		for _, aim := range aims {
			l := seats.Limits{Channels: 6, Step: sample}
			all, err := f.PlanUpTo(t.Context(), aim, l)
			if err != nil {
				t.Fatal(err)
			}
			for k := 1; k < len(all); k++ {
				if now, last := aim.Of(all[k].Figures), aim.Of(all[k-1].Figures); now > last+1e-6 {
					t.Errorf("%s, %s: %d channels %.4f dB, one fewer %.4f", name, aim, k+1, now, last)
				}
				if len(all[k].Groups) != k+1 {
					t.Errorf("%d channels for %d", len(all[k].Groups), k+1)
				}
			}
			last, err := f.Plan(t.Context(), aim, l)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(all[5], last); diff != "" {
				t.Error(diff)
			}
		}
	}
}

// TestSameOnAnyCores: to the bit.
func TestSameOnAnyCores(t *testing.T) {
	f := made(rand.New(rand.NewPCG(4, 4)), 14, 3, 0.3)
	plan := func(cores int) seats.Answer {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		a, err := f.Plan(t.Context(), seats.Even, seats.Limits{Channels: 4, Step: sample})
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	one := plan(1)
	for _, cores := range []int{2, 5} {
		if diff := cmp.Diff(one, plan(cores)); diff != "" {
			t.Errorf("%d cores: %s", cores, diff)
		}
	}
}

// TestSearchKnowsItsAim: what is searched for is what figures are worth, with weights, and
// seats of several places.
func TestSearchKnowsItsAim(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 2))
	f := made(random, 15, 6, 0.4)
	heads := *f
	heads.Seat, heads.Weight, heads.Loud = []int{0, 0, 1, 2, 2, 2}, []float64{1, 3, 0.5}, 0.3
	for name, f := range map[string]*seats.Field{"seats": f, "heads": &heads} {
		for _, aim := range append(aims, seats.Round) {
			for seed := range uint64(10) {
				if search, own := seats.Costs(f, aim, seed); math.Abs(search-own) > 1e-8 {
					t.Errorf("%s, %s: %.10f dB, by its figures %.10f", name, aim, search, own)
				}
			}
		}
	}
}

func TestFastLog2(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1e-30, 1e30).Draw(t, "x")
		if diff := seats.FastLog2(x) - math.Log2(x); math.Abs(diff) > 2e-12 {
			t.Fatalf("log2 of %g is %g off", x, diff)
		}
	})
}

// TestLimits: sizes, steps and numbers are kept, whatever is asked for.
func TestLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		drivers := rapid.IntRange(1, 14).Draw(t, "drivers")
		f := made(random, drivers, rapid.IntRange(1, 4).Draw(t, "places"), 0.4)
		size := rapid.SliceOfN(rapid.Bool(), drivers+1, drivers+1).Draw(t, "size")
		step := rapid.SampledFrom([]float64{0, 1e-6, sample, 1e-4}).Draw(t, "step")
		count := rapid.IntRange(1, 16).Draw(t, "count")
		aim := rapid.SampledFrom(aims).Draw(t, "aim")
		a, err := f.Quick(aim, seats.Limits{Channels: count, Step: step, Allowed: func(n int) bool { return size[n] }})
		possible := false
		partitions(min(drivers, 9), min(count, drivers, 9), func(groups [][]int) {
			possible = possible || !slices.ContainsFunc(groups, func(g []int) bool { return !size[len(g)] })
		})
		if errors.Is(err, seats.ErrSizes) {
			if possible && drivers <= 9 {
				t.Fatal("there are such sizes")
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if len(a.Groups) != min(count, drivers) {
			t.Fatalf("%d channels", len(a.Groups))
		}
		if step == 0 {
			step = 1e-6
		}
		seen := make([]bool, drivers)
		for g, group := range a.Groups {
			if !size[len(group)] {
				t.Fatalf("a channel of %d", len(group))
			}
			for _, d := range group {
				if seen[d] {
					t.Fatalf("driver %d twice", d)
				}
				seen[d] = true
			}
			if n := a.Delay[g] / step; n < 0 || math.Abs(n-math.Round(n)) > 1e-6 {
				t.Fatalf("%g steps of delay", n)
			}
		}
		if slices.Contains(seen, false) {
			t.Fatal("a driver is left out")
		}
		if bound := f.Bound(a.Groups, nil); a.Worst < bound.Worst-1e-9 {
			t.Fatalf("%g dB beats the bound of %g dB", a.Worst, bound.Worst)
		}
	})
}

// TestFaults: what cannot be planned for is an error.
func TestFaults(t *testing.T) {
	good := func() (*seats.Field, seats.Aim, seats.Limits) {
		return made(rand.New(rand.NewPCG(1, 1)), 4, 2, 0.2), seats.Even, seats.Limits{Channels: 2, Step: sample}
	}
	for name, spoil := range map[string]func(f *seats.Field, aim *seats.Aim, l *seats.Limits){
		"no bands":              func(f *seats.Field, _ *seats.Aim, _ *seats.Limits) { f.Ends = nil },
		"bands that end early":  func(f *seats.Field, _ *seats.Aim, _ *seats.Limits) { f.Ends = []int{3, 6} },
		"no drivers":            func(f *seats.Field, _ *seats.Aim, _ *seats.Limits) { f.Drivers = 0 },
		"a short place":         func(f *seats.Field, _ *seats.Aim, _ *seats.Limits) { f.Place[1] = f.Place[1][1:] },
		"a seat without places": func(f *seats.Field, _ *seats.Aim, _ *seats.Limits) { f.Seat = []int{0, 2} },
		"too few weights":       func(f *seats.Field, _ *seats.Aim, _ *seats.Limits) { f.Weight = []float64{1} },
		"another aim":           func(_ *seats.Field, aim *seats.Aim, _ *seats.Limits) { *aim = "loudest" },
		"no channels":           func(_ *seats.Field, _ *seats.Aim, l *seats.Limits) { l.Channels = 0 },
		"a driver twice":        func(_ *seats.Field, _ *seats.Aim, l *seats.Limits) { l.Groups = [][]int{{0, 1}, {1}} },
		"no such driver":        func(_ *seats.Field, _ *seats.Aim, l *seats.Limits) { l.Groups = [][]int{{0, 4}} },
		"a delay too few": func(_ *seats.Field, _ *seats.Aim, l *seats.Limits) {
			l.Groups, l.Delay = [][]int{{0}, {1}}, []float64{0}
		},
	} {
		f, aim, l := good()
		spoil(f, &aim, &l)
		if _, err := f.Quick(aim, l); err == nil {
			t.Errorf("%s: Quick lets it pass", name)
		}
		if _, err := f.Plan(t.Context(), aim, l); err == nil {
			t.Errorf("%s: Plan lets it pass", name)
		}
	}
	f, aim, l := good()
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := f.Plan(ctx, aim, l); !errors.Is(err, context.Canceled) {
		t.Errorf("once it ends: %v", err)
	}
}

// TestOneSeat: one seat has no worse than the split by its arrivals has it.
func TestOneSeat(t *testing.T) {
	f := fieldOf(t, lantern(t), five(0.6)[1:2])
	for _, aim := range aims {
		for _, count := range []int{1, 2, 5, 8} {
			quick, err := f.Quick(aim, seats.Limits{Channels: count, Step: sample})
			if err != nil {
				t.Fatal(err)
			}
			split := bySplit(f, count)
			if got, want := aim.Of(quick.Figures), aim.Of(split); got > want+1e-9 {
				t.Errorf("%s, %d channels: %.3f dB, by arrival %.3f", aim, count, got, want)
			}
		}
	}
}

func ExampleField_Plan() {
	f := made(rand.New(rand.NewPCG(1, 2)), 8, 3, 0.4) // what three seats hear of eight drivers
	a, err := f.Plan(context.Background(), seats.Even, seats.Limits{Channels: 4, Step: 1. / 48000})
	if err != nil {
		fmt.Println(err)
		return
	}
	none := f.Judge([][]int{{0, 1, 2, 3, 4, 5, 6, 7}}, nil, nil)
	fmt.Printf("%d channels lose %.1f dB at the worst seat, no delays %.1f\n", len(a.Groups), a.Worst, none.Worst)
	// Output: 4 channels lose 5.9 dB at the worst seat, no delays 8.0
}
