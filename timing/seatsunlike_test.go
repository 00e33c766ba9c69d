package timing

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing/seats"
	"pappus/timing/unlike"
)

// offDrivers draws a driver for each mount whose fs, Qms, Qes and Re are off by up to a tenth, whose
// level is by 1 dB, and whose sound is by 1 mm of air and by 20 us.
func offDrivers(nominal unlike.Driver, n int, seed uint64) []unlike.Driver {
	random := rand.New(rand.NewPCG(seed, 1))
	off := func(by float64) float64 { return by * (2*random.Float64() - 1) }
	out := make([]unlike.Driver, n)
	for m := range out {
		d := nominal
		d.Resonance, d.Qms = d.Resonance*(1+off(0.1)), d.Qms*(1+off(0.1))
		d.Qes, d.DCOhm = d.Qes*(1+off(0.1)), d.DCOhm*(1+off(0.1))
		d.Level, d.Late = math.Pow(10, off(1)/20), off(0.001)/343+off(20e-6)
		out[m] = d
	}
	return out
}

// heardOf is what places hear of drivers that are not twins, of a plan.
func heardOf(t *testing.T, u *Unlike, f *seats.Field, drivers []unlike.Driver) *seats.Field {
	t.Helper()
	s, err := u.network.NewSolver()
	if err != nil {
		t.Fatal(err)
	}
	twin := velocities(s, f.Frequency)
	if err := s.Fill(drivers); err != nil {
		t.Fatal(err)
	}
	out, velocity, n := *f, velocities(s, f.Frequency), len(f.Frequency)
	out.Place = nil
	for _, place := range f.Place {
		place = slices.Clone(place)
		for i := range place {
			m, k := i/n, i%n
			place[i] *= velocity[k][m] / twin[k][m] * turn(f.Frequency[k], drivers[m].Late)
		}
		out.Place = append(out.Place, place)
	}
	return &out
}

// TestSeatsOfUnlikeDrivers: what a Seating says of twins holds for drivers that are off as usual
// ones are, and knowing each driver would gain less than what is worth shorter strings.
func TestSeatsOfUnlikeDrivers(t *testing.T) {
	d, err := design.Parse("seats.toml", design.SeatsTOML())
	if err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	u, err := NewUnlike(p, NominalDriver(a.Driver))
	if err != nil {
		t.Fatal(err)
	}
	h, err := newHall(a)
	if err != nil {
		t.Fatal(err)
	}
	f, aim := h.field(a), seats.Aim(a.Seating.Aim)
	limits := seats.Limits{Step: a.Processor.Step, Groups: mountsOf(p.Channels), Gain: gains(a, p.Channels)}
	off := make([]float64, 20)
	for lot := range off {
		heard := heardOf(t, u, f, offDrivers(u.Nominal, len(a.Mounts), uint64(lot)))
		same := heard.Judge(limits.Groups, limits.Gain, delaysOf(p.Channels))
		for i, loss := range same.Seat {
			off[lot] = max(off[lot], math.Abs(loss-p.Seating.Planned.Seat[i]))
		}
		if lot > 2 {
			continue
		}
		anew, err := heard.Plan(t.Context(), aim, limits)
		if err != nil {
			t.Fatal(err)
		}
		if gained := heard.Value(aim, same) - heard.Value(aim, anew.Figures); gained > WorthOctave {
			t.Errorf("lot %d: delays for its drivers gain %g dB", lot, gained)
		}
	}
	slices.Sort(off)
	if off[0] < 0.05 || off[18] > 0.6 { // 0.44 at the 95th percentile of 40 lots
		t.Errorf("a seat's loss is off by %g to %g dB", off[0], off[18])
	}
}
