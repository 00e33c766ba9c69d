package fit

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with what is asked.
var (
	errDriver = errors.New("the driver cannot have this outline")
	errMount  = errors.New("the mount is no place on the body")
	errNoFit  = errors.New("no size fits")
)

// Outline is that of a driver, in m. Behind its flange it is a solid of
// revolution: the basket narrows evenly from the cut-out, at the body's outer
// face, to the magnet, which is a cylinder.
//
// The terminal may come to stand on any side, since a driver can be turned in
// its hole: it is taken for the ring that it would sweep.
type Outline struct {
	CutoutRadius float64
	FlangeRadius float64 // at least that of the cut-out

	Depth        float64 // behind the body's outer face; 0: not known
	MagnetRadius float64 // 0: as wide as the cut-out
	MagnetHeight float64 // of the straight part at the rear, up to Depth

	TerminalReach  float64 // from the axis to the outermost end; 0: not known
	TerminalFront  float64 // where it begins, behind the body's outer face
	TerminalLength float64 // along the axis

	ScrewRadius float64 // of a screw hole; 0: not known
}

// Limits are lengths in m that must be kept.
type Limits struct {
	Wall  float64 // thickness of every wall, a cut's base included
	Apart float64 // least between things of neighbours, and to other walls
	Edge  float64 // least from a flange, a cut-out or a screw hole to an edge
}

// Mount is a place for one driver.
type Mount struct {
	Point  r3.Vec // m, on the body's outer face
	Normal r3.Vec // unit length, outward
	Face   int    // of the body; below 0 where it sits on none
}

func (d Outline) check() error {
	for _, v := range []struct {
		name string
		m    float64
	}{
		{"cut-out radius", d.CutoutRadius}, {"flange radius", d.FlangeRadius}, {"depth", d.Depth},
		{"magnet radius", d.MagnetRadius}, {"magnet height", d.MagnetHeight}, {"terminal reach", d.TerminalReach},
		{"terminal front", d.TerminalFront}, {"terminal length", d.TerminalLength}, {"screw radius", d.ScrewRadius},
	} {
		if !(v.m >= 0) || math.IsInf(v.m, 1) {
			return prose.Errorf("%w: %s %g m must be finite and at least 0", errDriver, v.name, v.m)
		}
	}
	switch {
	case d.CutoutRadius == 0:
		return fmt.Errorf("%w: the cut-out radius must be above 0", errDriver)
	case d.FlangeRadius < d.CutoutRadius:
		return prose.Errorf("%w: the flange radius %g m is less than the cut-out's, %g m", errDriver, d.FlangeRadius, d.CutoutRadius)
	case d.MagnetHeight > d.Depth:
		return prose.Errorf("%w: the magnet height %g m is more than the depth, %g m", errDriver, d.MagnetHeight, d.Depth)
	}
	return nil
}

func (l Limits) check() error {
	for _, m := range []float64{l.Wall, l.Apart, l.Edge} {
		if !(m >= 0) || math.IsInf(m, 1) {
			return prose.Errorf("a limit must be a finite length of at least 0, not %g m", m)
		}
	}
	return nil
}

func (m Mount) check(faces int) error {
	if size := r3.Norm(m.Normal); !(math.Abs(size-1) < 1e-6) || math.IsNaN(r3.Norm(m.Point)) || math.IsInf(r3.Norm(m.Point), 0) {
		return fmt.Errorf("%w: point %v, normal %v", errMount, m.Point, m.Normal)
	}
	if m.Face >= faces {
		return fmt.Errorf("%w: face %d of %d", errMount, m.Face, faces)
	}
	return nil
}

// magnet returns the magnet's radius in m.
func (d Outline) magnet() float64 {
	if d.MagnetRadius == 0 {
		return d.CutoutRadius
	}
	return d.MagnetRadius
}

// Times returns the outline with every length times a factor, but for its screws:
// those come as they come.
func (d Outline) Times(factor float64) Outline {
	d.CutoutRadius *= factor
	d.FlangeRadius *= factor
	d.Depth *= factor
	d.MagnetRadius *= factor
	d.MagnetHeight *= factor
	d.TerminalReach *= factor
	d.TerminalFront *= factor
	d.TerminalLength *= factor
	return d
}

// takesScrews tells whether there is room for screws between the cut-out and the
// flange's rim.
func (d Outline) takesScrews(l Limits) bool {
	return d.ScrewRadius == 0 || d.FlangeRadius-d.CutoutRadius >= 2*(l.Edge+d.ScrewRadius)-Slack
}
