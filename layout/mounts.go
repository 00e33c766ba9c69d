package layout

import (
	"fmt"
	"math"
	"slices"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// mounts gives the places that carry a driver, numbered. Their faces are those
// of the shell: the body that is left after the cut.
func mounts(d *design.Design, whole, shell *body.Body, driver Driver) ([]Mount, error) {
	zones := keptClear(d, whole, driver)
	all, err := places(d, whole, driver, zones)
	if err != nil {
		return nil, err
	}
	total := len(all)
	above := slices.DeleteFunc(all, func(m Mount) bool { return !clearsCut(shell, m, driver.CutoutRadius) })
	clear := slices.DeleteFunc(above, func(m Mount) bool { return tooLow(d.Mounts.KeepClearBelowDeg, m.Point) })
	clear = slices.DeleteFunc(clear, func(m Mount) bool { return !(spread.Zone{Clear: zones}).Contains(r3.Unit(m.Point)) })
	cut, low := total-len(above), len(above)-len(clear)

	number(clear, whole.Radius)
	for _, id := range d.Mounts.Skip {
		// Those of a list are looked for where it is read.
		if d.Mounts.On != "list" && id > len(clear) {
			return nil, fault(d, "mounts.skip", "", fmt.Sprintf("there is no mount %d; must be from 1 to %d", id, len(clear)), ErrNoSuchMount)
		}
	}
	left := slices.DeleteFunc(clear, func(m Mount) bool { return slices.Contains(d.Mounts.Skip, m.ID) })

	if n := len(left); n == 0 {
		return nil, fault(d, "mounts", "", fmt.Sprintf(
			"no driver left: of %d places %d are cut away, %d kept clear and %d skipped; must leave at least 1",
			total, cut, low, len(d.Mounts.Skip)), ErrNoMounts)
	} else if n > design.MaxDrivers {
		return nil, fault(d, "mounts", "", fmt.Sprintf("%d drivers; must be at most %d", n, design.MaxDrivers), ErrTooManyMounts)
	}
	if shell != whole {
		toShell(left, whole, shell)
	}
	return left, nil
}

// places gives all the places on the whole body, not numbered.
func places(d *design.Design, whole *body.Body, driver Driver, zones []spread.Cap) ([]Mount, error) {
	switch d.Mounts.On {
	case "vertices":
		return onVertices(whole), nil
	case "edges":
		return onEdges(whole), nil
	case "even":
		zone := spread.Zone{Clear: zones, Fold: d.Mounts.Symmetry}
		if d.Mounts.Over == "dome" {
			zone.Clear = append(zone.Clear, spread.Below(domeFloor(d, whole, driver)))
		}
		m, err := evenly(whole, d.Mounts.Count, zone)
		if err != nil {
			return nil, fault(d, "mounts.count", fmt.Sprint(d.Mounts.Count), err.Error(), err)
		}
		return m, nil
	case "list":
		return listed(d, whole)
	default:
		return onFaces(whole), nil
	}
}

// keptClear gives the caps that no mount's point may be in: the design's zones,
// wider by the flange.
func keptClear(d *design.Design, whole *body.Body, driver Driver) []spread.Cap {
	flange := math.Atan2(driver.FlangeRadius, whole.BallRadius)
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

// domeFloor gives the height on the unit sphere above which a cut-out on the ball
// of the body's radius clears the cut.
func domeFloor(d *design.Design, whole *body.Body, driver Driver) float64 {
	reach := math.Hypot(whole.Radius, driver.CutoutRadius)
	lean := math.Atan2(driver.CutoutRadius, whole.Radius)
	return math.Sin(math.Asin(max(-1, min(1, d.Body.CutHeightMM*mm/reach))) + lean + rounding)
}

// clearsCut says whether a mount's cut-out is all above the cut plane, or
// touches it.
func clearsCut(shell *body.Body, m Mount, cutout float64) bool {
	if !shell.IsCut {
		return true
	}
	reach := cutout * math.Sqrt(max(0, 1-m.Normal.Z*m.Normal.Z))
	return m.Point.Z-reach >= shell.Cut-shell.Radius*rounding
}

// tooLow says whether a point is below an elevation seen from the centre.
func tooLow(below *float64, p r3.Vec) bool {
	if below == nil {
		return false
	}
	elevation := math.Atan2(p.Z, math.Hypot(p.X, p.Y))
	return elevation < *below*math.Pi/180-rounding
}

// rounding is how far a length over the radius, or an angle in rad, may be off
// by rounding: a thousandth of what anyone could build.
const rounding = 1e-9

// toShell turns faces of the whole body into those that a cut left of it; -1
// where it left nothing. No two faces look the same way.
func toShell(m []Mount, whole, shell *body.Body) {
	left := facePlanes(shell)
	for i := range m {
		if m[i].Face < 0 {
			continue
		}
		n := whole.Normal(m[i].Face)
		m[i].Face = slices.IndexFunc(left, func(p plane) bool { return r3.Norm(r3.Sub(p.normal, n)) < sameNormal })
		if m[i].Face >= 0 && shell.Faces[m[i].Face].Base {
			m[i].Face = -1
		}
	}
}

// sameNormal is how near unit normals of one face are: far over rounding, far
// under the turn from one face to the next of the finest geodesic.
const sameNormal = 1e-6
