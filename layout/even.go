package layout

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// seed begins the search for even places. Any would do; one that stays the same
// keeps a design the same.
const seed = 1

// even spreads the mounts that a design asks for over what its zones leave of the
// body, as evenly as can be and so that drivers keep apart where there is room.
// Where there is none, and what is behind the flanges leaves less than half of the
// room that flanges have, it does not count: a builder who has to take another driver
// should not find all places crowded where the deep one goes.
func even(d *design.Design, whole, shell *body.Body) ([]Mount, error) {
	n := d.Mounts.Count
	zone, room, err := evenZone(d, whole, shell)
	if err != nil {
		return nil, err
	}
	var s spreading
	if room >= n {
		s = spreadings.get(fmt.Sprint("all ", n, zone), func() spreading {
			if !loose(d, whole, shell, zone) && !spread.Holds(n, zone) {
				return spreading{}
			}
			return spreadOver(n, zone)
		})
	}
	if s.points == nil && s.err == nil {
		if zone, err = shallow(d, whole, shell, zone, room); err != nil {
			return nil, err
		}
		s = spreadings.get(fmt.Sprint(n, zone), func() spreading { return spreadOver(n, zone) })
	}
	if s.err != nil {
		reason := s.err.Error()
		if errors.Is(s.err, spread.ErrZone) {
			reason = "the cut and what is kept clear leave no room for drivers, or none on the axis of the symmetry; must leave some"
		}
		return nil, fault(d, "mounts.count", d.Shown("mounts.count"), reason, s.err)
	}
	return onBody(whole, s.points), nil
}

// shallow is the zone for drivers without anything behind their flanges where what is there
// leaves no room, or less than half of theirs; else the one that is given.
func shallow(d *design.Design, whole, shell *body.Body, zone spread.Zone, room int) (spread.Zone, error) {
	flat := *d
	flat.Driver.Depth, flat.Driver.MagnetHeight, flat.Driver.TerminalReach = 0, 0, 0
	wide, _, err := evenZone(&flat, whole, shell)
	if err == nil && (room == 0 || 2*share(zone) < share(wide)) {
		return wide, nil
	}
	return zone, err
}

// loose tells whether even places are as far apart as they must be before any is pushed, so
// that there is no need to ask whether there is room. Where a shallow driver would have
// another zone, and so other places if there were none, it leaves that to be asked.
func loose(d *design.Design, whole, shell *body.Body, zone spread.Zone) bool {
	s := settle(d.Mounts.Count, zone)
	if s.err != nil || !(s.LeastAngle() >= zone.Apart) {
		return false
	}
	wide, err := shallow(d, whole, shell, zone, 1)
	return err == nil && slices.EqualFunc(zone.Clear, wide.Clear, func(a, b spread.Cap) bool { return a == b })
}

// settled are even places before they are pushed apart, or why there are none. They are the
// same for all sizes that a zone does not hang on.
type settled struct {
	spread.Settled
	err error
}

var settlings = newMemory[settled](mostSettled)

// mostSettled is how many of them are kept: those of the counts and the cuts of a search.
const mostSettled = 256

func settle(n int, zone spread.Zone) settled {
	return settlings.get(fmt.Sprint(n, zone.Clear, zone.Fold), func() settled {
		s, err := spread.Settle(n, seed, spread.Zone{Clear: zone.Clear, Fold: zone.Fold})
		return settled{s, err}
	})
}

// share returns how many of a thousand points, evenly over the sphere, a zone leaves.
func share(zone spread.Zone) int {
	n := 0
	for _, p := range spread.Spiral(1000) {
		if zone.Contains(p) {
			n++
		}
	}
	return n
}

// spreading is a spread of points, or why there is none.
type spreading struct {
	points []r3.Vec
	err    error
}

var spreadings = newMemory[spreading](mostKept)

func spreadOver(n int, zone spread.Zone) spreading {
	s := settle(n, zone)
	if s.err != nil {
		return spreading{err: s.err}
	}
	points, _ := s.Apart(zone.Apart)
	return spreading{points: points}
}

// onBody moves directions from the centre, of unit length, out to a whole body.
func onBody(whole *body.Body, directions []r3.Vec) []Mount {
	planes := facePlanes(whole)
	m := make([]Mount, len(directions))
	for i, p := range directions {
		if whole.IsBall() {
			m[i] = Mount{Point: r3.Scale(whole.Radius, p), Normal: p, Face: -1}
			continue
		}
		face := planes.towards(p)
		f := planes[face]
		m[i] = Mount{Point: r3.Scale(f.distance/r3.Dot(f.normal, p), p), Normal: f.normal, Face: face}
	}
	return m
}

// evenZone gives what the design leaves for even places: outside of its
// kept-clear zones, above its lowest elevation, on a dome far enough from the cut,
// and as far from each other as two drivers must be. No more drivers than room fit
// anywhere: none, if the cut is in the way of one even at the top; one, if no two keep
// apart. What the zone does not ask for then cannot be had.
func evenZone(d *design.Design, whole, shell *body.Body) (zone spread.Zone, room int, err error) {
	room = design.MaxDrivers
	zone = spread.Zone{Clear: keptClear(d, whole), Fold: d.Mounts.Symmetry}
	low := math.Inf(-1)
	if below := d.Mounts.KeepClearBelowDeg; below != nil {
		low = *below * math.Pi / 180
	}
	if d.Mounts.Over == "dome" {
		floor, found, err := domeFloor(d, whole, shell)
		if err != nil {
			return zone, 0, err
		}
		if !found {
			room = 0
		}
		low = max(low, floor)
	}
	if low > -math.Pi/2 {
		zone.Clear = append(zone.Clear, spread.Below(math.Sin(low)))
	}
	// On a body with faces the ball inside stands for it: nowhere does a distance
	// take a wider angle than there.
	radius := whole.Radius
	for i, p := range facePlanes(whole) {
		if i == 0 || p.distance < radius {
			radius = p.distance
		}
	}
	apart, err := fit.LeastAngle(radius, d.Driver.Outline, limitsOf(d))
	if err != nil {
		return zone, 0, fault(d, "driver", "", err.Error(), err)
	}
	if apart <= math.Pi {
		zone.Apart = apart
	} else {
		room = min(room, 1)
	}
	return zone, room, nil
}

// domeFloor gives the elevation in rad, seen from the centre, from which up a
// driver keeps off the cut and its base, whatever its azimuth. Where none does, not
// even at the top, that is not found, and the cut-out alone has to.
func domeFloor(d *design.Design, whole, shell *body.Body) (elevation float64, found bool, err error) {
	top, err := offBase(d, whole, shell, []r3.Vec{{Z: 1}})
	if err != nil {
		return 0, false, err
	}
	if !top[0] {
		return cutoutFloor(d, whole), false, nil
	}
	step := math.Pi / floorSteps
	n := sort.Search(floorSteps, func(i int) bool {
		off, fault := offBase(d, whole, shell, ringAt(whole, -math.Pi/2+float64(i)*step))
		err = cmp.Or(err, fault)
		return fault != nil || !slices.Contains(off, false)
	})
	return -math.Pi/2 + float64(n)*step + rounding, true, err
}

// floorSteps is how finely the floor of a dome is looked for, from the lowest point to the
// highest: to a hundredth of a millimetre on the largest body.
const floorSteps = 1 << 21

// floorSamples is how many azimuths of a body with faces are looked at for the
// floor of a dome: each 5 degrees.
const floorSamples = 72

// ringAt gives directions at an elevation in rad: of a ball, which is alike all
// round, one.
func ringAt(whole *body.Body, elevation float64) []r3.Vec {
	n := floorSamples
	if whole.IsBall() {
		n = 1
	}
	sin, cos := math.Sincos(elevation)
	out := make([]r3.Vec, n)
	for i := range out {
		y, x := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out[i] = r3.Vec{X: cos * x, Y: cos * y, Z: sin}
	}
	return out
}

// offBase tells whether a driver in each direction would keep off the base.
func offBase(d *design.Design, whole, shell *body.Body, directions []r3.Vec) ([]bool, error) {
	m := onBody(whole, directions)
	if shell != whole {
		toShell(m, whole, shell)
	}
	off, err := fit.OffBase(shell, fitMounts(m), d.Driver.Outline, limitsOf(d))
	if err != nil {
		return nil, fault(d, "driver", "", err.Error(), err)
	}
	for i := range off {
		off[i] = off[i] && clearsCut(shell, m[i], d.Driver.CutoutRadius)
	}
	return off, nil
}

// cutoutFloor gives the elevation in rad from which up a cut-out on the ball of the
// body's radius clears the cut.
func cutoutFloor(d *design.Design, whole *body.Body) float64 {
	cutout := d.Driver.CutoutRadius
	reach := math.Hypot(whole.Radius, cutout)
	lean := math.Atan2(cutout, whole.Radius)
	return math.Asin(max(-1, min(1, d.Body.Cut/reach))) + lean + rounding
}

// keptClear gives the caps that no mount's point may be in: the design's zones,
// wider by the flange.
func keptClear(d *design.Design, whole *body.Body) []spread.Cap {
	flange := math.Atan2(d.Driver.FlangeRadius, whole.BallRadius)
	var caps []spread.Cap
	for _, z := range d.Mounts.KeepClear {
		sinA, cosA := math.Sincos(z.AzimuthDeg * math.Pi / 180)
		sinE, cosE := math.Sincos(z.ElevationDeg * math.Pi / 180)
		caps = append(caps, spread.Cap{
			Axis:      r3.Vec{X: cosE * cosA, Y: cosE * sinA, Z: sinE},
			HalfAngle: min(z.HalfAngleDeg*math.Pi/180+flange, math.Pi),
		})
	}
	return caps
}
