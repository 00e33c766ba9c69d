package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/arrival"
	"pappus/timing/ball"
	"pappus/timing/path"
	"pappus/timing/radiate"

	lru "github.com/hashicorp/golang-lru/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The models of a driver that a design may name.
const (
	sphereModel = radiate.SphereModel
	pointModel  = radiate.PointModel
	baffleModel = radiate.BaffleModel
	bodyModel   = radiate.BodyModel
)

// hasBody tells whether an array's model has a body that sound goes round.
func hasBody(a *layout.Array) bool {
	return a.Timing.Model == sphereModel || a.Timing.Model == bodyModel
}

// way returns how far sound goes from a mount to a place, in m, the straight line
// between them, and whether the mount is seen from the place. Round the ball that
// stands for the body it goes from the mount's place on the ball, so that it may be
// shorter than the straight line from a mount that is in the ball. The other models
// have no body to go round; in a baffle the mount is seen from the front.
func way(a *layout.Array, m layout.Mount, at r3.Vec) (long, straight float64, seen bool) {
	return ownWay(a, m, a.PlacingOf(m).Into(at))
}

// ownWay is way for a place in the frame of the mount's body.
func ownWay(a *layout.Array, m layout.Mount, at r3.Vec) (long, straight float64, seen bool) {
	ray := r3.Sub(at, m.Point)
	straight = r3.Norm(ray)
	switch a.Timing.Model {
	case sphereModel, bodyModel:
		long, _, seen = path.Between(a.Body.OnBall(m.Point), r3.Sub(at, a.Body.BallCentre))
		return long, straight, seen
	case baffleModel:
		return straight, straight, r3.Dot(ray, m.Normal) >= 0
	}
	return straight, straight, true
}

// newLate prepares how much later than by the path the field of an array is heard, by
// the fit over the design's band; nil where the model has no body to go round, since
// there field and path are one.
func newLate(a *layout.Array, speed float64) (*arrival.Late, error) {
	if !hasBody(a) {
		return nil, nil
	}
	key := lateKey{radiate.ConeCap(a), a.Timing.FieldLow, a.Timing.FieldHigh, speed}
	if late, ok := lates.Get(key); ok {
		return late, nil
	}
	late, err := arrival.NewLate(key.cap, fieldBand(key.low, key.high), speed)
	if err == nil {
		lates.Add(key, late)
	}
	return late, err
}

// lateKey is all that an arrival.Late hangs on.
type lateKey struct {
	cap              ball.Cap
	low, high, speed float64 // Hz, m/s
}

// lates keeps the tables of the balls that were heard last: one costs more than all else of a
// spot, and drivers, turns, channels and delays may change without it. Each takes up to 35 kB.
var lates, _ = lru.New[lateKey, *arrival.Late](256)

// The frequencies of the fit stand no further apart than fieldStep in Hz, so that what
// comes within 13 ms of the first sound is not taken for it, and are this many at least.
const (
	fieldStep  = 75.0
	fieldLeast = 9
)

// fieldBand returns evenly spaced frequencies in Hz from low to high.
func fieldBand(low, high float64) []float64 {
	f := make([]float64, max(fieldLeast, int(math.Ceil((high-low)/fieldStep))+1))
	for i := range f {
		f[i] = low + (high-low)*float64(i)/float64(len(f)-1)
	}
	return f
}

// hearer tells when the model's own field of one mount after another, without delay, is
// heard at one place after another: what measures of timing go by. The zero value is
// ready for move; it is for one goroutine and allocates nothing.
type hearer struct {
	array    *layout.Array
	late     *arrival.Late // nil: the straight line
	speed    float64       // m/s
	place    r3.Vec        // m
	body     int           // the one that it is ready for
	at       r3.Vec        // m, the place as the body has it; from the ball's centre where late is there
	far      float64       // m, its length
	distance arrival.Distance
}

// move makes the hearer ready for a place in m at which a spot's array is heard.
func (h *hearer) move(p *Spot, at r3.Vec) { h.moveIn(p.Array, p.late, p.SpeedOfSound, at) }

// moveIn makes the hearer ready for a place in m, in air with a speed of sound in m/s.
func (h *hearer) moveIn(a *layout.Array, late *arrival.Late, speed float64, at r3.Vec) {
	h.array, h.late, h.speed, h.place = a, late, speed, at
	h.turn(0)
}

// turn makes the hearer ready for another body.
func (h *hearer) turn(body int) {
	h.body, h.at = body, h.array.Bodies()[body].Into(h.place)
	if h.late != nil {
		h.at = r3.Sub(h.at, h.array.Body.BallCentre)
		h.far = r3.Norm(h.at)
		h.late.Prepare(&h.distance, h.far)
	}
}

// moveFrom makes the hearer ready for heardFrom at a distance in m from a ball's centre.
func (h *hearer) moveFrom(p *Spot, far float64) {
	h.array, h.late, h.speed, h.far = p.Array, p.late, p.SpeedOfSound, far
	h.late.Prepare(&h.distance, far)
}

// heard returns when a mount is heard, in s.
func (h *hearer) heard(m layout.Mount) float64 {
	if m.Body != h.body {
		h.turn(m.Body)
	}
	if h.late == nil {
		return r3.Norm(r3.Sub(h.at, m.Point)) / h.speed
	}
	return h.heardFrom(path.Angle(r3.Sub(m.Point, h.array.Body.BallCentre), h.at))
}

// heardFrom returns when a mount on the ball is heard, in s, that stands at an angle in
// rad from the place seen from the ball's centre.
func (h *hearer) heardFrom(gamma float64) float64 {
	long, _ := path.Round(h.array.Body.BallRadius, h.far, gamma)
	return long/h.speed + h.late.At(&h.distance, gamma)
}

// Heard returns when the driver is heard in s: by the model's own field, or by the
// path where there is no field to time.
func (r Arrival) Heard() float64 {
	if math.IsNaN(r.Field) {
		return r.Time
	}
	return r.Field
}
