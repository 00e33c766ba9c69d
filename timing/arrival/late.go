package arrival

import (
	"math"
	"sync"

	"pappus/timing/ball"
	"pappus/timing/path"
)

// The nodes between which Late interpolates: every degree of angle, and so many
// distances, from near the ball to far away, evenly by the angle of the horizon seen
// from the centre. From 1.2 radii on that is within 1 us of the fit itself on a ball
// of 0.15 m radius up to 8 kHz, and within 2 us on one of 0.2 m; see TestLateIsTheFit.
const (
	lateAngles    = 181
	lateDistances = 24
	lateNear      = 1.1   // radii
	lateFar       = 1000  // radii
	lateTolerance = 1e-16 // where the series ends: only rounding is left
)

// Late tells how much later than by the shortest way round it (path.Round) a cap
// on a rigid ball is heard, when its arrival is the fit over a slice of frequencies
// (Finder). In front that is a few microseconds too early or too late; deep in the
// shadow, where the wave creeps more slowly than sound in air, up to a tenth of a
// millisecond too late.
//
// The fit is followed from the front to the back, so that over a narrow band, where
// many delays fit nearly as well, it makes no jumps of a period. Nodes are worked out
// when they are first asked for. Late may be used from several goroutines.
type Late struct {
	cap       ball.Cap
	frequency []float64 // Hz
	k         []float64 // rad/m
	speed     float64   // m/s
	rows      [lateDistances]lateRow
}

// lateRow is the fit at one distance, in s, less a smooth time: see smooth.
type lateRow struct {
	once sync.Once
	late [lateAngles]float64
}

// NewLate prepares the arrivals of a cap on a ball over rising frequencies in Hz, two
// at least, with a speed of sound in m/s. The loss in air, which is nearly the same
// at all of them, is left out. The errors are those of package ball.
func NewLate(c ball.Cap, frequency []float64, speed float64) (*Late, error) {
	l := &Late{cap: c, frequency: append([]float64(nil), frequency...), k: make([]float64, len(frequency)), speed: speed}
	for i, hz := range frequency {
		l.k[i] = 2 * math.Pi * hz / speed
	}
	_, err := ball.NewSeries(c, l.k, lateTolerance)
	return l, err
}

// Distance is a distance made ready for a Late: see Prepare.
type Distance struct {
	horizon float64
	late    [lateAngles]float64
}

// Prepare makes a distance r in m from the ball's centre ready, for At at many angles.
// Nearer than 1.1 radii it is as at that. It allocates nothing once the nodes round about
// are there.
func (l *Late) Prepare(d *Distance, r float64) {
	first, last := horizon(lateNear), horizon(lateFar)
	d.horizon = min(max(horizon(max(r/l.cap.Radius, 1)), first), last)
	x := (d.horizon - first) / (last - first) * (lateDistances - 1)
	j := min(max(int(x)-1, 0), lateDistances-4)
	clear(d.late[:])
	for i, w := range lagrange(x - float64(j)) {
		for k, v := range l.row(j + i).late {
			d.late[k] += w * v
		}
	}
}

// At returns by how much in s, negative where it is earlier, the fit is later than by
// the shortest way, at a distance that this Late has prepared and an angle gamma in
// rad, 0 to pi, from the cap's axis.
func (l *Late) At(d *Distance, gamma float64) float64 {
	return d.at(gamma) + l.smooth(d.horizon, gamma)
}

// horizon returns the angle between the axis of a cap and a distance in radii from
// which the cap is just seen.
func horizon(radii float64) float64 { return math.Acos(1 / radii) }

// smooth returns the time that rows leave out, in s. Beyond the horizon h the shortest
// way grows evenly with the angle and so has a corner right behind the ball, which the
// field has not; a quarter of a sine that is level there takes its place.
func (l *Late) smooth(h, gamma float64) float64 {
	arc, whole := gamma-h, math.Pi-h
	if arc <= 0 {
		return 0
	}
	quarter := 2 * whole / math.Pi
	return l.cap.Radius / l.speed * (quarter*math.Sin(arc/quarter) - arc)
}

// row returns the row of a distance, worked out if it has not been yet.
func (l *Late) row(j int) *lateRow {
	row := &l.rows[j]
	row.once.Do(func() { l.fill(row, j) })
	return row
}

// fill works a row out.
func (l *Late) fill(row *lateRow, j int) {
	first, last := horizon(lateNear), horizon(lateFar)
	h := first + (last-first)*float64(j)/(lateDistances-1)
	r := l.cap.Radius / math.Cos(h)
	series, err := ball.NewSeries(l.cap, l.k, lateTolerance)
	if err != nil {
		panic(err) // NewLate has tried these wavenumbers
	}
	series.Move(r)
	finder, pressure := NewFinder(l.frequency), make([]complex128, len(l.k))
	within := 1 / (2 * l.frequency[len(l.frequency)-1]) // no further than to the next top
	guess := 0.0
	for i := range row.late {
		gamma := math.Pi * float64(i) / (lateAngles - 1)
		series.At(pressure, gamma)
		long, _ := path.Round(l.cap.Radius, r, gamma)
		smooth := (long-r)/l.speed + l.smooth(h, gamma) // over a source at the centre, as the series is
		at := smooth + guess
		guess = finder.Find(pressure, at-within, at+within) - smooth
		row.late[i] = guess
	}
}

// at interpolates between the angles; in front and behind it mirrors.
func (d *Distance) at(gamma float64) float64 {
	x := gamma / math.Pi * (lateAngles - 1)
	i := min(max(int(x), 0), lateAngles-2)
	sum := 0.0
	for n, w := range lagrange(x - float64(i-1)) {
		node := i - 1 + n
		if node < 0 {
			node = -node
		}
		if node >= lateAngles {
			node = 2*(lateAngles-1) - node
		}
		sum += w * d.late[node]
	}
	return sum
}

// lagrange returns the weights of the nodes 0 to 3 in the cubic through them at x.
func lagrange(x float64) [4]float64 {
	a, b, c, d := x, x-1, x-2, x-3
	return [4]float64{-b * c * d / 6, a * c * d / 2, -a * b * d / 2, a * b * c / 6}
}
